/**
 * How parts meet, found from their un-jointed boxes and shapes alone. Pure; all is worked out in the entering part's own
 * frame, so that a mirrored, turned or moved group of parts gives the same numbers.
 *
 *   entering part ──────┐┌───────     +z runs out of the entering part into the receiver, the origin lies on the
 *                    ·──┤│→ z         shoulder: the middle of the end face, or of the patch for an edge or a face.
 *   ────────────────────┘│ receiver   Where the two share a volume, the shoulder is put where the receiver's near face
 *                        └───────     cuts the entering part: the shared volume begins at z = 0.
 */
import { type Box, boxAround, middleOf, outBox, sizeOf } from '../geom/box.ts';
import { type Frame, HOME, compose, inDir, inPoint, outDir, outPoint, quarterTurn, seenFrom, tidyFrame } from '../geom/frame.ts';
import { polygonArea } from '../geom/loop.ts';
import { AXES, type Axis, type Vec2, type Vec3, axisIndex, axisVec, dot, scale, tidy, tidy3 } from '../geom/vec3.ts';
import { FACES, type Face, faceSide, isFace } from '../model/ids.ts';
import type { Feature } from '../model/record.ts';
import {
  type Body,
  type Facet,
  bodyOf,
  exactThrough,
  hull,
  insideOf,
  lineThrough,
  movedBody,
  sectionOf,
  shared,
  spanAlong,
  vertices,
} from './convex.ts';
import type { MeetKind, MeetSide, Meeting, Plane, Polygon } from './meeting.ts';

/** A part as it comes to a meeting: stock and shapes in its record frame, `frame` that frame seen from the world. */
export type MeetPart = {
  readonly path: string;
  readonly wood: string;
  readonly grain: Axis;
  readonly stock: Box;
  readonly frame: Frame;
  /** Names of the wood to its faces: { inner: 'right' }. */
  readonly marks: Readonly<Record<string, string>>;
  readonly shapes: readonly Feature[];
};

/** Surfaces nearer than this touch, mm. */
const TOUCH = 1e-4;
/** Parts farther apart than this do not belong together, mm: a joint there is a mistake, not an open shoulder. */
const FAR = 30;
/** An end that bites into the receiver by less than this share of its thickness, and by no more than FAR, was meant to touch it. */
const BITE = 0.3;
/** A cross-section whose wider side is below this many times the thinner has four faces and no edges (a leg). */
const POST = 1.5;

type Candidate = {
  readonly face: Face;
  readonly isEnd: boolean;
  readonly touch: Meeting['touch'];
  readonly bites: boolean;
  readonly gap: number;
  readonly area: number;
  readonly patch: Polygon;
  /** The frame seen from the entering part's record frame, origin on its shoulder. */
  readonly local: Frame;
  readonly shoulder: Plane;
  readonly facePlane: Plane;
  readonly facet: Facet;
  /** How deep they share along z, mm. */
  readonly depth: number;
};

/**
 * How the first part of the first role meets the next part (the second of the first role, or the first of the second).
 * `end` names the face of the entering part, in its own frame; without it the best face is found: grain ends that touch, then
 * those that bite or share, then long faces, and gaps up to FAR last. `kind` is 'none' when nothing meets, with the distance in
 * `gap`. Its two words name what the parts bring ('end-to-face' also where the entering part brings the face); the sides' `end`
 * tells which.
 */
export function meet(roles: Readonly<Record<string, readonly MeetPart[]>>, end?: string): Meeting {
  const all = Object.entries(roles).flatMap(([role, parts]) => parts.map((part) => ({ role, part })));
  const enter = all[0]?.part;
  if (!enter) throw new Error('a meeting needs a part');
  const into = all[1]?.part;
  const face = end !== undefined && isFace(end) ? end : undefined;
  if (!into) return assemble(roles, enter, null, alone(enter, face), 'none');
  const bodies = { enter: bodyOf(enter.stock, enter.shapes), into: bodyOf(into.stock, into.shapes) };
  const placed = movedBody(seenFrom(enter.frame, into.frame), bodies.into);
  const room = boxAround(vertices(placed)) ?? enter.stock;
  const tries = (faces: readonly Face[]): Candidate[] =>
    faces.flatMap((f) => (ahead(enter.stock, room, f) ? (tryFace(enter, bodies.enter, placed, f, face !== undefined) ?? []) : []));
  const grain = axisIndex(enter.grain);
  const ends = face ? tries([face]) : tries(FACES.filter((f) => faceSide(f).axis === grain));
  // An end that touches comes before anything that a long face could bring.
  const found = face || ends.some((c) => rank(c) === 0) ? ends : [...ends, ...tries(FACES.filter((f) => faceSide(f).axis !== grain))];
  const best = found.reduce<Candidate | null>((a, b) => (a && !better(b, a) ? a : b), null);
  if (best && (best.touch !== 'gap' || best.gap <= FAR)) return assemble(roles, enter, into, best, kindOf(enter, into, best));
  const apart = best ? best.gap : distance(enter, into, bodies.enter, placed);
  const none = { ...alone(enter, face), gap: Math.max(0, apart), touch: apart <= TOUCH ? ('touch' as const) : ('gap' as const) };
  return assemble(roles, enter, into, none, apart <= TOUCH ? 'point' : 'none');
}

