/** Where a round tenon's cuts begin and end when the part leans, and when the surface that it enters is not flat. */
import type { Frame } from '../../geom/frame.ts';
import { type Vec2, type Vec3, add, cross, dot, scale, sub, unit } from '../../geom/vec3.ts';
import { ROOT, sideIn } from '../blocks.ts';
import { type Body, bodyOf, exactThrough, hull, shared, surfaceOver } from '../convex.ts';
import { CLEAR, type WedgeSpec } from '../features.ts';
import type { MeetSide, Meeting, Plane, Polygon } from '../meeting.ts';
import type { RoundTenon } from './params.ts';

/** Air left between a shoulder that cannot close on a surface that is not flat, and that surface, mm: rounds are drawn with chords. */
const AIR = 0.5;
/** Clear space between the tenons of two parts that meet in a third, mm; common practice. */
export const SPACE = 0.5;

export type Ground = {
  readonly enter: MeetSide;
  readonly into: MeetSide;
  readonly body: Body;
  /** z at which the axis enters the receiver. */
  readonly gap: number;
  /** Way through the receiver along the part's axis, and the plane where it comes out. */
  readonly deep: number;
  readonly far: Plane;
  /** Largest round that the end of the entering part holds. */
  readonly room: number;
  /** How far the surface stands into the entering part's end; 0 where the shoulder closes on it. */
  readonly bite: number;
  /** Where shoulder and surface lie on each other, seen along z; empty where the surface only touches along a line. */
  readonly closes: Polygon;
};
const known = new WeakMap<Meeting, Ground | null>();
export function ground(m: Meeting): Ground | null {
  let g = known.get(m);
  if (g === undefined) known.set(m, (g = survey(m)));
  return g;
}
function survey(m: Meeting): Ground | null {
  const [enter, into] = [sideIn(m, 'enter'), sideIn(m, 'into')];
  const body = bodyOf(into.stock, into.shapes, into.frame);
  const ray = exactThrough(body, [0, 0, 0], [0, 0, 1]);
  if (!ray || ray.high <= 0) return null;
  const bite = overlapOf(m, body);
  return {
    enter,
    into,
    body,
    gap: Math.abs(ray.low - m.gap) < 1e-6 ? m.gap : ray.low,
    deep: ray.high - ray.low,
    far: ray.highFacet.plane,
    room: roomIn(enter),
    bite: bite > 1e-3 ? bite : 0,
    closes: ray.lowFacet.round ? [] : closing(m, ray.lowFacet.points),
  };
}
function closing(m: Meeting, facet: readonly Vec3[]): Polygon {
  const [a, b] = [m.shoulder.normal, m.face.normal];
  if (Math.abs(dot(a, b) + 1) > 1e-9) return [];
  return shared(m.patch, hull(facet.map(([x, y]): Vec2 => [x, y])));
}
/** Twice the distance from the part's axis to its nearest long side. */
function roomIn(enter: MeetSide): number {
  const body = bodyOf(enter.stock, enter.shapes, enter.frame);
  return (
    2 *
    Math.min(
      ...body.filter((f) => Math.abs(f.plane.normal[2]) < 0.5).map((f) => f.plane.off / Math.hypot(f.plane.normal[0], f.plane.normal[1])),
    )
  );
}
const zOn = (p: Plane, at: Vec3): number => (p.off - p.normal[0] * at[0] - p.normal[1] * at[1]) / p.normal[2];
const overlapOf = (m: Meeting, body: Body): number =>
  Math.max(0, ...surfaceOver(body, m.patch, true).map((v) => zOn(m.shoulder, v) - v[2]));
const ring = (r: number): Vec2[] =>
  Array.from({ length: 32 }, (_, i): Vec2 => [
    (r * Math.cos((i * Math.PI) / 16)) / Math.cos(Math.PI / 32),
    (r * Math.sin((i * Math.PI) / 16)) / Math.cos(Math.PI / 32),
  ]);
/** Lowest and highest z of the receiver within the tenon's round. */
function reachOf(g: Ground, d: number): readonly [number, number] {
  const round = ring(d / 2);
  const low = surfaceOver(g.body, round, true).map((v) => v[2]);
  const high = surfaceOver(g.body, round, false).map((v) => v[2]);
  return [Math.min(g.gap, ...low), Math.max(g.gap + g.deep, ...high)];
}

