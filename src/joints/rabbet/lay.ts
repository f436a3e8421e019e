/** Where the rabbet lies, in the meeting frame, whichever way the board comes into it. */
import type { Box } from '../../geom/box.ts';
import { type Axis, type Vec3, AXES, axisIndex, axisVec } from '../../geom/vec3.ts';
import { isSquare, ownSense, sharedSpan, sideIn } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { Rabbet } from './params.ts';

export type Span = readonly [number, number];
export type Way = { readonly axis: Axis; readonly sign: 1 | -1 };
/** A board this far inside the other's edge still counts as standing at it: the rabbet runs out to the edge, mm. */
export const NEAR = 3;
/** A measured part may bite this far and still be one that was drawn touching, mm. */
const PROUD = 2;
/** Least wood of the other part beyond the board, mm: without it there is nothing to rabbet. */
const BEHIND = 1;

export type Ground = {
  readonly enter: MeetSide;
  readonly into: MeetSide;
  /** Drawn one in the other: the shared wood is the rabbet. */
  readonly shared: boolean;
  /** Which way the board's edge looks, which way its face that lies in the rabbet looks, and along what the rabbet runs. */
  readonly tip: Way;
  readonly bed: Way;
  readonly run: Axis;
  /** Thickness of the board, of the other part along the tip, and how far that part goes on beyond the board's face at its open edge. */
  readonly board: number;
  readonly deep: number;
  readonly short: number;
  readonly gap: number;
};
export const spanIn = (box: Box, axis: Axis): Span => [box.min[axisIndex(axis)], box.max[axisIndex(axis)]];
const sizeIn = (box: Box, axis: Axis): number => spanIn(box, axis)[1] - spanIn(box, axis)[0];
export const vecOf = (w: Way): Vec3 => axisVec(w.axis, w.sign);
/** The face of a span that looks this way. */
export const faceAt = (s: Span, sign: 1 | -1): number => (sign > 0 ? s[1] : s[0]);
/** How far `outer` goes on beyond `inner` along a way. */
const beyond = (outer: Box, inner: Box, w: Way): number =>
  (faceAt(spanIn(outer, w.axis), w.sign) - faceAt(spanIn(inner, w.axis), w.sign)) * w.sign;

export function ground(m: Meeting): Ground | null {
  const [enter, into] = [sideIn(m, 'enter'), sideIn(m, 'into')];
  if (!isSquare(m) || m.touch === 'gap') return null;
  const thin = AXES.reduce((a, k) => (sizeIn(enter.box, k) < sizeIn(enter.box, a) - 1e-6 ? k : a), 'x' as Axis);
  // A thin board drawn in its rabbet may count as touching by its face, with its thickness biting.
  const shared = m.touch === 'share' || thin === 'z' || m.gap < -PROUD;
  const tip: Way | null = shared ? sharedTip(enter, into, thin) : { axis: 'z', sign: 1 };
  const run = AXES.find((k) => k !== thin && k !== tip?.axis);
  if (!tip || !run || sizeIn(enter.box, thin) < 1e-6) return null;
  const both = sharedSpan(enter.box, into.box, run);
  const bed = bedOf(enter, into, thin);
  const thick = sharedSpan(enter.box, into.box, thin);
  if (!bed || both[1] - both[0] < 1e-3 || thick[1] - thick[0] < 1e-3) return null;
  const short = beyond(into.box, enter.box, { axis: thin, sign: bed.sign > 0 ? -1 : 1 });
  return { enter, into, shared, tip, bed, run, board: sizeIn(enter.box, thin), deep: sizeIn(into.box, tip.axis), short, gap: m.gap };
}
/** Drawn one in the other, the board goes on beyond the shared wood on one side alone: its edge is the opposite one. */
function sharedTip(enter: MeetSide, into: MeetSide, thin: Axis): Way | null {
  const ways = AXES.filter((k) => k !== thin).flatMap((axis): Way[] => {
    const both = sharedSpan(enter.box, into.box, axis);
    const own = spanIn(enter.box, axis);
    const [low, high] = [own[0] < both[0] - BEHIND, own[1] > both[1] + BEHIND];
    return both[1] - both[0] > 1e-3 && low !== high ? [{ axis, sign: low ? 1 : -1 }] : [];
  });
  const [way, other] = ways;
  return way && !other ? way : null;
}
/** The side of the board on which the other part goes on: the rabbet's bed lies there, and its open edge on the other side. */
function bedOf(enter: MeetSide, into: MeetSide, axis: Axis): Way | null {
  const [low, high] = [beyond(into.box, enter.box, { axis, sign: -1 }), beyond(into.box, enter.box, { axis, sign: 1 })];
  const sign = Math.abs(low - high) < 1e-6 ? ownSense(into, axis) : low > high ? -1 : 1;
  return Math.max(low, high) >= BEHIND && Math.min(low, high) > -sizeIn(enter.box, axis) ? { axis, sign } : null;
}

export type Lay = {
  /** What stands in the rabbet, and what is cut for it, as spans of the meeting. */
  readonly board: Box;
  readonly cut: Box;
  /** The face that the board's body comes to: where the rabbet begins along the tip. */
  readonly mouth: number;
  /** The low and the high end of the rabbet: does it stop in the wood there? */
  readonly stopped: readonly [boolean, boolean];
};
/** A box from one span for each axis. */
export const boxBy = (x: Readonly<Record<Axis, Span>>): Box => ({ min: [x.x[0], x.y[0], x.z[0]], max: [x.x[1], x.y[1], x.z[1]] });
const ordered = (a: number, b: number): Span => (a < b ? [a, b] : [b, a]);
export const spans = <V>(g: Ground, tip: V, bed: V, run: V): Record<Axis, V> =>
  ({ [g.tip.axis]: tip, [g.bed.axis]: bed, [g.run]: run }) as Record<Axis, V>;

/** How far the board stands in as drawn; null where the document dimensions it from shoulder to shoulder. */
export function drawnDepth(g: Ground): number | null {
  const both = sharedSpan(g.enter.box, g.into.box, g.tip.axis);
  return g.shared ? both[1] - both[0] : null;
}
export function lay(g: Ground, s: Rabbet): Lay {
  const { tip, bed } = g;
  const own = spanIn(g.enter.box, bed.axis);
  const floor = faceAt(own, bed.sign) - bed.sign * s.inner;
  const lip = faceAt(own, bed.sign > 0 ? -1 : 1) + bed.sign * s.outer;
  const edge = faceAt(spanIn(g.into.box, bed.axis), bed.sign > 0 ? -1 : 1);
  const mouth = g.shared ? faceAt(sharedSpan(g.enter.box, g.into.box, tip.axis), tip.sign > 0 ? -1 : 1) : 0;
  const end = mouth + tip.sign * s.depth;
  const start = mouth + (g.shared ? 0 : g.gap);
  const both = sharedSpan(g.enter.box, g.into.box, g.run);
  const whole = spanIn(g.into.box, g.run);
  const fits = s.ends === 'fits';
  return {
    board: boxBy(spans(g, ordered(mouth, end), ordered(floor, lip), both)),
    cut: boxBy(
      spans(g, ordered(start, start + tip.sign * (s.depth + s.spare)), ordered(floor, s.outer > 0 ? lip : edge), fits ? both : whole),
    ),
    mouth,
    stopped: [fits && both[0] > whole[0] + 1e-6, fits && both[1] < whole[1] - 1e-6],
  };
}
/** Wood of the other part left behind the rabbet, along the tip. */
export const lipLeft = (g: Ground, s: Pick<Rabbet, 'depth' | 'spare'>): number => g.deep - s.depth - s.spare;
