/**
 * Closing more than two things at once: legs that lean with rungs between them, three rails each tenoned into the next. Every
 * joint opens along its own direction while all parts move at steady speeds; found by least squares, then proved part by part.
 */
import { type Vec3, length, scale, sub } from '../geom/vec3.ts';
import { type Bits, has, itemsOf } from './bits.ts';
import { vecOf } from './directions.ts';
import type { Graph, Tie } from './graph.ts';
import { runIntoOnWay } from './scene.ts';

/** Bodies that are tried at most: the proof takes every pair. */
const AT_MOST = 24;
/** Weight of keeping to the joints' directions against opening them evenly. */
const KEEP = 1e7;
/** Speeds closer than this are one. */
const SAME = 1e-4;

/** Bodies that keep together, and how fast they go; the heaviest stand still. */
export type Speed = { readonly bodies: readonly number[]; readonly v: Vec3 };

/** Speeds of taking all of `within` apart at once, in sets of equal speed; null when there are none. */
export function allAtOnce(g: Graph, within: Bits): Speed[] | null {
  const bodies = itemsOf(within);
  if (bodies.length < 3 || bodies.length > AT_MOST) return null;
  const ties = g.ties.filter((t) => has(within, t.a) && has(within, t.b)).map((t) => ({ ...t, along: opens(g, t) }));
  if (ties.every((t) => t.along === null)) return null;
  const still = bodies.reduce((a, b) => (g.weights[b]! > g.weights[a]! ? b : a));
  let shut = new Set<number>();
  for (let round = 0; round <= ties.length; round++) {
    const found = speeds(bodies, still, ties, shut);
    if (!found) return null;
    const wrong = found.t.flatMap((t, k) => (ties[k]!.along && !shut.has(k) && t < 1e-3 ? [k] : []));
    if (wrong.length === 0) return proved(g, bodies, found.v);
    shut = new Set([...shut, ...wrong]);
  }
  return null;
}
/** The direction in which body a of the tie leaves body b, by the joint's own words. */
function opens(g: Graph, t: Tie): Vec3 | null {
  for (const f of t.link.frees) {
    const [a, b] = [f.moves.includes(t.a), f.moves.includes(t.b)];
    if (a !== b) return scale(vecOf(g.scene.lines, f.dir), a ? 1 : -1);
  }
  return null;
}
type Joint = Tie & { readonly along: Vec3 | null };
/** Minimises Σ(t - 1)² while v_a - v_b = t·along for every joint (0 for one that stays shut); null when that cannot be. */
function speeds(
  bodies: readonly number[],
  still: number,
  ties: readonly Joint[],
  shut: ReadonlySet<number>,
): { v: Map<number, Vec3>; t: number[] } | null {
  const column = new Map(bodies.filter((b) => b !== still).map((b, k) => [b, 3 * k]));
  const open = ties.map((t, k) => (t.along && !shut.has(k) ? k : -1)).filter((k) => k >= 0);
  const timeAt = new Map(open.map((k, n) => [k, 3 * column.size + n]));
  const n = 3 * column.size + open.length;
  const h = Array.from({ length: n }, () => new Float64Array(n));
  const right = new Float64Array(n);
  for (const c of timeAt.values()) {
    h[c]![c] = 1;
    right[c] = 1;
  }
  for (const [k, tie] of ties.entries())
    for (const i of [0, 1, 2] as const) {
      const row: [number, number][] = [];
      if (tie.a !== still) row.push([column.get(tie.a)! + i, 1]);
      if (tie.b !== still) row.push([column.get(tie.b)! + i, -1]);
      const c = timeAt.get(k);
      if (c !== undefined && tie.along) row.push([c, -tie.along[i]]);
      for (const [p, x] of row) for (const [q, y] of row) h[p]![q] = h[p]![q]! + KEEP * x * y;
    }
  for (let k = 0; k < 3 * column.size; k++) h[k]![k] = h[k]![k]! + 1e-6;
  const x = solved(h, right);
  if (!x) return null;
  const v = new Map(
    bodies.map((b): [number, Vec3] => [b, b === still ? [0, 0, 0] : [x[column.get(b)!]!, x[column.get(b)! + 1]!, x[column.get(b)! + 2]!]]),
  );
  const t = ties.map((_, k) => (timeAt.has(k) ? x[timeAt.get(k)!]! : 0));
  const off = ties.some((tie, k) => length(sub(sub(v.get(tie.a)!, v.get(tie.b)!), scale(tie.along ?? [0, 0, 0], t[k]!))) > SAME);
  return off || [...v.values()].every((w) => length(w) < 1e-2) ? null : { v, t };
}
/** Solves a symmetric positive system by Cholesky's method; null when it is not positive. */
function solved(h: Float64Array[], right: Float64Array): Float64Array | null {
  const n = right.length;
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = h[i]![j]!;
      for (let k = 0; k < j; k++) sum -= h[i]![k]! * h[j]![k]!;
      if (i === j && !(sum > 0)) return null;
      h[i]![j] = i === j ? Math.sqrt(sum) : sum / h[j]![j]!;
    }
  }
  const x = right.slice();
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) x[i] = x[i]! - h[i]![k]! * x[k]!;
    x[i] = x[i]! / h[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) x[i] = x[i]! - h[k]![i]! * x[k]!;
    x[i] = x[i]! / h[i]![i]!;
  }
  return x;
}
/** Every pair along the way that one goes from the other; what keeps together is one set. */
function proved(g: Graph, bodies: readonly number[], v: ReadonlyMap<number, Vec3>): Speed[] | null {
  const sets: { bodies: number[]; v: Vec3 }[] = [];
  for (const b of bodies) {
    const set = sets.find((s) => length(sub(s.v, v.get(b)!)) < SAME);
    if (set) set.bodies.push(b);
    else sets.push({ bodies: [b], v: v.get(b)! });
  }
  for (const [k, one] of sets.entries())
    for (const other of sets.slice(0, k)) {
      const way = sub(one.v, other.v);
      for (const a of one.bodies)
        for (const b of other.bodies)
          for (const p of g.bodies[a]!) for (const q of g.bodies[b]!) if (runIntoOnWay(g.scene, p, q, way)) return null;
    }
  return sets.length > 1 ? sets : null;
}
