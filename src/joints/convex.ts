/**
 * Stock as a convex body of flat facets, good enough to tell how two parts meet: the box less those shapes that leave it
 * convex (trims, chamfers to an octagon, a round outline as chords). Other shapes are left out, so a body is never too small.
 */
import { type Box, cornersOf } from '../geom/box.ts';
import { type Frame, HOME, inPoint, outDir, outPoint } from '../geom/frame.ts';
import { type Loop, arcThrough, loopPoints, polygonArea } from '../geom/loop.ts';
import { type Vec2, type Vec3, add, cross, dot, scale, sub, unit } from '../geom/vec3.ts';
import type { Feature } from '../model/record.ts';
import type { Plane, Polygon } from './meeting.ts';
import type { Axis3 } from './surface.ts';

/** One flat side of a body: its plane (normal out of the wood), its corners, and the face or shape that it comes from. */
export type Facet = {
  readonly plane: Plane;
  readonly points: readonly Vec3[];
  readonly of: string;
  readonly trim: boolean;
  readonly round?: Round;
};
/** The cylinder that a facet is a chord of. */
export type Round = { readonly axis: Axis3; readonly r: number };
type Cut = { readonly plane: Plane; readonly round?: Round };
export type Body = readonly Facet[];

/** Chords of a round shape here; the distance to the true round is r(1 - cos(180°/64)), 0.02 mm on a 40 mm leg. */
const CHORDS = 64;
const NEAR = 1e-7;

const SIDES: readonly (readonly [string, Vec3, readonly number[]])[] = [
  ['left', [-1, 0, 0], [0, 4, 6, 2]],
  ['right', [1, 0, 0], [1, 3, 7, 5]],
  ['front', [0, -1, 0], [0, 1, 5, 4]],
  ['back', [0, 1, 0], [2, 6, 7, 3]],
  ['bottom', [0, 0, -1], [0, 2, 3, 1]],
  ['top', [0, 0, 1], [4, 5, 7, 6]],
];

/** The plain stock; facets carry compass names. */
function boxBody(stock: Box): Body {
  const corners = cornersOf(stock);
  return SIDES.map(([of, normal, at]) => {
    const points = at.map((i) => corners[i] ?? stock.min);
    return { of, trim: false, plane: { normal, off: dot(normal, points[0] ?? stock.min) }, points };
  });
}
/** Bodies by the list of shapes that they were cut with: a part's list is the same object in all of its meetings. */
const known = new WeakMap<readonly Feature[], { readonly stock: Box; readonly frame: Frame; readonly body: Body }>();
/**
 * What is left of the stock after those of its shapes that leave it convex. `stock` lies in `frame` (default: the frame of the shapes), the
 * shapes and the answer are seen from outside it.
 */
export function bodyOf(stock: Box, shapes: readonly Feature[], frame: Frame = HOME): Body {
  const seen = known.get(shapes);
  if (seen && seen.stock === stock && seen.frame === frame) return seen.body;
  const corners = cornersOf(stock).map((p) => outPoint(frame, p));
  let body = movedBody(frame, boxBody(stock));
  for (const f of shapes) {
    const cuts = keepPlanes(f, corners);
    body =
      (cuts.length > 8 ? prismOut(body, cuts, f) : null) ??
      cuts.reduce((left, c) => cutBody(left, c.plane, f.name, f.why === 'trim', c.round), body);
  }
  known.set(shapes, { stock, frame, body });
  return body;
}
/**
 * The body left inside a prism of many sides, made at once instead of cut side by side: where the body is still a box that stands with
 * the prism's axis, and the prism runs past both its ends. Null where that does not hold.
 */
