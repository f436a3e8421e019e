/** The cut list as a table for a spreadsheet. */
import { FRACTION_SLASH, type LengthStyle, formatDecimal, formatLength } from '../units/format.ts';
import { woodWords } from '../wood/woods.ts';
import { csv } from './csv.ts';
import { plainName } from './names.ts';

type Size = { readonly length: number; readonly width: number; readonly thickness: number };
/** mm; `letter` is empty for what joints bring along. */
export type CutListRow = {
  readonly letter: string;
  readonly handedOf: string | null;
  readonly words: string;
  readonly count: number;
  readonly wood: string;
  readonly finished: Size;
  readonly rough: Size;
};
const AXES = ['length', 'width', 'thickness'] as const;

/**
 * One line a kind of part. Each size stands twice: as a decimal to reckon with, and as a maker reads it, always with its unit, since
 * a bare 3/4 would open as a date.
 */
export function cutListCsv(rows: readonly CutListRow[], units: 'mm' | 'in', style: LengthStyle): string {
  const head = [
    'Letter',
    'Part',
    'Count',
    'Wood',
    ...(['finished', 'rough'] as const).flatMap((state) =>
      AXES.flatMap((axis) => [`${state} ${axis} (${units})`, `${state} ${axis} as read`]),
    ),
    'Mirror image of',
  ];
  const sizes = (size: Size): (string | number)[] =>
    AXES.flatMap((axis) => [Number(formatDecimal(size[axis], units)), asRead(size[axis], style)]);
  const lines = rows.map((r) => [
    r.letter,
    plainName(r.words),
    r.count,
    plainName(woodWords(r.wood)),
    ...sizes(r.finished),
    ...sizes(r.rough),
    r.handedOf ?? '',
  ]);
  return csv([head, ...lines]);
}
/** '20 1/2 in': a plain slash, which every font and search knows, and the unit in letters. */
function asRead(mm: number, style: LengthStyle): string {
  return formatLength(mm, style).replaceAll(FRACTION_SLASH, '/');
}
