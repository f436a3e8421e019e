/** Where mitre, spline and blocks lie. In the meeting z runs out of the front bracket's end, x through its thickness and y up or down its height. */
import { type Vec2, type Vec3, scale, unit } from '../../geom/vec3.ts';
import { isWood } from '../../wood/woods.ts';
import { alongGrain, isSquare, sharedSpan, sideIn } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { BracketFoot } from './params.ts';

export type Span = readonly [number, number];
export type Role = 'front' | 'side';
export const BRACKETS: readonly Role[] = ['front', 'side'];
/** A bracket may fail to be flush with the other's face by this much as built, mm. */
const FLUSH = 2;
/** Between the glue block's pieces, and beside the fixing blocks, mm. */
export const APART = 1;
/** How much wider than its screw a hole through a block is, mm. */
export const EASY = 0.5;
export type Ground = {
  readonly front: MeetSide;
  readonly side: MeetSide;
  readonly base: MeetSide;
  /** Which way along x the side bracket runs on, and which way along y the base lies. */
  readonly inward: 1 | -1;
  readonly up: 1 | -1;
  /** Outer and inner corner, [x, z]. */
  readonly outer: Vec2;
  readonly inner: Vec2;
  /** y of the base's underside, of the brackets' upper and lower edge, and the foot's height. */
  readonly under: number;
  readonly top: number;
  readonly foot: number;
  readonly high: number;
  readonly baseThick: number;
  /** Length of each bracket's inner face, from the inner corner. */
  readonly long: Readonly<Record<Role, number>>;
  /** Does the bracket's grain run across the base's? */
  readonly crossed: Readonly<Record<Role, boolean>>;
};
export function ground(m: Meeting): Ground | null {
  const [front, side, base] = [sideIn(m, 'front'), sideIn(m, 'side'), sideIn(m, 'base')];
  const spans = (['x', 'y', 'z'] as const).map((a) => sharedSpan(front.box, side.box, a));
  if (!isSquare(m) || spans.some((s) => s[1] - s[0] < 1)) return null;
  const [f, s, b] = [front.box, side.box, base.box];
  const inward = s.max[0] - f.max[0] >= f.min[0] - s.min[0] ? 1 : -1;
  const up = b.min[1] + b.max[1] > f.min[1] + f.max[1] ? 1 : -1;
  const flush = [inward > 0 ? f.min[0] - s.min[0] : f.max[0] - s.max[0], f.max[2] - s.max[2], f.min[1] - s.min[1], f.max[1] - s.max[1]];
  const [top, foot, under] = up > 0 ? [f.max[1], f.min[1], b.min[1]] : [f.min[1], f.max[1], b.max[1]];
  if (flush.some((d) => Math.abs(d) > FLUSH) || Math.abs(under - top) > FLUSH) return null;
  const crossed = (part: MeetSide): boolean => isWood(base.wood) && !alongGrain(base, part.grain);
  return {
    front,
    side,
    base,
    inward,
    up,
    outer: [inward > 0 ? f.min[0] : f.max[0], s.max[2]],
    inner: [inward > 0 ? f.max[0] : f.min[0], s.min[2]],
    under,
    top,
    foot,
    high: Math.abs(top - foot),
    baseThick: b.max[1] - b.min[1],
    long: { front: s.min[2] - f.min[2], side: inward > 0 ? s.max[0] - f.max[0] : f.min[0] - s.min[0] },
    crossed: { front: crossed(front), side: crossed(side) },
  };
}
/** A spot told from the inner corner: inward along the side bracket, back along the front bracket, and down from the brackets' upper edge. */
export const spot = (g: Ground, inward: number, back: number, down: number): Vec3 => [
  g.inner[0] + g.inward * inward,
  g.top - g.up * down,
  g.inner[1] - back,
];
/** Along the mitre from its outer to its inner corner, and square to it out of the front bracket's wood. */
export function mitre(g: Ground): { readonly along: Vec3; readonly normal: Vec3; readonly off: number; readonly long: number } {
  const [dx, dz] = [g.inner[0] - g.outer[0], g.inner[1] - g.outer[1]];
  const normal = unit([-dz * g.inward, 0, dx * g.inward]);
  return { along: unit([dx, 0, dz]), normal, off: normal[0] * g.outer[0] + normal[2] * g.outer[1], long: Math.hypot(dx, dz) };
}
/** Middle of the spline: a third of the mitre from the inner corner. */
export function splineAt(g: Ground): Vec3 {
  const m = mitre(g);
  const back = scale(m.along, -m.long / 3);
  return [g.inner[0] + back[0], 0, g.inner[1] + back[2]];
}
/** The least wood between the spline's slot and a face of its bracket, mm. */
export function splineRoom(g: Ground, s: Pick<BracketFoot, 'spline_thick' | 'spline_wide'>): number {
  const m = mitre(g);
  const at = splineAt(g);
  const rooms = [-1, 1].flatMap((n) =>
    [-1, 1].map((d) => {
      const axis = n < 0 ? 0 : 2;
      const p = at[axis] + (n * m.normal[axis] * s.spline_wide) / 2 + (d * m.along[axis] * s.spline_thick) / 2;
      const [a, b] = axis === 0 ? [g.outer[0], g.inner[0]] : [g.outer[1], g.inner[1]];
      return Math.min(Math.max(a, b) - p, p - Math.min(a, b));
    }),
  );
  return Math.min(...rooms);
}
/** Heights of the glue block's pieces, down from the base: low and high. */
export function pieces(g: Ground, s: Pick<BracketFoot, 'pieces'>): Span[] {
  const each = (g.high - (s.pieces - 1) * APART) / s.pieces;
  return Array.from({ length: s.pieces }, (_, i) => [i * (each + APART), i * (each + APART) + each]);
}
/** Where a fixing block begins and ends along its bracket, from the inner corner, and where its screw stands. */
export const fixingSpan = (s: BracketFoot): Span => [s.block + APART, s.block + APART + s.fixing_long];
export const screwAlong = (s: BracketFoot): number => s.block + APART + s.fixing_long / 2;
/** How far a screw goes into the base. */
export const bite = (g: Ground, s: BracketFoot): number => s.screw_length - s.fixing - (g.under - g.top) * g.up;
/** Room along the bracket for its screw: only where the base moves that way. */
export const slotOf = (g: Ground, s: BracketFoot, role: Role): number => (g.crossed[role] && s.across === 'screwed' ? s.slot : 0);
/** Ways along a bracket away from the corner, and from it into the foot. */
export const ways = (g: Ground, role: Role): { readonly run: Vec3; readonly away: Vec3 } => {
  const [x, z]: readonly [Vec3, Vec3] = [
    [g.inward, 0, 0],
    [0, 0, -1],
  ];
  return role === 'front' ? { run: z, away: x } : { run: x, away: z };
};
/** A spot behind one bracket: along it from the inner corner, off its inner face, down. */
export const behind = (g: Ground, role: Role, along: number, off: number, down: number): Vec3 =>
  role === 'front' ? spot(g, off, along, down) : spot(g, along, off, down);