function prismOut(body: Body, cuts: readonly Cut[], f: Feature): Body | null {
  const z = f.at.z;
  const ends = body.filter((x) => Math.abs(Math.abs(dot(x.plane.normal, z)) - 1) < 1e-9);
  const [e0, e1] = ends;
  if (body.length !== 6 || !e0 || !e1 || ends.length !== 2) return null;
  const flat = (p: Vec3): Vec2 => [dot(f.at.x, p), dot(f.at.y, p)];
  const section = hull(e0.points.map(flat));
  const keep = cuts.reduce<readonly Vec2[]>(
    (poly, c) => below(poly, [dot(f.at.x, c.plane.normal), dot(f.at.y, c.plane.normal)], c.plane.off),
    section,
  );
  if (keep.length < 3) return [];
  const lift = (p: Vec2, end: Facet): Vec3 =>
    add(add(scale(f.at.x, p[0]), scale(f.at.y, p[1])), scale(z, end.plane.off * Math.sign(dot(end.plane.normal, z))));
  const sides = keep.map((p, i): Facet => {
    const q = keep[(i + 1) % keep.length] ?? p;
    const l = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const n: Vec2 = [(q[1] - p[1]) / l, -(q[0] - p[0]) / l];
    const normal = add(scale(f.at.x, n[0]), scale(f.at.y, n[1]));
    const off = n[0] * p[0] + n[1] * p[1];
    const old = body.find((x) => Math.abs(x.plane.off - off) < 1e-6 && dot(x.plane.normal, normal) > 1 - 1e-9);
    const cut = cuts.find((c) => Math.abs(c.plane.off - off) < 1e-6 && dot(c.plane.normal, normal) > 1 - 1e-7);
    const points = [lift(p, e0), lift(q, e0), lift(q, e1), lift(p, e1)];
    return {
      plane: { normal, off },
      points,
      of: old?.of ?? f.name,
      trim: old ? old.trim : f.why === 'trim',
      ...(!old && cut?.round ? { round: cut.round } : {}),
    };
  });
  return [...ends.map((e) => ({ ...e, points: keep.map((p) => lift(p, e)) })), ...sides];
}
/** The part of a convex polygon with n·p <= off. */
function below(polygon: readonly Vec2[], n: Vec2, off: number): Vec2[] {
  const out: Vec2[] = [];
  polygon.forEach((p, i) => {
    const q = polygon[(i + 1) % polygon.length] ?? p;
    const [a, b] = [n[0] * p[0] + n[1] * p[1] - off, n[0] * q[0] + n[1] * q[1] - off];
    if (a <= NEAR) out.push(p);
    if ((a > NEAR && b < -NEAR) || (a < -NEAR && b > NEAR))
      out.push([p[0] + ((q[0] - p[0]) * a) / (a - b), p[1] + ((q[1] - p[1]) * a) / (a - b)]);
  });
  return out;
}
/** The body seen from outside `frame`. */
export const movedBody = (frame: Frame, body: Body): Body =>
  body.map((f) => {
    const points = f.points.map((p) => outPoint(frame, p));
    const normal = outDir(frame, f.plane.normal);
    const round = f.round && { r: f.round.r, axis: { at: outPoint(frame, f.round.axis.at), along: outDir(frame, f.round.axis.along) } };
    return { ...f, points, plane: { normal, off: f.plane.off + dot(normal, frame.o) }, ...(round ? { round } : {}) };
  });
export function vertices(body: Body): Vec3[] {
  return body.flatMap((f) => f.points);
}