/** Quick no: the receiver (its box in the entering part's record frame) lies beside the face or wholly behind the part. */
function ahead(stock: Box, room: Box, face: Face): boolean {
  const { axis, high } = faceSide(face);
  const beside = ([0, 1, 2] as const).some((i) => i !== axis && (room.max[i] <= stock.min[i] || room.min[i] >= stock.max[i]));
  return !beside && (high ? room.max[axis] > stock.min[axis] : room.min[axis] < stock.max[axis]);
}
/** Rank of a candidate, low is good: ends before faces, touching before sharing before standing apart. */
function rank(c: Candidate): number {
  const how = c.touch === 'gap' ? 6 : c.touch === 'share' ? 2 : c.bites ? 1 : 0;
  return how + (c.isEnd ? 0 : 3);
}
function better(a: Candidate, b: Candidate): boolean {
  if (rank(a) !== rank(b)) return rank(a) < rank(b);
  if (a.touch !== 'touch')
    return (
      Math.abs(a.touch === 'gap' ? a.gap - b.gap : a.depth - b.depth) > TOUCH && (a.touch === 'gap' ? a.gap < b.gap : a.depth < b.depth)
    );
  return a.area > b.area * (1 + 1e-9) + 1e-6;
}

/** Axes of the meeting for one face of the part, seen from its record frame; origin in the middle of the stock. */
function axesFor(part: MeetPart, face: Face): { frame: Frame; isEnd: boolean } {
  const { axis, high } = faceSide(face);
  const grain = axisIndex(part.grain);
  const size = sizeOf(part.stock);
  const [a, b] = ([0, 1, 2] as const).filter((i) => i !== axis) as [0 | 1 | 2, 0 | 1 | 2];
  const isEnd = axis === grain;
  const swap = isEnd ? size[b] < size[a] - TOUCH : a === grain;
  const vec = (i: 0 | 1 | 2): Vec3 => axisVec(AXES[i] ?? 'x');
  const z = vec(axis);
  return { isEnd, frame: { o: middleOf(part.stock), x: vec(swap ? b : a), y: vec(swap ? a : b), z: high ? z : scale(z, -1) } };
}

function tryFace(enter: MeetPart, own: Body, other: Body, face: Face, forced: boolean): Candidate | null {
  const { frame, isEnd } = axesFor(enter, face);
  const toLocal = seenFrom(frame, HOME);
  const mine = movedBody(toLocal, own);
  const theirs = movedBody(toLocal, other);
  const through = lineThrough(mine, [0, 0, 0], [0, 0, 1]);
  if (!through) return null;
  const outline = hull(vertices(theirs).map(([x, y]): Vec2 => [x, y]));
  const patch = shared(flat(through.highFacet.points), outline);
  if (patch.length === 0) return null;
  const at: Vec2 = isEnd && insideOf(outline, [0, 0]) ? [0, 0] : middle(patch);
  const ray = exactThrough(theirs, [at[0], at[1], 0], [0, 0, 1]);
  if (!ray) return null;
  const tip = heightAt(through.highFacet.plane, at);
  const gap = ray.low - tip;
  if (gap < -TOUCH && !cuts(ray, tip, through.low, forced)) return null;
  const touch =
    Math.abs(gap) <= TOUCH || (gap < 0 && -gap <= Math.min(BITE * (ray.high - ray.low), FAR)) ? 'touch' : gap > 0 ? 'gap' : 'share';
  const facePlane = ray.lowFacet.plane;
  const shoulder: Plane = touch === 'share' ? { normal: scale(facePlane.normal, -1), off: -facePlane.off } : through.highFacet.plane;
  // A round or slanted surface against a square end: it bites by design, and the joint sets its shoulder back.
  const closes = Math.abs(dot(through.highFacet.plane.normal, facePlane.normal) + 1) < 1e-9 && !ray.lowFacet.round;
  const spot = isEnd ? ([0, 0] as const) : middle(patch);
  const origin: Vec3 = [spot[0], spot[1], heightAt(shoulder, spot)];
  const cutPatch = touch === 'share' ? shared(flat(sectionOf(mine, shoulder)), outline) : patch;
  return {
    face,
    isEnd,
    touch,
    facet: ray.lowFacet,
    area: polygonArea(patch),
    bites: touch === 'touch' && gap < -TOUCH,
    gap: touch === 'share' || Math.abs(gap) <= TOUCH || (gap < 0 && !closes) ? 0 : gap,
    depth: Math.max(0, -gap),
    patch: (cutPatch.length ? cutPatch : patch).map((p): Vec2 => [p[0] - spot[0], p[1] - spot[1]]),
    local: { ...frame, o: outPoint(frame, origin) },
    shoulder: shifted(shoulder, origin),
    facePlane: shifted(facePlane, origin),
  };
}
/** Does the receiver's near face cut the entering part, so that its end stands in the receiver? With a face asked for, it may stand out at the back. */
const cuts = (ray: { low: number; high: number }, tip: number, tail: number, forced: boolean): boolean =>
  ray.high > tail + TOUCH && ray.low >= tail - TOUCH && (forced || tip <= ray.high + TOUCH);
