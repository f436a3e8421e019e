/** A shape's profile as the polygons that the kernel is given, checked: what is wrong with it is said in words. */
import { crossingOf, edgesOf, meets } from '../geom/crossing.ts';
import { type Loop, loopPoints, polygonArea } from '../geom/loop.ts';
import type { Vec2 } from '../geom/vec3.ts';
import { CHORDS_PER_CIRCLE } from './kernel.ts';

/** One closed polygon; `corner[i]` is the corner of the loop whose edge the chord from point i to the next belongs to. */
export type Ring = { readonly points: readonly Vec2[]; readonly corner: readonly number[] };
/** The first ring runs counter-clockwise round the wood, the others clockwise round the holes. */
export type Outline = readonly Ring[];

/** The rings of a profile, or what is wrong with it. */
export function outlineOf(profile: readonly Loop[]): Outline | string {
  if (profile.length === 0) return 'has no outline';
  const rings: Ring[] = [];
  for (const [i, loop] of profile.entries()) {
    const name = i === 0 ? 'outline' : `hole ${i}`;
    const ring = ringOf(loop, i === 0 ? 1 : -1);
    if (typeof ring === 'string') return `${name} ${ring}`;
    rings.push(ring);
  }
  return nested(rings) ?? rings;
}

function ringOf(loop: Loop, way: 1 | -1): Ring | string {
  const flaw = loop.flatMap((c) => [...c.at, ...(c.via ?? [])]).find((n) => !Number.isFinite(n));
  if (flaw !== undefined) return `has a coordinate that is no number (${flaw})`;
  const { points, edge } = loopPoints(loop, CHORDS_PER_CIRCLE);
  if (points.length < 3) return `does not close round anything: it has ${points.length} points`;
  const double = points.findIndex((p, i) => same(p, points[(i + 1) % points.length] ?? p));
  if (double >= 0) return `has two corners at one spot, ${spot(points[double])}`;
  const area = polygonArea(points);
  if (Math.abs(area) < 1e-6) return 'encloses no area';
  const crossing = crossingOf(points);
  if (crossing) return `crosses or touches itself near ${spot(crossing)}`;
  return area * way > 0 ? { points, corner: edge } : reversed(points, edge);
}
function reversed(points: readonly Vec2[], edge: readonly number[]): Ring {
  const n = points.length;
  return { points: points.toReversed(), corner: edge.map((_, i) => edge[(2 * n - 2 - i) % n] ?? 0) };
}
const same = (a: Vec2, b: Vec2): boolean => a[0] === b[0] && a[1] === b[1];
const spot = (p: Vec2 | undefined): string => (p ? `(${p[0]}, ${p[1]})` : '?');

/** Holes lie inside the outline and apart from each other; says what does not. */
function nested(rings: readonly Ring[]): string | null {
  for (const [i, ring] of rings.entries()) {
    if (i === 0) continue;
    for (const [j, other] of rings.slice(0, i).entries()) {
      if (edgesOf(ring.points).some((e) => edgesOf(other.points).some((f) => meets(e, f))))
        return `hole ${i} touches ${j === 0 ? 'the outline' : `hole ${j}`}`;
      const within = contains(other.points, ring.points[0] as Vec2);
      if (within !== (j === 0)) return j === 0 ? `hole ${i} lies outside the outline` : `hole ${i} lies inside hole ${j}`;
    }
  }
  return null;
}
function contains(points: readonly Vec2[], [x, y]: Vec2): boolean {
  let inside = false;
  for (const { a, b } of edgesOf(points))
    if (a[1] > y !== b[1] > y && x < a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
  return inside;
}
