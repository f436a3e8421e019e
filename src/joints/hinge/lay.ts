/** Where hinges lie in the meeting frame: y along the door, x in from the face with the knuckle, z from the door over the gap. */
import { type Face } from '../../model/ids.ts';
import { axisVec } from '../../geom/vec3.ts';
import { faceToward, isSquare, ownSense, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { Hinge } from './params.ts';

export type Span = readonly [number, number];
export type Ground = {
  readonly enter: MeetSide;
  readonly into: MeetSide;
  readonly y: Span;
  /** Where the door's face stands with the knuckle, and which way along x leads in from it. */
  readonly face: number;
  readonly inward: 1 | -1;
  readonly side: Face;
  /** The face of the part that it hangs on, on the same side, and how far the two fail to be flush. */
  readonly other: number;
  /** How far in both parts reach, from the door's face. */
  readonly deep: number;
  /** Thickness of each part behind its recess. */
  readonly behind: number;
  readonly gap: number;
};
/** Faces farther from flush than this leave the knuckle no room, mm. */
export const FLUSH = 2;

export function ground(m: Meeting, side: Face | undefined): Ground | null {
  const enter = sideIn(m, 'enter');
  const into = sideIn(m, 'into');
  const y = sharedSpan(enter.box, into.box, 'y');
  const x = sharedSpan(enter.box, into.box, 'x');
  if (!isSquare(m) || y[1] - y[0] < 1e-6 || x[1] - x[0] < 1e-6) return null;
  const word = side ?? bestSide(enter, into);
  const sign = signAlong(enter, word, 'x');
  if (sign === null) return null;
  const edge = (s: MeetSide): number => (sign > 0 ? s.box.max[0] : s.box.min[0]);
  const face = edge(enter);
  return {
    enter,
    into,
    y,
    face,
    inward: sign > 0 ? -1 : 1,
    side: word,
    other: edge(into),
    deep: sign > 0 ? face - x[0] : x[1] - face,
    behind: Math.min(enter.box.max[2] - enter.box.min[2], into.box.max[2] - into.box.min[2]),
    gap: m.gap,
  };
}
/** The side on which both are most nearly flush; of two alike the door's face side, and then its own low side. */
function bestSide(enter: MeetSide, into: MeetSide): Face {
  const off = (sign: 1 | -1): number =>
    sign > 0 ? Math.abs(enter.box.max[0] - into.box.max[0]) : Math.abs(enter.box.min[0] - into.box.min[0]);
  const toward = (sign: 1 | -1): Face => faceToward(enter, axisVec('x', sign));
  if (Math.abs(off(1) - off(-1)) > 1e-6) return toward(off(1) < off(-1) ? 1 : -1);
  const mark = enter.marks['face']?.normal[0] ?? 0;
  if (Math.abs(mark) > 0.99) return toward(mark > 0 ? 1 : -1);
  return toward(ownSense(enter, 'x') > 0 ? -1 : 1);
}
/** Low ends of the hinges along y, in order from the door's own low end. */
export function starts(g: Ground, s: Pick<Hinge, 'count' | 'inset' | 'length'>): number[] {
  const [a, b] = [g.y[0] + s.inset, g.y[1] - s.inset - s.length];
  const all = Array.from({ length: s.count }, (_, k) => (s.count === 1 ? (a + b) / 2 : a + ((b - a) * k) / (s.count - 1)));
  return ownSense(g.enter, 'y') > 0 ? all : all.toReversed();
}
/** The leaf across x, from the door's face inward; and from the other part's face. */
export const leafSpan = (g: Ground, s: Pick<Hinge, 'wide'>, from: number = g.face): Span => {
  const to = g.face + g.inward * s.wide;
  return from < to ? [from, to] : [to, from];
};