const flat = (points: readonly Vec3[]): Vec2[] => hull(points.map(([x, y]): Vec2 => [x, y]));
const heightAt = (p: Plane, at: Vec2): number => (p.off - p.normal[0] * at[0] - p.normal[1] * at[1]) / p.normal[2];
const shifted = (p: Plane, origin: Vec3): Plane => ({ normal: p.normal, off: p.off - dot(p.normal, origin) });
/** The middle of the rectangle round a polygon. */
function middle(polygon: Polygon): Vec2 {
  const span = (i: 0 | 1): number => (Math.min(...polygon.map((p) => p[i])) + Math.max(...polygon.map((p) => p[i]))) / 2;
  return [span(0), span(1)];
}

/** The entering part's own face with nothing to meet. */
function alone(enter: MeetPart, face?: Face): Candidate {
  const quad = faceSide(face ?? 'right').quad;
  const pick: Face = face ?? (enter.grain === 'x' ? quad.high : enter.grain === 'y' ? 'back' : 'top');
  const { frame, isEnd } = axesFor(enter, pick);
  const reach = sizeOf(enter.stock)[faceSide(pick).axis] / 2;
  const up: Plane = { normal: [0, 0, 1], off: 0 };
  const facet: Facet = { plane: up, points: [], of: pick, trim: false };
  const local = { ...frame, o: outPoint(frame, [0, 0, reach]) };
  return {
    face: pick,
    isEnd,
    touch: 'gap',
    bites: false,
    gap: 0,
    area: 0,
    patch: [],
    local,
    shoulder: up,
    facePlane: { normal: [0, 0, -1], off: 0 },
    facet,
    depth: 0,
  };
}

/** Distance between two parts, mm: exact for boxes standing square to each other, at least this far for leaning ones. */
function distance(enter: MeetPart, into: MeetPart, own: Body, other: Body): number {
  const rel = seenFrom(enter.frame, into.frame);
  if (quarterTurn(rel)) {
    const [a, b] = [enter.stock, outBox(rel, into.stock)];
    return Math.hypot(...([0, 1, 2] as const).map((i) => Math.max(0, b.min[i] - a.max[i], a.min[i] - b.max[i])));
  }
  return Math.max(
    0,
    ...[...own, ...other].map((f) => {
      const [a, b] = [spanAlong(own, f.plane.normal), spanAlong(other, f.plane.normal)];
      return Math.max(b[0] - a[1], a[0] - b[1]);
    }),
  );
}

type Brings = 'end' | 'edge' | 'face';
/** What a part brings with its face on this axis: by its grain and the proportion of its section. */
function bringsOn(part: MeetPart, axis: 0 | 1 | 2): Brings {
  const grain = axisIndex(part.grain);
  if (axis === grain) return 'end';
  const across = ([0, 1, 2] as const).find((i) => i !== axis && i !== grain) ?? axis;
  const size = sizeOf(part.stock);
  return size[axis] > size[across] * POST ? 'edge' : 'face';
}
function kindOf(enter: MeetPart, into: MeetPart, c: Candidate): MeetKind {
  const own = bringsOn(enter, faceSide(c.face).axis);
  const inRecord = inDir(into.frame, outDir(compose(enter.frame, c.local), c.facePlane.normal));
  const other: Brings = c.facet.trim || Math.abs(inRecord[axisIndex(into.grain)]) > 0.7 ? 'end' : bringsOn(into, biggest(inRecord));
  if (c.touch === 'share') {
    const atEnd = endInside(enter, into, c);
    if (own === 'end') return atEnd ? 'corner' : other === 'edge' ? 'end-to-edge' : 'end-to-face';
    return atEnd ? (own === 'edge' ? 'end-to-edge' : 'end-to-face') : 'cross';
  }
  const pair = new Set<Brings>([own, other]);
  if (pair.has('end')) return pair.has('face') ? 'end-to-face' : pair.has('edge') ? 'end-to-edge' : 'corner';
  return pair.size === 2 ? 'edge-to-face' : own === 'edge' ? 'edge-to-edge' : 'face-to-face';
}
const biggest = (v: Vec3): 0 | 1 | 2 =>
  ([0, 1, 2] as const).reduce((a, b) => (Math.abs(v[b]) > Math.abs(v[a]) + 1e-9 ? b : a), 0 as 0 | 1 | 2);
