/** Where tails and pins lie: first the corner that both boards share, then the widths along it. */
import type { Meeting, MeetSide } from '../meeting.ts';
import { faceToward, isSquare, ownSense, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Dovetail } from './params.ts';

export type Span = readonly [number, number];
/** A measured board may stand this far proud or short of the other's face and still be this joint, mm. */
export const FLUSH = 2;
/** The narrowest a tail may be at its base line, and a half pin at the outer face, mm: less cannot be cut. */
export const LEAST_TAIL = 2;
export const LEAST_HALF = 1.5;

export type Corner = {
  readonly tails: MeetSide;
  readonly pins: MeetSide;
  /** Thickness of the tail board, the shared width, thickness of the pin board; all in the meeting frame. */
  readonly x: Span;
  readonly y: Span;
  readonly z: Span;
  /** Which way along x the pin board runs on from the corner. */
  readonly inward: 1 | -1;
  /** How far one board's end stands out of the other's outer face, or the pin board's end falls short of it, mm. */
  readonly proud: number;
  /** How far the tail board stops short of the pin board's outer face, mm: the lap as the boards lie. */
  readonly short: number;
  /** Wood of the pin board left before the ends of the tails, mm; 0 where they come through. */
  readonly lap: number;
};
/** The shared corner; null when the boards do not share one squarely. */
export function corner(m: Meeting): Corner | null {
  const tails = sideIn(m, 'tails');
  const pins = sideIn(m, 'pins');
  const [x, y, z] = [sharedSpan(tails.box, pins.box, 'x'), sharedSpan(tails.box, pins.box, 'y'), sharedSpan(tails.box, pins.box, 'z')];
  if (!isSquare(m) || [x, y, z].some((s) => s[1] - s[0] < 1e-3)) return null;
  const beyond: Span = [tails.box.min[0] - pins.box.min[0], pins.box.max[0] - tails.box.max[0]];
  const inward = beyond[1] >= beyond[0] ? 1 : -1;
  const endGap = inward > 0 ? pins.box.min[0] - tails.box.min[0] : tails.box.max[0] - pins.box.max[0];
  const short = pins.box.max[2] - tails.box.max[2];
  return { tails, pins, x, y, z, inward, proud: Math.max(Math.abs(endGap), -short), short, lap: 0 };
}
/** The corner as it is cut with a lap: the tails end there, whether the tail board does or is cut off. */
export const lapped = (c: Corner, lap: number): Corner => (lap > 0 ? { ...c, lap, z: [c.z[0], c.pins.box.max[2] - lap] } : c);
/** The lap that the boards ask for by the way they lie: none where the tail board comes through. */
export const lapOf = (c: Corner): number => (c.short > FLUSH ? c.short : 0);
/** The shared width without its mitred edges, counted from the low end of the tail board's own axis; null when `mitre` names no edge of the corner. */
export function between(c: Corner, s: Pick<Dovetail, 'mitre' | 'mitre_width'>): Span | null {
  const width = c.y[1] - c.y[0];
  if (s.mitre === 'none') return [0, width];
  if (s.mitre === 'both') return [s.mitre_width, width - s.mitre_width];
  const sign = signAlong(c.tails, s.mitre, 'y');
  if (sign === null) return null;
  return sign === ownSense(c.tails, 'y') ? [0, width - s.mitre_width] : [s.mitre_width, width];
}

/** One tail across the width, counted from the low end of the tail board's own axis: where its wide outer end lies, mm. */
export type Tail = { readonly low: number; readonly high: number };
export type Layout = {
  readonly tails: readonly Tail[];
  readonly width: number;
  readonly rise: number;
  /** Where the outer half pins begin and end: the edges of the boards, or the inner ends of their mitres. */
  readonly edges: Span;
};
export type Wish = Pick<Dovetail, 'tails' | 'pin' | 'half_pin'> & {
  readonly width: number;
  readonly rise: number;
  readonly edges: Span;
  readonly keepHalf: boolean;
};