/** The part of the body with normal·p <= off. The body itself when nothing is cut off, [] when nothing stays. */
function cutBody(body: Body, plane: Plane, of: string, trim = false, round?: Round): Body {
  const height = (p: Vec3): number => dot(plane.normal, p) - plane.off;
  if (!body.some((f) => f.points.some((p) => height(p) > NEAR))) return body;
  const rim: Vec3[] = [];
  const kept: Facet[] = [];
  for (const f of body) {
    const points: Vec3[] = [];
    f.points.forEach((p, i) => {
      const q = f.points[(i + 1) % f.points.length] ?? p;
      const [a, b] = [height(p), height(q)];
      if (a <= NEAR) points.push(p);
      if (Math.abs(a) <= NEAR) rim.push(p);
      if ((a > NEAR && b < -NEAR) || (a < -NEAR && b > NEAR)) {
        const cut = add(p, scale(sub(q, p), a / (a - b)));
        points.push(cut);
        rim.push(cut);
      }
    });
    if (points.length >= 3 && points.some((p) => height(p) < -NEAR)) kept.push({ ...f, points });
  }
  if (kept.length === 0) return [];
  const cap = roundAbout(rim, plane.normal);
  return cap.length >= 3 ? [...kept, { plane, points: cap, of, trim, ...(round ? { round } : {}) }] : kept;
}
/** The corners of the body's section by a plane, in order; [] where it does not cross. */
export function sectionOf(body: Body, plane: Plane): readonly Vec3[] {
  const cut = cutBody(body, plane, '(section)');
  const cap = cut.find((f) => f.of === '(section)');
  if (cap) return cap.points;
  const flush = body.find(
    (f) =>
      Math.abs(Math.abs(dot(f.plane.normal, plane.normal)) - 1) < 1e-9 &&
      f.points.every((p) => Math.abs(dot(plane.normal, p) - plane.off) < 1e-4),
  );
  return flush?.points ?? [];
}
function roundAbout(points: readonly Vec3[], normal: Vec3): Vec3[] {
  const helper: Vec3 = Math.abs(normal[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0];
  const u = unit(cross(normal, helper));
  const v = cross(normal, u);
  const flat = points.map((p): Vec2 => [dot(u, p), dot(v, p)]);
  const o = scale(normal, points[0] ? dot(normal, points[0]) : 0);
  return hull(flat).map(([a, b]) => add(o, add(scale(u, a), scale(v, b))));
}

/** The planes that a convex cut leaves the wood behind; [] for a shape that does not leave it convex. */
function keepPlanes(f: Feature, stock: readonly Vec3[]): Cut[] {
  if (f.op !== 'shape') return [];
  const s = f.solid;
  if (s.kind === 'half') {
    const normal = outDir(f.at, s.normal);
    return [{ plane: { normal, off: s.off + dot(normal, f.at.o) } }];
  }
  const corners = stock.map((p) => inPoint(f.at, p));
  const zs = corners.map((p) => p[2]);
  const [low, high] = [Math.min(...zs), Math.max(...zs)];
  if (s.kind === 'turned') {
    const ys = s.profile.map((c) => c.at[1]);
    if (Math.min(...ys) > low + 1e-6 || Math.max(...ys) < high - 1e-6) return [];
    const xs = s.profile.map((c) => c.at[0]).sort((a, b) => a - b);
    const far = xs.at(-1) ?? 0;
    const r = xs.filter((x) => x < far - 1e-6).at(-1) ?? 0;
    return r > 0 ? sidePlanes(f.at, ring(r), { axis: { at: f.at.o, along: f.at.z }, r }) : [];
  }
  if (s.from > low + 1e-6 || s.to < high - 1e-6 || s.profileTo) return [];
  const [outline, hole, more] = s.profile;
  if (!outline) return [];
  if (hole) return more ? [] : sidePlanes(f.at, hull(loopPoints(hole, CHORDS).points), circleOf(hole, f.at));
  return cornerPlane(f.at, loopPoints(outline, CHORDS).points, corners);
}
const ring = (r: number): Vec2[] =>
  Array.from({ length: CHORDS }, (_, i) => [r * Math.cos((2 * Math.PI * i) / CHORDS), r * Math.sin((2 * Math.PI * i) / CHORDS)]);
/** The cylinder that a loop bounds when it is one whole circle. */
function circleOf(loop: Loop, at: Frame): Round | undefined {
  const arcs = loop.map((c, i) => (c.via ? arcThrough(c.at, c.via, loop[(i + 1) % loop.length]?.at ?? c.at) : null));
  const [first] = arcs;
  if (
    !first ||
    !arcs.every(
      (a) => a && Math.hypot(a.centre[0] - first.centre[0], a.centre[1] - first.centre[1]) < 1e-6 && Math.abs(a.r - first.r) < 1e-6,
    )
  )
    return undefined;
  return { axis: { at: outPoint(at, [first.centre[0], first.centre[1], 0]), along: at.z }, r: first.r };
}
function sidePlanes(at: Frame, polygon: Polygon, round?: Round): Cut[] {
  const turn = polygonArea(polygon) >= 0 ? 1 : -1;
  return polygon.map((p, i) => {
    const q = polygon[(i + 1) % polygon.length] ?? p;
    const l = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const normal = outDir(at, [(turn * (q[1] - p[1])) / l, (-turn * (q[0] - p[0])) / l, 0]);
    return { plane: { normal, off: dot(normal, outPoint(at, [p[0], p[1], 0])) }, ...(round ? { round } : {}) };
  });
}
/** A prism that takes off one corner: exactly one of its sides has wood on both sides of it. */
function cornerPlane(at: Frame, outline: Polygon, corners: readonly Vec3[]): Cut[] {
  const turn = polygonArea(outline) >= 0 ? 1 : -1;
  const cutting: Cut[] = [];
  outline.forEach((p, i) => {
    const q = outline[(i + 1) % outline.length] ?? p;
    const l = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (l < 1e-9) return;
    const n: Vec2 = [(-turn * (q[1] - p[1])) / l, (turn * (q[0] - p[0])) / l];
    const heights = corners.map((c) => n[0] * (c[0] - p[0]) + n[1] * (c[1] - p[1]));
    if (Math.max(...heights) > 1e-6 && Math.min(...heights) < -1e-6) {
      const normal = outDir(at, [n[0], n[1], 0]);
      cutting.push({ plane: { normal, off: dot(normal, outPoint(at, [p[0], p[1], 0])) } });
    }
  });
  return cutting.length === 1 ? cutting : [];
}

export type Crossing = { readonly low: number; readonly high: number; readonly lowFacet: Facet; readonly highFacet: Facet };
/** Where the line at + t·along runs inside the body; null when it misses. */
export function lineThrough(body: Body, at: Vec3, along: Vec3): Crossing | null {
  let [low, high] = [-Infinity, Infinity];
  let [lowFacet, highFacet]: [Facet | null, Facet | null] = [null, null];
  for (const f of body) {
    const rise = dot(f.plane.normal, along);
    const room = f.plane.off - dot(f.plane.normal, at);
    if (Math.abs(rise) < 1e-9) {
      if (room < -1e-6) return null;
      continue;
    }
    const t = room / rise;
    if (rise > 0 && t < high - 1e-9) [high, highFacet] = [t, f];
    if (rise < 0 && t > low + 1e-9) [low, lowFacet] = [t, f];
  }
  return lowFacet && highFacet && low <= high + 1e-6 ? { low, high, lowFacet, highFacet } : null;
}
/** The same with the true rounds instead of their chords; a facet of a round is given the plane that touches the round where the line runs. */
export function exactThrough(body: Body, at: Vec3, along: Vec3): Crossing | null {
  const c = lineThrough(body, at, along);
  if (!c) return null;
  const refine = (t: number, facet: Facet, low: boolean): readonly [number, Facet] => {
    if (!facet.round) return [t, facet];
    const { axis, r } = facet.round;
    const across = (v: Vec3): Vec3 => sub(v, scale(axis.along, dot(v, axis.along)));
    const [p, d] = [across(sub(at, axis.at)), across(along)];
    const [a, b, q] = [dot(d, d), dot(p, d), dot(p, p) - r * r];
    const root = b * b - a * q;
    if (a < 1e-12 || root < 0) return [t, facet];
    const exact = (-b + (low ? -1 : 1) * Math.sqrt(root)) / a;
    const normal = unit(add(p, scale(d, exact)));
    return [exact, { ...facet, plane: { normal, off: dot(normal, add(at, scale(along, exact))) } }];
  };
  const [low, lowFacet] = refine(c.low, c.lowFacet, true);
  const [high, highFacet] = refine(c.high, c.highFacet, false);
  return { low, high, lowFacet, highFacet };
}

/** The convex outline round points, counter-clockwise, without points on straight edges. */
export function hull(points: readonly Vec2[]): Vec2[] {
  const sorted = [...points].sort((a, b) => (Math.abs(a[0] - b[0]) > NEAR ? a[0] - b[0] : a[1] - b[1]));
  const unique = sorted.filter((p, i) => {
    const q = sorted[i - 1];
    return !q || Math.abs(p[0] - q[0]) > NEAR || Math.abs(p[1] - q[1]) > NEAR;
  });
  const half = (list: readonly Vec2[]): Vec2[] => {
    const out: Vec2[] = [];
    for (const p of list) {
      while (out.length >= 2 && turnOf(out.at(-2), out.at(-1), p) <= NEAR) out.pop();
      out.push(p);
    }
    return out.slice(0, -1);
  };
  return unique.length < 3 ? unique : [...half(unique), ...half([...unique].reverse())];
}
const turnOf = (a: Vec2 | undefined, b: Vec2 | undefined, c: Vec2): number =>
  a && b ? (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]) : 0;

