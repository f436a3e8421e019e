/**
 * Where a mitre lies. Each part has an outer and an inner face at the corner; the mitre is the plane through the line in which the
 * outer faces meet and the line in which the inner ones do: 45 degrees where both are as wide and square to each other.
 *
 *      outer ┌───────────── first      u runs along the mitre from the inner corner to the outer,
 *            │ ╲u                      n out of the first part's mitre into the second,
 *            │n→╲┌─────────            w across: the width of a case, the thickness of a frame.
 *     second │   │ inner
 */
import { type Frame, inPoint, outDir, outPoint } from '../../geom/frame.ts';
import { cornersOf } from '../../geom/box.ts';
import { type Axis, type Vec2, type Vec3, AXES, add, axisIndex, axisVec, cross, dot, length, scale, sub, unit } from '../../geom/vec3.ts';
import { isSquare, sideIn } from '../blocks.ts';
import { bodyOf, hull, sectionOf, shared } from '../convex.ts';
import type { Meeting, MeetSide, Plane, Polygon } from '../meeting.ts';
import { type Sharer, FLUSH, oneWay, runsAlong, sharedBox } from '../shared-box.ts';

/** One part at the corner. */
export type Arm = {
  readonly role: 'first' | 'second';
  readonly side: MeetSide;
  /** Unit vector from the corner along the part. */
  readonly run: Vec3;
  readonly outer: Plane;
  /** Distance between its outer and its inner face. */
  readonly wide: number;
  /** How far the part reaches square from the mitre for each mm along it from the outer corner. */
  readonly rise: number;
};
export type Corner = {
  readonly first: Arm;
  readonly second: Arm;
  /** Origin on the inner corner, x = u, y = w, z = n; seen from the meeting, maybe left-handed. */
  readonly frame: Frame;
  readonly inner: Vec3;
  readonly outer: Vec3;
  /** The meeting's axis along w where the parts stand square to each other; null where they do not. */
  readonly square: Axis | null;
  /** Length of the mitre from the inner corner to the outer. */
  readonly long: number;
  /** What both touch by, in the frame's xy-plane, and its low and high along w. */
  readonly patch: Polygon;
  readonly span: readonly [number, number];
  /** Whether both parts have a pair of faces square to w: then splines and keys can be let in. */
  readonly flat: boolean;
  /** How far the shorter part fails to reach its long point, mm; below FLUSH it is all there. */
  readonly short: number;
};

export function corner(m: Meeting): Corner | null {
  if (m.touch !== 'share') return null;
  const arms = isSquare(m) ? squareArms(m) : slantedArms(m);
  return arms && lay(arms[0], arms[1], isSquare(m));
}
type Pair = readonly [Omit<Arm, 'rise'>, Omit<Arm, 'rise'>];
/** Square to each other each part goes on from the shared corner along one axis, one way. */
function squareArms(m: Meeting): Pair | null {
  const s = sharedBox(m, 'first', 'second');
  const [a, b] = s ? [armAxis(s.a), armAxis(s.b)] : [null, null];
  if (!a || !b || a.axis === b.axis) return null;
  return [arm(m, 'first', a.run, b.run), arm(m, 'second', b.run, a.run)];
}
function armAxis(p: Sharer): { axis: string; run: Vec3 } | null {
  const [axis, more] = runsAlong(p);
  const way = axis && !more ? oneWay(p, axis) : null;
  return axis && way ? { axis, run: axisVec(axis, way) } : null;
}
/** Aslant the first part comes with its end, the second with the end of its grain that is nearer. */
function slantedArms(m: Meeting): Pair | null {
  const second = sideIn(m, 'second');
  const middle = outPoint(second.frame, scale(add(second.stock.min, second.stock.max), 0.5));
  const away = dot(middle, second.grain);
  if (Math.abs(away) < 1e-6) return null;
  const [a, b]: Vec3[] = [[0, 0, -1], scale(second.grain, Math.sign(away))];
  if (!a || !b || Math.abs(dot(a, b)) > 0.98) return null;
  return [arm(m, 'first', a, b), arm(m, 'second', b, a)];
}
/** The outer face is the one that looks away from where the other part goes. */
function arm(m: Meeting, role: Arm['role'], run: Vec3, other: Vec3): Omit<Arm, 'rise'> {
  const side = sideIn(m, role);
  const axes = [side.frame.x, side.frame.y, side.frame.z];
  const rest = AXES.filter((k) => Math.abs(dot(axes[axisIndex(k)] ?? run, run)) < 0.5);
  const across =
    rest.toSorted((p, q) => Math.abs(dot(axes[axisIndex(q)] ?? run, other)) - Math.abs(dot(axes[axisIndex(p)] ?? run, other)))[0] ?? 'x';
  const i = axisIndex(across);
  const dir = axes[i] ?? run;
  const high = dot(dir, other) < 0;
  const normal = scale(dir, high ? 1 : -1);
  const off = (high ? side.stock.max[i] : -side.stock.min[i]) + dot(normal, side.frame.o);
  return { role, side, run, outer: { normal, off }, wide: side.stock.max[i] - side.stock.min[i] };
}