/** Does one of the receiver's grain ends lie in or flush with the shared volume? */
function endInside(enter: MeetPart, into: MeetPart, c: Candidate): boolean {
  const world = compose(enter.frame, c.local);
  const grain = axisIndex(into.grain);
  const along = [0, c.depth].flatMap((z) => c.patch.map((p) => inPoint(into.frame, outPoint(world, [p[0], p[1], z]))[grain]));
  return Math.max(...along) >= into.stock.max[grain] - 1e-3 || Math.min(...along) <= into.stock.min[grain] + 1e-3;
}

function assemble(
  roles: Readonly<Record<string, readonly MeetPart[]>>,
  enter: MeetPart,
  into: MeetPart | null,
  c: Candidate,
  kind: MeetKind,
): Meeting {
  const exact = compose(enter.frame, c.local);
  const frame: Frame = { o: plain(exact.o), x: plain(exact.x), y: plain(exact.y), z: plain(exact.z) };
  const side = (part: MeetPart): MeetSide =>
    sideOf(part, frame, part === enter ? c.face : part === into ? facing(part, frame, c) : nearest(part, frame));
  const n = c.facePlane.normal;
  return {
    kind,
    touch: c.touch,
    gap: tidy(c.gap),
    frame,
    patch: c.patch.map((p): Vec2 => [tidy(p[0]), tidy(p[1])]),
    shoulder: tidyPlane(c.shoulder),
    face: tidyPlane(c.facePlane),
    angle: { rake: tidy(Math.atan2(n[1], -n[2])), splay: tidy(Math.atan2(n[0], -n[2])) },
    sides: Object.fromEntries(Object.entries(roles).map(([role, parts]) => [role, parts.map(side)])),
  };
}
function sideOf(part: MeetPart, meeting: Frame, end: Face): MeetSide {
  const frame = tidyFrame(seenFrom(meeting, part.frame));
  const box = outBox(frame, part.stock);
  return {
    path: part.path,
    wood: part.wood,
    frame,
    stock: part.stock,
    box: { min: tidy3(box.min), max: tidy3(box.max) },
    square: quarterTurn(frame) !== null,
    grain: tidy3(outDir(frame, axisVec(part.grain)), 1e12),
    end,
    marks: Object.fromEntries(
      Object.entries(part.marks).flatMap(([name, face]) => (isFace(face) ? [[name, tidyPlane(faceAsPlane(part.stock, frame, face))]] : [])),
    ),
    shapes: part.shapes.map((f) => ({ ...f, at: compose(frame, f.at) })),
  };
}
/** A face of a box as a plane seen from outside `frame`. */
function faceAsPlane(stock: Box, frame: Frame, face: Face): Plane {
  const { axis, high } = faceSide(face);
  const own = axisVec(AXES[axis] ?? 'x', high ? 1 : -1);
  const normal = outDir(frame, own);
  return { normal, off: (high ? stock.max[axis] : -stock.min[axis]) + dot(normal, frame.o) };
}
const faceOf = (axis: 0 | 1 | 2, up: boolean): Face => FACES[axis * 2 + (up ? 1 : 0)] ?? 'left';
function facing(part: MeetPart, meeting: Frame, c: Candidate): Face {
  const own = inDir(part.frame, outDir(meeting, c.facePlane.normal));
  const axis = biggest(own);
  return faceOf(axis, own[axis] > 0);
}
/** The face of a further part that is nearest to the meeting's origin. */
function nearest(part: MeetPart, meeting: Frame): Face {
  const p = inPoint(part.frame, meeting.o);
  const mid = middleOf(part.stock);
  const size = sizeOf(part.stock);
  const rel: Vec3 = [(p[0] - mid[0]) / size[0], (p[1] - mid[1]) / size[1], (p[2] - mid[2]) / size[2]];
  const axis = biggest(rel);
  return faceOf(axis, rel[axis] > 0);
}

/** Minus zero made zero. */
const plain = (v: Vec3): Vec3 => [v[0] + 0, v[1] + 0, v[2] + 0];
const tidyPlane = (p: Plane): Plane => ({ normal: tidy3(p.normal, 1e12), off: tidy(p.off) });
