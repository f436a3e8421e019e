/**
 * Board measure. Hardwood by the tally rules of NHLA as AHEC explains them: surface measure = full width in inches and fractions
 * × standard length in whole feet / 12, to the nearest whole foot, exact halves up and down in turn; board feet = surface measure ×
 * nominal thickness in inches, stock under 1 in counted as 1 in (this last from memory). Softwood: nominal size, to 0.01.
 */

/** 1 board foot = 144 in³. */
export const CUBIC_METRES_PER_BOARD_FOOT = 144 * 0.0254 ** 3;
const INCH = 25.4;

/** One tally sheet: exact halves go up, then down, in turn, so it remembers which way the last one went. */
export type Tally = { halfUp: boolean };
export const newTally = (): Tally => ({ halfUp: true });

/** A whole number from one that may stand exactly on a half. Within 1e-9 of a half counts as one. */
function rounded(value: number, tally: Tally): number {
  const low = Math.floor(value + 1e-9);
  const rest = value - low;
  if (Math.abs(rest - 0.5) > 1e-9) return rest > 0.5 ? low + 1 : low;
  const up = tally.halfUp;
  tally.halfUp = !up;
  return up ? low + 1 : low;
}
/** Length in whole feet, the next lower one: 8-1/2 ft counts as 8. */
const wholeFeet = (lengthMm: number): number => Math.floor(lengthMm / (12 * INCH) + 1e-6);
/** Surface measure of one board, whole square feet; width and length mm. */
export function surfaceMeasure(widthMm: number, lengthMm: number, tally: Tally): number {
  return rounded(((widthMm / INCH) * wholeFeet(lengthMm)) / 12, tally);
}
/** Board feet of one hardwood board by its nominal thickness in inches. */
export const hardwoodFeet = (nominalInches: number, widthMm: number, lengthMm: number, tally: Tally): number =>
  surfaceMeasure(widthMm, lengthMm, tally) * Math.max(1, nominalInches);
/** Board feet of one softwood board on nominal sizes in inches and its length; to 0.01. */
export const softwoodFeet = (nominalThickness: number, nominalWidth: number, lengthMm: number): number =>
  Math.round(((nominalThickness * nominalWidth * (lengthMm / INCH)) / 144) * 100) / 100;
/** Board feet by plain volume, nothing rounded: thickness × width × length in inches / 144. */
export const volumeFeet = (thicknessMm: number, widthMm: number, lengthMm: number): number =>
  (thicknessMm * widthMm * lengthMm) / INCH ** 3 / 144;
/** Width and length of one board as an export bundle is tallied: nearest whole inch (exact halves in turn), whole feet down. */
export const bundleSize = (widthMm: number, lengthMm: number, tally: Tally): { readonly inches: number; readonly feet: number } => ({
  inches: rounded(widthMm / INCH, tally),
  feet: wholeFeet(lengthMm),
});
/** What to buy when `lost` (0…1) of what is bought is lost: net / (1 − lost). */
export const buyForLostShare = (net: number, lost: number): number => net / (1 - lost);
/** What to buy with `extra` (0…) of the net on top. */
export const buyWithExtra = (net: number, extra: number): number => net * (1 + extra);
