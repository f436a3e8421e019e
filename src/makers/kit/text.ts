/** Numbers as texts of the document: lengths that a person could have typed, shares of a space. */
import { writeLength } from '../../units/write.ts';

/** Tenths of a millimetre, 64ths of an inch, in mm. */
const STEP = { mm: 0.1, in: 25.4 / 64 } as const;
const typedText = (mm: number, units: 'mm' | 'in', round: (n: number) => number, slack: number): string =>
  writeLength(round(mm / STEP[units] + slack) * STEP[units], units);
/** The greatest length as it would be typed that is not above the limit. */
export const textAtMost = (mm: number, units: 'mm' | 'in'): string => typedText(mm, units, Math.floor, 1e-6);
/** The smallest that is not below it. */
export const textAtLeast = (mm: number, units: 'mm' | 'in'): string => typedText(mm, units, Math.ceil, -1e-6);
/** A share as a plain number that an expression may multiply by. */
export const shareText = (share: number): string => share.toFixed(5).replace(/\.?0+$/, '');
