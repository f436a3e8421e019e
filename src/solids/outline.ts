/** A shape's profile as the polygons that the kernel is given, checked: what is wrong with it is said in words. */
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
  const crossing = isConvex(points) ? null : selfCrossing(points);
  if (crossing) return `crosses or touches itself near ${spot(crossing)}`;
  return area * way > 0 ? { points, corner: edge } : reversed(points, edge);
}
function reversed(points: readonly Vec2[], edge: readonly number[]): Ring {
  const n = points.length;
  return { points: points.toReversed(), corner: edge.map((_, i) => edge[(2 * n - 2 - i) % n] ?? 0) };
}
const same = (a: Vec2, b: Vec2): boolean => a[0] === b[0] && a[1] === b[1];
const spot = (p: Vec2 | undefined): string => (p ? `(${p[0]}, ${p[1]})` : '?');
const turn = (a: Vec2, b: Vec2, c: Vec2): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** All turns one way, and once round in all: then it cannot cross itself. */
function isConvex(points: readonly Vec2[]): boolean {
  const n = points.length;
  const at = (i: number): Vec2 => points[i % n] as Vec2;
  let sign = 0;
  let flips = 0;
  for (let i = 0; i < n; i++) {
    const t = turn(at(i), at(i + 1), at(i + 2));
    if (t === 0 || (sign !== 0 && t > 0 !== sign > 0)) return false;
    sign = t;
    if (at(i + 1)[0] - at(i)[0] > 0 !== at(i + 2)[0] - at(i + 1)[0] > 0) flips++;
  }
  return flips <= 2;
}
type Edge = { readonly a: Vec2; readonly b: Vec2; readonly i: number; readonly low: number; readonly high: number };
const edgesOf = (points: readonly Vec2[]): Edge[] =>
  points.map((a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    return { a, b, i, low: Math.min(a[0], b[0]), high: Math.max(a[0], b[0]) };
  });

/** A spot where two edges that are not neighbours meet, or neighbours fold back; null when there is none. */
function selfCrossing(points: readonly Vec2[]): Vec2 | null {
  const n = points.length;
  const edges = edgesOf(points).toSorted((p, q) => p.low - q.low);
  for (const [k, e] of edges.entries())
    for (let m = k + 1; m < n; m++) {
      const f = edges[m];
      if (!f || f.low > e.high) break;
      if (neighbours(e.i, f.i, n) ? foldsBack(e, f) : meets(e, f)) return f.a;
    }
  return null;
}
const neighbours = (i: number, j: number, n: number): boolean => (i + 1) % n === j || (j + 1) % n === i;
function foldsBack(e: Edge, f: Edge): boolean {
  const [first, second] = same(e.b, f.a) ? [e, f] : [f, e];
  const ahead = (first.b[0] - first.a[0]) * (second.b[0] - second.a[0]) + (first.b[1] - first.a[1]) * (second.b[1] - second.a[1]);
  return turn(first.a, first.b, second.b) === 0 && ahead < 0;
}
function meets(e: Edge, f: Edge): boolean {
  const [ea, eb] = [turn(f.a, f.b, e.a), turn(f.a, f.b, e.b)];
  const [fa, fb] = [turn(e.a, e.b, f.a), turn(e.a, e.b, f.b)];
  if (ea * eb > 0 || fa * fb > 0) return false;
  if (ea === 0 && eb === 0) return Math.max(e.low, f.low) <= Math.min(e.high, f.high) && spansMeet(e, f);
  return true;
}
const spansMeet = (e: Edge, f: Edge): boolean =>
  Math.max(Math.min(e.a[1], e.b[1]), Math.min(f.a[1], f.b[1])) <= Math.min(Math.max(e.a[1], e.b[1]), Math.max(f.a[1], f.b[1]));

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
