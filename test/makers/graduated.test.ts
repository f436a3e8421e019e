/** Graduated rooms: they add up to the opening, as published and as the hand works them out. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { maker as caseMaker } from '../../src/makers/case.ts';
import { maker } from '../../src/makers/graduated.ts';
import type { Json } from '../../src/model/finding.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { law } from '../support/law.ts';
import { expectClean, filled, sizeIn, troublesOf } from '../support/makers.ts';

beforeAll(() => loadKernel());
const inch = 25.4;
const [chest, shelves] = maker.examples;
if (!chest || !shelves) throw new Error('two examples are needed');

/** Two boards with an opening of this height between a top and a base, all mm. */
const between = (height: number, width = 600, depth = 400): Json => {
  const side = {
    wood: 'oak',
    grain: 'z',
    width: '20 mm',
    front: '0',
    depth: `${depth} mm`,
    bottom: '-100 mm',
    height: `${height + 200} mm`,
  };
  return {
    dryfit: 1,
    title: 'Opening',
    units: 'mm',
    spaces: { niche: { left: '0', width: `${width} mm`, front: '0', depth: `${depth} mm`, bottom: '0', height: `${height} mm` } },
    parts: { left_side: { ...side, right: '0' }, right_side: { ...side, left: `${width} mm` } },
  };
};
const heights = (json: Json, settings: Record<string, string>): number[] => {
  const { doc } = filled(maker, json, 'niche', settings);
  const size = sizeIn(doc);
  const n = Number(settings['count'] ?? 4);
  return Array.from({ length: n }, (_, k) => size(`stack_room_${k + 1}`)[2] ?? NaN);
};

