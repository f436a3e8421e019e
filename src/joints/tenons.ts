/**
 * Where tenons lie that run from the end of one part into the side of another: the ground on which the two meet, the places of one or more
 * tenons on it, and how they come near the tenons of siblings. All in the meeting frame; what tenons fixed, loose and keyed have in common.
 */
import { type Vec3, add, cross, dot, scale, sub, unit } from '../geom/vec3.ts';
import { outDir, outPoint } from '../geom/frame.ts';
import { ownSense, sideIn } from './blocks.ts';
import { type Body, bodyOf, lineThrough } from './convex.ts';
import type { MeetSide, Meeting, Plane } from './meeting.ts';

export type Span = readonly [number, number];
export type Ground = {
  readonly enter: MeetSide;
  readonly into: MeetSide;
  /** z of the receiver's face where the part enters. */
  readonly gap: number;
  /** The entering part's section. */
  readonly x: Span;
  readonly y: Span;
  /** The receiver's thickness along z where the part enters, and its body. */
  readonly deep: number;
  readonly body: Body;
  readonly square: boolean;
};
export const bodyIn = (side: MeetSide): Body => bodyOf(side.stock, side.shapes, side.frame);
const known = new WeakMap<Meeting, Ground | null>();
export function ground(m: Meeting): Ground | null {
  let g = known.get(m);
  if (g === undefined) known.set(m, (g = survey(m)));
  return g;
}
function survey(m: Meeting): Ground | null {
  const [enter, into] = [sideIn(m, 'enter'), sideIn(m, 'into')];
  const body = bodyIn(into);
  const ray = lineThrough(body, [0, 0, 0], [0, 0, 1]) ?? lineThrough(body, middleOfPatch(m), [0, 0, 1]);
  if (!ray || !enter.square) return null;
  const b = enter.box;
  return {
    enter,
    into,
    gap: Math.abs(ray.low - m.gap) < 1e-6 ? m.gap : ray.low,
    x: [b.min[0], b.max[0]],
    y: [b.min[1], b.max[1]],
    deep: ray.high - ray.low,
    body,
    square: into.square && Math.abs(m.angle.rake) < 1e-6 && Math.abs(m.angle.splay) < 1e-6,
  };
}
function middleOfPatch(m: Meeting): Vec3 {
  const mid = (i: 0 | 1): number => (Math.min(...m.patch.map((p) => p[i])) + Math.max(...m.patch.map((p) => p[i]))) / 2;
  return m.patch.length ? [mid(0), mid(1), 0] : [0, 0, 0];
}
export const runsAlongGrain = (g: Ground): boolean => Math.abs(g.into.grain[1]) > 0.9;
/** Which way along y is up for all that enter one part: along that part's own axis where its grain runs so, else along the entering part's own. */
export const upSense = (g: Ground): 1 | -1 => ownSense(runsAlongGrain(g) ? g.into : g.enter, 'y');
/** Which edge the receiver's nearer end is on, and how far from it: where a haunch goes and where the wider shoulder belongs. A tie goes to the part's own high edge. */
export function endSide(g: Ground): { side: 1 | -1; room: number } {
  const [low, high] = [g.y[0] - g.into.box.min[1], g.into.box.max[1] - g.y[1]];
  const tie = ownSense(g.enter, 'y') > 0;
  return (tie ? high <= low + 1e-6 : high < low - 1e-6) ? { side: 1, room: high } : { side: -1, room: low };
}

/** Tenons in rows over the width (one above the other on a rail) and twins across the thickness. mm. */
export type Placing = {
  readonly thickness: number;
  readonly offset: number;
  /** What the offset counts from: the middle, the marked face side, or the part's own low or high face across the thickness. */
  readonly from: 'middle' | 'face' | 'low' | 'high';
  readonly twins?: number;
  readonly twin_between?: number;
};
export type Rows = { readonly width: number; readonly tenons: number; readonly between: number; readonly drop: number };
export type Tenon = { readonly x: Span; readonly y: Span };

