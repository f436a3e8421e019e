/** Which screw is fast, and how far the board moves at each of the others. */
import { isFace } from '../../model/ids.ts';
import { ownSense, signAlong } from '../blocks.ts';
import type { Meeting } from '../meeting.ts';
import { MARGIN, type RowGround, SHARE, type Sizes, hundredths, rowGround, rowSpots, slotWay, spotAt } from '../screw-rows.ts';
import type { Spot } from '../screws.ts';
import type { SlottedCleat } from './params.ts';

export const ground = (m: Meeting): RowGround | null => rowGround(m, 'cleat', 'board');
/** The number of the fast screw; null where `fixed` names no edge that the batten runs to, or the middle of an even number. */
export function fastOf(g: RowGround, s: Pick<SlottedCleat, 'fixed' | 'count'>): number | null {
  if (s.fixed === 'middle') return s.count % 2 === 1 ? (s.count + 1) / 2 : null;
  const sign = isFace(s.fixed) ? signAlong(g.bed.into.side, s.fixed, g.row) : null;
  if (sign === null) return null;
  return sign === ownSense(g.bed.through.side, g.row) ? s.count : 1;
}
/** From the fast screw to the farthest, mm. */
function farOf(g: RowGround, s: Pick<SlottedCleat, 'fixed' | 'count' | 'inset' | 'off'>): number {
  const fast = fastOf(g, s);
  if (fast === null || s.count < 2) return 0;
  const pitch = (g.run[1] - g.run[0] - 2 * s.inset) / (s.count - 1);
  return pitch * Math.max(fast - 1, s.count - fast);
}
export const shareOf = (g: RowGround, s: Pick<SlottedCleat, 'fixed' | 'count' | 'inset' | 'off'>): number => farOf(g, s) * SHARE;
export const sizesOf = (s: SlottedCleat): Sizes => ({ ...s, head: 'round' });
export function spotsOf(g: RowGround, s: SlottedCleat): Spot[] {
  const fast = fastOf(g, s);
  if (fast === null) throw new Error(`no screw can be fast at "${s.fixed}" among ${s.count}`);
  const most = Math.max(fast - 1, s.count - fast);
  const least = s.diameter + 2 * MARGIN;
  return rowSpots(g, s).map((p) => {
    const off = Math.abs(p.n - fast);
    const slot = off === 0 || most === 0 ? s.clearance : Math.max(s.clearance, hundredths(least + ((s.slot - least) * off) / most));
    return spotAt(g, p, slot, slotWay(g));
  });
}