const spread = (n: number, low: number, high: number, pin: number): Tail[] => {
  const size = (high - low - (n - 1) * pin) / n;
  return Array.from({ length: n }, (_, i) => ({ low: low + i * (size + pin), high: low + i * (size + pin) + size }));
};
const holds = (t: Tail, rise: number, groove: Span): boolean => t.low + rise <= groove[0] + 1e-9 && t.high - rise >= groove[1] - 1e-9;
const allCut = (tails: readonly Tail[], rise: number): boolean => tails.every((t) => t.high - t.low - 2 * rise >= LEAST_TAIL - 1e-9);

/**
 * Equal tails between half pins; with a groove to cover, the pin nearest to it is moved aside by the least amount that covers it
 * and the tails on each side of it are spread anew. null when no tail can be laid so.
 */
function layOut(w: Wish, groove: Span | null): Layout | null {
  const even = spread(w.tails, w.edges[0] + w.half_pin, w.edges[1] - w.half_pin, w.pin);
  const done = (tails: readonly Tail[]): Layout => ({ tails, width: w.width, rise: w.rise, edges: w.edges });
  if (allCut(even, w.rise) && (!groove || even.some((t) => holds(t, w.rise, groove)))) return done(even);
  if (!groove) return null;
  let best: { tails: readonly Tail[]; moved: number } | null = null;
  for (const [i, t] of even.entries()) {
    const low = Math.min(t.low, groove[0] - w.rise);
    const high = Math.max(t.high, groove[1] + w.rise);
    const tails = around(w, i, { low, high });
    const moved = t.low - low + (high - t.high);
    if (tails && (!best || moved < best.moved - 1e-9)) best = { tails, moved };
  }
  return best && done(best.tails);
}
/** Tail i where it must be, the others spread between it and the half pins. */
function around(w: Wish, i: number, t: Tail): readonly Tail[] | null {
  const ends: Span = [i === 0 ? t.low : w.edges[0] + w.half_pin, i === w.tails - 1 ? t.high : w.edges[1] - w.half_pin];
  const least = w.keepHalf ? w.half_pin : LEAST_HALF;
  if (ends[0] - w.edges[0] < least - 1e-9 || w.edges[1] - ends[1] < least - 1e-9) return null;
  const tails = [
    ...(i > 0 ? spread(i, ends[0], t.low - w.pin, w.pin) : []),
    t,
    ...(i < w.tails - 1 ? spread(w.tails - 1 - i, t.high + w.pin, ends[1], w.pin) : []),
  ];
  return allCut(tails, w.rise) ? tails : null;
}

/** From the meeting's y to a distance from the low edge of the shared width, along the tail board's own axis, and back. */
export function ruler(c: Corner): { readonly from: (y: number) => number; readonly to: (u: number) => number } {
  const up = ownSense(c.tails, 'y') > 0;
  return up ? { from: (y) => y - c.y[0], to: (u) => u + c.y[0] } : { from: (y) => c.y[1] - y, to: (u) => c.y[1] - u };
}
export function grooveOf(c: Corner, s: Pick<Dovetail, 'tail_over' | 'over_size'>): Span | null {
  if (s.tail_over === null) return null;
  const u = ruler(c).from(s.tail_over);
  return [u - s.over_size / 2, u + s.over_size / 2];
}
/** `c` is the corner as it is cut, its lap taken off. null when no tails can be laid so. */
export function layoutFor(c: Corner, s: Dovetail, keepHalf: boolean): Layout | null {
  const [width, rise] = [c.y[1] - c.y[0], (c.z[1] - c.z[0]) * s.slope];
  const edges = between(c, s);
  return edges && layOut({ tails: s.tails, pin: s.pin, half_pin: s.half_pin, width, rise, edges, keepHalf }, grooveOf(c, s));
}
export type Drawn = { readonly c: Corner; readonly l: Layout };

/** The mitred edges: which edge of the tail board, and the span of the width that each takes, along its own axis. */
export type Mitre = { readonly name: string; readonly at: 'low' | 'high'; readonly span: Span };
export function mitres({ c, l }: Drawn): Mitre[] {
  const up = ruler(c).to(1) > ruler(c).to(0) ? 1 : -1;
  const one = (at: 'low' | 'high', span: Span): Mitre[] =>
    span[1] - span[0] > 1e-9 ? [{ name: `mitre ${faceToward(c.tails, [0, at === 'high' ? up : -up, 0])}`, at, span }] : [];
  return [...one('low', [0, l.edges[0]]), ...one('high', [l.edges[1], l.width])];
}
