import { type Frame, outDir, outPoint } from './frame.ts';
import type { Vec3 } from './vec3.ts';

/** An axis-parallel box in some frame, mm. */
export type Box = { readonly min: Vec3; readonly max: Vec3 };

export const sizeOf = (b: Box): Vec3 => [b.max[0] - b.min[0], b.max[1] - b.min[1], b.max[2] - b.min[2]];
export const middleOf = (b: Box): Vec3 => [(b.max[0] + b.min[0]) / 2, (b.max[1] + b.min[1]) / 2, (b.max[2] + b.min[2]) / 2];
export const volumeOf = (b: Box): number => sizeOf(b).reduce((v, s) => v * s, 1);
/** The eight corners, x fastest. */
export function cornersOf(b: Box): Vec3[] {
  const out: Vec3[] = [];
  for (const z of [b.min[2], b.max[2]]) for (const y of [b.min[1], b.max[1]]) for (const x of [b.min[0], b.max[0]]) out.push([x, y, z]);
  return out;
}
/** The smallest box round points; null when there are none. */
export function boxAround(points: Iterable<Vec3>): Box | null {
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (const p of points)
    for (const i of [0, 1, 2] as const) {
      min[i] = Math.min(min[i], p[i]);
      max[i] = Math.max(max[i], p[i]);
    }
  return min[0] <= max[0] ? { min, max } : null;
}
/** The box, seen from outside its frame, as the smallest box there (exact for quarter turns). */
export function outBox(f: Frame, b: Box): Box {
  const half: Vec3 = [(b.max[0] - b.min[0]) / 2, (b.max[1] - b.min[1]) / 2, (b.max[2] - b.min[2]) / 2];
  const mid = outPoint(f, middleOf(b));
  const x = outDir(f, [half[0], 0, 0]);
  const y = outDir(f, [0, half[1], 0]);
  const z = outDir(f, [0, 0, half[2]]);
  const r = (i: 0 | 1 | 2): number => Math.abs(x[i]) + Math.abs(y[i]) + Math.abs(z[i]);
  return { min: [mid[0] - r(0), mid[1] - r(1), mid[2] - r(2)], max: [mid[0] + r(0), mid[1] + r(1), mid[2] + r(2)] };
}
export const unionBox = (a: Box, b: Box): Box => ({
  min: [Math.min(a.min[0], b.min[0]), Math.min(a.min[1], b.min[1]), Math.min(a.min[2], b.min[2])],
  max: [Math.max(a.max[0], b.max[0]), Math.max(a.max[1], b.max[1]), Math.max(a.max[2], b.max[2])],
});
export const growBox = (b: Box, by: number): Box => ({
  min: [b.min[0] - by, b.min[1] - by, b.min[2] - by],
  max: [b.max[0] + by, b.max[1] + by, b.max[2] + by],
});
/** Do the boxes come closer than `by` to each other (0: share a point at least)? */
export const boxesNear = (a: Box, b: Box, by = 0): boolean =>
  [0, 1, 2].every((i) => (a.min[i] ?? 0) <= (b.max[i] ?? 0) + by && (b.min[i] ?? 0) <= (a.max[i] ?? 0) + by);
