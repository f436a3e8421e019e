/** One number as makers write it: 20, .5, 1,75, 1/2, 1¾, 20 1/2, 20-1/2; and the numbers that can be read in two ways. */
import { GLYPH, glyphParts } from './characters.ts';
import { type Ratio, MM_IN, decimalRatio, ratio } from './ratio.ts';

/** One way to read a text: a bare number, or mm where the reading itself brings its unit (feet and inches). `text` says it beyond doubt and reads back as the same. */
export type Meant =
  | { readonly plain: Ratio; readonly text: string; /** read as one number less another */ readonly less?: true }
  | { readonly mm: Ratio; readonly text: string; readonly less?: true };
export type NumberScan =
  | {
      readonly kind: 'number';
      readonly end: number;
      readonly plain: Ratio;
      readonly text: string;
      readonly form: 'whole' | 'decimal' | 'fraction' | 'mixed' | 'dashed';
    }
  | { readonly kind: 'ask'; readonly end: number; readonly readings: readonly Meant[] }
  | Bad;
export type Bad = {
  readonly kind: 'bad';
  readonly at: number;
  readonly end: number;
  readonly problem: string;
  readonly nearest: readonly string[];
};

/** Where the number stands: behind * or /, inside the brackets of min( and its like, or as the inches behind feet. */
export type Spot = { readonly before?: '*' | '/' | undefined; readonly inCall?: boolean; readonly inches?: boolean };

/** The match of a sticky pattern exactly at `i`. */
export function matchAt(pattern: RegExp, text: string, i: number): RegExpExecArray | null {
  pattern.lastIndex = i;
  return pattern.exec(text);
}

