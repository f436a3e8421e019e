import type { Meeting } from '../meeting.ts';
import { type RowGround, SHARE, movesAlong, rowGround, rowSpots, spotAt } from '../screw-rows.ts';
import type { Spot } from '../screws.ts';
import type { WallFixing } from './params.ts';

export const ground = (m: Meeting): RowGround | null => rowGround(m, 'rail', 'wall');
export const spotsOf = (g: RowGround, s: WallFixing): Spot[] => rowSpots(g, s).map((p) => spotAt(g, p, s.clearance, g.row));
export const pitchOf = (g: RowGround, s: Pick<WallFixing, 'count' | 'inset'>): number =>
  s.count > 1 ? (g.run[1] - g.run[0] - 2 * s.inset) / (s.count - 1) : 0;
/** A row across the grain of the rail: how far it moves each way at the outermost screw; below 0.8 mm nobody minds. */
export function needOf(g: RowGround, s: Pick<WallFixing, 'count' | 'inset'>): number {
  const need = movesAlong(g, g.row) ? (pitchOf(g, s) * (s.count - 1) * SHARE) / 2 : 0;
  return need < 0.8 ? 0 : need;
}
