/** Lengths at the edge of the screen: which ticks they are rounded to, how they are printed in parts, how a typed one is read. */
import { type LengthParts, type LengthStyle, formatLength, lengthParts, stepTicks } from '../../src/units/format.ts';
import { readLength } from '../../src/units/parse.ts';
import { writeLength } from '../../src/units/write.ts';
import type { Units } from './view.ts';

/** What figures are shown in: thirty-seconds of an inch (a rule's finest), tenths of a millimetre. */
export const SHOWN: Readonly<Record<Units, LengthStyle>> = { in: { system: 'in', denominator: 32 }, mm: { system: 'mm', decimals: 1 } };
/** What one press of an arrow key or one notch of a pointer changes. */
const STEP: Readonly<Record<Units, LengthStyle>> = { in: { system: 'in', denominator: 16 }, mm: { system: 'mm', decimals: 0 } };

export const printed = (mm: number, units: Units): LengthParts => lengthParts(mm, SHOWN[units]);
/** '1 1⁄2 in': for labels that are text only (names of controls, drawings). */
export function lengthText(mm: number, units: Units, unit = true): string {
  const text = formatLength(mm, SHOWN[units]);
  return unit ? text : text.slice(0, text.lastIndexOf(' '));
}
/** As it stands in a field: whole and exact, as a maker would type it. */
export const fieldText = (mm: number, units: Units): string => {
  const text = writeLength(mm, units);
  return text.length <= 12 ? text : lengthText(mm, units).replace('⁄', '/').replace('−', '-');
};
export const exactText = writeLength;
export const stepped = (mm: number, units: Units, by: number): number => stepTicks(mm, STEP[units], by);
export const notched = (mm: number, units: Units): number => {
  const tick = units === 'in' ? 25.4 / 16 : 1;
  return Math.max(1, Math.round(mm / tick)) * tick;
};

export type Reading =
  | { readonly kind: 'length'; readonly mm: number }
  | { readonly kind: 'asked'; readonly readings: readonly { readonly mm: number; readonly text: string }[] }
  | { readonly kind: 'expression' }
  | { readonly kind: 'wrong'; readonly words: string; readonly nearest: readonly string[] };

const UNITS = /\b(mm|cm|in|inch|inches|ft|foot|feet)\b/gi;
/** A name in front or beside a sign, or arithmetic: the core reads it as an expression and says what is wrong with it. */
const MADE = /^[a-z_]|[*+()]|\s[-−]\s|[a-z_]\w*\s*[-/.:]|[-/]\s*[a-z_]/i;

/** A typed size: a length, a length that can be meant in two ways, something made of other sizes, or neither. */
export function readTyped(text: string, units: Units): Reading {
  const read = readLength(text, units);
  if (read.ok) return read.mm > 0 ? { kind: 'length', mm: read.mm } : { kind: 'wrong', words: 'a size is above 0', nearest: [] };
  if ('ask' in read) return { kind: 'asked', readings: read.ask };
  return MADE.test(text.replaceAll(UNITS, '').trim())
    ? { kind: 'expression' }
    : { kind: 'wrong', words: read.cannot, nearest: read.nearest };
}