export type Laid = {
  readonly g: Ground;
  readonly s: RoundTenon;
  readonly r: number;
  /** z of the root, of the tenon's end (its longest point), of where the hole's cut starts, and of its bottom or where it has come out. */
  readonly root: number;
  readonly tip: number;
  readonly start: number;
  readonly floor: number;
  /** How far the shoulder is set back from the end of the stock; 0 where it closes. */
  readonly back: number;
  /** Through and slanted: what is trimmed off, beyond this plane. */
  readonly flush: Plane | null;
  readonly wedge: { readonly spec: WedgeSpec; readonly at: Frame } | null;
};
export function layOut(m: Meeting, s: RoundTenon): Laid {
  const g = ground(m);
  if (!g) throw new Error('a round tenon needs an axis that runs into the receiver: propose refuses the others');
  const r = s.diameter / 2;
  const [low, high] = reachOf(g, s.diameter);
  const back = g.bite > 0 ? g.bite + AIR : 0;
  const slope = Math.hypot(m.shoulder.normal[0], m.shoulder.normal[1]) / m.shoulder.normal[2];
  const through = s.through === 'yes';
  const square = Math.hypot(g.far.normal[0], g.far.normal[1]) < 1e-9;
  const out: Plane = { normal: g.far.normal, off: g.far.off + s.proud };
  const end = Math.max(...ring(r).map(([x, y]) => zOn(out, [x, y, 0])));
  const tip = through ? (square ? g.gap + g.deep + s.proud : end + CLEAR) : s.length;
  return {
    g,
    s,
    r,
    back,
    tip,
    root: -back - r * slope - ROOT,
    start: Math.min(low, g.gap) - CLEAR,
    floor: through ? Math.max(high, g.gap + g.deep) + CLEAR : g.gap + s.length + s.spare,
    flush: through && !square ? out : null,
    wedge: s.wedge === 'none' || !through ? null : wedgeOf(g, s, through && !square ? end : tip),
  };
}
/** The wedge spreads the tenon along the grain of the part with the hole, against its end grain ('along' turns it). */
function wedgeOf(g: Ground, s: RoundTenon, tip: number): { spec: WedgeSpec; at: Frame } {
  const grain: Vec3 = [g.into.grain[0], g.into.grain[1], 0];
  const g0 = Math.hypot(grain[0], grain[1]) > 0.1 ? unit(grain) : ([1, 0, 0] as Vec3);
  const x = s.wedge === 'across' ? g0 : cross([0, 0, 1], g0);
  const r = s.diameter / 2;
  return {
    at: { o: [0, 0, 0], x, y: cross([0, 0, 1], x), z: [0, 0, 1] },
    spec: { spread: 'x', sense: 1, at: 0, span: [-r, r], root: tip - (g.deep * 2) / 3, tip, kerf: s.kerf, thick: s.wedge_thick },
  };
}

/**
 * The longest round tenon of this diameter that clears the tenons of siblings, each taken as thick as this one and as long; Infinity
 * where none comes near. Two cylinders whose axes open at the angle φ keep to their sides of the plane between them when they end
 * r / tan(φ/2) short of the crossing.
 */
export function clearLength(d: number, siblings: readonly Meeting[]): number {
  const r = d / 2;
  let most = Infinity;
  for (const sib of siblings) {
    const [o, z] = [sib.frame.o, sib.frame.z];
    const cosine = z[2];
    if (cosine > 0.999) continue;
    if (cosine < -0.999) {
      if (Math.hypot(o[0], o[1]) < d) most = Math.min(most, o[2] / 2 - SPACE / 2);
      continue;
    }
    // Nearest points of the two axes.
    const w = unit(cross([0, 0, 1], z));
    if (Math.abs(dot(w, o)) >= d + SPACE) continue;
    const side = cross(z, w);
    const sA = dot(side, o) / side[2];
    const near = add(o, scale(z, -dot(sub(o, [0, 0, sA]), z)));
    if (sA < 0 || dot(sub(near, o), z) < 0) continue;
    const half = Math.acos(Math.max(-1, Math.min(1, cosine))) / 2;
    most = Math.min(most, sA - r / Math.tan(half) - SPACE / 2 / Math.sin(half));
  }
  return most;
}
