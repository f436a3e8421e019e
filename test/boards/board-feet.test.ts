import { expect, test } from 'vitest';
import {
  CUBIC_METRES_PER_BOARD_FOOT,
  bundleSize,
  buyForLostShare,
  buyWithExtra,
  hardwoodFeet,
  newTally,
  softwoodFeet,
  surfaceMeasure,
  volumeFeet,
} from '../../src/boards/board-feet.ts';
import { METRIC, QUARTERS, dressedSize, nominalInches } from '../../src/boards/nominal.ts';

const inch = (n: number): number => n * 25.4;
const foot = (n: number): number => n * 304.8;

// One board foot is 144 in³ (AHEC); 1 m³ = 423.776 board feet follows from 25.4 mm to the inch.
test('a board foot in cubic metres', () => {
  expect(CUBIC_METRES_PER_BOARD_FOOT).toBeCloseTo(0.00235974, 8);
  expect(1 / CUBIC_METRES_PER_BOARD_FOOT).toBeCloseTo(423.776, 3);
});

// AHEC; NHLA Rules Corner and a published inspector's note: width in inches and fractions × whole feet / 12, to the nearest.
test.each([
  ['6-1/4 in × 8 ft (AHEC)', 6.25, 8, 4],
  ['6-1/2 in × 8 ft (trade page)', 6.5, 8, 4],
  ['8 in × 12 ft', 8, 12, 8],
  ['10 in × 13 ft', 10, 13, 11],
  ['6-7/16 in × 10 ft 9 in (inspector’s note, 1998)', 6 + 7 / 16, 10.75, 5],
])('surface measure of %s', (_, w, l, sm) => {
  expect(surfaceMeasure(inch(w), foot(l), newTally())).toBe(sm);
});

test('8/4, 6-1/4 in × 8 ft is 8 board feet (AHEC)', () => {
  expect(hardwoodFeet(2, inch(6.25), foot(8), newTally())).toBe(8);
});

// 9-1/2 in × 12 ft stands exactly on a half: up, then down, in turn (NHLA).
test('exact halves go up, then down', () => {
  const tally = newTally();
  expect([1, 2, 3, 4].map(() => surfaceMeasure(inch(9.5), foot(12), tally))).toEqual([10, 9, 10, 9]);
  const other = newTally();
  expect([hardwoodFeet(1.5, inch(9.5), foot(12), other), hardwoodFeet(1.5, inch(9.5), foot(12), other)]).toEqual([15, 13.5]);
});

// AHEC: in an export bundle 5-1/4 in × 8-1/2 ft is tallied 5 in and 8 ft.
test('export bundle', () => {
  expect(bundleSize(inch(5.25), foot(8.5), newTally())).toEqual({ inches: 5, feet: 8 });
});

// 10 × 96 in sold as 3/4: 5 by volume; the trade bills it as 1 in, 6.67 before rounding (globalwood.org; woodworkingtalk.com 45954).
test('under an inch counts as an inch', () => {
  expect(volumeFeet(inch(0.75), inch(10), inch(96))).toBeCloseTo(5, 9);
  expect(hardwoodFeet(0.75, inch(10), inch(96), newTally())).toBe(7);
  expect(volumeFeet(inch(1), inch(10), inch(96))).toBeCloseTo(6.66667, 4);
});
// globalwood.org: 6/4, 8 in wide, 72 in long is 6 board feet; ursatimber.com: 2.5 in × 28 in × 8 ft slab is 46.7.
test('by volume', () => {
  expect(volumeFeet(inch(1.5), inch(8), inch(72))).toBeCloseTo(6, 9);
  expect(volumeFeet(inch(2.5), inch(28), foot(8))).toBeCloseTo(46.66667, 4);
});
// Softwood goes by nominal size, to 0.01 (Wengert): a 2 × 4 of 8 ft is 5.33.
test('softwood by nominal size', () => {
  expect(softwoodFeet(2, 4, foot(8))).toBe(5.33);
});
// woodweb.com: 100 needed, 30 % of what is bought is lost: buy 142.86; adding 30 % instead loses 23.08 %.
test('a lost share is not the same as extra on top', () => {
  expect(buyForLostShare(100, 0.3)).toBeCloseTo(142.85714, 4);
  expect(1 - 100 / buyWithExtra(100, 0.3)).toBeCloseTo(0.2307692, 6);
});

test('names of thicknesses', () => {
  expect(nominalInches('8/4')).toEqual({ thickness: 2, width: null });
  expect(nominalInches('2x4')).toEqual({ thickness: 2, width: 4 });
  expect(nominalInches('27 mm')).toBeNull();
  expect(nominalInches('27')).toBeNull();
  // PS 20 dry sizes. Four 1 × 10 make 37 in, not 40 (homesweethurn.blogspot.com 2013/06).
  expect((4 * (dressedSize('1x10')?.width ?? 0)) / 25.4).toBeCloseTo(37, 9);
  expect(dressedSize('2x4')).toEqual({ thickness: inch(1.5), width: inch(3.5) });
  expect(dressedSize('2x7')).toBeNull();
});
// NHLA standard surfaced thickness: 13/16, 1-1/16, 1-5/16, 1-1/2, 1-3/4 from 4/4 … 8/4.
test('quarters and what they measure surfaced', () => {
  [13 / 16, 17 / 16, 21 / 16, 1.5, 1.75].forEach((n, i) => expect(QUARTERS[i]?.surfaced).toBeCloseTo(inch(n), 9));
  expect(METRIC.every((t, i) => i === 0 || t > (METRIC[i - 1] ?? 0))).toBe(true);
});
