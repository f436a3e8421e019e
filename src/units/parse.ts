/** Reads what stands in a field for a length or an angle. What can be meant in two ways is asked, never guessed. */
import { plainCharacters } from './characters.ts';
import { type Literal, UNIT_WORDS, literalAt, radians, withUnit } from './literal.ts';
import type { Meant } from './number.ts';
import { type Ratio, MM_IN, decimalRatio, toNumber } from './ratio.ts';
import { nearestOf } from './words.ts';

/** `text` says the reading in full and reads back as the same: put it in the field when it is chosen. */
export type LengthReading = { readonly mm: number; readonly text: string };
export type AngleReading = { readonly rad: number; readonly text: string };
/** `at` is the place in the text as it was given; `nearest` are texts that can be read. */
export type Cannot = { readonly ok: false; readonly cannot: string; readonly at: number; readonly nearest: readonly string[] };
export type LengthRead =
  | ({ readonly ok: true; readonly unitGiven: boolean } & LengthReading)
  | { readonly ok: false; readonly ask: readonly LengthReading[]; readonly at: number }
  | Cannot;
export type AngleRead =
  | ({ readonly ok: true; readonly unitGiven: boolean } & AngleReading)
  | { readonly ok: false; readonly ask: readonly AngleReading[]; readonly at: number }
  | Cannot;

const LONGEST = 200;
const cannot = (why: string, at: number, nearest: readonly string[] = []): Cannot => ({ ok: false, cannot: why, at, nearest });

/**
 * A length as a maker types it, to mm. A number without a unit is in `defaultUnit`; behind feet it is inches.
 * `{ ask }` holds every way it can be meant. Never throws.
 */
export function readLength(text: string, defaultUnit: 'mm' | 'in'): LengthRead {
  const start = begin(text, 'length');
  if ('cannot' in start) return start;
  const { t, i, minus, lit } = start;
  const full = (m: Meant): LengthReading => {
    const mm = 'mm' in m ? m.mm : m.plain.mul(MM_IN[defaultUnit]);
    return { mm: signed(toNumber(mm), minus), text: `${minus ? '-' : ''}${'mm' in m ? m.text : withUnit(m.text, defaultUnit)}` };
  };
  if (lit.kind === 'angle' || (lit.kind === 'ask' && lit.of === 'angle')) return cannot('this is an angle; a length is wanted here', i);
  const rest = leftover(t, lit.end, t.slice(i, lit.end), lit.kind === 'number');
  if (rest) return rest;
  // -1-1-1/2 is no longer a difference of the numbers behind the minus.
  if (lit.kind === 'ask') return { ok: false, ask: lit.readings.filter((m) => !(minus && m.less)).map(full), at: i };
  return { ok: true, unitGiven: lit.kind === 'length', ...full(lit) };
}

/** An angle to radians: degrees with or without their sign, degrees and minutes, or a slope ("1:8", "1 in 8"). Never throws. */
export function readAngle(text: string): AngleRead {
  const start = begin(text, 'angle');
  if ('cannot' in start) return start;
  const { t, i, minus, lit } = start;
  const reading = (rad: number, words: string): AngleReading => ({ rad: signed(rad, minus), text: `${minus ? '-' : ''}${words}` });
  const slope = /^(\d{1,6}(?:\.\d{1,6})?) *(?::| in ) *(\d{1,6}(?:\.\d{1,6})?) *$/i.exec(t.slice(i));
  if (slope) {
    const [rise, run] = [decimalRatio(slope[1] as string), decimalRatio(slope[2] as string)];
    if (run.n === 0n) return cannot('a slope of anything to 0 has no angle', i);
    return { ok: true, unitGiven: true, ...reading(Math.atan(toNumber(rise.div(run))), `${slope[1]}:${slope[2]}`) };
  }
  if (lit.kind === 'length' || (lit.kind === 'ask' && lit.of === 'length')) return cannot('this is a length; an angle is wanted here', i);
  const rest = leftover(t, lit.end, t.slice(i, lit.end), lit.kind === 'number');
  if (rest) return rest;
  if (lit.kind === 'angle') return { ok: true, unitGiven: true, ...reading(lit.rad, lit.text) };
  const degrees = (plain: Ratio, words: string): AngleReading => reading(radians(plain), `${words} deg`);
  if (lit.kind === 'number') return { ok: true, unitGiven: false, ...degrees(lit.plain, lit.text) };
  const ways = lit.readings.flatMap((m) => ('plain' in m && !(minus && m.less) ? [degrees(m.plain, m.text)] : []));
  return ways.length > 0 ? { ok: false, ask: ways, at: i } : cannot('these numbers do not make one angle', i);
}

const signed = (n: number, minus: boolean): number => (minus && n !== 0 ? -n : n);

type Begun = { readonly t: string; readonly i: number; readonly minus: boolean; readonly lit: Exclude<Literal, { kind: 'bad' }> };

/** The sign and the first literal. */
function begin(text: string, wanted: 'length' | 'angle'): Begun | Cannot {
  if (text.length > LONGEST) return cannot(`${wanted === 'length' ? 'a length' : 'an angle'} is shorter than ${LONGEST} letters`, LONGEST);
  const t = plainCharacters(text);
  const lead = /^ *([+-]?) */.exec(t) as RegExpExecArray;
  const i = lead[0].length;
  if (i === t.length) return cannot(lead[1] ? 'a number is missing behind the sign' : 'nothing is written here', 0);
  const lit = literalAt(t, i);
  if (lit === null) return cannot(`${wanted === 'length' ? 'a length' : 'an angle'} starts with a number`, i, numberInside(t, i));
  return lit.kind === 'bad' ? cannot(lit.problem, lit.at, lit.nearest) : { t, i, minus: lead[1] === '-', lit };
}

/** "about 20 mm", "$20": the number that is there. */
function numberInside(t: string, from: number): string[] {
  for (let i = from; i < t.length; i++) {
    const lit = /\d/.test(t[i] as string) ? literalAt(t, i) : null;
    if (lit) return lit.kind === 'bad' ? [] : [t.slice(i, lit.end)];
  }
  return [];
}

/** What stands behind the literal, if anything does: a misspelt unit, or something that is no length at all. */
function leftover(t: string, end: number, read: string, bare: boolean): Cannot | null {
  const rest = t.slice(end);
  if (rest.trim() === '') return null;
  const at = end + (rest.length - rest.trimStart().length);
  const word = /^[a-z]+/i.exec(rest.trimStart())?.[0];
  if (word && bare) {
    const near = nearestOf(word, UNIT_WORDS);
    return cannot(
      `"${word.slice(0, 30)}" is no unit known here`,
      at,
      near ? [`${read.trim()} ${near}`] : [`${read.trim()} mm`, `${read.trim()} in`],
    );
  }
  return cannot(`what follows "${read.trim()}" cannot be read with it`, at, [read.trim()]);
}
