/** The names under which thicknesses are sold, and what they are in millimetres. */
const INCH = 25.4;

/** NHLA hardwood thicknesses, quarters of an inch; rough they measure what they are called. Standard surfaced sizes: read; rough from memory. */
export const QUARTERS: readonly { readonly nominal: string; readonly rough: number; readonly surfaced: number }[] = [
  { nominal: '4/4', rough: 1 * INCH, surfaced: (13 / 16) * INCH },
  { nominal: '5/4', rough: 1.25 * INCH, surfaced: (17 / 16) * INCH },
  { nominal: '6/4', rough: 1.5 * INCH, surfaced: (21 / 16) * INCH },
  { nominal: '7/4', rough: 1.75 * INCH, surfaced: 1.5 * INCH },
  { nominal: '8/4', rough: 2 * INCH, surfaced: 1.75 * INCH },
  { nominal: '10/4', rough: 2.5 * INCH, surfaced: 2.25 * INCH },
  { nominal: '12/4', rough: 3 * INCH, surfaced: 2.75 * INCH },
  { nominal: '14/4', rough: 3.5 * INCH, surfaced: 3.25 * INCH },
  { nominal: '16/4', rough: 4 * INCH, surfaced: 3.75 * INCH },
];
/** EN 1313-2 preferred thicknesses of sawn hardwood at 20 % moisture content, mm (from memory). */
export const METRIC: readonly number[] = [20, 27, 32, 40, 50, 60, 65, 70, 80, 100];

/** PS 20 dry dressed softwood, nominal inches to actual inches (read); boards and dimension, thickness and width. */
const PS20_THICK: Readonly<Record<string, number>> = { '0.75': 0.625, '1': 0.75, '1.25': 1, '1.5': 1.25, '2': 1.5, '3': 2.5, '4': 3.5 };
const PS20_WIDE: Readonly<Record<string, number>> = {
  '2': 1.5,
  '3': 2.5,
  '4': 3.5,
  '5': 4.5,
  '6': 5.5,
  '8': 7.25,
  '10': 9.25,
  '12': 11.25,
};

/** Nominal inches in a name: '8/4' is 2, '2x4' is 2 by 4, '5/4x6' is 1.25 by 6; null where the name says nothing in inches. */
export function nominalInches(name: string): { readonly thickness: number; readonly width: number | null } | null {
  const m = /^\s*(?:(\d{1,2})\/4|(\d{1,2}(?:\.\d+)?))(?:\s*[x×]\s*(\d{1,2}(?:\.\d+)?))?\s*$/u.exec(name);
  if (!m) return null;
  const thickness = m[1] !== undefined ? Number(m[1]) / 4 : Number(m[2]);
  const width = m[3] === undefined ? null : Number(m[3]);
  // A bare number is no name in inches: it may be anything.
  if (m[1] === undefined && width === null) return null;
  return thickness > 0 ? { thickness, width } : null;
}
/** What a dressed softwood board of this name measures dry, mm: '1x10' is 19.05 × 234.95; null for other names. */
export function dressedSize(name: string): { readonly thickness: number; readonly width: number } | null {
  const n = nominalInches(name);
  if (!n || n.width === null) return null;
  const t = PS20_THICK[String(n.thickness)];
  const w = PS20_WIDE[String(n.width)];
  return t === undefined || w === undefined ? null : { thickness: t * INCH, width: w * INCH };
}
/** The thickness by which boards are grouped and preferred, mm: what the name says, else what is measured. */
export function classThickness(nominal: string, measured: number): number {
  const n = nominalInches(nominal);
  if (n) return n.thickness * INCH;
  const mm = /^\s*(\d{1,3}(?:\.\d+)?)\s*mm\s*$/u.exec(nominal);
  return mm ? Number(mm[1]) : Math.round(measured);
}
