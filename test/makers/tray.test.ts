/** The tray: sizes by hand, clean, and what it refuses. */
import { beforeAll, expect, test } from 'vitest';
import { maker } from '../../src/makers/tray.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { expectClean, filled, placeIn, sizeIn, spaceOf, troublesOf } from '../support/makers.ts';

beforeAll(() => loadKernel());

test('420 x 300 x 80 outside, sides 12, three partitions of 8: by hand', () => {
  const { doc } = filled(maker, spaceOf(420, 300, 80), 'niche', { partitions: '3' });
  const size = sizeIn(doc);
  expect(size('tray_side:left')).toEqual([12, 300, 80]);
  expect(size('tray_end:back')).toEqual([420, 12, 80]);
  expect(size('tray_bottom')).toEqual([396, 276, 6]);
  // Above the bottom 80 - 8 - 6 = 66, less half a side's thickness below the rim: 60.
  expect(size('tray_partition:2')).toEqual([8, 276, 60]);
  // 396 - 24 = 372 over four rooms: 93 each.
  const at = (k: number): number => Math.round(placeIn(doc)(`tray_partition:${k}`)[0] * 1e6) / 1e6;
  expect([at(1), at(2), at(3)]).toEqual([12 + 93, 12 + 93 + 101, 12 + 93 + 202]);
});
test.each([
  ['plain', {}],
  ['partitions', { partitions: '2' }],
  ['solid bottom', { bottom_wood: 'ash', thick: '15 mm' }],
])('%s: clean', (_, settings) => expectClean(filled(maker, spaceOf(340, 230, 75), 'niche', settings).doc));
test.each([
  [{ partitions: '15' }, 'partitions', '10'],
  [{ up: '4 mm' }, 'up', '4.5 mm'],
  [{ up: '70 mm' }, 'up', '49 mm'],
  [{ bottom_wood: 'ash' }, 'thick', '12.4 mm'],
  [{ bottom_thick: '14 mm' }, 'bottom_thick', '12 mm'],
] as const)('refused with the nearest: %o', (settings, setting, nearest) => {
  const json = spaceOf(340, 330, 75);
  const [t] = troublesOf(maker, json, 'niche', settings);
  expect([t?.setting, t?.nearest]).toEqual([setting, nearest]);
});