/** What two convex counter-clockwise polygons share; [] when that has no area. */
export function shared(subject: Polygon, window: Polygon): Vec2[] {
  let out: Vec2[] = [...subject];
  window.forEach((p, i) => {
    const q = window[(i + 1) % window.length] ?? p;
    const inside = (c: Vec2): number => (q[0] - p[0]) * (c[1] - p[1]) - (q[1] - p[1]) * (c[0] - p[0]);
    const next: Vec2[] = [];
    out.forEach((a, k) => {
      const b = out[(k + 1) % out.length] ?? a;
      const [da, db] = [inside(a), inside(b)];
      if (da >= 0) next.push(a);
      if ((da > 0 && db < 0) || (da < 0 && db > 0))
        next.push([a[0] + ((b[0] - a[0]) * da) / (da - db), a[1] + ((b[1] - a[1]) * da) / (da - db)]);
    });
    out = next;
  });
  const tidy = hull(out);
  return polygonArea(tidy) > 1e-3 ? tidy : [];
}
export const insideOf = (polygon: Polygon, at: Vec2, slack = 1e-6): boolean =>
  polygon.length > 2 &&
  polygon.every((p, i) => {
    const q = polygon[(i + 1) % polygon.length] ?? p;
    const l = Math.hypot(q[0] - p[0], q[1] - p[1]);
    return l < 1e-12 || ((q[0] - p[0]) * (at[1] - p[1]) - (q[1] - p[1]) * (at[0] - p[0])) / l >= -slack;
  });
/** Low and high of a body's corners along a direction. */
export function spanAlong(body: Body, along: Vec3): readonly [number, number] {
  const all = vertices(body).map((p) => dot(along, p));
  return [Math.min(...all), Math.max(...all)];
}
/** Corners where the body's surface that looks back along z (`near`), or on along z, lies over a convex outline of the xy-plane. */
export function surfaceOver(body: Body, outline: Polygon, near: boolean): Vec3[] {
  const out: Vec3[] = [];
  for (const f of body) {
    const n = f.plane.normal;
    if (near ? n[2] > -1e-9 : n[2] < 1e-9) continue;
    for (const [x, y] of shared(hull(f.points.map(([px, py]): Vec2 => [px, py])), outline))
      out.push([x, y, (f.plane.off - n[0] * x - n[1] * y) / n[2]]);
  }
  return out;
}