test('case 36 in high, top 1-1/2, base 5-1/4, three dividers 3/4, growing by 1: 5-1/4, 6-1/4, 7-1/4, 8-1/4 (case front at ru.djvu.online/file/CZ9A0hzVfBx3n)', () => {
  const usable = 36 - 1.5 - 5.25;
  const got = heights(between(usable * inch), { step: '1 in', divider_thick: '3/4 in' });
  expect(got.map((h) => Math.round((h / inch) * 1e6) / 1e6)).toEqual([5.25, 6.25, 7.25, 8.25]);
});
test('little chest: 8 high, sides 3/8, three dividers 1/4: four openings of 1-5/8, with its drawers (tinyshopww.blogspot.com 2019)', () => {
  const outside = {
    dryfit: 1,
    title: 'Little chest',
    units: 'in',
    spaces: { niche: { left: '0', width: '6 in', front: '0', depth: '4 in', bottom: '0', height: '8 in' } },
  };
  const shell = filled(caseMaker, outside, 'niche', {
    wood: 'pine',
    thick: '3/8 in',
    back_thick: '1/8 in',
    back_set: '5/16 in',
    widest: '5 in',
  });
  const withRoom = JSON.parse(JSON.stringify(shell.json)) as { spaces: Record<string, Json> };
  withRoom.spaces['inside'] = {
    left: 'case_side:left.right',
    right: 'case_side:right.left',
    front: 'niche.front',
    back: 'case_back.front',
    bottom: 'case_bottom.top',
    top: 'case_top.bottom',
  };
  const thin = {
    front_thick: '3/8 in',
    side_thick: '1/4 in',
    bottom_thick: '1/8 in',
    up: '1/4 in',
    bottom_wood: 'plywood',
    front_wood: 'pine',
    side_wood: 'pine',
  };
  const settings = {
    rule: 'equal',
    divider_thick: '1/4 in',
    divider_wood: 'pine',
    stop: '1/8 in',
    fill: 'drawers',
    case_wood: 'pine',
    ...thin,
  };
  const { doc } = filled(maker, withRoom as Json, 'inside', settings);
  const size = sizeIn(doc);
  for (const k of [1, 2, 3, 4]) expect(size(`stack_room_${k}`)[2]).toBeCloseTo(1.625 * inch, 6);
  expectClean(doc);
});
test('by ratio: 1, 1.1, 1.21 of one height', () => {
  const [a = 0, b = 0, c = 0] = heights(between(371 + 40), { rule: 'ratio', ratio: '1.1', count: '3', divider_thick: '20 mm' });
  // 371 / 3.31 = 112.085.
  expect([a, b, c].map((x) => Math.round(x * 100) / 100)).toEqual([112.08, 123.29, 135.62]);
});
test('as written, the starred one takes the rest', () => {
  expect(heights(between(600), { rule: 'chosen', heights: '100, *, 150', count: '3', divider_thick: '20 mm' })).toEqual([100, 310, 150]);
  expect(heights(between(600), { rule: 'chosen', heights: '100 mm, 120 mm, 340 mm', count: '3', divider_thick: '20 mm' })).toEqual([
    100, 120, 340,
  ]);
});
test('the stand of 20 in: an opening of 3-1/4 over a bay of 12 (glenbrook225.org nightstand, positions of its dadoes)', () => {
  // From the top: rabbet 3/4, so the inside begins at 3/4; the upper dado lies 4 to 4-3/4, the lower one ends 2-1/2 above the foot.
  const inside = 20 - 0.75 - 2.5 - 0.75;
  const got = heights(between(inside * inch), { rule: 'chosen', heights: '3-1/4 in, *', count: '2', divider_thick: '3/4 in' });
  expect(got.map((h) => Math.round((h / inch) * 1e6) / 1e6)).toEqual([3.25, 12]);
});
law(
  'heights and dividers add up to the opening, whatever the rule',
  fc.record({
    height: fc.integer({ min: 300, max: 1800 }),
    count: fc.integer({ min: 2, max: 7 }),
    rule: fc.constantFrom('equal', 'step', 'ratio'),
    step: fc.integer({ min: 0, max: 40 }),
    ratio: fc.integer({ min: 100, max: 140 }),
    thick: fc.integer({ min: 12, max: 25 }),
  }),
  ({ height, count, rule, step, ratio, thick }) => {
    const json = between(height);
    let settings: Record<string, string> = {
      count: String(count),
      rule,
      step: `${step} mm`,
      ratio: String(ratio / 100),
      divider_thick: `${thick} mm`,
    };
    for (let tries = 0; tries < 4; tries++) {
      const [t] = troublesOf(maker, json, 'niche', settings);
      if (!t) break;
      expect(t.nearest, t.cannot).toBeDefined();
      settings = { ...settings, [t.setting]: t.nearest ?? '' };
    }
    const all = heights(json, settings);
    const dividers = (all.length - 1) * thick;
    expect(all.reduce((a, b) => a + b, 0) + dividers).toBeCloseTo(height, 5);
    expect(Math.min(...all)).toBeGreaterThan(29.9);
  },
  { runs: 20 },
);
test.each([
  ['chest of drawers on rails', chest, {}],
  ['the same on shelves', chest, { dividers: 'shelves', rule: 'equal' }],
  ['bookcase', shelves, {}],
] as const)('%s: clean', (_, ex, settings) => expectClean(filled(maker, ex.document, ex.space, { ...ex.settings, ...settings }).doc));
test.each([
  [{ count: '20' }, 'count', '12'],
  [{ step: '120 mm' }, 'step', '70 mm'],
  [{ rule: 'ratio', ratio: '2.9' }, 'ratio', '2.16'],
  [{ rule: 'chosen', count: '3', heights: '100, 100, 100' }, 'heights', '100 mm, 100 mm, *'],
  [{ rule: 'chosen', count: '3', heights: '100, 100' }, 'heights', '186.6 mm, 186.6 mm, *'],
  [{ rule: 'chosen', count: '3', heights: '100, *, *' }, 'heights', ''],
] as const)('refused with the nearest: %o', (settings, setting, nearest) => {
  const [t] = troublesOf(maker, between(600), 'niche', settings);
  expect([t?.setting, t?.nearest]).toEqual([setting, nearest]);
});
