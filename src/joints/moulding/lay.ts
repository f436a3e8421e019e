/** Where glue, slots and keys lie. In the meeting y runs along the moulding, x across it, z out of its back into the side. */
import type { Face } from '../../model/ids.ts';
import { isWood } from '../../wood/woods.ts';
import { alongGrain, faceToward, isSquare, ownSense, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { Moulding } from './params.ts';

export type Span = readonly [number, number];
/** How much wider than a screw its slot is, and how much deeper than a key its groove, mm. */
export const EASY = 0.5;
export type Ground = {
  readonly moulding: MeetSide;
  readonly side: MeetSide;
  readonly x: Span;
  /** What the two share along the moulding. */
  readonly run: Span;
  readonly high: number;
  /** Thickness of the moulding, and of the side where it lies. */
  readonly deep: number;
  readonly thick: number;
  readonly gap: number;
  /** Does the side move along the moulding? */
  readonly crossed: boolean;
};
export function ground(m: Meeting): Ground | null {
  const [moulding, side] = [sideIn(m, 'moulding'), sideIn(m, 'side')];
  const [x, run] = [sharedSpan(moulding.box, side.box, 'x'), sharedSpan(moulding.box, side.box, 'y')];
  if (!isSquare(m) || !alongGrain(moulding, [0, 1, 0]) || x[1] - x[0] < 5 || run[1] - run[0] < 20) return null;
  return {
    moulding,
    side,
    x,
    run,
    high: x[1] - x[0],
    deep: -moulding.box.min[2],
    thick: side.box.max[2] - m.gap,
    gap: m.gap,
    crossed: isWood(side.wood) && !alongGrain(side, [0, 1, 0]),
  };
}
/** The moulding's front end where nothing is said: its front, else the end that stands past the side for a mitre, else its own high end. */
export function frontOf(g: Ground): Face {
  if (signAlong(g.moulding, 'front', 'y') !== null) return 'front';
  const past: Span = [g.run[0] - g.moulding.box.min[1], g.moulding.box.max[1] - g.run[1]];
  const sign = Math.abs(past[1] - past[0]) < 1e-6 ? ownSense(g.moulding, 'y') : past[1] > past[0] ? 1 : -1;
  return faceToward(g.moulding, [0, sign, 0]);
}
export type Laid = {
  readonly g: Ground;
  readonly s: Moulding;
  /** Which way along y the front end looks. */
  readonly ahead: 1 | -1;
  /** Where moulding and side touch once the mitres are cut: from the front end back. */
  readonly from: number;
  readonly long: number;
  /** Length that is glued. */
  readonly glued: number;
  readonly mitres: readonly (1 | -1)[];
};
export function layOut(g: Ground, s: Moulding): Laid {
  const ahead = signAlong(g.moulding, s.front, 'y');
  if (ahead === null) throw new Error(`"${s.front}" is not an end of the moulding: propose refuses it`);
  const mitres: (1 | -1)[] = s.mitred === 'none' ? [] : s.mitred === 'front' ? [ahead] : [ahead, -ahead as 1 | -1];
  const end = (sign: 1 | -1): number => {
    const [own, shared] = sign > 0 ? [g.moulding.box.max[1], g.run[1]] : [g.moulding.box.min[1], g.run[0]];
    const inner = mitres.includes(sign) ? own - sign * g.deep : own;
    return sign > 0 ? Math.min(inner, shared) : Math.max(inner, shared);
  };
  const [from, to] = [end(ahead), end(-ahead as 1 | -1)];
  const long = (from - to) * ahead;
  return { g, s, ahead, from, long, glued: s.hold === 'glued' ? long : Math.min(s.glued, long), mitres };
}
/** y at a distance from the front end back. */
export const yAt = (l: Laid, back: number): number => l.from - l.ahead * back;
export const spanY = (l: Laid, a: number, b: number): Span => {
  const [p, q] = [yAt(l, a), yAt(l, b)];
  return p < q ? [p, q] : [q, p];
};
export const middleX = (g: Ground): number => (g.x[0] + g.x[1]) / 2;
/** Half of what a screw or key takes along the moulding. */
export const halfOf = (s: Moulding): number => (s.hold === 'keys' ? s.key_long / 2 : (s.screw + EASY) / 2 + s.room);
/** Distances of screws or keys from the front end: the first just behind the glue, the last at its inset. */
export function spots(l: Laid): number[] {
  const { s } = l;
  const first = s.glued + halfOf(s) + s.room + 5;
  const last = l.long - s.inset;
  return Array.from({ length: s.count }, (_, k) => (s.count === 1 ? last : first + ((last - first) * k) / (s.count - 1)));
}
/** How deep the screws go: into the moulding, or past the key into the side. */
export const bite = (g: Ground, s: Moulding): number => s.screw_length - (s.hold === 'keys' ? s.key_deep : g.thick + g.gap);
/** Half of a key's width at a depth below the side's face. */
export const halfKey = (s: Moulding, depth: number): number => s.key_wide / 2 - (s.key_deep - depth) * s.slope;
/** How far the side moves against the glued end, each way, at the farthest screw or key. */
export const SHARE = 1 / 96;
export const moves = (l: Laid): number => (l.g.crossed ? Math.max(0, l.long - l.s.inset - l.s.glued / 2) * SHARE : 0);
