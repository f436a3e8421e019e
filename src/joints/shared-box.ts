/**
 * The volume that two parts share square to each other, and how each part goes on from it: what laps, mitres, fingers and scarfs are
 * laid out from. All in the meeting frame.
 *
 *        │ b │           a goes on to the left only, b up only: a corner.
 *        │   │           With a on both sides too: a tee; both on both sides: a cross.
 *   ─────┼───┤
 *     a  │ S │
 *   ─────┴───┘
 */
import type { Box } from '../geom/box.ts';
import { type Axis, type Vec2, AXES, axisIndex, axisVec } from '../geom/vec3.ts';
import type { Feature, FeatureOp } from '../model/record.ts';
import { type FlatPatch, alongGrain, isSquare, sharedSpan, sideIn } from './blocks.ts';
import { swept } from './features.ts';
import type { Meeting, MeetSide, Polygon } from './meeting.ts';

export type Span = readonly [number, number];
/** A measured part may stand this far proud or short of the other's face and count as flush with it, mm. */
export const FLUSH = 2;

/** Whether the part goes on beyond the shared volume, by axis: at its low and at its high side. */
export type Beyond = Readonly<Record<Axis, readonly [boolean, boolean]>>;
export type Sharer = { readonly role: string; readonly side: MeetSide; readonly on: Beyond };
export type SharedBox = { readonly box: Box; readonly a: Sharer; readonly b: Sharer };

/** The shared volume of the parts in two roles; null when they stand aslant or share none. */
export function sharedBox(m: Meeting, roleA: string, roleB: string): SharedBox | null {
  const [a, b] = [sideIn(m, roleA), sideIn(m, roleB)];
  const [x, y, z] = [sharedSpan(a.box, b.box, 'x'), sharedSpan(a.box, b.box, 'y'), sharedSpan(a.box, b.box, 'z')];
  if (!isSquare(m) || [x, y, z].some((s) => s[1] - s[0] < 1e-3)) return null;
  const box: Box = { min: [x[0], y[0], z[0]], max: [x[1], y[1], z[1]] };
  return { box, a: { role: roleA, side: a, on: beyondOf(a, box) }, b: { role: roleB, side: b, on: beyondOf(b, box) } };
}
function beyondOf(side: MeetSide, box: Box): Beyond {
  const on = (i: 0 | 1 | 2): readonly [boolean, boolean] => [side.box.min[i] < box.min[i] - FLUSH, side.box.max[i] > box.max[i] + FLUSH];
  return { x: on(0), y: on(1), z: on(2) };
}
export const spanOf = (box: Box, axis: Axis): Span => [box.min[axisIndex(axis)], box.max[axisIndex(axis)]];
export const sizeAlong = (box: Box, axis: Axis): number => box.max[axisIndex(axis)] - box.min[axisIndex(axis)];
/** The span along an axis that a cut in this part takes: the shared one, run out to the part's own face where that is flush with it. */
export function reachAlong(p: Sharer, box: Box, axis: Axis): Span {
  const [own, both] = [spanOf(p.side.box, axis), spanOf(box, axis)];
  return [p.on[axis][0] ? both[0] : Math.min(own[0], both[0]), p.on[axis][1] ? both[1] : Math.max(own[1], both[1])];
}
/** The one way along an axis that the part goes on: -1 low, 1 high; null when on neither or on both sides. */
export const oneWay = (p: Sharer, axis: Axis): 1 | -1 | null => (p.on[axis][0] === p.on[axis][1] ? null : p.on[axis][1] ? 1 : -1);
/** The axes along which the part goes on at either side. */
export const runsAlong = (p: Sharer): Axis[] => AXES.filter((k) => p.on[k][0] || p.on[k][1]);
/** How many of the two parts have their grain square to the axis. */
export const grainsAcross = (s: SharedBox, axis: Axis): number => [s.a, s.b].filter((p) => !alongGrain(p.side, axisVec(axis))).length;

/** The two axes other than this one, in order. */
export const othersOf = (axis: Axis): readonly [Axis, Axis] => (axis === 'x' ? ['y', 'z'] : axis === 'y' ? ['x', 'z'] : ['x', 'y']);
const PLANE = { x: 'yz', y: 'xz', z: 'xy' } as const;
/** A point in the plane across an axis from its coordinates on the two other axes, given by name. */
export const flatPoint = (axis: Axis, u: Axis, at: number, other: number): Vec2 => (othersOf(axis)[0] === u ? [at, other] : [other, at]);
/** An outline in the plane across `axis` (points by `flatPoint`), swept along it. */
export const sweptAlong = (
  axis: Axis,
  name: string,
  op: FeatureOp,
  outline: Polygon,
  span: Span,
  sides: readonly (string | null)[],
  ends?: readonly [string, string],
): Feature => swept(name, op, PLANE[axis], outline, span[0], span[1], sides, ends);
/** An outline in the plane across `axis` as a patch that looks along it. */
export function patchAcross(axis: Axis, sign: 1 | -1, at: number, outline: Polygon): FlatPatch {
  const [u, v] = othersOf(axis);
  const o = axis === 'x' ? ([at, 0, 0] as const) : axis === 'y' ? ([0, at, 0] as const) : ([0, 0, at] as const);
  return { frame: { o, x: axisVec(u), y: axisVec(v), z: axisVec(axis, sign) }, patch: outline };
}
