/** Figures in text: always in the drawing face, fractions set so that their digits stay readable. */
import type { ReactNode } from 'react';
import { figureRuns, formatQuantity, renderFigures } from '../../src/units/figures.ts';
import { type LengthParts, partsText } from '../../src/units/format.ts';
import { useResults } from '../results/store.ts';
import { SHOWN, printed } from './lengths.ts';
import { type Units, useView } from './view.ts';

export const useUnits = (): Units => {
  const chosen = useView((v) => v.units);
  const own = useResults((r) => r.piece?.units);
  return chosen ?? own ?? 'in';
};

export function Length({ mm, unit = true }: { mm: number; unit?: boolean }): ReactNode {
  return <Parts parts={printed(mm, useUnits())} unit={unit} />;
}
function Parts({ parts: p, unit }: { parts: LengthParts; unit: boolean }): ReactNode {
  if (p.numerator === 0) return <span className="q">{unit ? partsText(p).replace(' ', '\u00a0') : partsText(p).split(' ')[0]}</span>;
  return (
    <span className="q">
      {p.minus ? '−' : ''}
      {p.whole === null ? '' : `${p.whole}\u2009`}
      <span className="fr">
        {p.numerator}⁄{p.denominator}
      </span>
      {unit ? `\u00a0${p.unit}` : ''}
    </span>
  );
}
/** Text of the core, whose figures stand as {mm:12.7}; `strong` sets them in the bold of the drawing face. */
export function Said({ text, strong = true }: { text: string; strong?: boolean }): ReactNode {
  const units = useUnits();
  return figureRuns(text, SHOWN[units]).map((run, i) => {
    if (run.kind === 'words') return run.text;
    const figure = run.parts ? <Parts parts={run.parts} unit /> : <span className="q">{run.text}</span>;
    return strong ? <b key={i}>{figure}</b> : <span key={i}>{figure}</span>;
  });
}
/** The same text with its figures as plain characters, for labels that take no markup. */
export const saidText = (text: string, units: Units): string => renderFigures(text, SHOWN[units]);
export const figureText = (unit: string, value: number, units: Units): string => formatQuantity(value, unit, SHOWN[units]);

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];
/** Small counts as words, as in a sentence. */
export const inWords = (n: number): string => NUMBERS[n] ?? String(n);
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