const OVER = '(?!\\d|[.,]\\d)';
const ONE_SIGN = new RegExp(GLYPH, 'y');
const GROUPED =
  /[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?(?![\d,]|\.\d)|[1-9]\d{0,2}(?:\.\d{3})+,\d+(?![\d.]|,\d)|[1-9]\d{0,2}(?:\.\d{3}){2,}(?![\d.,])/y;
const SPACED_GROUPS = /[1-9]\d{0,2}(?: \d{3})+(?:[.,]\d+)?(?![\d/]|[.,]\d| +\d| *-?\d+\/)/y;
const DECIMAL = /\d*[.,]\d+|\d+\.(?![\w.])/y;
const WHOLE = /\d+/y;
const OVER_DENOMINATOR = new RegExp(`/(\\d+)${OVER}`, 'y');
const FRACTION_TAIL = new RegExp(`( +|-)(\\d+)/(\\d+)${OVER}`, 'y');
const LEANING_DASH = new RegExp(`(?: +-|- +)(\\d+)/(\\d+)${OVER}`, 'y');
const SIGN_TAIL = new RegExp(`( *|-)(${GLYPH})`, 'y');
const FEET_TAIL = new RegExp(`(?:-| +)(\\d+)(?:(?:-| +)(\\d+)/(\\d+)${OVER}|[ -]?(${GLYPH}))`, 'y');
const TWO_NUMBERS = / +(\d+)(?![\d/]|[.,]\d)/y;

/** Fractions that stand on a maker's rule: halves to hundred-and-twenty-eighths. */
const onTheRule = (d: number): boolean => d >= 2 && d <= 128 && (d & (d - 1)) === 0;

/** The number that starts at `i` of a text in plain characters, as long as it can be; null where none starts. */
export function numberAt(t: string, i: number, spot: Spot = {}): NumberScan | null {
  const sign = matchAt(ONE_SIGN, t, i);
  if (sign) return fraction(...glyphParts(sign[0]), i, i + sign[0].length);
  return groups(t, i, spot) ?? decimal(t, i, spot) ?? whole(t, i, spot);
}

/** 1,234 and 1.234,5 and 1 200: figures in threes, or a decimal comma. */
function groups(t: string, i: number, spot: Spot): NumberScan | null {
  const m = (spot.inCall ? null : matchAt(GROUPED, t, i)) ?? (spot.inches ? null : matchAt(SPACED_GROUPS, t, i));
  if (!m) return null;
  const written = m[0];
  // The last point or comma is the decimal sign, unless it is the only kind and stands before three figures.
  const single = /^\d{1,3},\d{3}$/.test(written);
  const decimals = /^[\d, ]+\.(\d+)$/.exec(written) ?? /^[\d. ]+,(\d+)$/.exec(written);
  const onlyGroups =
    !decimals || /^\d{1,3}(?:,\d{3})+$/.test(written) || /^\d{1,3}(?:\.\d{3}){2,}$/.test(written) || / \d{3}$/.test(written);
  const digits = onlyGroups
    ? written.replace(/\D/g, '')
    : `${written.slice(0, -(decimals[1] as string).length).replace(/\D/g, '')}.${decimals[1]}`;
  const readings = single ? [written.replace(',', '.'), digits] : [digits];
  return ask(
    i + written.length,
    readings.map((text) => ({ plain: decimalRatio(text), text })),
  );
}

function decimal(t: string, i: number, spot: Spot): NumberScan | null {
  const m = matchAt(DECIMAL, t, i);
  if (!m) return null;
  const end = i + m[0].length;
  const comma = m[0].includes(',');
  if (comma && spot.inCall) {
    if (m[0].startsWith(',')) return null;
    const [a, b] = m[0].split(',');
    return bad(i, end, `"${m[0]}" can be two numbers or one: put a space behind a comma that parts two, and a point in one`, [
      `${a}, ${b}`,
      `${a}.${b}`,
    ]);
  }
  if (m[0].length > 40) return bad(i, end, 'that is more figures than a number needs', []);
  if (/[.,]\d/.test(t.slice(end, end + 2))) return bad(end, end + 1, 'a number has one point or comma at most', []);
  const [before = '', after = ''] = m[0].split(/[.,]/);
  const over = spot.before ? null : matchAt(OVER_DENOMINATOR, t, end);
  // 1.1/2: somebody's way to write 1 1/2, or 1.1 halved. 12.5/2 and 0.1/2 can only be divisions.
  if (
    over &&
    Number(before) > 0 &&
    after.length <= 3 &&
    onTheRule(Number(over[1])) &&
    Number(after) > 0 &&
    Number(after) < Number(over[1])
  ) {
    const parted = decimalRatio(m[0]).div(ratio(Number(over[1])));
    return ask(end + over[0].length, [mixed(before, Number(after), Number(over[1])), { plain: parted, text: ratioText(parted) }]);
  }
  const text = `${before.replace(/^0+(?=\d)/, '') || '0'}${after ? `.${after}` : ''}`;
  return { kind: 'number', end, plain: decimalRatio(text), text, form: 'decimal' };
}

function whole(t: string, i: number, spot: Spot): NumberScan | null {
  const m = matchAt(WHOLE, t, i);
  if (!m) return null;
  const end = i + m[0].length;
  if (m[0].length > 12) return bad(i, end, 'that is more figures than a number needs', []);
  return tail(t, i, end, m[0], spot) ?? number(end, decimalRatio(m[0]), m[0].replace(/^0+(?=\d)/, ''), 'whole');
}

/** What may follow the whole figures of one number. */
function tail(t: string, i: number, end: number, w: string, spot: Spot): NumberScan | null {
  const over = spot.before === '/' ? null : matchAt(OVER_DENOMINATOR, t, end);
  if (over) return fraction(Number(w), Number(over[1]), i, end + over[0].length);
  const sign = matchAt(SIGN_TAIL, t, end);
  if (sign) return joined(w, sign[1] === '-', ...glyphParts(sign[2] as string), i, end + sign[0].length);
  const parts = matchAt(FRACTION_TAIL, t, end);
  if (parts) {
    const [n, d] = [Number(parts[2]), Number(parts[3])];
    // 20-30/4 is a subtraction; a fraction behind a whole is smaller than one.
    if (parts[1] !== '-' || n < d) return joined(w, parts[1] === '-', n, d, i, end + parts[0].length);
  }
  const leaning = matchAt(LEANING_DASH, t, end);
  // 20 -1/2: a dash with a space on one side only.
  if (leaning) return joinedPerhaps(w, Number(leaning[1]), Number(leaning[2]), end + leaning[0].length);
  return spot.inches ? null : feetPerhaps(t, end, w);
}

/** 1-1-1/2 and 3 5 7/32 and 1 8: feet and inches without their marks. */
function feetPerhaps(t: string, end: number, w: string): NumberScan | null {
  const three = matchAt(FEET_TAIL, t, end);
  if (three) {
    const [n, d] = three[4] ? glyphParts(three[4]) : [Number(three[2]), Number(three[3])];
    if (!(n < d)) return null;
    const inches = mixed(three[1] as string, n, d);
    const readings: Meant[] = [feetAndInches(w, inches)];
    if (three[0].startsWith('-')) {
      const difference = decimalRatio(w).sub(inches.plain);
      readings.push({ plain: difference, text: ratioText(difference), less: true });
    }
    return ask(end + three[0].length, readings);
  }
  const two = matchAt(TWO_NUMBERS, t, end);
  return two ? ask(end + two[0].length, [feetAndInches(w, { plain: decimalRatio(two[1] as string), text: two[1] as string })]) : null;
}

const number = (end: number, plain: Ratio, text: string, form: 'whole' | 'fraction' | 'mixed' | 'dashed'): NumberScan => ({
  kind: 'number',
  end,
  plain,
  text,
  form,
});
const ask = (end: number, readings: readonly Meant[]): NumberScan => ({ kind: 'ask', end, readings });
export const bad = (at: number, end: number, problem: string, nearest: readonly string[]): Bad => ({
  kind: 'bad',
  at,
  end,
  problem,
  nearest,
});

function fraction(n: number, d: number, at: number, end: number): NumberScan {
  return d === 0 ? bad(at, end, 'nothing can be divided by 0', []) : number(end, ratio(n, d), `${n}/${d}`, 'fraction');
}

/** A whole and a fraction that belong together, or may. */
function joined(w: string, dashed: boolean, n: number, d: number, at: number, end: number): NumberScan | null {
  if (d === 0) return bad(at, end, 'nothing can be divided by 0', []);
  const one = mixed(w, n, d);
  if (n >= d) return ask(end, [{ plain: one.plain, text: ratioText(one.plain) }]);
  if (!dashed) return number(end, one.plain, one.text, 'mixed');
  // A dash before a fraction of the rule joins, as makers write it; before any other it may as well be a minus.
  if (onTheRule(d)) return number(end, one.plain, one.text, 'dashed');
  return joinedPerhaps(w, n, d, end);
}

/** A whole and a fraction with a dash between that may as well be a minus; null where the fraction is no fraction of one. */
function joinedPerhaps(w: string, n: number, d: number, end: number): NumberScan | null {
  if (!(n < d)) return null;
  const difference = decimalRatio(w).sub(ratio(n, d));
  return ask(end, [mixed(w, n, d), { plain: difference, text: ratioText(difference), less: true }]);
}

function mixed(w: string, n: number, d: number): { plain: Ratio; text: string } {
  return { plain: decimalRatio(w).add(ratio(n, d)), text: `${w.replace(/^0+(?=\d)/, '')} ${n}/${d}` };
}

/** Feet and inches as one length. Twelve inches and more are carried, so that the text reads back without a question. */
export function feetAndInches(feet: string, inches: { readonly plain: Ratio; readonly text: string }): { mm: Ratio; text: string } {
  const mm = decimalRatio(feet).mul(MM_IN.ft).add(inches.plain.mul(MM_IN.in));
  const more = inches.plain.div(12).floor();
  const carried = more.n > 0n ? ratioText(inches.plain.sub(more.mul(12))) : inches.text.replace(/^0+(?=\d)/, '');
  return { mm, text: `${decimalRatio(feet).add(more).n}' ${carried}"` };
}

/** A ratio as a text that reads back as the same number: a fraction of the rule, a decimal, or else a plain fraction. */
export function ratioText(r: Ratio): string {
  const d = Number(r.d);
  const minus = r.s < 0n ? '-' : '';
  if (d === 1) return `${minus}${r.n}`;
  if (!onTheRule(d)) {
    for (const places of [1, 2, 3, 4, 5, 6]) {
      const scaled = r.mul(ratio(10n ** BigInt(places)));
      if (scaled.d === 1n)
        return `${minus}${scaled.n / 10n ** BigInt(places)}.${(scaled.n % 10n ** BigInt(places)).toString().padStart(places, '0')}`;
    }
  }
  const w = r.n / r.d;
  return `${minus}${w > 0n ? `${w} ` : ''}${r.n % r.d}/${r.d}`;
}
