/**
 * The cutters that a shop owns where the document does not say: the usual sizes sold in each system, common practice, no source.
 * A document's own `cutters` replace them list by list.
 */
import { quantise } from '../geom/vec3.ts';
import type { Cutting } from './family.ts';

const inches = (...sixteenths: number[]): number[] => sixteenths.map((n) => quantise((n * 25.4) / 16));

export const DEFAULT_CUTTING: Readonly<Record<'mm' | 'in', Cutting>> = {
  mm: { mortiseWidths: [6, 8, 10, 12, 16, 20], bits: [4, 5, 6, 8, 10, 12, 16, 20, 25, 30], grooveWidths: [4, 6, 8, 10, 12, 16, 18, 20] },
  in: {
    // Quarter, five sixteenths, three eighths, half, five eighths, three quarters.
    mortiseWidths: inches(4, 5, 6, 8, 10, 12),
    bits: inches(2, 3, 4, 5, 6, 8, 10, 12, 14, 16, 20),
    grooveWidths: inches(2, 3, 4, 6, 8, 10, 12),
  },
};

/**
 * The owned size nearest to what is wanted, between two limits; where none lies there, the wanted size in whole steps: a wide
 * mortise can be cut in several passes, a missing bit bought, while a size outside the rule stays wrong.
 */
export function nearestOwned(
  owned: readonly number[],
  wanted: number,
  limits: readonly [number, number] = [0, Infinity],
  step = 1,
): number {
  const inside = owned.filter((w) => w >= limits[0] - 1e-6 && w <= limits[1] + 1e-6);
  const whole = Math.max(step, roundTo(step, wanted));
  const own = whole >= limits[0] && whole <= limits[1] ? whole : wanted;
  return inside.reduce((best, w) => (Math.abs(w - wanted) < Math.abs(best - wanted) - 1e-9 ? w : best), inside[0] ?? own);
}
/** The step to which proposals are rounded: whole millimetres in a shop of metric cutters, sixteenths of an inch in one of inch cutters. */
export const stepOf = (shop: Cutting): number =>
  shop.mortiseWidths.some((w) => Math.abs(w * 2 - Math.round(w * 2)) > 1e-6) ? 25.4 / 16 : 1;
export const downTo = (step: number, mm: number): number => quantise(Math.floor(mm / step + 1e-6) * step);
export const roundTo = (step: number, mm: number): number => quantise(Math.round(mm / step) * step);
