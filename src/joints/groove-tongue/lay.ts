/** Where tongue and groove lie, in the meeting frame: x through the panel's thickness, y along the groove. */
import { isWood } from '../../wood/woods.ts';
import { alongGrain, isSquare, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { GrooveTongue } from './params.ts';

export type Span = readonly [number, number];
export type Ground = {
  readonly enter: MeetSide;
  readonly into: MeetSide;
  /** The panel's thickness. */
  readonly x: Span;
  /** The length over which the panel's edge lies on the framed part. */
  readonly y: Span;
  /** Thickness of the framed part behind the groove, and across it. */
  readonly behind: number;
  readonly across: number;
  readonly gap: number;
  /** The panel is wood that swells towards this groove. */
  readonly swells: boolean;
  /** Size of the panel across its own grain in its plane, mm. */
  readonly width: number;
  /** Two boards of one thickness, edge to edge along one grain. */
  readonly alike: boolean;
};
/** Boards that differ in thickness by less than this share are alike. */
const ALIKE = 0.1;
export function ground(m: Meeting): Ground | null {
  const enter = sideIn(m, 'enter');
  const into = sideIn(m, 'into');
  const y = sharedSpan(enter.box, into.box, 'y');
  if (!isSquare(m) || y[1] - y[0] < 1e-6) return null;
  const size = (s: MeetSide, i: 0 | 1 | 2): number => s.box.max[i] - s.box.min[i];
  const swells = isWood(enter.wood) && !alongGrain(enter, [0, 0, 1]);
  return {
    enter,
    into,
    x: [enter.box.min[0], enter.box.max[0]],
    y,
    behind: size(into, 2),
    across: size(into, 0),
    gap: m.gap,
    swells,
    width: swells ? size(enter, 2) : size(enter, 1),
    alike:
      swells &&
      isWood(into.wood) &&
      alongGrain(enter, [0, 1, 0]) &&
      alongGrain(into, [0, 1, 0]) &&
      Math.abs(size(enter, 0) - size(into, 0)) < ALIKE * size(into, 0) &&
      size(into, 2) > size(into, 0),
  };
}
/** Wood whose movement comes to this seam: the panel alone where a frame stays put, both boards where they lie edge to edge. */
export const moving = (g: Ground, s: Pick<GrooveTongue, 'joins'>): number =>
  s.joins === 'boards' ? g.width + (g.into.box.max[2] - g.into.box.min[2]) : g.width;
/** The tongue across the panel's thickness; null when `bare` names no face of the panel beside this edge. */
export function tongueAcross(g: Ground, s: Pick<GrooveTongue, 'tongue' | 'bare'>): Span | null {
  const mid = (g.x[0] + g.x[1]) / 2;
  if (s.bare === 'none') return [mid - s.tongue / 2, mid + s.tongue / 2];
  const sign = signAlong(g.enter, s.bare, 'x');
  return sign === null ? null : sign > 0 ? [g.x[1] - s.tongue, g.x[1]] : [g.x[0], g.x[0] + s.tongue];
}
export type Lay = {
  readonly x: Span;
  /** Tongue and groove along the edge. */
  readonly tongue: Span;
  readonly groove: Span;
  /** The part of the tongue that stands on the panel itself; beyond it, it runs round the corners. */
  readonly root: Span;
  readonly long: number;
  readonly open: readonly [boolean, boolean];
};
/** Does a word for ends (a face, both or all, none) mean the end of y on this side? */
const means = (side: MeetSide, word: string, sign: 1 | -1): boolean =>
  word === 'both' || word === 'all' || (word !== 'none' && signAlong(side, word, 'y') === sign);

export function lay(g: Ground, s: GrooveTongue): Lay | null {
  const x = tongueAcross(g, s);
  if (!x) return null;
  const long = s.depth - s.spare;
  const low = end(g, s, -1, long);
  const high = end(g, s, 1, long);
  const tongue: Span = [low.tongue, high.tongue];
  const root: Span = [Math.max(tongue[0], g.y[0]), Math.min(tongue[1], g.y[1])];
  return { x, tongue, groove: [low.groove, high.groove], root, long, open: [low.open, high.open] };
}
/** One end of tongue and groove; worked outward from the middle so that both ends follow one rule. */
function end(g: Ground, s: GrooveTongue, sign: 1 | -1, long: number): { tongue: number; groove: number; open: boolean } {
  const out = (y: number): number => y * sign;
  const edge = out(sign > 0 ? g.y[1] : g.y[0]);
  const limit = out(sign > 0 ? g.into.box.max[1] : g.into.box.min[1]);
  const wanted = edge + (means(g.enter, s.corners, sign) ? long : 0);
  const play = s.hold === 'loose' ? s.spare : 0;
  if (!means(g.into, s.stopped, sign)) return { tongue: out(wanted), groove: out(limit), open: true };
  const groove = s.stop > 0 ? limit - s.stop : Math.min(limit, wanted + play);
  return { tongue: out(Math.min(wanted, groove - play)), groove: out(groove), open: groove >= limit - 1e-6 };
}
