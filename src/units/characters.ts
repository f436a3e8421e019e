/** Makers paste lengths from anywhere: one character for each meaning, each at its old place, so that positions stay true. */

const SPACES =
  '\t\n\r\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u200b\u200e\u200f\u202f\u205f\u2060\u3000\ufeff';
const DASHES = '\u2010\u2011\u2012\u2013\u2212\ufe63\uff0d';
const FEET = '\u2018\u2019\u201b\u2032\u00b4`\u02b9\u02bc';
const INCHES = '\u201c\u201d\u201f\u2033\u02ba\u02dd';
const SLASHES = '\u2044\u2215\u00f7\u29f8';
const TIMES = '\u00d7\u22c5';
const DEGREES = '\u00ba\u02da';

const MEANING: ReadonlyMap<string, string> = new Map(
  (
    [
      [SPACES, ' '],
      [DASHES, '-'],
      [FEET, "'"],
      [INCHES, '"'],
      [SLASHES, '/'],
      [TIMES, '*'],
      [DEGREES, '°'],
    ] as const
  ).flatMap(([from, to]) => [...from].map((c) => [c, to] as const)),
);

/** The text with every space, dash, foot mark, inch mark, slash and degree sign in its plain form; as long as it was. Two foot marks are one inch mark. */
export function plainCharacters(text: string): string {
  let out = '';
  for (const c of text.split('')) out += MEANING.get(c) ?? c;
  return out.replaceAll("''", '" ');
}

const VULGAR: ReadonlyMap<string, readonly [number, number]> = new Map([
  ['¼', [1, 4]],
  ['½', [1, 2]],
  ['¾', [3, 4]],
  ['⅐', [1, 7]],
  ['⅑', [1, 9]],
  ['⅒', [1, 10]],
  ['⅓', [1, 3]],
  ['⅔', [2, 3]],
  ['⅕', [1, 5]],
  ['⅖', [2, 5]],
  ['⅗', [3, 5]],
  ['⅘', [4, 5]],
  ['⅙', [1, 6]],
  ['⅚', [5, 6]],
  ['⅛', [1, 8]],
  ['⅜', [3, 8]],
  ['⅝', [5, 8]],
  ['⅞', [7, 8]],
  ['↉', [0, 3]],
]);
const RAISED = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const LOWERED = '₀₁₂₃₄₅₆₇₈₉';
/** Fractions set as one sign, or with raised and lowered figures, in text that went through `plainCharacters`. */
export const GLYPH = '(?:[¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞↉]|⅟(?:\\d{1,4}|[₀-₉]{1,4})|[⁰¹²³⁴⁵⁶⁷⁸⁹]{1,4}/(?:[₀-₉]{1,4}|\\d{1,4}))';

/** Numerator and denominator of a match of GLYPH. */
export function glyphParts(glyph: string): readonly [number, number] {
  const whole = VULGAR.get(glyph);
  if (whole) return whole;
  const digits = [...glyph]
    .map((c) => (RAISED.includes(c) ? String(RAISED.indexOf(c)) : LOWERED.includes(c) ? String(LOWERED.indexOf(c)) : c))
    .join('');
  const [n, d] = digits.replace('⅟', '1/').split('/');
  return [Number(n), Number(d)];
}