/** Face mark of the entering part that lies along the thickness: its direction along x, and where it lies. */
function faceSideOf(enter: MeetSide): { sign: 1 | -1; at: number } | null {
  for (const name of Object.keys(enter.marks).sort((a, b) => (a === 'face' ? -1 : b === 'face' ? 1 : a < b ? -1 : 1))) {
    const p = enter.marks[name];
    if (p && Math.abs(p.normal[0]) > 0.99) return { sign: p.normal[0] > 0 ? 1 : -1, at: p.off * (p.normal[0] > 0 ? 1 : -1) };
  }
  return null;
}
export const hasFaceSide = (enter: MeetSide): boolean => faceSideOf(enter) !== null;
/** The face that an offset counts from; null where it counts from the middle. */
function countedFrom(enter: MeetSide, from: Placing['from']): { sign: 1 | -1; at: number } | null {
  if (from === 'middle') return null;
  if (from === 'face') return faceSideOf(enter);
  const sign = ownSense(enter, 'x') * (from === 'high' ? 1 : -1) > 0 ? 1 : -1;
  return { sign, at: sign > 0 ? enter.box.max[0] : enter.box.min[0] };
}
/** From the outer cheek of the first twin to that of the last. */
export const breadth = (s: Placing): number => (s.twins ?? 1) * s.thickness + ((s.twins ?? 1) - 1) * (s.twin_between ?? 0);
/** Low and high of all twins together across the thickness. */
export function across(enter: MeetSide, s: Placing): Span {
  const face = countedFrom(enter, s.from);
  const half = breadth(s) / 2;
  const mid = face ? face.at - face.sign * (s.offset + half) : (enter.box.min[0] + enter.box.max[0]) / 2 + s.offset * ownSense(enter, 'x');
  return [mid - half, mid + half];
}
/** All of the rows together, over the width. */
export function whole(g: Pick<Ground, 'y' | 'enter'>, s: Rows): Span {
  const all = s.tenons * s.width + (s.tenons - 1) * s.between;
  const mid = (g.y[0] + g.y[1]) / 2 - s.drop * ownSense(g.enter, 'y');
  return [mid - all / 2, mid + all / 2];
}
/** Equal shares of a span, `size` wide and `between` apart, counted from the part's own low side. */
function shares([low, high]: Span, n: number, size: number, between: number, sense: 1 | -1): Span[] {
  return Array.from({ length: n }, (_, i): Span => {
    const from = i * (size + between);
    return sense > 0 ? [low + from, low + from + size] : [high - from - size, high - from];
  });
}
/** Spans of the rows, in order from the part's own low edge, and of the twins, from its own low face. */
export const rowsOf = (g: Ground, s: Rows): Span[] => shares(whole(g, s), s.tenons, s.width, s.between, ownSense(g.enter, 'y'));
export const twinsOf = (g: Ground, s: Placing): Span[] =>
  shares(across(g.enter, s), s.twins ?? 1, s.thickness, s.twin_between ?? 0, ownSense(g.enter, 'x'));
/** Row by row, the twins of each. */
export const tenonsOf = (g: Ground, s: Placing & Rows): Tenon[] => rowsOf(g, s).flatMap((y) => twinsOf(g, s).map((x) => ({ x, y })));

/** How this joint's tenon and a sibling's come together, looked at along the direction square to both. */
export type Crossing = {
  /** The plane that halves the angle between them: the tenon keeps normal·p <= off. */
  readonly mitre: Plane;
  /** Longest square tenon whose end just reaches the sibling's cheek. */
  readonly square: number;
  /** Long and short side of a tenon cut along `mitre`. */
  readonly long: number;
  readonly short: number;
  readonly facing: boolean;
  /** Angle between the two tenons' middle lines where they meet, radians. */
  readonly angle: number;
};
/**
 * Null where the two pass clear of each other, because they enter at different heights or side by side. The sibling's tenon is
 * taken to be set out as this one, from its own part: sizes of siblings are not known here, else each would wait for the other.
 */
