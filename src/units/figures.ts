/**
 * Sentences with figures in them. The core writes {mm:12.7}, {deg:15}, {n:3} and the screen or paper prints them in the
 * maker's units, so no finding knows who reads it. Also {mm2:…}, {mm3:…}, {percent:…} and {kg:…}.
 */
import { type LengthParts, type LengthStyle, formatAngle, formatNumber, lengthParts, mmOfTicks, partsText, ticksOf } from './format.ts';
import { INCH } from './ratio.ts';

export type FigureKind = 'mm' | 'mm2' | 'mm3' | 'deg' | 'n' | 'percent' | 'kg';
/** A stretch of plain words, or one figure with what it stands for; lengths come with their parts for typesetting. */
export type Run =
  | { readonly kind: 'words'; readonly text: string }
  | { readonly kind: 'figure'; readonly text: string; readonly of: FigureKind; readonly value: number; readonly parts?: LengthParts };

const TOKEN = /\{(mm|mm2|mm3|deg|n|percent|kg):(-?\d+(?:\.\d+)?(?:e[-+]?\d{1,3})?)\}/g;
/** A length below this is nothing, mm; from here on it is never printed as 0. */
const NOTHING = 0.001;

/** The runs of a text, in order. What only looks like a figure stays words. */
export function figureRuns(text: string, style: LengthStyle): Run[] {
  const runs: Run[] = [];
  let from = 0;
  const words = (s: string): void => {
    const last = runs.at(-1);
    if (s === '') return;
    if (last?.kind === 'words') runs[runs.length - 1] = { kind: 'words', text: last.text + s };
    else runs.push({ kind: 'words', text: s });
  };
  for (const m of text.matchAll(TOKEN)) {
    const value = Number(m[2]);
    if (!Number.isFinite(value)) continue;
    words(text.slice(from, m.index));
    const f = figure(m[1] as FigureKind, value, style);
    words(f.before);
    runs.push(f.run);
    from = m.index + m[0].length;
  }
  words(text.slice(from));
  return runs;
}

/** The text with its figures printed. */
export const renderFigures = (text: string, style: LengthStyle): string =>
  figureRuns(text, style)
    .map((r) => r.text)
    .join('');

function figure(of: FigureKind, value: number, style: LengthStyle): { readonly before: string; readonly run: Run } {
  if (of !== 'mm') return { before: '', run: { kind: 'figure', of, value, text: quantity(of, value, style) } };
  // What is there but under half a tick would print as 0, and "they share 0 in" says nothing.
  const small = ticksOf(value, style) === 0 && Math.abs(value) >= NOTHING;
  const parts = lengthParts(small ? mmOfTicks(1, style) : value, style);
  return { before: small ? 'less than ' : '', run: { kind: 'figure', of, value, text: partsText(parts), parts } };
}

function quantity(of: Exclude<FigureKind, 'mm'>, value: number, style: LengthStyle): string {
  const inches = style.system === 'in';
  switch (of) {
    case 'deg':
      return formatAngle((value * Math.PI) / 180);
    case 'mm2':
      return inches ? `${significant(value / INCH ** 2)} in²` : `${significant(value / 100)} cm²`;
    case 'mm3':
      return inches
        ? `${significant(value / INCH ** 3)} in³`
        : value < 1000
          ? `${significant(value)} mm³`
          : `${significant(value / 1000)} cm³`;
    case 'kg':
      return inches ? `${significant(value / 0.45359237)} lb` : `${significant(value)} kg`;
    case 'percent':
      return `${formatNumber(value, 1)} %`;
    default:
      return formatNumber(value, 2);
  }
}

/** Three figures that count. */
function significant(n: number): string {
  if (n === 0) return '0';
  return formatNumber(n, Math.min(9, Math.max(0, 2 - Math.floor(Math.log10(Math.abs(n))))));
}

type Told = {
  readonly title: string;
  readonly why: string;
  readonly remedies: readonly { readonly label: string; readonly consequence?: string }[];
};

/** The words of a finding with all figures printed. */
export function formatFinding(f: Told, style: LengthStyle): Told {
  const print = (s: string): string => renderFigures(s, style);
  return {
    title: print(f.title),
    why: print(f.why),
    remedies: f.remedies.map((r) => ({ label: print(r.label), ...(r.consequence !== undefined && { consequence: print(r.consequence) }) })),
  };
}

const FIGURE_OF: Readonly<Record<string, FigureKind>> = {
  mm: 'mm',
  mm2: 'mm2',
  mm3: 'mm3',
  deg: 'deg',
  count: 'n',
  percent: 'percent',
  kg: 'kg',
  none: 'n',
};

/** A measured value or limit with the unit of its finding ('deg' in degrees), as a text. An unknown unit prints the bare number. */
export const formatQuantity = (value: number, unit: string, style: LengthStyle): string =>
  renderFigures(`{${FIGURE_OF[unit] ?? 'n'}:${value}}`, style);

/** A length to put into a sentence; mm. */
export const mmFigure = (mm: number): string => `{mm:${tidy(mm)}}`;
/** An angle to put into a sentence; radians in, degrees in the token. */
export const degFigure = (rad: number): string => `{deg:${tidy((rad * 180) / Math.PI)}}`;
export const numberFigure = (n: number): string => `{n:${tidy(n)}}`;

/** To the grid of all records, 1e-6, without -0. */
function tidy(n: number): number {
  if (!Number.isFinite(n)) throw new Error(`a figure must be finite, got ${n}`);
  return Math.round(n * 1e6) / 1e6 || 0;
}
