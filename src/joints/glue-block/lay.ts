/** Where a block lies in its corner: on the first part with the meeting's z, against the second with x or y. */
import { sizeOf } from '../../geom/box.ts';
import { type Axis, axisIndex, axisVec } from '../../geom/vec3.ts';
import { alongGrain, isSquare, sharedSpan, sideIn } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';

export type Ground = {
  readonly block: MeetSide;
  readonly on: MeetSide;
  readonly beside: MeetSide;
  /** The axis across which the second part stands, and on which side of the block. */
  readonly across: 'x' | 'y';
  readonly sign: 1 | -1;
  /** The axis along the corner, and how long the block is along it. */
  readonly along: 'x' | 'y';
  readonly long: number;
  /** The block's two legs: across the corner, and off the first part. */
  readonly legs: readonly [number, number];
  /** How far the two parts stand off the block, mm. */
  readonly gap: number;
  readonly besideGap: number;
};
/** As built, a block may stand this far off and still be meant to touch, mm. */
const NEAR = 3;
export function ground(m: Meeting): Ground | null {
  const [block, on, beside] = [sideIn(m, 'block'), sideIn(m, 'on'), sideIn(m, 'beside')];
  if (!isSquare(m)) return null;
  let best: { across: 'x' | 'y'; sign: 1 | -1; gap: number } | null = null;
  for (const across of ['x', 'y'] as const)
    for (const sign of [1, -1] as const) {
      const i = axisIndex(across);
      const gap = sign > 0 ? beside.box.min[i] - block.box.max[i] : block.box.min[i] - beside.box.max[i];
      if (Math.abs(gap) <= NEAR && faces(block, beside, across) && (!best || Math.abs(gap) < Math.abs(best.gap) - 1e-9))
        best = { across, sign, gap };
    }
  if (!best) return null;
  const size = sizeOf(block.box);
  const along = best.across === 'x' ? 'y' : 'x';
  return {
    block,
    on,
    beside,
    across: best.across,
    sign: best.sign,
    along,
    long: size[axisIndex(along)],
    legs: [size[axisIndex(best.across)], size[2]],
    gap: m.gap,
    besideGap: best.gap,
  };
}
/** Do the two overlap over the plane across this axis? */
const faces = (a: MeetSide, b: MeetSide, across: Axis): boolean =>
  (['x', 'y', 'z'] as const).filter((k) => k !== across).every((k) => sharedSpan(a.box, b.box, k)[1] - sharedSpan(a.box, b.box, k)[0] > 1);
/** The grain lies along the corner, so that both faces are long grain. */
export const grainAlong = (g: Ground): boolean => alongGrain(g.block, axisVec(g.along));
