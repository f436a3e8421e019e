/** The longest length, angle or number written at one place of a text, for fields that hold only that and for expressions. */
import { type Bad, type Meant, type NumberScan, type Spot, bad, feetAndInches, matchAt, numberAt, ratioText } from './number.ts';
import { type LengthUnit, type Ratio, MM_IN, decimalRatio, toNumber } from './ratio.ts';

export type Literal =
  | { readonly kind: 'number'; readonly end: number; readonly plain: Ratio; readonly text: string; readonly dashed: boolean }
  | { readonly kind: 'length'; readonly end: number; readonly mm: Ratio; readonly text: string; readonly dashed: boolean }
  | { readonly kind: 'angle'; readonly end: number; readonly rad: number; readonly text: string }
  | { readonly kind: 'ask'; readonly of: 'number' | 'length' | 'angle'; readonly end: number; readonly readings: readonly Meant[] }
  | Bad;

const UNITS: readonly (readonly [LengthUnit, string])[] = [
  ['mm', 'mm|millimet(?:er|re)s?'],
  ['cm', 'cm|centimet(?:er|re)s?'],
  ['m', 'm|met(?:er|re)s?'],
  ['in', 'in|ins|inch|inches'],
  ['ft', 'ft|foot|feet'],
];
/** Words to offer where a unit is misspelt. */
export const UNIT_WORDS: readonly string[] = [
  'mm',
  'cm',
  'm',
  'in',
  'inch',
  'inches',
  'ft',
  'foot',
  'feet',
  'millimetres',
  'centimetres',
  'metres',
  'deg',
  'degrees',
];
const WORD_END = '(?![a-z0-9_])(?:\\.(?![a-z0-9_]))?';
const UNIT = new RegExp(` *(?:(')|(")|${UNITS.map(([, words]) => `(${words})${WORD_END}`).join('|')})`, 'iy');
const DEGREES = new RegExp(` *(?:°|deg(?:ree)?s?${WORD_END})`, 'iy');
const MINUTES = / *(\d{1,4}(?:\.\d{1,9})?)'(?: *(\d{1,4}(?:\.\d{1,9})?)")?/y;
const SLOPE = /:(\d{1,6}(?:\.\d{1,6})?)(?![\d.:])/y;
const GAP = / */y;
const TWO_DIVISIONS = /\d+\/\d+/y;

/** The unit that follows at `i`, spaces before it allowed. */
function unitAt(t: string, i: number): { readonly unit: LengthUnit; readonly end: number } | null {
  const m = matchAt(UNIT, t, i);
  if (!m) return null;
  const end = i + m[0].length;
  if (m[1]) return { unit: 'ft', end };
  if (m[2]) return { unit: 'in', end };
  const k = UNITS.findIndex((_, n) => m[n + 3] !== undefined);
  return { unit: (UNITS[k] as (typeof UNITS)[number])[0], end };
}

/** `t` in plain characters (`plainCharacters`). Null where no number starts at `i`; never throws. */
export function literalAt(t: string, i: number, spot: Spot = {}): Literal | null {
  const two = spot.before === '/' ? matchAt(TWO_DIVISIONS, t, i) : null;
  const divided = two && unitAt(t, i + two[0].length);
  if (divided)
    return bad(i, divided.end, `behind "/", "${t.slice(i, divided.end)}" can be read two ways: put it in brackets`, [
      `(${t.slice(i, divided.end)})`,
    ]);
  const n = numberAt(t, i, spot);
  if (n === null || n.kind === 'bad') return n;
  const degrees = matchAt(DEGREES, t, n.end);
  if (degrees) return angle(t, n, n.end + degrees[0].length);
  const u = unitAt(t, n.end);
  if (n.kind === 'ask') return u ? askedWithUnit(i, n, u.unit, u.end) : { kind: 'ask', of: 'number', end: n.end, readings: n.readings };
  const slope = u ? null : matchAt(SLOPE, t, n.end);
  if (slope) return fall(n.plain, n.text, slope[1] as string, i, n.end + slope[0].length);
  const dashed = n.form === 'dashed';
  if (!u) return { kind: 'number', end: n.end, plain: n.plain, text: n.text, dashed };
  if (u.unit === 'ft' && n.form === 'whole') return inchesBehind(t, n, u.end) ?? lengthOf(n.plain, n.text, 'ft', u.end, dashed);
  if (u.unit === 'm' || u.unit === 'cm') return smallerBehind(t, n, u);
  return fractionBehind(t, n, u) ?? lengthOf(n.plain, n.text, u.unit, u.end, dashed);
}

type Sure = Extract<NumberScan, { kind: 'number' }>;

function lengthOf(plain: Ratio, text: string, unit: LengthUnit, end: number, dashed: boolean): Literal {
  return { kind: 'length', end, mm: plain.mul(MM_IN[unit]), text: withUnit(text, unit), dashed };
}
export const withUnit = (text: string, unit: LengthUnit): string => (unit === 'ft' ? `${text}'` : `${text} ${unit}`);

function askedWithUnit(at: number, n: Extract<NumberScan, { kind: 'ask' }>, unit: LengthUnit, end: number): Literal {
  const readings: Meant[] = [];
  for (const r of n.readings) {
    if ('plain' in r) readings.push({ ...(r.less && { less: r.less }), mm: r.plain.mul(MM_IN[unit]), text: withUnit(r.text, unit) });
    else if (unit === 'in') readings.push(r);
  }
  return readings.length > 0 ? { kind: 'ask', of: 'length', end, readings } : bad(at, end, 'these numbers do not make one length', []);
}

