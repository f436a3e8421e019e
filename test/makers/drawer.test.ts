/** Drawers: gaps by the season against published figures, runners that let the case move, clean as whole pieces. */
import { beforeAll, expect, test } from 'vitest';
import { maker } from '../../src/makers/drawer.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { growthOf, moistureIn, seasonShare } from '../../src/wood/season.ts';
import { builtOf } from '../support/piece.ts';
import { expectClean, filled, sizeIn, spaceOf, troublesOf } from '../support/makers.ts';

beforeAll(() => loadKernel());
const inch = 25.4;
const [plain, runners] = maker.examples;
if (!plain || !runners) throw new Error('two examples are needed');

test('a front of flat-sawn hard maple 4 in high needs 1/8 in from 35 to 80 % RH (R. Porcaro, rpwoodwork.com, Aug 2012)', () => {
  const settings = { front_wood: 'maple', side_wood: 'maple', now: '35 % RH', wettest: '80 % RH', driest: '35 % RH', side_gap: '1 mm' };
  const { doc } = filled(maker, spaceOf(16 * inch, 14 * inch, 4 * inch, {}, 'in'), 'niche', settings);
  const gap = 4 * inch - (sizeIn(doc)('drawer_front')[2] ?? 0);
  // Half a millimetre stays free even then. Published "1/8 in", recomputed 4 x 0.00353 x 9.05 = 0.1278 in.
  expect((gap - 0.5) / inch).toBeCloseTo(0.1278, 3);
  expectClean(doc);
});
test.each([
  ['cherry', 0.09],
  ['walnut', 0.1],
] as const)('%s 4 in high: 3/32 in as published, %f in recomputed', (wood, grows) => {
  expect(4 * seasonShare(wood, moistureIn(0.35), moistureIn(0.8))).toBeCloseTo(grows, 2);
});
test('a quartersawn maple side 3/8 in thick thickens by 0.012 in: tangential (same author, 5 Aug 2012); a tighter gap is refused', () => {
  const grows = 0.375 * seasonShare('maple', moistureIn(0.35), moistureIn(0.8));
  expect(grows).toBeCloseTo(0.012, 3);
  const settings = { side_wood: 'maple', side_thick: '3/8 in', now: '35 % RH', wettest: '80 % RH', side_gap: '0.3 mm' };
  const [t] = troublesOf(maker, spaceOf(400, 350, 100), 'niche', settings);
  expect(t?.setting).toBe('side_gap');
  expect(t?.limit).toBeCloseTo(0.012 * inch + 0.1, 1);
});
test.each([
  // Wood Handbook FPL-GTR-190 Table 4-2 at 70 F, printed to a tenth.
  [0.3, 6.2],
  [0.5, 9.2],
  [0.65, 12.0],
  [0.8, 16.0],
])('air of %f brings wood to %f %% (Wood Handbook Table 4-2)', (rh, mc) => expect(Math.abs(moistureIn(rh) - mc)).toBeLessThan(0.07));
test('growth follows Table 13-5 where it is printed, and shrinkage gives its figures back', () => {
  expect(growthOf('maple')).toBe(0.00353);
  expect(growthOf('plywood')).toBe(0);
  // Sugar maple S_T 9.9: 0.33 / (100 - 6.6) = 0.003533.
  expect(9.9 / 30 / (100 - (9.9 * 20) / 30)).toBeCloseTo(growthOf('maple'), 5);
});

test('460 x 400 x 140 opening: the box by hand', () => {
  const { doc } = filled(maker, plain.document, plain.space, plain.settings);
  const size = sizeIn(doc);
  // Opening 500 - 40 = 460 wide, 220 - 80 = 140 high. Oak 0.00365 x 4 % = 0.0146: 140 x 0.0146 + 0.5 = 2.544 above.
  expect(size('drawer_front')).toEqual([459, 20, 137.456]);
  // Behind 400 x 0.00365 x 2 % = 2.92, and 3; in front the lap of 6.
  expect(size('drawer_side:left')).toEqual([12, 400 - 6 - 5.92, 137.456]);
  expect(size('drawer_back')).toEqual([459, 12, 118.456]);
  expect(size('drawer_bottom')[0]).toBe(435);
});
test.each([
  ['lapped', {}],
  ['through', { front_corner: 'through', up: '12 mm' }],
  ['sheet bottom', { bottom_wood: 'plywood' }],
  ['runners, kickers, stops', runners.settings],
] as const)('%s: clean', (_, settings) => expectClean(filled(maker, plain.document, plain.space, settings).doc));

test('runners are glued at the front alone and slide in the case side, with room behind for its shrinking', () => {
  const { doc } = filled(maker, runners.document, runners.space, runners.settings);
  const { places, parts } = builtOf(doc).drawn;
  const holds = (joint: string): string[] => [
    ...new Set(places.filter((p) => p.joint === joint).flatMap((p) => p.made?.contacts.map((c) => c.hold) ?? [])),
  ];
  expect(holds('drawer_runner_tongues')).toEqual(['sliding']);
  expect(holds('drawer_runner_tenons')).toContain('glued');
  // 420 deep side of oak; from rail back at 60 to 400 - (2.92 + 2).
  expect(parts.get('drawer_runner_left')?.record.stock.max[1]).toBeCloseTo(400 - 4.92 - 60, 6);
});
test('sides that stand off get guides on the runners', () => {
  const doc = JSON.parse(JSON.stringify(plain.document)) as { spaces: { opening: Record<string, string> } };
  doc.spaces.opening['left'] = 'side:left.right + 25';
  doc.spaces.opening['right'] = 'side:right.left - 25';
  const done = filled(maker, doc, 'opening', { ...runners.settings });
  expect(sizeIn(done.doc)('drawer_guide_left')[0]).toBe(25);
  expectClean(done.doc);
});
test.each([
  [{ runs_on: 'runners', rail_below: 'low_rial' }, 'rail_below', 'low_rail'],
  [{ runs_on: 'runners', rail_below: 'high_rail' }, 'rail_below', 'low_rail'],
  [{ runs_on: 'runners', runner_thick: '30 mm' }, 'runner_thick', '20 mm'],
  [{ wettest: '7' }, 'wettest', '8'],
  [{ up: '5 mm', front_corner: 'through' }, 'up', '5.5 mm'],
  [{ side_thick: '300 mm' }, 'side_thick', '25 mm'],
  [{ front_corner: 'blind' }, 'front_corner', 'lapped'],
] as const)('refused with the nearest: %o', (settings, setting, nearest) => {
  const [t] = troublesOf(maker, plain.document, plain.space, settings);
  expect([t?.setting, t?.nearest]).toEqual([setting, nearest]);
});
test('runners without rails are refused', () => {
  const [t] = troublesOf(maker, spaceOf(460, 400, 140), 'niche', { runs_on: 'runners' });
  expect([t?.setting, t?.cannot]).toEqual(['side_left', 'no case side stands there']);
});
