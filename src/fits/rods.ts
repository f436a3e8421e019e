/** How far two solids stand apart where one is a round rod: by the directions in which they could be parted. */
import { type Vec3, add, cross, dot, length, scale, sub, unit } from '../geom/vec3.ts';

/** A round rod: the middle of one end, its unit direction, length and radius, mm. */
export type Rod = { readonly at: Vec3; readonly along: Vec3; readonly long: number; readonly r: number };
/** The corners of a convex solid and the normals of its sides. */
export type Block = { readonly points: readonly Vec3[]; readonly normals: readonly Vec3[] };
type Span = readonly [number, number];

export function rodSpan(rod: Rod, n: Vec3): Span {
  const from = dot(n, rod.at);
  const to = from + rod.long * dot(n, rod.along);
  const wide = rod.r * Math.sqrt(Math.max(0, 1 - dot(n, rod.along) ** 2));
  return [Math.min(from, to) - wide, Math.max(from, to) + wide];
}
export function blockSpan(b: Block, n: Vec3): Span {
  const all = b.points.map((p) => dot(n, p));
  return [Math.min(...all), Math.max(...all)];
}
const overlapOf = (a: Span, b: Span): number => Math.min(a[1], b[1]) - Math.max(a[0], b[0]);
const middleOf = (rod: Rod): Vec3 => add(rod.at, scale(rod.along, rod.long / 2));
/** How deep the two stand in each other at the least, over these directions: 0 or less where one of them parts the two. */
function deep(dirs: readonly Vec3[], a: (n: Vec3) => Span, b: (n: Vec3) => Span): number {
  return Math.min(...dirs.filter((n) => length(n) > 1e-6).map((n) => overlapOf(a(unit(n)), b(unit(n)))));
}
/** Exact for rods that cross, a little too much only where the rim of an end comes near the other. */
export function rodsBite(a: Rod, b: Rod): number {
  const between = sub(middleOf(b), middleOf(a));
  const off = sub(between, scale(a.along, dot(between, a.along)));
  return deep(
    [a.along, b.along, cross(a.along, b.along), off],
    (n) => rodSpan(a, n),
    (n) => rodSpan(b, n),
  );
}
export function rodInBlock(rod: Rod, b: Block): number {
  return deep(
    [rod.along, ...b.normals, ...b.normals.map((n) => cross(n, rod.along))],
    (n) => rodSpan(rod, n),
    (n) => blockSpan(b, n),
  );
}
