/** Rounding, once, to whole ticks. */

/** What binary fractions cost: a value this little (as a share of one tick) under a half counts as the half that was meant. */
const SLACK = 1e-9;

/** The nearest whole number, halves away from zero, never -0. 1.005 × 100 is 100.49999999999999 in float64 and means 100.5. */
export function nearestInteger(x: number): number {
  const n = Math.floor(Math.abs(x) + 0.5 + SLACK);
  return x < 0 && n > 0 ? -n : n;
}
