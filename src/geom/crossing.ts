/** Whether a closed outline crosses or touches itself. */
import type { Vec2 } from './vec3.ts';

const same = (a: Vec2, b: Vec2): boolean => a[0] === b[0] && a[1] === b[1];
const turn = (a: Vec2, b: Vec2, c: Vec2): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** A spot where a closed polygon crosses, touches or folds back on itself; null where it does not. */
export const crossingOf = (points: readonly Vec2[]): Vec2 | null => (isConvex(points) ? null : selfCrossing(points));

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
export type Edge = { readonly a: Vec2; readonly b: Vec2; readonly i: number; readonly low: number; readonly high: number };
export const edgesOf = (points: readonly Vec2[]): Edge[] =>
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
/** Do two edges share a point? */
export function meets(e: Edge, f: Edge): boolean {
  const [ea, eb] = [turn(f.a, f.b, e.a), turn(f.a, f.b, e.b)];
  const [fa, fb] = [turn(e.a, e.b, f.a), turn(e.a, e.b, f.b)];
  if (ea * eb > 0 || fa * fb > 0) return false;
  if (ea === 0 && eb === 0) return Math.max(e.low, f.low) <= Math.min(e.high, f.high) && spansMeet(e, f);
  return true;
}
const spansMeet = (e: Edge, f: Edge): boolean =>
  Math.max(Math.min(e.a[1], e.b[1]), Math.min(f.a[1], f.b[1])) <= Math.min(Math.max(e.a[1], e.b[1]), Math.max(f.a[1], f.b[1]));
