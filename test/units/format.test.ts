/** Printing lengths and angles: once rounded, to whole ticks. Cases that other programs got wrong are named after what they showed. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Denominator,
  DENOMINATORS,
  type LengthStyle,
  formatAngle,
  formatDecimal,
  formatLength,
  formatNumber,
  lengthParts,
  mmOfTicks,
  stepTicks,
  ticksOf,
} from '../../src/units/format.ts';
import { readLength } from '../../src/units/parse.ts';
import { writeLength } from '../../src/units/write.ts';
import { law } from '../support/law.ts';

const IN = 25.4;
const inch = (n: number, denominator: Denominator, feet = false): string => formatLength(n * IN, { system: 'in', denominator, feet });
function read(text: string, unit: 'mm' | 'in' = 'in'): number {
  const r = readLength(text, unit);
  if (!r.ok) throw new Error(`"${text}" did not read: ${JSON.stringify(r)}`);
  return r.mm;
}

describe('the whole is split off after rounding', () => {
  test.each([
    ['35.99 at 1/16 is 36, not 35 16/16', inch(35.99, 16), '36 in'],
    ['35.99 in feet is 3 feet', inch(35.99, 16, true), '3′'],
    ['11.999 is a foot, not 0 ft 12 in', inch(11.999, 16, true), '1′'],
    ['11.999 without feet', inch(11.999, 64), '12 in'],
    ['4 ft is not 3 ft 12 in', inch(48, 16, true), '4′'],
    ['0.995 at 1/64 is 1', inch(0.995, 64), '1 in'],
    ['5.995 keeps its carry', formatLength(5.995, { system: 'mm', decimals: 2 }), '6 mm'],
    ['5.995 at one place', formatLength(5.995, { system: 'mm', decimals: 1 }), '6 mm'],
    ['1.005 is not cut to 1', formatLength(1.005, { system: 'mm', decimals: 2 }), '1.01 mm'],
    ['-0.001 is 0 without a minus', formatLength(-0.001, { system: 'mm', decimals: 2 }), '0 mm'],
    ['-0.001 in', inch(-0.001, 16), '0 in'],
    ['-0', formatLength(-0, { system: 'mm', decimals: 0 }), '0 mm'],
    ['45.9999 degrees', formatAngle((45.9999 * Math.PI) / 180), '46°'],
    ['359.99 degrees', formatAngle((359.99 * Math.PI) / 180), '360°'],
    ['1/32 stays, and is no 3/64', inch(1 / 32, 64), '1⁄32 in'],
    ['a negative mixed number', inch(-8.75, 16), '−8 3⁄4 in'],
    ['a negative fraction', inch(-0.5, 16), '−1⁄2 in'],
    ['feet with no whole inch', inch(48.1875, 16, true), '4′ 0 3⁄16″'],
    ['feet and inches', inch(41.21875, 32, true), '3′ 5 7⁄32″'],
    ['under a foot', inch(8.5, 16, true), '8 1⁄2 in'],
    ['negative feet', inch(-41, 16, true), '−3′ 5″'],
    ['lowest terms', inch(2.5, 128), '2 1⁄2 in'],
    ['mm without closing zeros', formatLength(508, { system: 'mm', decimals: 2 }), '508 mm'],
    ['mm with one figure', formatLength(12.05, { system: 'mm', decimals: 2 }), '12.05 mm'],
    ['ten metres', formatLength(10_000, { system: 'mm', decimals: 1 }), '10000 mm'],
  ])('%s', (_, printed, expected) => {
    expect(printed).toBe(expected);
  });
});

test('parts for typesetting', () => {
  expect(lengthParts(41.21875 * IN, { system: 'in', denominator: 32, feet: true })).toEqual({
    minus: false,
    feet: 3,
    whole: 5,
    numerator: 7,
    denominator: 32,
    decimals: '',
    unit: 'in',
    rounded: false,
  });
  expect(lengthParts(-0.3 * IN, { system: 'in', denominator: 8 })).toEqual({
    minus: true,
    feet: null,
    whole: null,
    numerator: 1,
    denominator: 4,
    decimals: '',
    unit: 'in',
    rounded: true,
  });
  expect(lengthParts(12.7, { system: 'mm', decimals: 1 })).toEqual({
    minus: false,
    feet: null,
    whole: 12,
    numerator: 0,
    denominator: 1,
    decimals: '7',
    unit: 'mm',
    rounded: false,
  });
});

test('decimals for tables that machines read', () => {
  expect(formatDecimal(19.05, 'in')).toBe('0.75');
  expect(formatDecimal(-19.05, 'in')).toBe('-0.75');
  expect(formatDecimal(1234.5, 'mm')).toBe('1234.5');
  expect(formatDecimal(-0.0001, 'mm')).toBe('0');
  expect(formatNumber(-2.345)).toBe('−2.35');
});

test('an arrow key goes to the next tick, and from off the ticks to the nearest ahead', () => {
  const s: LengthStyle = { system: 'in', denominator: 16 };
  expect(stepTicks(IN, s, 1)).toBe(26.9875);
  expect(stepTicks(IN, s, -8)).toBe(12.7);
  expect(stepTicks(IN * 1.01, s, 1)).toBe(26.9875);
  expect(stepTicks(IN * 1.01, s, -1)).toBe(IN);
  expect(stepTicks(IN * 0.99, s, 1)).toBe(IN);
  expect(stepTicks(IN * 0.99, s, -1)).toBe((15 * IN) / 16);
});

test('a number without end is our fault and throws', () => {
  expect(() => formatLength(Number.NaN, { system: 'mm', decimals: 1 })).toThrow('NaN');
  expect(() => writeLength(Number.POSITIVE_INFINITY, 'in')).toThrow('Infinity');
});

describe('every 64th of an inch to 96 in', () => {
  test('is printed as itself, read back as itself, and survives millimetres', () => {
    for (let n = 0; n <= 96 * 64; n++) {
      const mm = (n * 254) / 640;
      const [whole, left] = [Math.floor(n / 64), n % 64];
      // As typed, unreduced: the exact tick is the oracle, worked out in whole numbers.
      const typed = left === 0 ? `${whole}` : `${whole} ${left}/64`;
      expect(read(typed)).toBe(mm);
      expect(read(`${mm} mm`)).toBe(mm);
      expect(ticksOf(mm, { system: 'in', denominator: 64 })).toBe(n);
      for (const feet of [false, true]) expect(read(formatLength(mm, { system: 'in', denominator: 64, feet }))).toBe(mm);
      expect(read(writeLength(mm, 'in'))).toBe(mm);
      expect(read(writeLength(mm, 'mm'))).toBeCloseTo(mm, 6);
    }
  });
  test('comes back the same by metres and by inches in decimals', () => {
    for (let n = 0; n <= 96 * 64; n++) {
      const metres = (n * 254) / 640 / 1000;
      expect(ticksOf(metres * 1000, { system: 'in', denominator: 64 })).toBe(n);
      expect(ticksOf(read(`${n / 64}`), { system: 'in', denominator: 64 })).toBe(n);
    }
  });
});

const style: fc.Arbitrary<LengthStyle> = fc.oneof(
  fc.record({ system: fc.constant('in' as const), denominator: fc.constantFrom(...DENOMINATORS), feet: fc.boolean() }),
  fc.record({ system: fc.constant('mm' as const), decimals: fc.constantFrom(0 as const, 1 as const, 2 as const) }),
);
const length = fc.double({ min: -100_000, max: 100_000, noNaN: true });

law(
  'a printed length reads back as the tick it was rounded to',
  fc.tuple(length, style, fc.constantFrom('mm' as const, 'in' as const)),
  ([mm, s, unit]) => {
    const ticks = ticksOf(mm, s);
    expect(read(formatLength(mm, s), unit)).toBe(mmOfTicks(ticks, s));
  },
  { runs: 2000 },
);

law(
  'rounding moves a length by half a tick at most, and printing twice changes nothing',
  fc.tuple(length, style),
  ([mm, s]) => {
    const once = mmOfTicks(ticksOf(mm, s), s);
    expect(Math.abs(once - mm)).toBeLessThanOrEqual(mmOfTicks(1, s) * (0.5 + 1e-6));
    expect(formatLength(once, s)).toBe(formatLength(mm, s));
    expect(formatLength(mm, s)).not.toMatch(/(\d+)⁄\1\b|[-−]0 |^[-−]0$|\.\d*0 mm/);
  },
  { runs: 2000 },
);

law(
  'a length written for the document reads back to 1e-6 mm',
  fc.tuple(length, fc.constantFrom('mm' as const, 'in' as const)),
  ([mm, unit]) => {
    expect(Math.abs(read(writeLength(mm, unit), unit) - mm)).toBeLessThanOrEqual(1e-6);
  },
  { runs: 2000 },
);
