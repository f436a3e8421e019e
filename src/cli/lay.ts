import type { Layout } from '../boards/layout.ts';
import { VERSION } from '../model/document.ts';
import { problemLine } from '../model/problem.ts';
import { judge } from '../piece/judge.ts';
import { layPiece } from '../piece/lay.ts';
import { readStock } from './stock.ts';
import { styleOf } from './style.ts';
import { type LengthStyle, formatLength } from '../units/format.ts';
import { type Options, Unusable, type Verb, exitOf, many, print, readPiece, withStore } from './verb.ts';

/** Parts on rough boards, each board with its cuts in shop order, a bound, and what to buy; exit 1 if and only if something stops the piece. */
export const lay: Verb = async (o) => {
  const doc = readPiece(o);
  const file = o.values.get('stock');
  const stock = file === undefined ? undefined : readStock(file);
  const run = runOf(o);
  return withStore((store) => {
    const j = judge(doc, store, 2);
    if (j.problems.length) throw new Unusable(j.problems, doc.title);
    const layout = layPiece(doc, j.built, stock, run());
    print(o, { dryfit: VERSION, title: doc.title, ...layout, bound: { ...layout.bound } }, () =>
      text(doc.title, layout, styleOf(doc.units)),
    );
    return exitOf(j);
  });
};
/** Checked at once; the seconds begin to run when the layout does. */
function runOf(o: Options): () => { effort?: number; seed?: number; stop?: () => boolean } {
  const whole = (key: string): number | undefined => {
    const given = o.values.get(key);
    if (given === undefined) return undefined;
    const n = Number(given);
    if (given.trim() === '' || !Number.isFinite(n) || n < 0)
      throw new Unusable([{ where: `--${key}`, what: 'a number from 0 up is needed here.' }]);
    return n;
  };
  const seconds = whole('seconds');
  const effort = whole('effort');
  const seed = whole('seed');
  const until = (): { stop?: () => boolean } => {
    if (seconds === undefined) return {};
    const end = Date.now() + seconds * 1000;
    return { stop: () => Date.now() > end };
  };
  return () => ({ ...(effort === undefined ? {} : { effort }), ...(seed === undefined ? {} : { seed }), ...until() });
}
function text(title: string, l: Layout, style: LengthStyle): string {
  const mm = (n: number): string => formatLength(n, style);
  const bound = l.gap === 0 ? 'fewer is impossible' : `at most ${l.gap} could be saved`;
  if (!l.boards.length && !l.unplaced.length && !l.buy.length) return `${title}\nThere is nothing to lay on boards.`;
  const lines = [
    title,
    `${many(l.boardsUsed, 'board')}, ${Math.round(l.yield * 100)} % becomes parts (${Math.round((1 - l.yield) * 100)} % is lost); ${bound} (${l.bound.name}, for ${l.bound.plans}).`,
  ];
  for (const b of l.boards) {
    lines.push(
      '',
      `Board ${b.id}: ${b.wood} ${b.nominal}, ${mm(b.length)} × ${mm(b.width)} × ${mm(b.thickness)}${b.assumed ? ' (assumed)' : ''}`,
    );
    for (const c of b.cuts) lines.push(`  ${c.step}. ${c.words}`);
  }
  if (l.unplaced.length) lines.push('', 'Not placed:', ...l.unplaced.map((u) => `  ${u.part}: ${u.words} ${u.cure.words}`));
  lines.push(
    '',
    'To buy:',
    ...l.buy.map(
      (r) =>
        `  ${r.count} × ${r.wood} ${r.nominal}, ${mm(r.length)} × ${mm(r.width)}${r.boardFeet === null ? '' : `, ${r.boardFeet.toFixed(1)} board feet`}${r.assumed ? ' (assumed)' : ''}`,
    ),
  );
  for (const c of l.cautions) lines.push(`Caution: ${c.words}`);
  for (const p of l.problems) lines.push(problemLine(p));
  return lines.join('\n');
}
