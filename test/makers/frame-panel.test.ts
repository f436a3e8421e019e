/** Frame and panel: the published inset door by its own formulae, room for solid panels, and what is refused. */
import { beforeAll, expect, test } from 'vitest';
import { maker } from '../../src/makers/frame-panel.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { builtOf } from '../support/piece.ts';
import { expectClean, filled, sizeIn, spaceOf, troublesOf } from '../support/makers.ts';

beforeAll(() => loadKernel());
const inch = 25.4;

test('door for an opening 16 x 24, 1/16 all round, members 2, tenons 3/8, panel 1/16 under the groove bottoms (formulae: woodmagazine.com)', () => {
  const settings = { tenons: 'stub', panel_wood: 'plywood', panel_thick: '1/4 in' };
  const { doc } = filled(maker, spaceOf(15.875 * inch, 19, 23.875 * inch, {}, 'in'), 'niche', settings);
  expect(sizeIn(doc)('panelling_stile:left')[2]).toBeCloseTo(23.875 * inch, 6);
  const { parts } = builtOf(doc).drawn;
  // Over the tenons 15-7/8 - 2 x 2 + 2 x 3/8 = 12-5/8; panel over its tongues 11-7/8 + 3/4 - 1/16 = 12-9/16, and 19-7/8 + 3/4 - 1/16 = 20-9/16.
  const over = (path: string, axis: 0 | 2, beyond: string): number => {
    const p = parts.get(path)!;
    const reach = p.record.features.filter((f) => f.op === 'add' && f.name.startsWith(beyond)).flatMap((f) => spanOf(f, axis));
    return Math.max(...reach, p.record.stock.max[axis]) - Math.min(...reach, p.record.stock.min[axis]);
  };
  expect(over('panelling_upper_rail', 0, 'tenon') / inch).toBeCloseTo(12.625, 6);
  expect(over('panelling_panel', 0, 'tongue') / inch).toBeCloseTo(12.5625, 6);
  expect(over('panelling_panel', 2, 'tongue') / inch).toBeCloseTo(20.5625, 6);
  expectClean(doc);
});
test.each([
  ['haunched, solid panel', {}],
  ['stub, solid panel', { tenons: 'stub' }],
  ['a panel as thick as the frame, grain level', { panel_grain: 'level', panel_thick: '20 mm', groove: '12 mm' }],
  ['a wide lower rail', { low_rail: '90 mm' }],
])('%s: clean', (_, settings) => expectClean(filled(maker, spaceOf(380, 22, 620), 'niche', settings).doc));
test('a solid panel has half of 1/8 in for each 12 in of its width on each side (woodworkingtips.com)', () => {
  const { doc } = filled(maker, spaceOf(110 + 24 * inch, 22, 700), 'niche', { groove: '14 mm' });
  // 24 in wide: 1/4 in in all, 1/8 in = 3.175 on each side, to tenths 3.2.
  const rooms = builtOf(doc).drawn.places.filter((p) => p.joint === 'panelling_grooves' && p.roles['into']?.[0]?.includes('stile'));
  expect(rooms.map((p) => (p.sizes as { spare: number }).spare)).toEqual([3.2, 3.2]);
});
test.each([
  [{ stile: '200 mm' }, 'stile', '170 mm'],
  [{ rail: '300 mm', low_rail: '300 mm' }, 'rail', '290 mm'],
  [{ groove_wide: '12 mm', panel_thick: '12 mm' }, 'groove_wide', '10 mm'],
  [{ groove: '40 mm' }, 'groove', '25 mm'],
  [{ stile: '25 mm', groove: '6 mm' }, 'groove', '6.4 mm'],
] as const)('refused with the nearest: %o', (settings, setting, nearest) => {
  const [t] = troublesOf(maker, spaceOf(380, 22, 620), 'niche', settings);
  expect([t?.setting, t?.nearest]).toEqual([setting, nearest]);
});

function spanOf(f: { solid: { kind: string }; at: { o: readonly number[] } }, axis: 0 | 2): number[] {
  const solid = f.solid as unknown as { profile: { at: readonly [number, number] }[][]; from: number; to: number };
  const at = f.at as unknown as { o: readonly number[]; x: readonly number[]; y: readonly number[]; z: readonly number[] };
  return (solid.profile[0] ?? []).flatMap((c) =>
    [solid.from, solid.to].map(
      (z) => (at.o[axis] ?? 0) + (at.x[axis] ?? 0) * c.at[0] + (at.y[axis] ?? 0) * c.at[1] + (at.z[axis] ?? 0) * z,
    ),
  );
}
