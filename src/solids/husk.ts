/**
 * The true surface of what two solids share. Where their faces lie on each other the kernel leaves sheets of no thickness in
 * the result, as large as the contact: they add nothing to the volume, but would double the surface and stretch the box.
 */
import { type Box, boxAround } from '../geom/box.ts';
import { polygonArea } from '../geom/loop.ts';
import { type Vec2, type Vec3, add, cross, dot, length, scale, sub, unit } from '../geom/vec3.ts';
import type { Facets } from './facets.ts';
import { planeDifference, triangulate } from './kernel.ts';
import { cornersAt } from './measure.ts';
import type { Reading } from './read.ts';

export type Husk = {
  readonly area: number;
  /** Null when there is nothing but sheets. */
  readonly box: Box | null;
  readonly facets: Facets;
};
type Corners = readonly [Vec3, Vec3, Vec3];
/** Triangles in one plane, those that face along its normal apart from those that face against it. */
type Plane = { readonly normal: Vec3; readonly at: Vec3; readonly along: Corners[]; readonly against: Corners[] };

/** Sheets and slivers thinner than this are not wood; mm. */
const SLIVER = 1e-5;

/** Cancels, plane by plane, what is covered from both sides. */
export function huskOf(reading: Reading): Husk {
  const triangles = planesOf(reading).flatMap((p) =>
    p.along.length > 0 && p.against.length > 0 ? bothSides(p) : [...p.along, ...p.against],
  );
  const area = triangles.reduce((sum, [a, b, c]) => sum + length(cross(sub(b, a), sub(c, a))) / 2, 0);
  return { area, box: boxAround(triangles.flat()), facets: Float64Array.from(triangles.flat(2)) };
}

function planesOf(reading: Reading): Plane[] {
  const planes: Plane[] = [];
  const sized = Array.from({ length: reading.triangles.length / 3 }, (_, t) => {
    const corners = cornersAt(reading, t);
    const normal = cross(sub(corners[1], corners[0]), sub(corners[2], corners[0]));
    const longest = Math.max(...corners.map((c, i) => length(sub(c, corners[(i + 1) % 3] as Vec3))));
    return { corners, normal, size: length(normal), longest };
  });
  // Large triangles first: their normals are the surest.
  for (const { corners, normal, size, longest } of sized.toSorted((p, q) => q.size - p.size)) {
    if (!(size > SLIVER * longest)) continue;
    const n = scale(normal, 1 / size);
    const plane = planes.find(
      (p) => Math.abs(dot(p.normal, n)) > 1 - 1e-8 && corners.every((c) => Math.abs(dot(p.normal, sub(c, p.at))) < SLIVER),
    );
    if (!plane) planes.push({ normal: n, at: corners[0], along: [corners], against: [] });
    else (dot(plane.normal, n) > 0 ? plane.along : plane.against).push(corners);
  }
  return planes;
}
function bothSides({ normal, at, along, against }: Plane): Corners[] {
  const k = normal.map(Math.abs).indexOf(Math.min(...normal.map(Math.abs)));
  const x = unit(cross(normal, [k === 0 ? 1 : 0, k === 1 ? 1 : 0, k === 2 ? 1 : 0]));
  const y = cross(normal, x);
  const flat = (all: readonly Corners[]): Vec2[][] =>
    all.map((corners) => {
      const p = corners.map((c): Vec2 => [dot(x, sub(c, at)), dot(y, sub(c, at))]);
      return polygonArea(p) < 0 ? p.toReversed() : p;
    });
  const out = ([u, v]: Vec2): Vec3 => add(at, add(scale(x, u), scale(y, v)));
  const [front, back] = [flat(along), flat(against)];
  const cut = (from: Vec2[][], take: Vec2[][]): Vec2[][] => triangulate(planeDifference(from, take, SLIVER));
  const up = cut(front, back).map((t) => t.map(out) as unknown as Corners);
  const down = cut(back, front).map((t) => t.map(out).toReversed() as unknown as Corners);
  return [...up, ...down];
}
