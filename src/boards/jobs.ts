/** From the parts of a piece to jobs for the layout: equal parts together under one letter. */
import type { Box } from '../geom/box.ts';
import { type Axis, axisIndex, quantise } from '../geom/vec3.ts';
import { woodOf } from '../wood/woods.ts';
import type { BlankJob, Size3 } from './blank.ts';

/** What the layout has to know of a part. Boxes in the part's own frame, mm. */
export type PartToLay = {
  readonly path: string;
  readonly letter: string;
  readonly wood: string;
  readonly kind: 'wood' | 'other' | 'extra' | 'hardware';
  readonly grain: Axis;
  readonly stock: Box;
  /** Over everything, tenons included. */
  readonly finished: Size3;
  readonly pieces: readonly Box[];
  /** Neighbouring pieces are to lie with their rings up and down in turn. */
  readonly alternate?: boolean;
};
/** Sheets without a face grain, which may lie either way. */
const GRAINLESS: ReadonlySet<string> = new Set(['mdf', 'hardboard', 'particleboard', 'chipboard']);

/** Hardware is not made from boards and is left out; all else becomes a job, in the order in which letters first come up. */
export function jobsOf(parts: readonly PartToLay[]): BlankJob[] {
  const groups = new Map<string, PartToLay[]>();
  for (const p of parts) {
    if (p.kind === 'hardware') continue;
    // Equal letters are equal parts; the wood is asked all the same, so that nothing is laid on the wrong boards.
    const key = `${p.letter}|${woodOf(p.wood).id}|${p.finished.length}|${p.finished.width}|${p.finished.thickness}`;
    const mine = groups.get(key);
    if (mine) mine.push(p);
    else groups.set(key, [p]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const { letter, wood, finished, alternate } = first;
    const pieces = piecesOf(first);
    return [
      {
        part: letter,
        copies: group.length,
        paths: group.map((p) => p.path),
        wood,
        finished,
        ...(pieces.length > 1 ? { pieces } : {}),
        ...(alternate === undefined ? {} : { alternate }),
        turns: GRAINLESS.has(woodOf(wood).id),
      },
    ];
  });
}

/** Size of each piece; where a piece reaches across the whole stock, it also gets what joints add beyond it. */
function piecesOf(p: PartToLay): Size3[] {
  const along = axisIndex(p.grain);
  const whole = spans(p.stock);
  const [a, b] = ([0, 1, 2] as const).filter((i) => i !== along) as [0 | 1 | 2, 0 | 1 | 2];
  // A square section lies the way its pieces do.
  const square = Math.abs(whole[a] - whole[b]) < 1e-6;
  const by = square && p.pieces[0] ? spans(p.pieces[0]) : whole;
  const [wide, thick] = by[a] >= by[b] ? [a, b] : [b, a];
  return p.pieces.map((box) => {
    const own = spans(box);
    const size = (i: 0 | 1 | 2, finished: number): number =>
      quantise(own[i] + (box.max[i] >= p.stock.max[i] - 1e-6 ? Math.max(0, finished - whole[i]) : 0));
    return {
      length: quantise(Math.max(own[along], p.finished.length)),
      width: size(wide, p.finished.width),
      thickness: size(thick, p.finished.thickness),
    };
  });
}
const spans = (b: Box): [number, number, number] => [b.max[0] - b.min[0], b.max[1] - b.min[1], b.max[2] - b.min[2]];
