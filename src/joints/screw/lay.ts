/** Where the screws stand, which of them have slots, and how far the wood moves at the farthest. */
import type { Meeting } from '../meeting.ts';
import { type RowGround, SHARE, movesAlong, rowGround, rowSpots, slotWay, spotAt } from '../screw-rows.ts';
import type { Spot } from '../screws.ts';
import type { Screw } from './params.ts';

export const ground = (m: Meeting): RowGround | null => rowGround(m, 'through', 'into');
/** How far the wood moves each way at the farthest screw of the row, mm; 0 where both parts move alike. */
export function needOf(g: RowGround, r: { readonly count: number; readonly inset: number }): number {
  if (r.count < 2 || !movesAlong(g, g.row)) return 0;
  return ((g.run[1] - g.run[0]) / 2 - r.inset) * SHARE;
}
/** Below this nobody makes a slot, mm. */
export const LEAST_TRAVEL = 0.8;
const isFast = (s: Pick<Screw, 'fast' | 'count'>, n: number): boolean =>
  s.fast === 'middle' && s.count % 2 === 1 && n === (s.count + 1) / 2;
export function spotsOf(g: RowGround, s: Screw): Spot[] {
  const way = slotWay(g);
  return rowSpots(g, s).map((p) => spotAt(g, p, s.travel > 0 && !isFast(s, p.n) ? s.slot : s.clearance, way));
}
