/** Where bolts, nuts and stub tenons lie. The meeting's z runs out of the rail's end through the post. */
import { axisVec } from '../../geom/vec3.ts';
import { alongGrain, faceToward, isSquare, ownSense, sideIn, signAlong } from '../blocks.ts';
import type { Face } from '../../model/ids.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { BedBolt } from './params.ts';

export type Span = readonly [number, number];
export type Ground = {
  readonly rail: MeetSide;
  readonly post: MeetSide;
  /** The rail's thickness (x) and width (y). */
  readonly x: Span;
  readonly y: Span;
  readonly thick: number;
  readonly wide: number;
  /** Thickness of the post along the bolt. */
  readonly deep: number;
  readonly gap: number;
};
export function ground(m: Meeting): Ground | null {
  const [rail, post] = [sideIn(m, 'rail'), sideIn(m, 'post')];
  if (!isSquare(m) || !alongGrain(rail, axisVec('z'))) return null;
  const x: Span = [rail.box.min[0], rail.box.max[0]];
  const y: Span = [rail.box.min[1], rail.box.max[1]];
  // The bolt goes through the middle of the rail: the post must be there.
  const mid = middleOf(x);
  if (post.box.min[0] > mid - 6 || post.box.max[0] < mid + 6) return null;
  return { rail, post, x, y, thick: x[1] - x[0], wide: y[1] - y[0], deep: post.box.max[2] - post.box.min[2], gap: m.gap };
}
export const middleOf = (s: Span): number => (s[0] + s[1]) / 2;
/** The bolts' y, numbered along the rail's own axis. */
export function boltYs(g: Ground, s: Pick<BedBolt, 'count' | 'apart' | 'off'>): number[] {
  const sense = ownSense(g.rail, 'y');
  return Array.from({ length: s.count }, (_, n) => middleOf(g.y) + sense * (s.off + (n - (s.count - 1) / 2) * s.apart));
}
/** The spans of the two stub tenons along y. */
export function stubs(g: Ground, s: Pick<BedBolt, 'stub' | 'stub_width' | 'stub_off'>): Span[] {
  if (s.stub <= 0) return [];
  const sense = ownSense(g.rail, 'y');
  return ([-1, 1] as const).map((side) => {
    const mid = middleOf(g.y) + sense * side * s.stub_off;
    return [mid - s.stub_width / 2, mid + s.stub_width / 2];
  });
}
export const stubThick = (g: Ground): number => g.thick / 3;
/** Which way along x the face that takes the nuts looks; null when the word names another face. */
export const nutSign = (g: Ground, s: Pick<BedBolt, 'from'>): 1 | -1 | null => signAlong(g.rail, s.from, 'x');
/** The mark 'inner' of the rail where it has one, else the low side of its own thickness. */
export function innerFace(g: Ground): Face {
  const mark = g.rail.marks['inner']?.normal[0] ?? 0;
  const sign = Math.abs(mark) > 0.99 ? Math.sign(mark) : -ownSense(g.rail, 'x');
  return faceToward(g.rail, [sign, 0, 0]);
}
/** Along the bolt a square nut takes its thickness, a barrel its diameter. */
export const nutAlong = (s: Pick<BedBolt, 'nut' | 'nut_size' | 'nut_long'>): number => (s.nut === 'square' ? s.nut_long : s.nut_size);
/** Across the rail a square nut takes its width, a barrel its length. */
export const nutAcross = (s: Pick<BedBolt, 'nut' | 'nut_size' | 'nut_long'>): number => (s.nut === 'square' ? s.nut_size : s.nut_long);
/** z of the seat under the head, and how far the tip goes into the rail. */
export const seatZ = (g: Ground, s: Pick<BedBolt, 'sink'>): number => g.gap + g.deep - s.sink;
export const tipIn = (g: Ground, s: Pick<BedBolt, 'sink' | 'length'>): number => s.length - seatZ(g, s);
/** Heads with their washers, as remembered: about 2.1 of the bolt wide, 0.85 high. */
export const headWide = (d: number): number => 2.1 * d;
export const headHigh = (d: number): number => 0.85 * d;
