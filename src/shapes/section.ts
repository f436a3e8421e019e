/** Cutting a part to a section or outline: everything outside a loop goes, along one axis. */
import { type Box, middleOf, sizeOf } from '../geom/box.ts';
import { type Frame, HOME } from '../geom/frame.ts';
import { type Loop, rectangle } from '../geom/loop.ts';
import { type Axis, type Vec3, axisIndex, axisVec } from '../geom/vec3.ts';
import type { Feature } from '../model/record.ts';

/** How far cutters reach past the stock, mm: enough that no skin is left, little enough to stay exact. */
const OVER = 5;

/**
 * A frame on the middle of the stock's section across `along`, z along it; and the section's half sizes. The frame's x and y are the two other axes in
 * cyclic order, so that it is right-handed.
 */
export function sectionFrame(stock: Box, along: Axis): { at: Frame; half: readonly [number, number]; from: number; to: number } {
  const k = axisIndex(along);
  const [i, j] = [(k + 1) % 3, (k + 2) % 3] as [0 | 1 | 2, 0 | 1 | 2];
  const mid = middleOf(stock);
  const size = sizeOf(stock);
  const o: [number, number, number] = [mid[0], mid[1], mid[2]];
  o[k] = 0;
  const axes: readonly Axis[] = ['x', 'y', 'z'];
  return {
    at: { o, x: axisVec(axes[i] ?? 'x'), y: axisVec(axes[j] ?? 'y'), z: axisVec(along) },
    half: [size[i] / 2, size[j] / 2],
    from: stock.min[k],
    to: stock.max[k],
  };
}

/** Takes away all that lies outside `keep` (a loop round the middle of the section), over the whole stock. */
export function outside(name: string, stock: Box, along: Axis, keep: Loop): Feature {
  const s = sectionFrame(stock, along);
  const reach = Math.max(
    ...keep.flatMap((c) => [Math.abs(c.at[0]), Math.abs(c.at[1]), Math.abs(c.via?.[0] ?? 0), Math.abs(c.via?.[1] ?? 0)]),
  );
  const x = Math.max(s.half[0], reach) + OVER;
  const y = Math.max(s.half[1], reach) + OVER;
  return {
    name,
    op: 'shape',
    solid: { kind: 'prism', profile: [rectangle(-x, -y, x, y), keep], from: s.from - OVER, to: s.to + OVER },
    at: s.at,
    faces: { round: { of: 'side', loop: 1, corner: 0 } },
    why: 'shape',
  };
}

/**
 * Takes away all that lies beyond a slanting plane through `at`; its normal points out of the wood that stays. The frame stands at that spot:
 * a normal rounded to 1e-6 would move the plane by a hair for every metre that it is away.
 */
export const beyond = (name: string, normal: Vec3, at: Vec3, face: string): Feature => ({
  name,
  op: 'shape',
  why: 'shape',
  at: { ...HOME, o: at },
  solid: { kind: 'half', normal, off: 0 },
  faces: { [face]: { of: 'plane' } },
});
