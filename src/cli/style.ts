/** How lengths are printed on the command line: the document's units, to a tenth of a millimetre or a 64th of an inch. */
import type { LengthStyle } from '../units/format.ts';

export const styleOf = (unit: 'mm' | 'in'): LengthStyle =>
  unit === 'in' ? { system: 'in', denominator: 64 } : { system: 'mm', decimals: 1 };
