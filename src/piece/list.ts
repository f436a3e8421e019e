/** The cut list: one row a kind of part, finished and rough sizes. */
import { type BlankJob, roughOf } from '../boards/blank.ts';
import { type Shop, defaultShop } from '../boards/shop.ts';
import type { Built } from '../build/build.ts';
import { sizeOf } from '../geom/box.ts';
import { quantise } from '../geom/vec3.ts';
import type { Document } from '../model/document.ts';
import { isWood, woodOf } from '../wood/woods.ts';
import { type Kind, kindsOf } from './kinds.ts';
import type { CutRow } from './view.ts';

/** Rows by letter. Extras of wood (pegs, buttons, wedges) are gathered below the parts by their words and size. */
export function cutRows(
  doc: Document,
  built: Built,
  kinds: readonly Kind[] = kindsOf(built.built),
  shop: Shop = defaultShop(doc.units),
): CutRow[] {
  const rows: CutRow[] = kinds.map((k) => {
    const first = k.parts[0];
    const words = [...new Set(k.parts.map((p) => p.doc.name ?? p.id.replaceAll('_', ' ')))].join(' and ');
    return {
      part: first?.id ?? '',
      words,
      letter: k.letter,
      count: k.parts.length,
      wood: first?.wood ?? '',
      paths: k.parts.map((p) => p.path),
      finished: k.finished,
      rough: roughSize(first?.wood ?? '', k.finished, shop),
      handedOf: k.handedOf,
    };
  });
  return [...rows, ...extraRows(built)];
}
/** Wood is left over-size until it is flat; a sheet has its thickness already, and glass, stone and metal are ordered to size. */
function roughSize(wood: string, finished: CutRow['finished'], shop: Shop): CutRow['rough'] {
  const w = woodOf(wood);
  if (w.kind !== 'other') return roughOf(finished, shop);
  return w.of === 'sheet' ? { ...roughOf(finished, shop), thickness: finished.thickness } : finished;
}
function extraRows(built: Built): CutRow[] {
  const groups = new Map<string, CutRow>();
  for (const e of built.built.extras.values()) {
    const [a, b, c] = sizeOf(e.record.stock);
    const k = 'xyz'.indexOf(e.record.grain);
    const all = [a, b, c];
    const across = all.filter((_, i) => i !== k).sort((x, y) => y - x);
    const finished = { length: all[k] ?? 0, width: across[0] ?? 0, thickness: across[1] ?? 0 };
    const key = [e.words, e.record.wood, ...[finished.length, finished.width, finished.thickness].map(quantise)].join(' ');
    const had = groups.get(key);
    groups.set(
      key,
      had
        ? { ...had, count: had.count + 1, paths: [...had.paths, e.path] }
        : {
            part: e.words,
            words: e.words,
            letter: '',
            count: 1,
            wood: e.record.wood,
            paths: [e.path],
            finished,
            rough: finished,
            handedOf: null,
          },
    );
  }
  return [...groups.values()];
}

/** What has to be found on boards: the kinds of part that are not already cut, made-up parts as their pieces. */
export function blankJobs(built: Built, kinds: readonly Kind[] = kindsOf(built.built)): BlankJob[] {
  return kinds.flatMap((k): BlankJob[] => {
    const parts = k.parts.filter((p) => !p.frozen);
    const first = parts[0];
    if (!first) return [];
    const pieces =
      first.pieces.length > 1 ? first.pieces.map((box) => pieceSize(box, first.record.grain, k, first.record.stock)) : undefined;
    const alternate = (first.doc.made ?? []).some((m) => 'staves' in m && m.staves.alternate === true);
    const job = {
      part: k.letter,
      copies: parts.length,
      paths: parts.map((p) => p.path),
      wood: first.wood,
      finished: k.finished,
      alternate,
      turns: !isWood(first.wood),
    };
    return [pieces ? { ...job, pieces } : job];
  });
}
/** A piece runs over the joints' adds with the part: its length is the part's finished length where it spans the stock. */
function pieceSize(
  box: { readonly min: readonly number[]; readonly max: readonly number[] },
  grain: 'x' | 'y' | 'z',
  kind: Kind,
  stock: { readonly min: readonly number[]; readonly max: readonly number[] },
): { length: number; width: number; thickness: number } {
  const k = 'xyz'.indexOf(grain);
  const size = [0, 1, 2].map((i) => (box.max[i] ?? 0) - (box.min[i] ?? 0));
  const across = size.filter((_, i) => i !== k).sort((a, b) => b - a);
  const spare = kind.finished.length - ((stock.max[k] ?? 0) - (stock.min[k] ?? 0));
  return { length: (size[k] ?? 0) + spare, width: across[0] ?? 0, thickness: across[1] ?? 0 };
}
