/** The case with back: sizes by hand, clean as a whole piece, and what it refuses. */
import { beforeAll, expect, test } from 'vitest';
import { maker } from '../../src/makers/case.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { expectClean, filled, placeIn, sizeIn, spaceOf, troublesOf } from '../support/makers.ts';

beforeAll(() => loadKernel());

test('little chest: 8 high, 6 wide, 4 deep outside, sides 3/8 (P6): the parts by hand', () => {
  const settings = { wood: 'pine', thick: '3/8 in', back_wood: 'plywood', back_thick: '1/8 in', back_set: '5/16 in', widest: '5 in' };
  const { doc } = filled(maker, spaceOf(6 * 25.4, 4 * 25.4, 8 * 25.4, {}, 'in'), 'niche', settings);
  const size = sizeIn(doc);
  const inches = (path: string): number[] => size(path).map((x) => Math.round((x / 25.4) * 1e6) / 1e6);
  expect(inches('case_side:left')).toEqual([0.375, 4, 8]);
  expect(inches('case_top')).toEqual([6, 4, 0.375]);
  // Between the sides 6 - 2 x 3/8 = 5-1/4, between top and bottom 8 - 2 x 3/8 = 7-1/4.
  expect(inches('case_back')).toEqual([5.25, 0.125, 7.25]);
  expectClean(doc);
});
test.each([
  ['dovetailed, sheet, shelves', { inside: 'shelves' }],
  ['dovetailed, solid panel', { back_wood: 'oak', back: 'panel', back_thick: '8 mm' }],
  ['dovetailed, boards, dividers', { back_wood: 'pine', back: 'boards', back_thick: '10 mm', inside: 'dividers' }],
  ['dovetailed, open', { back: 'none', inside: 'dividers' }],
  ['housed, sheet, shelves', { corners: 'housing', inside: 'shelves' }],
  ['housed, boards', { corners: 'housing', back: 'boards', back_wood: 'pine', back_thick: '10 mm', inside: 'dividers', count: '1' }],
  ['dovetailed, rabbeted', { back_in: 'rabbet' }],
  ['housed, rabbeted', { corners: 'housing', back_in: 'rabbet', inside: 'shelves' }],
  ['housed, open', { corners: 'housing', back: 'none', inside: 'shelves' }],
])('%s: clean, and it goes together', (_, settings) => {
  expectClean(filled(maker, spaceOf(480, 260, 520), 'niche', settings).doc);
});
test('metric bookcase: 800 outside, sides 18: shelves 764 between the sides, let in by a quarter of the side (case JT14 takes 6: 776)', () => {
  const { doc } = filled(maker, spaceOf(800, 280, 1800), 'niche', { corners: 'housing', thick: '18 mm', inside: 'shelves', count: '3' });
  expect(sizeIn(doc)('case_shelf:1')[0]).toBe(764);
});
test('clear rooms are equal and with the shelves add up to the inside', () => {
  const { doc } = filled(maker, spaceOf(500, 220, 640), 'niche', { thick: '20 mm', inside: 'shelves', count: '3', inside_thick: '16 mm' });
  // 640 - 40 - 3 x 16 = 552 over four rooms: 138 each.
  expect(sizeIn(doc)('case_shelf:1')[2]).toBe(16);
  const at = (k: number): number => placeIn(doc)(`case_shelf:${k}`)[2];
  expect([at(1), at(2) - at(1), at(3) - at(2)].map((x) => Math.round(x * 1e6) / 1e6)).toEqual([158, 154, 154]);
});
test.each([
  [{ inside: 'shelves', count: '20' }, 'count', '11'],
  [{ back_set: '5 mm' }, 'back_set', '5.5 mm'],
  [{ back: 'boards' }, 'back', 'panel'],
  [{ thick: '200 mm' }, 'thick', '60 mm'],
  [{ name: 'Case 1' }, 'name', 'case'],
] as const)('refused with the nearest that goes: %o', (settings, setting, nearest) => {
  const json = spaceOf(500, 220, 640);
  const [t] = troublesOf(maker, json, 'niche', settings);
  expect([t?.setting, t?.nearest]).toEqual([setting, nearest]);
  expect(troublesOf(maker, json, 'niche', { ...settings, [setting]: nearest })).toEqual([]);
});
