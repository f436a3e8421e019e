/** Lengths and angles as people read them. Rounding happens here, once, to whole ticks, before anything is split off. */
import { INCH } from './ratio.ts';
import { nearestInteger } from './round.ts';

export type Denominator = 2 | 4 | 8 | 16 | 32 | 64 | 128;
export const DENOMINATORS: readonly Denominator[] = [2, 4, 8, 16, 32, 64, 128];
/** Inches in fractions of 1/denominator, or whole mm and tenths. `feet` splits feet off from 12 in on. */
export type LengthStyle =
  | { readonly system: 'in'; readonly denominator: Denominator; readonly feet?: boolean }
  | { readonly system: 'mm'; readonly decimals: 0 | 1 | 2 };

/** A length ready for typesetting. Null parts are not shown; the fraction is in lowest terms, numerator 0 when there is none. */
export type LengthParts = {
  readonly minus: boolean;
  readonly feet: number | null;
  readonly whole: number | null;
  readonly numerator: number;
  readonly denominator: number;
  /** Figures behind the point, without closing zeros. */
  readonly decimals: string;
  readonly unit: 'mm' | 'in';
  /** Whether rounding changed it by more than 1e-6 mm. */
  readonly rounded: boolean;
};

const MINUS = '\u2212';
export const FRACTION_SLASH = '\u2044';
const FOOT_MARK = '\u2032';
const INCH_MARK = '\u2033';

/** Whole ticks nearest to `mm`, halves away from zero, never -0. */
export function ticksOf(mm: number, style: LengthStyle): number {
  return nearestInteger(style.system === 'in' ? (finite(mm) / INCH) * style.denominator : finite(mm) * 10 ** style.decimals);
}

/** mm of so many ticks, worked out so that it equals the same size typed as a fraction or decimal. */
export function mmOfTicks(ticks: number, style: LengthStyle): number {
  return style.system === 'in' ? (ticks * 254) / (10 * style.denominator) : ticks / 10 ** style.decimals;
}

/** The length `by` ticks on. From between two ticks the first step goes to the next one in that direction. */
export function stepTicks(mm: number, style: LengthStyle, by: number): number {
  const here = ticksOf(mm, style);
  const off = mm - mmOfTicks(here, style);
  const ahead = Math.abs(off) > 1e-6 && Math.sign(off) !== Math.sign(by) ? Math.sign(by) : 0;
  return mmOfTicks(here + by - ahead, style);
}

export function lengthParts(mm: number, style: LengthStyle): LengthParts {
  const ticks = ticksOf(mm, style);
  const size = Math.abs(ticks);
  const common = { minus: ticks < 0, unit: style.system, rounded: Math.abs(mmOfTicks(ticks, style) - mm) > 1e-6 };
  if (style.system === 'mm') {
    const { whole, decimals } = pointed(size, style.decimals);
    return { ...common, feet: null, whole, numerator: 0, denominator: 1, decimals };
  }
  const d = style.denominator;
  const [numerator, denominator] = lowest(size % d, d);
  const inches = Math.floor(size / d);
  const feet = style.feet && inches >= 12 ? Math.floor(inches / 12) : null;
  const left = feet === null ? inches : inches % 12;
  // 7⁄8 needs no 0 before it; 3′ 0 1⁄2″ does, and 4′ needs no 0″ behind it.
  const silent = left === 0 && (feet === null ? numerator > 0 : numerator === 0);
  return { ...common, feet, whole: silent ? null : left, numerator, denominator, decimals: '' };
}

/** 3 5⁄8 in · 3′ 5 7⁄32″ · 508 mm · −8 3⁄4 in. */
export function formatLength(mm: number, style: LengthStyle): string {
  return partsText(lengthParts(mm, style));
}

/** The parts in one line of text, fractions as figures round U+2044, which fonts set as fractions. */
export function partsText(p: LengthParts): string {
  const fraction = p.numerator > 0 ? `${p.numerator}${FRACTION_SLASH}${p.denominator}` : '';
  const size = [p.whole === null ? '' : `${p.whole}${p.decimals ? `.${p.decimals}` : ''}`, fraction].filter((s) => s !== '').join(' ');
  const minus = p.minus ? MINUS : '';
  if (p.feet === null) return `${minus}${size} ${p.unit}`;
  return `${minus}${p.feet}${FOOT_MARK}${size ? ` ${size}${INCH_MARK}` : ''}`;
}

/** A bare decimal for tables and files that machines read: point, no unit, no groups, plain minus, no closing zeros. */
export function formatDecimal(mm: number, system: 'mm' | 'in', places: number = system === 'in' ? 4 : 2): string {
  return decimal(system === 'in' ? finite(mm) / INCH : finite(mm), places, '-');
}

/** Degrees of an angle in radians: 15°, 7.5°, −3°. */
export function formatAngle(rad: number, places = 1): string {
  return `${decimal((finite(rad) * 180) / Math.PI, places, MINUS)}°`;
}

/** A number rounded once to so many places, closing zeros dropped. */
export function formatNumber(n: number, places = 2): string {
  return decimal(finite(n), places, MINUS);
}

function decimal(n: number, places: number, minus: string): string {
  const ticks = nearestInteger(n * 10 ** places);
  const { whole, decimals } = pointed(Math.abs(ticks), places);
  return `${ticks < 0 ? minus : ''}${whole}${decimals ? `.${decimals}` : ''}`;
}

/** Whole ticks of 10^-places, parted at the point. */
function pointed(ticks: number, places: number): { whole: number; decimals: string } {
  const k = 10 ** places;
  return {
    whole: Math.floor(ticks / k),
    decimals:
      places === 0
        ? ''
        : String(ticks % k)
            .padStart(places, '0')
            .replace(/0+$/, ''),
  };
}

function lowest(n: number, d: number): readonly [number, number] {
  if (n === 0) return [0, 1];
  let [a, b] = [n, d];
  while (a % 2 === 0) [a, b] = [a / 2, b / 2];
  return [a, b];
}

function finite(n: number): number {
  if (!Number.isFinite(n)) throw new Error(`a figure to print must be finite, got ${n}`);
  return n;
}
