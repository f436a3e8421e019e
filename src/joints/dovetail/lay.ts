/** Where tails and pins lie: first the corner that both boards share, then the widths along it. */
import type { Meeting, MeetSide } from '../meeting.ts';
import { isSquare, ownSense, sharedSpan, sideIn } from '../blocks.ts';
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
  /** How far one board's end fails to be flush with the other's outer face, mm. */
  readonly proud: number;
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
  const proud = Math.max(Math.abs(endGap), Math.abs(tails.box.max[2] - pins.box.max[2]));
  return { tails, pins, x, y, z, inward, proud };
}

/** One tail across the width, counted from the low end of the tail board's own axis: where its wide outer end lies, mm. */
export type Tail = { readonly low: number; readonly high: number };
export type Layout = { readonly tails: readonly Tail[]; readonly width: number; readonly rise: number };
export type Wish = Pick<Dovetail, 'tails' | 'pin' | 'half_pin'> & {
  readonly width: number;
  readonly rise: number;
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
  const even = spread(w.tails, w.half_pin, w.width - w.half_pin, w.pin);
  const done = (tails: readonly Tail[]): Layout => ({ tails, width: w.width, rise: w.rise });
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
  const ends: Span = [i === 0 ? t.low : w.half_pin, i === w.tails - 1 ? t.high : w.width - w.half_pin];
  const least = w.keepHalf ? w.half_pin : LEAST_HALF;
  if (ends[0] < least - 1e-9 || w.width - ends[1] < least - 1e-9) return null;
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
export const layoutFor = (c: Corner, s: Dovetail, keepHalf: boolean): Layout | null =>
  layOut(
    { tails: s.tails, pin: s.pin, half_pin: s.half_pin, width: c.y[1] - c.y[0], rise: (c.z[1] - c.z[0]) * s.slope, keepHalf },
    grooveOf(c, s),
  );