function lay(a: Pair[0], b: Pair[1], square: boolean): Corner | null {
  const [oa, ob] = [a.outer.normal, b.outer.normal];
  const gradient = sub(scale(oa, 1 / a.wide), scale(ob, 1 / b.wide));
  if (length(gradient) < 1e-9 || length(cross(oa, ob)) < 0.1) return null;
  const n = unit(scale(gradient, -1));
  const outer = crossing(a.outer, b.outer);
  const inner = crossing({ normal: oa, off: a.outer.off - a.wide }, { normal: ob, off: b.outer.off - b.wide });
  const u = unit(sub(outer, inner));
  const frame: Frame = { o: inner, x: u, y: alongAxis(a.side, cross(u, n)), z: n };
  const section = (p: Omit<Arm, 'rise'>): Vec2[] =>
    hull(
      sectionOf(bodyOf(p.side.stock, p.side.shapes, p.side.frame), { normal: n, off: dot(n, inner) }).map((q): Vec2 => {
        const r = inPoint(frame, q);
        return [r[0], r[1]];
      }),
    );
  const patch = shared(section(a), section(b));
  if (patch.length < 3) return null;
  const ws = patch.map((q) => q[1]);
  const full = (p: Omit<Arm, 'rise'>, sign: 1 | -1): Arm => ({ ...p, rise: dot(u, p.outer.normal) / (sign * dot(n, p.outer.normal)) });
  return {
    first: full(a, -1),
    second: full(b, 1),
    frame,
    inner,
    outer,
    square: square ? (AXES.find((k) => Math.abs(frame.y[axisIndex(k)]) > 0.99) ?? null) : null,
    long: length(sub(outer, inner)),
    patch,
    span: [Math.min(...ws), Math.max(...ws)],
    flat: [a.side, b.side].every((s) => [s.frame.x, s.frame.y, s.frame.z].some((v) => Math.abs(dot(v, frame.y)) > 1 - 1e-9)),
    short: Math.max(shortOf(a, frame, 1), shortOf(b, frame, -1)),
  };
}
/** The point nearest to the origin on the line in which two planes meet. */
function crossing(p: Plane, q: Plane): Vec3 {
  const g = dot(p.normal, q.normal);
  const d = 1 - g * g;
  return add(scale(p.normal, (p.off - g * q.off) / d), scale(q.normal, (q.off - g * p.off) / d));
}
/** Along the first part's own positive axis, so that a mirrored corner counts its keys from the same face. */
function alongAxis(side: MeetSide, w: Vec3): Vec3 {
  const d = [side.frame.x, side.frame.y, side.frame.z]
    .map((v) => dot(v, w))
    .reduce((p, q) => (Math.abs(q) > Math.abs(p) + 1e-9 ? q : p), 0);
  return d < 0 ? scale(w, -1) : w;
}
/** How far the corners of the part's end lie behind the mitre, measured along the part. */
function shortOf(p: Omit<Arm, 'rise'>, frame: Frame, sign: 1 | -1): number {
  const ends = cornersOf(p.side.stock)
    .map((c) => outPoint(p.side.frame, c))
    .toSorted((q, r) => dot(q, p.run) - dot(r, p.run))
    .slice(0, 4);
  const behind = Math.max(...ends.map((q) => -sign * dot(sub(q, frame.o), frame.z)));
  return behind / Math.abs(dot(p.run, frame.z));
}
export const reaches = (c: Corner): boolean => c.short <= FLUSH;
/** A point given on the mitre: along it, across it, out of the first part. */
export const onMitre = (c: Corner, u: number, w: number, n: number): Vec3 => outPoint(c.frame, [u, w, n]);
export const dirOf = (c: Corner, v: Vec3): Vec3 => outDir(c.frame, v);
/** Whether a spline runs along the mitre in the middle of a frame's thickness, or across it along the width of a case. */
export const alongMitre = (c: Corner): boolean => c.long >= c.span[1] - c.span[0];
/** Middle of a case's spline, from the inner corner: a third of the way, where the wood behind it is thickest. */
export const splineAt = (c: Corner): number => c.long / 3;
/** How deep a spline may go before less than 2 mm is left to the outer faces; a frame's may come out at the outer corner. */
export function deepest(c: Corner, thick: number): number {
  const rise = Math.min(c.first.rise, c.second.rise);
  return alongMitre(c) ? c.long * rise : (c.long - splineAt(c) - thick / 2) * rise - 2;
}
/** Middles of the keys across the corner, evenly. */
export const keySpots = (c: Corner, count: number): number[] =>
  Array.from({ length: count }, (_, i) => c.span[0] + ((c.span[1] - c.span[0]) * (i + 0.5)) / count);
