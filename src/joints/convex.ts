/**
 * Stock as a convex body of flat facets, good enough to tell how two parts meet: the box less those shapes that leave it
 * convex (trims, chamfers to an octagon, a round outline as chords). Other shapes are left out, so a body is never too small.
 */
import { type Box, cornersOf } from '../geom/box.ts';
import { type Frame, HOME, inPoint, outDir, outPoint } from '../geom/frame.ts';
import { loopPoints, polygonArea } from '../geom/loop.ts';
import { type Vec2, type Vec3, add, cross, dot, scale, sub, unit } from '../geom/vec3.ts';
import type { Feature } from '../model/record.ts';
import type { Plane, Polygon } from './meeting.ts';

/** One flat side of a body: its plane (normal out of the wood), its corners, and the face or shape that it comes from. */
export type Facet = { readonly plane: Plane; readonly points: readonly Vec3[]; readonly of: string; readonly trim: boolean };
export type Body = readonly Facet[];

/** Chords of a round shape here; the distance to the true round is r(1 - cos(180°/96)), 0.01 mm on a 40 mm leg. */
const CHORDS = 96;
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
export function boxBody(stock: Box): Body {
  const corners = cornersOf(stock);
  return SIDES.map(([of, normal, at]) => {
    const points = at.map((i) => corners[i] ?? stock.min);
    return { of, trim: false, plane: { normal, off: dot(normal, points[0] ?? stock.min) }, points };
  });
}
/**
 * What is left of the stock after those of its shapes that leave it convex. `stock` lies in `frame` (default: the frame of the shapes), the
 * shapes and the answer are seen from outside it.
 */
export function bodyOf(stock: Box, shapes: readonly Feature[], frame: Frame = HOME): Body {
  const corners = cornersOf(stock).map((p) => outPoint(frame, p));
  let body = movedBody(frame, boxBody(stock));
  for (const f of shapes) for (const plane of keepPlanes(f, corners)) body = cutBody(body, plane, f.name, f.why === 'trim');
  return body;
}
/** The body seen from outside `frame`. */
export const movedBody = (frame: Frame, body: Body): Body =>
  body.map((f) => {
    const points = f.points.map((p) => outPoint(frame, p));
    const normal = outDir(frame, f.plane.normal);
    return { ...f, points, plane: { normal, off: f.plane.off + dot(normal, frame.o) } };
  });
export function vertices(body: Body): Vec3[] {
  return body.flatMap((f) => f.points);
}

/** The part of the body with normal·p <= off. The body itself when nothing is cut off, [] when nothing stays. */
export function cutBody(body: Body, plane: Plane, of: string, trim = false): Body {
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
  return cap.length >= 3 ? [...kept, { plane, points: cap, of, trim }] : kept;
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
function keepPlanes(f: Feature, stock: readonly Vec3[]): Plane[] {
  if (f.op !== 'shape') return [];
  const s = f.solid;
  if (s.kind === 'half') {
    const normal = outDir(f.at, s.normal);
    return [{ normal, off: s.off + dot(normal, f.at.o) }];
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
    return r > 0 ? sidePlanes(f.at, ring(r)) : [];
  }
  if (s.from > low + 1e-6 || s.to < high - 1e-6 || s.profileTo) return [];
  const [outline, hole, more] = s.profile;
  if (!outline) return [];
  if (hole) return more ? [] : sidePlanes(f.at, hull(loopPoints(hole, CHORDS).points));
  return cornerPlane(f.at, loopPoints(outline, CHORDS).points, corners);
}
const ring = (r: number): Vec2[] =>
  Array.from({ length: CHORDS }, (_, i) => [r * Math.cos((2 * Math.PI * i) / CHORDS), r * Math.sin((2 * Math.PI * i) / CHORDS)]);
function sidePlanes(at: Frame, polygon: Polygon): Plane[] {
  const turn = polygonArea(polygon) >= 0 ? 1 : -1;
  return polygon.map((p, i) => {
    const q = polygon[(i + 1) % polygon.length] ?? p;
    const l = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const normal = outDir(at, [(turn * (q[1] - p[1])) / l, (-turn * (q[0] - p[0])) / l, 0]);
    return { normal, off: dot(normal, outPoint(at, [p[0], p[1], 0])) };
  });
}
/** A prism that takes off one corner: exactly one of its sides has wood on both sides of it. */
function cornerPlane(at: Frame, outline: Polygon, corners: readonly Vec3[]): Plane[] {
  const turn = polygonArea(outline) >= 0 ? 1 : -1;
  const cutting: Plane[] = [];
  outline.forEach((p, i) => {
    const q = outline[(i + 1) % outline.length] ?? p;
    const l = Math.hypot(q[0] - p[0], q[1] - p[1]);
    if (l < 1e-9) return;
    const n: Vec2 = [(-turn * (q[1] - p[1])) / l, (turn * (q[0] - p[0])) / l];
    const heights = corners.map((c) => n[0] * (c[0] - p[0]) + n[1] * (c[1] - p[1]));
    if (Math.max(...heights) > 1e-6 && Math.min(...heights) < -1e-6) {
      const normal = outDir(at, [n[0], n[1], 0]);
      cutting.push({ normal, off: dot(normal, outPoint(at, [p[0], p[1], 0])) });
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