/** 1' 8 1/2" and 5'-6": inches, with or without their mark, behind feet. A dash with a space before it is a minus. */
function inchesBehind(t: string, feet: Sure, from: number): Literal | null {
  const gap = t[from] === '-' ? 1 : (matchAt(GAP, t, from)?.[0].length ?? 0);
  const n = numberAt(t, from + gap, { inches: true });
  if (n === null || n.kind === 'bad') return null;
  const u = unitAt(t, n.end);
  if (u && u.unit !== 'in') return null;
  const end = u ? u.end : n.end;
  if (n.kind === 'ask')
    return { kind: 'ask', of: 'length', end, readings: n.readings.flatMap((r) => ('plain' in r ? [feetAndInches(feet.text, r)] : [])) };
  const sum = feetAndInches(feet.text, n);
  // Twelve inches and more behind feet is a slip of the pen as often as not.
  if (n.plain.compare(12) >= 0) return { kind: 'ask', of: 'length', end, readings: [sum, ...thousands(feet, n, gap === 0 && !u)] };
  return { kind: 'length', end, mm: sum.mm, text: sum.text, dashed: false };
}

/** 1'234: in some countries that mark parts the thousands. */
function thousands(before: Sure, behind: Sure, close: boolean): Meant[] {
  if (!close || !/^\d{3}$/.test(behind.text) || !/^\d{1,3}$/.test(before.text)) return [];
  return [{ plain: decimalRatio(before.text + behind.text), text: before.text + behind.text }];
}

/** 1 m 20 cm 5 mm: each smaller than the one before. */
function smallerBehind(t: string, first: Sure, u: { unit: LengthUnit; end: number }): Literal {
  let mm = first.plain.mul(MM_IN[u.unit]);
  let text = withUnit(first.text, u.unit);
  let { unit, end } = u;
  while (unit !== 'mm' && first.form === 'whole') {
    const gap = matchAt(/ +/y, t, end);
    const n = gap ? numberAt(t, end + gap[0].length, { inches: true }) : null;
    const next = n?.kind === 'number' ? unitAt(t, n.end) : null;
    if (n?.kind === 'number' && !next && n.form === 'whole') return smallerPerhaps(mm, text, unit, n);
    if (n?.kind !== 'number' || !next || !(next.unit === 'mm' || (next.unit === 'cm' && unit === 'm'))) break;
    mm = mm.add(n.plain.mul(MM_IN[next.unit]));
    text = `${text} ${withUnit(n.text, next.unit)}`;
    ({ unit, end } = next);
  }
  return { kind: 'length', end, mm, text, dashed: first.form === 'dashed' };
}

/** 1 m 20: centimetres, or millimetres? */
function smallerPerhaps(mm: Ratio, text: string, unit: LengthUnit, n: Sure): Literal {
  const smaller: readonly LengthUnit[] = unit === 'm' ? ['cm', 'mm'] : ['mm'];
  const readings = smaller.map((u) => ({ mm: mm.add(n.plain.mul(MM_IN[u])), text: `${text} ${withUnit(n.text, u)}` }));
  return { kind: 'ask', of: 'length', end: n.end, readings };
}

/** 8" 1/2: the mark stands too early. */
function fractionBehind(t: string, n: Sure, u: { unit: LengthUnit; end: number }): Literal | null {
  const gap = matchAt(/ +/y, t, u.end);
  if (!gap || u.unit !== 'in' || n.form !== 'whole') return null;
  const f = numberAt(t, u.end + gap[0].length, { inches: true });
  if (f?.kind !== 'number' || f.form !== 'fraction' || f.plain.compare(1) >= 0) return null;
  return {
    kind: 'ask',
    of: 'length',
    end: unitAt(t, f.end)?.end ?? f.end,
    readings: [{ mm: n.plain.add(f.plain).mul(MM_IN.in), text: `${n.text} ${f.text} in` }],
  };
}

function angle(t: string, n: Exclude<NumberScan, Bad>, from: number): Literal {
  if (n.kind === 'ask') return { kind: 'ask', of: 'angle', end: from, readings: n.readings.filter((r) => 'plain' in r) };
  const m = n.form === 'whole' ? matchAt(MINUTES, t, from) : null;
  if (!m) return { kind: 'angle', end: from, rad: radians(n.plain), text: `${n.text} deg` };
  const whole = n.plain.add(decimalRatio(m[1] as string).div(60)).add(decimalRatio(m[2] ?? '0').div(3600));
  if (Number(m[1]) >= 60 || Number(m[2] ?? 0) >= 60)
    return bad(from, from + m[0].length, 'a degree has 60 minutes and a minute 60 seconds', [`${ratioText(whole)} deg`]);
  return { kind: 'angle', end: from + m[0].length, rad: radians(whole), text: `${n.text}° ${m[1]}'${m[2] ? ` ${m[2]}"` : ''}` };
}

/** 1:8, the slope of a tail: one across in eight along, measured from the line. */
function fall(rise: Ratio, text: string, run: string, at: number, end: number): Literal {
  const d = decimalRatio(run);
  return d.n === 0n
    ? bad(at, end, 'a slope of anything to 0 has no angle', [])
    : { kind: 'angle', end, rad: Math.atan(toNumber(rise.div(d))), text: `${text}:${run}` };
}
export const radians = (degrees: Ratio): number => (toNumber(degrees) * Math.PI) / 180;
