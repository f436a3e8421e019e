/**
 * Lengths and angles as makers type them. An inch is 25.4 mm exactly (international yard and pound agreement of 1959, also
 * ISO 80000-3, from memory), a foot twelve of them; every expected number below follows from that by hand.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type LengthRead, readAngle, readLength } from '../../src/units/parse.ts';
import { law } from '../support/law.ts';

const inches = (text: string): number => mm(readLength(text, 'in')) / 25.4;
function mm(r: LengthRead): number {
  if (!r.ok) throw new Error(`not read: ${JSON.stringify(r)}`);
  return r.mm;
}
const ways = (text: string, unit: 'mm' | 'in'): string[] => {
  const r = readLength(text, unit);
  if (r.ok || !('ask' in r)) throw new Error(`"${text}" was not asked about: ${JSON.stringify(r)}`);
  return r.ask.map((a) => a.text);
};

describe('in a document in inches', () => {
  const table: readonly (readonly [string, number])[] = [
    ['20', 20],
    ['.5', 0.5],
    ['0.5', 0.5],
    ['0,5', 0.5],
    ['20,5', 20.5],
    ['20.5', 20.5],
    ['.50', 0.5],
    ['1.75', 1.75],
    ['1,75', 1.75],
    ['20.', 20],
    ['007', 7],
    ['1/2', 0.5],
    ['83/128', 83 / 128],
    ['11/32"', 11 / 32],
    ['3/4', 0.75],
    ['7/4', 1.75],
    ['½', 0.5],
    ['⅞', 0.875],
    ['⅟8', 0.125],
    ['⁷⁄₈', 0.875],
    ['20 1/2', 20.5],
    ['20-1/2', 20.5],
    ['1-3/4', 1.75],
    ['1¾', 1.75],
    ['1 ¾', 1.75],
    ['1-¾', 1.75],
    ['1⁷⁄₈', 1.875],
    ['1 3/4"', 1.75],
    ['1 3⁄4', 1.75],
    ['1 3⁄4″', 1.75],
    ['85-1/2', 85.5],
    ['1-1/2', 1.5],
    ['1-1/2 in', 1.5],
    ['20–1/2', 20.5],
    ['2 1/3', 2 + 1 / 3],
    ['6 1/2', 6.5],
    ['13⁄4', 3.25],
    [`1' 8"`, 20],
    ['1 ft 8', 20],
    ['1 ft 8 in', 20],
    [`1'8"`, 20],
    [`1' 8`, 20],
    ['1’ 8”', 20],
    ['1′ 8″', 20],
    [`1' 8''`, 20],
    ['1 foot 8 inches', 20],
    ['2 feet', 24],
    ['1 FT. 8 IN.', 20],
    [`3' 5 7/32"`, 41.21875],
    [`3'-5 7/32"`, 41.21875],
    [`3' 5-7/32`, 41.21875],
    [`4' 0 3/16"`, 48.1875],
    [`4' 3/16"`, 48.1875],
    [`5'-6"`, 66],
    [`7'`, 84],
    [`7 ft`, 84],
    [`1.5'`, 18],
    [`1½'`, 18],
    ['-8 3/4', -8.75],
    ['−8 3/4', -8.75],
    ['- 8 3/4', -8.75],
    ['-0 1/2', -0.5],
    ['-1 2/3', -(1 + 2 / 3)],
    [`-3' 5"`, -41],
    ['-.5', -0.5],
    ['+2', 2],
    ['508 mm', 20],
    ['508mm', 20],
    ['50,8 cm', 20],
    ['50.8 CM', 20],
    ['0.508 m', 20],
    ['25.4 millimetres', 1],
    ['1 inch', 1],
    ['20 ins', 20],
    ['\u00a020\u2009in\u202f', 20],
    ['1\u20093⁄4\u00a0in', 1.75],
    ['\t20\n', 20],
    ['0', 0],
    ['-0', 0],
    ['0 1/2', 0.5],
    ['0,125', 0.125],
    ['0.125', 0.125],
    ['1.234', 1.234],
  ];
  test.each(table)('%s', (text, expected) => {
    expect(inches(text)).toBeCloseTo(expected, 12);
  });
});

describe('in a document in millimetres', () => {
  const table: readonly (readonly [string, number])[] = [
    ['20', 20],
    ['1200', 1200],
    ['20,5', 20.5],
    ['20.5', 20.5],
    ['1,75', 1.75],
    ['2 m', 2000],
    ['2m', 2000],
    ['50,8 cm', 508],
    ['1 m 20 cm', 1200],
    ['1 m 20 cm 5 mm', 1205],
    ['2 metres', 2000],
    ['20 in', 508],
    ['3/4"', 19.05],
    ['1-1/2 in', 38.1],
    [`3' 5 7/32"`, 1046.95625],
    [`1' 8`, 508],
    ['20 1/2', 20.5],
    ['22.225', 22.225],
    ['-3', -3],
    ['12 1/2 mm', 12.5],
  ];
  test.each(table)('%s', (text, expected) => {
    expect(mm(readLength(text, 'mm'))).toBe(expected);
  });
});

test('says whether a unit was given, and echoes the reading in full', () => {
  expect(readLength('20 1/2', 'in')).toEqual({ ok: true, unitGiven: false, mm: 520.7, text: '20 1/2 in' });
  expect(readLength(`1’ 8”`, 'mm')).toEqual({ ok: true, unitGiven: true, mm: 508, text: `1' 8"` });
  expect(readLength('50,8 cm', 'mm')).toEqual({ ok: true, unitGiven: true, mm: 508, text: '50.8 cm' });
  expect(readLength('4-3/16', 'in')).toMatchObject({ text: '4 3/16 in' });
  expect(Object.is((readLength('-0', 'mm') as { mm: number }).mm, 0)).toBe(true);
});

describe('two ways to read it: asked, never guessed', () => {
  const table: readonly (readonly [string, 'mm' | 'in', readonly string[]])[] = [
    ['1-1-1/2', 'in', [`1' 1 1/2"`, '-1/2 in']],
    ['4-5 7/32', 'in', [`4' 5 7/32"`, '-1 7/32 in']],
    ['-1-1-1/2', 'in', [`-1' 1 1/2"`]],
    ['1-1-1/2 in', 'mm', [`1' 1 1/2"`, '-1/2 in']],
    ['1.1/2', 'in', ['1 1/2 in', '0.55 in']],
    ['1,1/2', 'mm', ['1 1/2 mm', '0.55 mm']],
    ['3 5 7/32', 'in', [`3' 5 7/32"`]],
    ['3 5½', 'in', [`3' 5 1/2"`]],
    ['1 8', 'in', [`1' 8"`]],
    ['1,234', 'mm', ['1.234 mm', '1234 mm']],
    ['1,234', 'in', ['1.234 in', '1234 in']],
    ['1,234 mm', 'in', ['1.234 mm', '1234 mm']],
    ['1.234,5', 'mm', ['1234.5 mm']],
    ['1,234.5', 'mm', ['1234.5 mm']],
    ['12,345,678', 'mm', ['12345678 mm']],
    ['1.234.567', 'mm', ['1234567 mm']],
    ['1 200 mm', 'in', ['1200 mm']],
    ['1\u2009200,5 mm', 'in', ['1200.5 mm']],
    ['3 7/4', 'in', ['4 3/4 in']],
    ['10-1/3', 'in', ['10 1/3 in', '9 2/3 in']],
    [`1' 14"`, 'in', [`2' 2"`]],
    [`1' 12"`, 'in', [`2' 0"`]],
    ['8" 1/2', 'in', ['8 1/2 in']],
    ['20 -1/2', 'in', ['20 1/2 in', '19 1/2 in']],
    ['20- 1/2', 'in', ['20 1/2 in', '19 1/2 in']],
    [`1'234`, 'mm', [`20' 6"`, '1234 mm']],
    ['1 m 20', 'mm', ['1 m 20 cm', '1 m 20 mm']],
  ];
  test.each(table)('%s', (text, unit, expected) => {
    expect(ways(text, unit)).toEqual(expected);
  });
  test('1.1/2 is one and a half, or one point one halved', () => {
    expect(readLength('1.1/2', 'in')).toMatchObject({ ask: [{ mm: 38.1 }, { mm: 0.55 * 25.4 }] });
  });
});

describe('what cannot be read is told with its place and what could be', () => {
  const table: readonly (readonly [string, number, readonly string[]])[] = [
    ['', 0, []],
    ['   ', 0, []],
    ['-', 0, []],
    ['20 inchs', 3, ['20 inch']],
    ['20 milimeters', 3, ['20 millimetres']],
    ['20 furlongs', 3, ['20 mm', '20 in']],
    ['about 20 mm', 0, ['20 mm']],
    ['3/0', 0, []],
    ['1 3/0', 0, []],
    ['1.2.3', 3, []],
    ['20 mm 3 in', 6, ['20 mm']],
    ['top - 28', 0, ['28']],
    ['20 - 1/2', 3, ['20']],
    ['12.5/2', 4, ['12.5']],
    ['15 deg', 0, []],
    ['1:8', 0, []],
    ['NaN', 0, []],
    ['Infinity', 0, []],
    ['1e3', 1, ['1 mm', '1 in']],
    ['0x10', 1, ['0 mm', '0 in']],
    ['--2', 1, ['2']],
    ['1234567890123', 0, []],
    [`3' 5 mm`, 3, [`3'`]],
  ];
  test.each(table)('"%s"', (text, at, nearest) => {
    const r = readLength(text, 'in');
    expect(r).toMatchObject({ ok: false, at, nearest });
    expect('cannot' in r && r.cannot).toMatch(/\w/);
  });
  test('a text as long as a page', () => {
    expect(readLength('1'.repeat(100_000), 'mm')).toMatchObject({ ok: false, at: 200 });
  });
});

test('a decimal comma is never dropped: "20,5" and "20.5" are both 20.5', () => {
  for (const unit of ['mm', 'in'] as const)
    for (const text of ['20,5', '20.5']) expect(mm(readLength(text, unit)) / (unit === 'in' ? 25.4 : 1)).toBeCloseTo(20.5, 12);
});

describe('angles', () => {
  const table: readonly (readonly [string, number])[] = [
    ['15 deg', 15],
    ['15°', 15],
    ['15º', 15],
    ['15.5', 15.5],
    ['15,5', 15.5],
    ["7° 30'", 7.5],
    ['7°30′15″', 7 + 30 / 60 + 15 / 3600],
    ['7 1/2 deg', 7.5],
    ['7½°', 7.5],
    ['-3°', -3],
    ['15 degrees', 15],
    ['45', 45],
  ];
  test.each(table)('%s', (text, degrees) => {
    const r = readAngle(text);
    expect(r).toMatchObject({ ok: true, unitGiven: text !== '45' && !text.startsWith('15.') && !text.startsWith('15,') });
    expect(r.ok && (r.rad * 180) / Math.PI).toBeCloseTo(degrees, 10);
  });
  // arctan(1/8) = 7.125016°, arctan(1/6) = 9.462322°: tables of tangents, worked out by hand to six places.
  test.each([
    ['1:8', 7.125016],
    ['1 : 8', 7.125016],
    ['1 in 8', 7.125016],
    ['1:6', 9.462322],
    ['1:1', 45],
  ])('the slope %s', (text, degrees) => {
    const r = readAngle(text);
    expect(r.ok && (r.rad * 180) / Math.PI).toBeCloseTo(degrees, 5);
  });
  test('what is no angle', () => {
    expect(readAngle('15 mm')).toMatchObject({ ok: false, at: 0 });
    expect(readAngle('1:0')).toMatchObject({ ok: false });
    expect(readAngle(`7° 75'`)).toMatchObject({ ok: false, nearest: ['8 1/4 deg'] });
    expect(readAngle('15 degs.x')).toMatchObject({ ok: false });
    expect(readAngle('1.1/2')).toMatchObject({ ok: false, ask: [{ text: '1 1/2 deg' }, { text: '0.55 deg' }] });
  });
});

const bits = [
  '0',
  '1',
  '2',
  '12',
  '½',
  '/',
  '⁄',
  ' ',
  '-',
  '.',
  ',',
  "'",
  '"',
  ' in',
  'mm',
  'ft',
  '°',
  ':',
  '\u2009',
  '−',
  '⅟',
  '₈',
  '¹',
  '000',
  '345',
  '(',
  'x',
  '😀',
  '\u0000',
];
const scraps = fc.array(fc.constantFrom(...bits), { maxLength: 12 }).map((a) => a.join(''));

law(
  'reading never throws and always answers',
  fc.oneof(scraps, fc.string({ unit: 'binary', maxLength: 60 })),
  (text) => {
    for (const r of [readLength(text, 'mm'), readLength(text, 'in')]) {
      if (r.ok) expect(Number.isFinite(r.mm) && !Object.is(r.mm, -0)).toBe(true);
      else if ('ask' in r) expect(r.ask.length).toBeGreaterThan(0);
      else expect(r.at).toBeLessThanOrEqual(text.length);
    }
    const a = readAngle(text);
    if (a.ok) expect(Number.isFinite(a.rad)).toBe(true);
  },
  { runs: 3000 },
);

law(
  'what is echoed or offered reads back as the same without a question, in whatever document',
  fc.tuple(scraps, fc.constantFrom('mm' as const, 'in' as const)),
  ([text, unit]) => {
    const r = readLength(text, unit);
    const echoes = r.ok ? [r] : 'ask' in r ? r.ask : [];
    for (const e of echoes) {
      for (const other of ['mm', 'in'] as const) expect(mm(readLength(e.text, other))).toBeCloseTo(e.mm, 6);
    }
  },
  { runs: 3000 },
);
