import { nearestOwned } from '../cutters.ts';
import type { Cutting, Reason } from '../family.ts';
import { byBook, byHabit } from '../reasons.ts';
import type { Ground } from './lay.ts';

/** The tongue that suits: the whole of a thin panel, else about a third of the framed part, by a cutter that the shop owns. */
export function tongueRule(g: Ground, shop: Cutting): readonly [number, Reason] {
  const thick = g.x[1] - g.x[0];
  const of = Math.min(thick, g.across);
  if (thick <= g.across * 0.4) return [thick, byHabit('a thin panel goes in with its whole thickness')];
  const t = Math.min(thick, nearestOwned(shop.grooveWidths, of / 3, [of / 4, of / 2]));
  return [t, byBook('a third of the thickness', 'NAVEDTRA 14119, wood joinery', [of / 4, of / 2])];
}
