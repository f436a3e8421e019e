import { type Frame, outPoint } from './frame.ts';
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
  const [a, c, d] = [(b.max[0] - b.min[0]) / 2, (b.max[1] - b.min[1]) / 2, (b.max[2] - b.min[2]) / 2];
  const mid = outPoint(f, middleOf(b));
  const r0 = Math.abs(f.x[0] * a) + Math.abs(f.y[0] * c) + Math.abs(f.z[0] * d);
  const r1 = Math.abs(f.x[1] * a) + Math.abs(f.y[1] * c) + Math.abs(f.z[1] * d);
  const r2 = Math.abs(f.x[2] * a) + Math.abs(f.y[2] * c) + Math.abs(f.z[2] * d);
  return { min: [mid[0] - r0, mid[1] - r1, mid[2] - r2], max: [mid[0] + r0, mid[1] + r1, mid[2] + r2] };
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
  a.min[0] <= b.max[0] + by &&
  b.min[0] <= a.max[0] + by &&
  a.min[1] <= b.max[1] + by &&
  b.min[1] <= a.max[1] + by &&
  a.min[2] <= b.max[2] + by &&
  b.min[2] <= a.max[2] + by;
