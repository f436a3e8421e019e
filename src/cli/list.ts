import { VERSION } from '../model/document.ts';
import { judge } from '../piece/judge.ts';
import { cutRows } from '../piece/list.ts';
import type { CutRow } from '../piece/view.ts';
import { formatLength } from '../units/format.ts';
import { styleOf } from './style.ts';
import { Unusable, type Verb, exitOf, print, readPiece, round6, withStore } from './verb.ts';

/** Cut list, rough and finished sizes; exit 1 if and only if something stops the piece. */
export const list: Verb = async (o) => {
  const doc = readPiece(o);
  return withStore((store) => {
    const j = judge(doc, store, 2);
    if (j.problems.length) throw new Unusable(j.problems, doc.title);
    const rows = cutRows(doc, j.built).map((r) => ({ ...r, finished: size(r.finished), rough: size(r.rough) }));
    const length = (n: number): string => formatLength(n, styleOf(doc.units));
    print(o, { dryfit: VERSION, title: doc.title, rows }, () => [doc.title, ...rows.map((r) => rowText(r, length))].join('\n'));
    return exitOf(j);
  });
};
function rowText(r: CutRow, length: (mm: number) => string): string {
  const text = (s: CutRow['finished']): string => `${length(s.length)} × ${length(s.width)} × ${length(s.thickness)}`;
  const hand = r.handedOf === null ? '' : `, mirror image of ${r.handedOf}`;
  const rough = r.letter === '' ? '' : `  (rough ${text(r.rough)})`;
  return `${r.letter || '-'}  ${r.count} × ${r.words}, ${r.wood}${hand}: ${text(r.finished)}${rough}`;
}
const size = (s: { length: number; width: number; thickness: number }): { length: number; width: number; thickness: number } => ({
  length: round6(s.length),
  width: round6(s.width),
  thickness: round6(s.thickness),
});
