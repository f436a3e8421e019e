/** Where grooves and spline lie, in the meeting frame: x through the thickness, y along the seam, z across it. */
import { alongGrain, isSquare, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { LooseSpline } from './params.ts';

export type Span = readonly [number, number];
export type Ground = {
  readonly enter: MeetSide;
  readonly into: MeetSide;
  readonly x: Span;
  readonly y: Span;
  /** How far each part goes back from the seam. */
  readonly deep: readonly [number, number];
  readonly gap: number;
  /** The seam runs along the grain of both: long edges, else end grain comes to it. */
  readonly edges: boolean;
};
export function ground(m: Meeting): Ground | null {
  const [enter, into] = [sideIn(m, 'enter'), sideIn(m, 'into')];
  const [x, y] = [sharedSpan(enter.box, into.box, 'x'), sharedSpan(enter.box, into.box, 'y')];
  if (!isSquare(m) || m.touch !== 'touch' || x[1] - x[0] < 3 || y[1] - y[0] < 10) return null;
  const size = (s: MeetSide): number => s.box.max[2] - s.box.min[2];
  const along = (s: MeetSide): boolean => alongGrain(s, [0, 1, 0]);
  return { enter, into, x, y, deep: [size(enter), size(into)], gap: m.gap, edges: along(enter) && along(into) };
}
export type Lay = {
  /** Spline and grooves through the thickness and along the seam. */
  readonly x: Span;
  readonly y: Span;
  readonly stopped: readonly [boolean, boolean];
  /** The spline's edges lie this far from the seam, the bottoms of the grooves that far. */
  readonly half: number;
  readonly bottom: number;
};
/** null when `stopped` names no end of the seam. */
export function lay(g: Ground, s: LooseSpline): Lay | null {
  const mid = (g.x[0] + g.x[1]) / 2;
  const sign = s.stopped === 'none' || s.stopped === 'both' ? 0 : signAlong(g.enter, s.stopped, 'y');
  if (sign === null) return null;
  const stopped: readonly [boolean, boolean] = s.stopped === 'none' ? [false, false] : [sign <= 0, sign >= 0];
  return {
    x: [mid - s.thickness / 2, mid + s.thickness / 2],
    y: [g.y[0] + (stopped[0] ? s.stop : 0), g.y[1] - (stopped[1] ? s.stop : 0)],
    stopped,
    half: s.width / 2,
    bottom: s.width / 2 + s.spare,
  };
}
