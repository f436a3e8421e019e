import { VERSION } from '../model/document.ts';
import { buildPiece } from '../build/build.ts';
import { families } from '../piece/catalog.ts';
import { cutRows } from '../piece/list.ts';
import { formatLength } from '../units/format.ts';
import { styleOf } from './style.ts';
import { Unusable, type Verb, print, readPiece, round6 } from './verb.ts';

/** Cut list, rough and finished sizes. */
export const list: Verb = async (o) => {
  const doc = readPiece(o);
  const built = buildPiece(doc, families);
  if (built.problems.length) throw new Unusable(built.problems);
  const rows = cutRows(doc, built).map((r) => ({ ...r, finished: size(r.finished), rough: size(r.rough) }));
  const text = (n: number): string => formatLength(n, styleOf(doc.units));
  print(o, { dryfit: VERSION, title: doc.title, rows }, () =>
    [doc.title, ...rows.map((r) => `${r.letter || '-'}  ${r.count} × ${r.words}, ${r.wood}: ${text(r.finished.length)} × ${text(r.finished.width)} × ${text(r.finished.thickness)}  (rough ${text(r.rough.length)} × ${text(r.rough.width)} × ${text(r.rough.thickness)})`)].join('\n'),
  );
  return 0;
};
const size = (s: { length: number; width: number; thickness: number }): { length: number; width: number; thickness: number } => ({ length: round6(s.length), width: round6(s.width), thickness: round6(s.thickness) });
