import { VERSION } from '../model/document.ts';
import type { Finding } from '../model/finding.ts';
import { judge, prove } from '../piece/judge.ts';
import { verdictOf } from '../piece/judging.ts';
import { kindsOf } from '../piece/kinds.ts';
import { renderFigures } from '../units/figures.ts';
import { styleOf } from './style.ts';
import { Unusable, type Verb, exitOf, many, print, readPiece, round6, withStore } from './verb.ts';

/** Verdict and findings; exit 1 if and only if something stops it. */
export const check: Verb = async (o) => {
  const doc = readPiece(o);
  return withStore((store) => {
    const j = judge(doc, store, 2);
    if (j.problems.length) throw new Unusable(j.problems, doc.title);
    const findings = prove(doc, j.findings, store);
    const verdict = verdictOf(j);
    const b = j.built.built;
    const kinds = kindsOf(b);
    const parts = kinds.flatMap((k) =>
      k.parts.map((p) => ({
        id: p.path,
        kind: k.letter,
        finished: round(k.finished),
        stock: roundList([p.record.stock.min, p.record.stock.max]),
        pieces: p.pieces.map((b) => b.max.map((m, i) => round6(m - (b.min[i] ?? 0)))),
        key: p.record.key,
      })),
    );
    const answer = {
      dryfit: VERSION,
      title: doc.title,
      verdict,
      counts: { parts: b.parts.size, joints: b.places.length, kinds: kinds.length, extras: b.extras.size },
      findings: findings.map((f) => ({
        ...f,
        measured: round6(f.measured),
        limit: round6(f.limit),
        why: renderFigures(f.why, styleOf(doc.units)),
        remedies: f.remedies.map((r) => ({
          ...r,
          label: renderFigures(r.label, styleOf(doc.units)),
          ...(r.consequence === undefined ? {} : { consequence: renderFigures(r.consequence, styleOf(doc.units)) }),
        })),
      })),
      sizes: Object.fromEntries(
        [...b.resolution.sizes].map(([id, v]) => [id, round6(v.dim === 'flex' && doc.units === 'in' ? v.v * 25.4 : v.v)]),
      ),
      parts,
      spaces: [...b.resolution.boxes.values()]
        .filter((r) => r.instance.kind === 'space')
        .map((r) => ({ id: r.instance.path, min: r.box.min.map(round6), max: r.box.max.map(round6) })),
    };
    print(o, answer, () => checkText(doc.title, doc.units, verdict, findings, answer.counts));
    return exitOf(j);
  });
};
const round = (s: { length: number; width: number; thickness: number }): { length: number; width: number; thickness: number } => ({
  length: round6(s.length),
  width: round6(s.width),
  thickness: round6(s.thickness),
});
const roundList = (l: readonly (readonly number[])[]): number[][] => l.map((v) => v.map(round6));

const KIND = { stops: 'stops it', trouble: 'trouble later', note: 'worth knowing' } as const;
function checkText(
  title: string,
  units: 'mm' | 'in',
  verdict: string,
  findings: readonly Finding[],
  counts: { parts: number; joints: number },
): string {
  const watch = findings.filter((f) => f.grade === 'trouble').length;
  const sentence =
    verdict === 'not-yet'
      ? 'It does not go together yet.'
      : watch
        ? `It goes together, with ${watch === 1 ? 'one thing' : `${watch} things`} to watch.`
        : 'It goes together.';
  const lines = [title, `${sentence} ${many(counts.parts, 'part')}, ${many(counts.joints, 'joint')}.`];
  findings.forEach((f, i) => {
    lines.push('', `${i + 1}. ${f.title} (${KIND[f.grade]})`, `   ${renderFigures(f.why, styleOf(units))}`);
    for (const r of f.remedies)
      lines.push(
        `   - ${renderFigures(r.label, styleOf(units))}${r.consequence === undefined ? '' : `. ${renderFigures(r.consequence, styleOf(units))}`}`,
      );
    lines.push(`   Why: ${f.source.name} (${f.source.basis}).`);
  });
  return lines.join('\n');
}
