/** Doors: gaps by season and swing against worked figures, hinges in both parts, clean as whole pieces. */
import { beforeAll, expect, test } from 'vitest';
import { maker } from '../../src/makers/door.ts';
import { swingGap } from '../../src/makers/door/gaps.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { builtOf } from '../support/piece.ts';
import { expectClean, filled, placeIn, sizeIn, troublesOf } from '../support/makers.ts';

beforeAll(() => loadKernel());
const [framed] = maker.examples;
if (!framed) throw new Error('an example is needed');
const make = (settings: Record<string, string>) => filled(maker, framed.document, framed.space, settings).doc;

test('a door 12 in wide and 1 in thick, pin in the plane of its face, needs 0.0416 in to swing (hypotenuse; asked at sawmillcreek.org t-232386)', () =>
  expect(swingGap(12, 1, 0)).toBeCloseTo(0.04159, 4));
test('a solid door’s closing gap follows its whole width, a framed one’s two stiles', () => {
  // Opening 400 x 560, oak 0.00365 x 4 % = 0.0146. Solid 400 x 0.0146 = 5.84; framed 2 x 55 x 0.0146 = 1.606. The far corner, 398 from the hinge
  // edge, 20 and 2.5 from the pin line: sqrt(398² + 22.5²) - 398 = 0.6355: less than the gap of 1.
  expect(sizeIn(make({ build: 'solid' }))('door_leaf')).toEqual([400 - 1 - 5.84 - 1, 20, 558]);
  const doc = make({});
  const left = placeIn(doc)('door_stile:left')[0];
  const right = placeIn(doc)('door_stile:right')[0] + 55;
  expect(right - left).toBeCloseTo(400 - 1 - 1.606 - 1, 6);
  expect(sizeIn(doc)('door_stile:left')).toEqual([55, 20, 558]);
});
test('a flap of level grain follows the height', () => {
  // 560 x 0.0146 = 8.176.
  expect(sizeIn(make({ build: 'solid', hung: 'bottom' }))('door_leaf')).toEqual([398, 20, 560 - 1 - 8.176 - 1]);
});
test('an inset door by the published formulae: opening 16 x 24, 1/16 all round, members 2: stile 23-7/8, rail between 11-7/8 (woodmagazine.com)', () => {
  const inch = 25.4;
  const post = { wood: 'oak', grain: 'z', right: '0', width: '3/4 in', front: '0', depth: '10 in', bottom: '-1 in', height: '26 in' };
  const json = {
    dryfit: 1,
    title: 'Opening',
    units: 'in',
    spaces: { opening: { left: '0', width: '16 in', front: '0', depth: '10 in', bottom: '0', height: '24 in' } },
    parts: { post },
  };
  // A day as wet as the wettest: no growth, the same gap at both edges.
  const settings = { gap: '1/16 in', now: '12', wettest: '12', panel_wood: 'plywood', panel_thick: '1/4 in', tenons: 'stub' };
  const { doc } = filled(maker, json, 'opening', settings);
  expect(sizeIn(doc)('door_stile:left')[2]).toBeCloseTo(23.875 * inch, 6);
  expect(sizeIn(doc)('door_upper_rail')[0]).toBeCloseTo(11.875 * inch, 2);
});
test.each([
  ['framed, inset, left', {}],
  ['framed, inset, right', { hung: 'right' }],
  ['framed, overlaid, left', { lies: 'overlaid' }],
  ['framed, overlaid, right', { lies: 'overlaid', hung: 'right' }],
  ['framed flap', { hung: 'bottom' }],
  ['solid, inset, right', { build: 'solid', hung: 'right' }],
  ['solid, overlaid, right', { build: 'solid', lies: 'overlaid', hung: 'right' }],
  ['solid flap at the top', { build: 'solid', hung: 'top' }],
])('%s: clean, with a leaf let into both parts', (_, settings) => {
  const doc = make(settings);
  expectClean(doc);
  const [place] = builtOf(doc).drawn.places.filter((p) => p.joint === 'door_hinges');
  expect(place?.made?.features['enter']).toHaveLength(2);
  expect(place?.made?.features['into']).toHaveLength(2);
});
test.each([
  [{ post: 'bottom' }, 'post', 'side:left'],
  [{ hung: 'above' }, 'hung', 'left'],
  [{ hinges: '40' }, 'hinges', '6'],
  [{ wettest: '7' }, 'wettest', '8'],
  [{ stile: '190 mm' }, 'stile', '176.2 mm'],
] as const)('refused with the nearest: %o', (settings, setting, nearest) => {
  const [t] = troublesOf(maker, framed.document, framed.space, settings);
  expect([t?.setting, t?.nearest]).toEqual([setting, nearest]);
});
