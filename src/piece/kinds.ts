/** Which parts are the same: one letter a kind, the same on sheet, boards, lists and papers. */
import type { Build, Part } from '../build/part.ts';
import { blankBox } from '../build/blank.ts';
import { finishedSize } from '../build/build.ts';
import { sizeOf } from '../geom/box.ts';
import { handed } from '../geom/frame.ts';
import { quantise } from '../geom/vec3.ts';
import { byCodePoint } from '../model/ids.ts';
import { isOwnMirror, samePart } from '../model/part-record.ts';

export type Finished = { readonly length: number; readonly width: number; readonly thickness: number };
export type Kind = {
  readonly letter: string;
  readonly parts: readonly Part[];
  readonly finished: Finished;
  readonly handedOf: string | null;
};

/** A, B … Z, AA, AB … */
function letterOf(i: number): string {
  return i < 26 ? String.fromCharCode(65 + i) : letterOf(Math.floor(i / 26) - 1) + String.fromCharCode(65 + (i % 26));
}

/**
 * Parts grouped by what is cut: equal under a turn of the box, and glued up from equal pieces, is one kind; mirror images are a kind of their own, told as the handed
 * pair of the first. As built, so a part that was measured differs from its drawn twins.
 */
export function kindsOf(build: Build): Kind[] {
  const groups: { parts: Part[]; hand: 1 | -1; own: boolean; pair: number | null }[] = [];
  for (const p of [...build.parts.values()].sort((a, b) => byCodePoint(a.path, b.path))) {
    const hand = handed(p.frame);
    let home: (typeof groups)[number] | undefined;
    let pair: number | null = null;
    for (const [i, g] of groups.entries()) {
      const first = g.parts[0];
      if (!first || (first.id !== p.id && first.record.key !== p.record.key && !sameWoodAndSize(first, p))) continue;
      const same = samePart(first.record, p.record);
      if (same === null || !samePieces(first, p)) continue;
      // A mirrored placing turns 'same' into 'handed', unless the part is its own mirror image.
      const really = g.own || (same === 'same') === (g.hand === hand);
      if (really) {
        home = g;
        break;
      }
      pair ??= i;
    }
    if (home) home.parts.push(p);
    else groups.push({ parts: [p], hand, own: isOwnMirror(p.record), pair });
  }
  return groups.map((g, i) => ({
    letter: letterOf(i),
    parts: g.parts,
    finished: finishedSize((g.parts[0] as Part).record, blankBox((g.parts[0] as Part).record)),
    handedOf: g.pair === null ? null : letterOf(g.pair),
  }));
}
/** The sizes of the pieces, whichever way the part is turned. */
function samePieces(a: Part, b: Part): boolean {
  if (a.pieces.length !== b.pieces.length) return false;
  if (a.pieces.length === 1 || a.pieces === b.pieces) return true;
  const text = (p: Part): string =>
    p.pieces
      .map((box) =>
        sizeOf(box)
          .map(quantise)
          .sort((x, y) => x - y)
          .join(),
      )
      .sort()
      .join(' ');
  return text(a) === text(b);
}
const sameWoodAndSize = (a: Part, b: Part): boolean => a.wood === b.wood && a.record.features.length === b.record.features.length;
