/** Exact numbers: an inch is 25.4 mm by definition (international yard and pound agreement, 1959), so every fraction of an inch is an exact ratio of mm. */
import Fraction from 'fraction.js';

export type Ratio = Fraction;
export const ratio = (n: number | bigint, d: number | bigint = 1): Ratio => new Fraction(n, d);

/** mm in one of each unit of length. */
export const MM_IN: Readonly<Record<LengthUnit, Ratio>> = {
  mm: ratio(1),
  cm: ratio(10),
  m: ratio(1000),
  in: ratio(254, 10),
  ft: ratio(3048, 10),
};
export type LengthUnit = 'mm' | 'cm' | 'm' | 'in' | 'ft';
export const INCH = 25.4;

/** A number written in decimals ("12", ".5", "1,75"), exactly. */
export function decimalRatio(text: string): Ratio {
  const [whole = '', part = ''] = text.replace(',', '.').split('.');
  return ratio(BigInt(`${whole}${part}` || '0'), 10n ** BigInt(part.length));
}

const EXACT = BigInt(Number.MAX_SAFE_INTEGER);
/** The float64 nearest to the ratio (within one unit of the last place where it has more digits than a float64 holds). */
export function toNumber(r: Ratio): number {
  const n = r.s * r.n;
  if (r.n <= EXACT && r.d <= EXACT) return Number(n) / Number(r.d);
  // Scaled by a power of two until the quotient has more bits than a float64, so that nothing is lost but the last rounding.
  const k = BigInt(Math.max(0, r.d.toString(2).length - r.n.toString(2).length + 64));
  return Number((n << k) / r.d) / 2 ** Number(k);
}
