/** Where the bead lies in the front. Told by the boxes alone: which way the meeting's axes run does not matter. */
import type { Box } from '../../geom/box.ts';
import { AXES, type Axis, axisIndex, axisVec } from '../../geom/vec3.ts';
import { alongGrain, boxOf, isSquare, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { CockBead } from './params.ts';

export type Span = readonly [number, number];
export type Sign = 1 | -1;
/** Slack in comparing where two boxes end, mm. */
const NEAR = 1e-3;
export type Ground = {
  readonly bead: MeetSide;
  readonly front: MeetSide;
  /** Along the bead, through the front's thickness, and across its edge. */
  readonly along: Axis;
  readonly deep: Axis;
  readonly edge: Axis;
  /** Which way along `deep` the bead stands proud, and along `edge` out of the front. */
  readonly face: Sign;
  readonly out: Sign;
  readonly thick: number;
  readonly proud: number;
  /** What the two share along each axis of the meeting. */
  readonly shared: Readonly<Record<Axis, Span>>;
  /** Wood of the front left behind the rabbet; 0 where it runs through. */
  readonly behind: number;
};
export function ground(m: Meeting): Ground | null {
  const [bead, front] = [sideIn(m, 'bead'), sideIn(m, 'front')];
  if (!isSquare(m)) return null;
  const shared = {
    x: sharedSpan(bead.box, front.box, 'x'),
    y: sharedSpan(bead.box, front.box, 'y'),
    z: sharedSpan(bead.box, front.box, 'z'),
  };
  const along = AXES.find((a) => alongGrain(bead, axisVec(a)));
  if (!along || AXES.some((a) => shared[a][1] - shared[a][0] < NEAR)) return null;
  const [a, b] = AXES.filter((x) => x !== along) as [Axis, Axis];
  return assigned(bead, front, shared, along, a, b) ?? assigned(bead, front, shared, along, b, a);
}
function assigned(bead: MeetSide, front: MeetSide, shared: Ground['shared'], along: Axis, deep: Axis, edge: Axis): Ground | null {
  const [d, e] = [axisIndex(deep), axisIndex(edge)];
  const beyond = (i: 0 | 1 | 2): Span => [front.box.min[i] - bead.box.min[i], bead.box.max[i] - front.box.max[i]];
  const [proud, outward] = [beyond(d), beyond(e)];
  const face = proud[1] > NEAR && proud[0] <= NEAR ? 1 : proud[0] > NEAR && proud[1] <= NEAR ? -1 : 0;
  const out = outward[1] >= -NEAR && outward[0] < -NEAR ? 1 : outward[0] >= -NEAR && outward[1] < -NEAR ? -1 : 0;
  if (face === 0 || out === 0) return null;
  const behind = face > 0 ? -proud[0] : -proud[1];
  return {
    bead,
    front,
    along,
    deep,
    edge,
    face,
    out,
    thick: bead.box.max[e] - bead.box.min[e],
    proud: face > 0 ? proud[1] : proud[0],
    shared,
    behind: behind < NEAR ? 0 : behind,
  };
}
/** Does the bead run across the grain of the front? */
export const isCrossed = (g: Ground): boolean => !alongGrain(g.front, axisVec(g.along));
/** Is the bead mitred at the low and at the high end of its length; null where the word names no end of it. */
export function mitres(g: Ground, s: Pick<CockBead, 'mitred'>): readonly [boolean, boolean] | null {
  if (s.mitred === 'none' || s.mitred === 'both') return [s.mitred === 'both', s.mitred === 'both'];
  const sign = signAlong(g.bead, s.mitred, g.along);
  return sign === null ? null : [sign < 0, sign > 0];
}
/** The face, edge or end of a box on an axis, the way that `sign` looks. */
export const end = (b: Box, axis: Axis, sign: Sign): number => (sign > 0 ? b.max : b.min)[axisIndex(axis)];
/** A box from its spans along the three axes. */
export function boxFrom(at: Readonly<Record<Axis, Span>>): Box {
  return boxOf(at.x[0], at.x[1], at.y[0], at.y[1], at.z[0], at.z[1]);
}
export const ordered = (a: number, b: number): Span => [Math.min(a, b), Math.max(a, b)];