export function crossing(g: Ground, s: Placing & Partial<Rows>, sibling: Meeting): Crossing | null {
  const f = sibling.frame;
  const other = sibling.sides['enter']?.[0];
  if (!other) return null;
  const zA: Vec3 = [0, 0, 1];
  const zB = f.z;
  const along = dot(zA, zB);
  if (along > 0.999) return null;
  const [xa, xb] = [across(g.enter, s), across(other, s)];
  const ya: Span =
    s.width !== undefined ? whole(g, { width: s.width, tenons: s.tenons ?? 1, between: s.between ?? 0, drop: s.drop ?? 0 }) : g.y;
  const cB = outPoint(f, [(xb[0] + xb[1]) / 2, 0, 0]);
  const cA: Vec3 = [(xa[0] + xa[1]) / 2, 0, 0];
  const half = (dir: Vec3, frame: { x: Vec3; y: Vec3 }, hx: number, hy: number): number =>
    Math.abs(dot(dir, frame.x)) * hx + Math.abs(dot(dir, frame.y)) * hy;
  const own = { x: [1, 0, 0] as Vec3, y: [0, 1, 0] as Vec3 };
  const yMid: Vec3 = [0, (ya[0] + ya[1]) / 2, 0];
  const bMid = outDir(f, [0, (other.box.min[1] + other.box.max[1]) / 2, 0]);
  const hB = { x: breadth(s) / 2, y: (other.box.max[1] - other.box.min[1]) / 2 };
  const apart = (dir: Vec3): boolean =>
    Math.abs(dot(dir, sub(add(cB, bMid), add(cA, yMid)))) >=
    half(dir, own, breadth(s) / 2, (ya[1] - ya[0]) / 2) + half(dir, f, hB.x, hB.y) - 1e-6;
  if (along < -0.999) {
    if (apart([1, 0, 0]) || apart([0, 1, 0])) return null;
    const mid = f.o[2] / 2;
    return { mitre: { normal: zA, off: mid }, square: mid, long: mid, short: mid, facing: true, angle: Math.PI };
  }
  const w = unit(cross(zA, zB));
  if (apart(w)) return null;
  const uA = unit(cross(w, zA));
  const uB = unit(cross(w, zB));
  const hA = half(uA, own, breadth(s) / 2, (ya[1] - ya[0]) / 2);
  const reach = half(uB, f, hB.x, hB.y);
  const from = add(cA, Math.abs(uA[1]) > 0.5 ? yMid : [0, 0, 0]);
  // Along A's axis to the middle plane of B.
  const to = dot(uB, sub(add(cB, Math.abs(dot(uB, f.y)) > 0.5 ? bMid : [0, 0, 0]), from)) / dot(uB, zA);
  if (to < 0) return null;
  // Tenons that open at more than a right angle meet with their near corners too, unless the other one runs on past this one's line.
  const toOther = dot(uA, sub(from, cB)) / dot(uA, zB);
  const nearCorner = toOther >= to - 1e-6 ? along : Math.abs(along);
  const m = unit(sub(zA, zB));
  const off = dot(m, add(from, scale(zA, to)));
  const lean = (hA * Math.abs(dot(m, uA))) / dot(m, zA);
  return {
    mitre: { normal: m, off },
    square: to - (reach + hA * nearCorner) / Math.abs(dot(uB, zA)),
    long: to + lean,
    short: to - lean,
    facing: false,
    angle: Math.acos(Math.min(1, Math.max(-1, along))),
  };
}
export const crossings = (g: Ground, s: Placing & Partial<Rows>, siblings: readonly Meeting[]): Crossing[] =>
  siblings.flatMap((b) => crossing(g, s, b) ?? []);

/** Clear space left between two mitred tenons, and between a square one and the tenon that it meets, mm. Common practice: they must not hold the shoulders open. */
export const MITRE_SPACE = 1;
