/** Sentences with figures in them, and the named tolerances. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { LengthStyle } from '../../src/units/format.ts';
import { degFigure, figureRuns, formatFinding, formatQuantity, mmFigure, numberFigure, renderFigures } from '../../src/units/figures.ts';
import { overlaps } from '../../src/units/tolerance.ts';
import { law } from '../support/law.ts';

const inch: LengthStyle = { system: 'in', denominator: 32 };
const metric: LengthStyle = { system: 'mm', decimals: 1 };

test('the same sentence in both systems', () => {
  const told = 'The tenons share {mm:3.175}, over {mm:85.725} of height, at {deg:15}; {n:2} pegs.';
  expect(renderFigures(told, inch)).toBe('The tenons share 1⁄8 in, over 3 3⁄8 in of height, at 15°; 2 pegs.');
  expect(renderFigures(told, metric)).toBe('The tenons share 3.2 mm, over 85.7 mm of height, at 15°; 2 pegs.');
});

test('runs of words and figures for the screen', () => {
  expect(figureRuns('cut {mm:19.05} deep', inch)).toEqual([
    { kind: 'words', text: 'cut ' },
    {
      kind: 'figure',
      text: '3⁄4 in',
      of: 'mm',
      value: 19.05,
      parts: { minus: false, feet: null, whole: null, numerator: 3, denominator: 4, decimals: '', unit: 'in', rounded: false },
    },
    { kind: 'words', text: ' deep' },
  ]);
  expect(figureRuns('', metric)).toEqual([]);
});

describe('what is there is never printed as nothing', () => {
  test.each([
    ['{mm:0.05}', inch, 'less than 1⁄32 in'],
    ['{mm:0.03}', metric, 'less than 0.1 mm'],
    ['{mm:-0.03}', metric, 'less than 0.1 mm'],
    ['{mm:0}', metric, '0 mm'],
    ['{mm:0.0000001}', metric, '0 mm'],
    ['{mm:1e-7}', metric, '0 mm'],
    ['{mm:-0.5}', metric, '−0.5 mm'],
  ] as const)('%s', (text, style, expected) => {
    expect(renderFigures(text, style)).toBe(expected);
  });
});

// 1 in = 25.4 mm and 1 lb = 0.45359237 kg exactly (agreement of 1959): 16387.064 mm³ to the cubic inch.
test('areas, volumes, weights, shares', () => {
  expect(renderFigures('{mm3:16387.064} {mm2:645.16} {kg:4.5359237} {percent:12.34}', inch)).toBe('1 in³ 1 in² 10 lb 12.3 %');
  expect(renderFigures('{mm3:245.67} {mm3:12345} {mm2:2550} {kg:4.5}', metric)).toBe('246 mm³ 12.3 cm³ 25.5 cm² 4.5 kg');
  expect(formatQuantity(19.05, 'mm', inch)).toBe('3⁄4 in');
  expect(formatQuantity(3, 'count', inch)).toBe('3');
  expect(formatQuantity(0.5, 'none', inch)).toBe('0.5');
});

test('what only looks like a figure stays as it is', () => {
  for (const text of ['{mm:}', '{mm:NaN}', '{mm:1', '{ft:3}', '{mm:1e999}', '{mm: 3}', '{{mm}}'])
    expect(renderFigures(text, metric)).toBe(text);
});

test('a finding with all its words', () => {
  const f = {
    title: 'Tenons share {mm:3}',
    why: 'over {mm:80}',
    remedies: [{ label: 'Shorten to {mm:27}', consequence: '{n:4} times' }, { label: 'Mitre' }],
  };
  expect(formatFinding(f, metric)).toEqual({
    title: 'Tenons share 3 mm',
    why: 'over 80 mm',
    remedies: [{ label: 'Shorten to 27 mm', consequence: '4 times' }, { label: 'Mitre' }],
  });
});

law('a figure put into a sentence comes out as one figure of the same value', fc.double({ min: -1e5, max: 1e5, noNaN: true }), (v) => {
  for (const [token, value] of [
    [mmFigure(v), v],
    [numberFigure(v), v],
    [degFigure(v), (v * 180) / Math.PI],
  ] as const) {
    const figures = figureRuns(`a ${token} b`, metric).filter((r) => r.kind === 'figure');
    expect(figures).toHaveLength(1);
    expect(figures[0]?.kind === 'figure' && figures[0].value).toBeCloseTo(value, 5);
  }
});
law('printing never throws', fc.string({ unit: fc.constantFrom('{', '}', 'mm', ':', '-', '1', '.', 'e', 'deg', 'n', ' ') }), (text) => {
  expect(typeof renderFigures(text, inch)).toBe('string');
});

test('touching is not overlapping', () => {
  // Two boxes that share 30 × 40 × t: volume 1200 t, surface 2400 + 140 t, thickness 2V/A close to t.
  const shared = (t: number): boolean => overlaps(1200 * t, 2400 + 140 * t);
  expect(shared(0)).toBe(false);
  expect(shared(0.005)).toBe(false);
  expect(shared(0.02)).toBe(true);
  expect(overlaps(0.0005, 0.01)).toBe(false);
});
