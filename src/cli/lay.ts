import { buildPiece } from '../build/build.ts';
import type { Layout } from '../boards/layout.ts';
import { VERSION } from '../model/document.ts';
import { problemLine } from '../model/problem.ts';
import { families } from '../piece/catalog.ts';
import { layPiece } from '../piece/lay.ts';
import { readStock } from './stock.ts';
import { styleOf } from './style.ts';
import { type LengthStyle, formatLength } from '../units/format.ts';
import { type Options, Unusable, type Verb, print, readPiece } from './verb.ts';

/** Parts on rough boards, each board with its cuts in shop order, a bound, and what to buy. */
export const lay: Verb = async (o) => {
  const doc = readPiece(o);
  const built = buildPiece(doc, families);
  if (built.problems.length) throw new Unusable(built.problems);
  const file = o.values.get('stock');
  const layout = layPiece(doc, built, file === undefined ? undefined : readStock(file), runOf(o));
  print(o, { dryfit: VERSION, title: doc.title, ...layout, bound: { ...layout.bound } }, () => text(doc.title, layout, styleOf(doc.units)));
  return 0;
};
function runOf(o: Options): { effort?: number; seed?: number; stop?: () => boolean } {
  const whole = (key: string): number | undefined => {
    const given = o.values.get(key);
    if (given === undefined) return undefined;
    const n = Number(given);
    if (!Number.isFinite(n) || n < 0) throw new Unusable([{ where: `--${key}`, what: 'a number from 0 up is needed here.' }]);
    return n;
  };
  const seconds = whole('seconds');
  const effort = whole('effort');
  const seed = whole('seed');
  const end = seconds === undefined ? null : Date.now() + seconds * 1000;
  return { ...(effort === undefined ? {} : { effort }), ...(seed === undefined ? {} : { seed }), ...(end === null ? {} : { stop: () => Date.now() > end }) };
}
function text(title: string, l: Layout, style: LengthStyle): string {
  const mm = (n: number): string => formatLength(n, style);
  const bound = l.gap === 0 ? 'fewer is impossible' : `at most ${l.gap} could be saved`;
  const lines = [title, `${l.boardsUsed} boards, ${Math.round(l.yield * 100)} % becomes parts (${Math.round((1 - l.yield) * 100)} % is lost); ${bound} (${l.bound.name}, for ${l.bound.plans}).`];
  for (const b of l.boards) {
    lines.push('', `Board ${b.id}: ${b.wood} ${b.nominal}, ${mm(b.length)} × ${mm(b.width)} × ${mm(b.thickness)}${b.assumed ? ' (assumed)' : ''}`);
    for (const c of b.cuts) lines.push(`  ${c.step}. ${c.words}`);
  }
  if (l.unplaced.length) lines.push('', 'Not placed:', ...l.unplaced.map((u) => `  ${u.part}: ${u.words} ${u.cure.words}`));
  lines.push('', 'To buy:', ...l.buy.map((r) => `  ${r.count} × ${r.wood} ${r.nominal}, ${mm(r.length)} × ${mm(r.width)}${r.boardFeet === null ? '' : `, ${r.boardFeet.toFixed(1)} board feet`}${r.assumed ? ' (assumed)' : ''}`));
  for (const c of l.cautions) lines.push(`Caution: ${c.words}`);
  for (const p of l.problems) lines.push(problemLine(p));
  return lines.join('\n');
}
