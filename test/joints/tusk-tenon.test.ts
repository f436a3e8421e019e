/** Tusk tenon: what the key draws, sizes by rule, any settings, each rule fired and cured. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { DEFAULT_CUTTING } from '../../src/joints/cutters.ts';
import { isRefusal } from '../../src/joints/family.ts';
import type { TuskTenon } from '../../src/joints/tusk-tenon/params.ts';
import { tuskTenon } from '../../src/joints/tusk-tenon/tusk-tenon.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { madeOrRefused, spoken } from '../support/any-settings.ts';
import { type Boards, SHOP, attempt, board, figures, lost, meetingOf, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
/** A stretcher 30 x 100 on the plank leg of a trestle, 30 thick. */
const trestle: Boards = { enter: board([30, 500], [85, 115], [150, 250], 'x'), into: board([0, 30], [0, 200], [0, 400], 'z') };
const sizesOf = (set: Partial<TuskTenon> = {}, shop = SHOP, boards = trestle): TuskTenon => {
  const p = tuskTenon.propose({ meeting: meetingOf(boards), siblings: [], set }, shop);
  if (isRefusal<TuskTenon>(p)) throw new Error(p.cannot);
  return p.sizes;
};

test('the hole begins 1/16 in inside the mortised face, so that the key pulls (Noyes, Handwork in Wood)', () => {
  expect(sizesOf({}, DEFAULT_CUTTING.in).pull).toBeCloseTo(25.4 / 16, 9);
  const { made, sizes } = attempt(tuskTenon, meetingOf(trestle));
  const air = made.contacts.find((c) => c.name.startsWith('key clear'));
  expect(air?.meant).toBe(sizes.pull);
  // The key bears on the leg's far face, 30 from the shoulder, and nowhere on the hole's inner wall.
  const bearing = made.contacts.filter((c) => c.name.startsWith('key on the face'));
  expect(bearing).toHaveLength(2);
  for (const c of bearing) expect(c.between.map((s) => s.role)).toEqual(['extra', 'into']);
});
test('the key stands along the grain of the part that it bears on: upright in a post, and through a shelf', () => {
  expect(sizesOf().way).toBe('width');
  const shelf: Boards = { enter: board([22, 500], [0, 250], [150, 170], 'x'), into: board([0, 22], [0, 250], [0, 400], 'z') };
  expect(sizesOf({}, SHOP, shelf).way).toBe('thickness');
});
test('tenon length worked by hand: face, deepest of the hole, relish', () => {
  const { made } = attempt(tuskTenon, meetingOf(trestle), { width: 60, key_deep: 15, slope: 0.1, relish: 22 });
  const tenon = made.features['enter']?.find((f) => f.name === 'tenon');
  // 30 + (15 + 0.1 x 30) + 22.
  expect(tenon?.solid.kind === 'prism' ? tenon.solid.to : 0).toBeCloseTo(70, 9);
});
test('it holds dry and comes apart again: the key first, towards its thick end', () => {
  const { made } = attempt(tuskTenon, meetingOf(trestle));
  expect(made.holds).toBe('dry');
  expect(made.contacts.filter((c) => c.hold === 'glued')).toEqual([]);
  expect(made.frees).toEqual([
    { moves: ['key'], along: [0, 1, 0] },
    { moves: ['enter'], along: [0, 0, -1] },
  ]);
});
test('sizes have reasons, all of them', () => {
  const p = tuskTenon.propose({ meeting: meetingOf(trestle), siblings: [], set: {} }, SHOP);
  expect('because' in p && Object.keys(p.because).sort()).toEqual(Object.keys(tuskTenon.params).sort());
});
test.each<[string, Partial<TuskTenon>, string[]]>([
  ['as proposed', {}, []],
  ['little beyond the key', { relish: 10 }, ['tusk relish short']],
  ['flush with the face', { pull: 0 }, ['tusk does not draw']],
  ['half of the tenon', { key_thick: 8, thickness: 15, relish: 60 }, ['tusk key thick']],
  ['steep', { slope: 0.2, key_deep: 30, relish: 60 }, ['tusk key steep']],
  ['a wide tenon', { thickness: 12, width: 90, key_deep: 30, relish: 60 }, ['tusk tenon wide']],
])('rules on %s', (_name, set, rules) => {
  expect(spoken(tuskTenon, meetingOf(trestle), set)).toEqual(rules.map((rule) => ({ rule, cured: true })));
});
test('a tenon near the end of the leg, or near its side, leaves short wood', () => {
  const high: Boards = { ...trestle, enter: board([30, 500], [85, 115], [300, 400], 'x') };
  expect(spoken(tuskTenon, meetingOf(high), { drop: -17 })).toEqual([{ rule: 'tusk mortise near the end', cured: true }]);
  const side: Boards = { ...trestle, enter: board([30, 500], [0, 30], [150, 250], 'x') };
  expect(spoken(tuskTenon, meetingOf(side), { offset: -7 })).toEqual([{ rule: 'tusk mortise wall', cured: true }]);
});
test.each<[string, Partial<TuskTenon>]>([
  ['thicker than the rail', { thickness: 31 }],
  ['wider than the rail', { width: 101 }],
  ['beside it', { offset: 20 }],
  ['under it', { drop: 60 }],
  ['a key as thick as the tenon', { key_thick: 20 }],
  ['no slope', { slope: 0 }],
  ['no end to drive', { key_over: 0 }],
  ['a key that runs out', { key_deep: 5 }],
  ['a hole that begins outside', { pull: -1 }],
  ['nothing beyond the key', { relish: 0 }],
])('refused with the nearest that goes: %s', (_name, set) => {
  expect(madeOrRefused(tuskTenon, meetingOf(trestle), set)).toBeNull();
});
test('suits an end on a part that it could go through, after the joints that are glued', () => {
  expect(tuskTenon.suits(meetingOf(trestle))?.rank).toBe(2);
  expect(tuskTenon.suits(meetingOf({ ...trestle, enter: board([10, 500], [85, 115], [150, 250], 'x') }))).toBeNull();
});
law(
  'any settings: refused with a nearest that goes, or sound; handed copies alike',
  fc.record(
    {
      thickness: fc.double({ min: -1, max: 34, noNaN: true }),
      width: fc.double({ min: -1, max: 110, noNaN: true }),
      offset: fc.double({ min: -10, max: 10, noNaN: true }),
      drop: fc.double({ min: -30, max: 30, noNaN: true }),
      way: fc.constantFrom<TuskTenon['way']>('width', 'thickness'),
      key_thick: fc.double({ min: -1, max: 30, noNaN: true }),
      key_deep: fc.double({ min: -1, max: 50, noNaN: true }),
      slope: fc.double({ min: -0.1, max: 0.7, noNaN: true }),
      key_over: fc.double({ min: -1, max: 40, noNaN: true }),
      pull: fc.double({ min: -1, max: 5, noNaN: true }),
      relish: fc.double({ min: -1, max: 40, noNaN: true }),
    },
    { requiredKeys: [] },
  ),
  (set) => {
    const m = meetingOf(trestle);
    const t = madeOrRefused(tuskTenon, m, set);
    if (!t) return;
    const f = figures(m, t.made);
    expect(f.pieces).toEqual({ enter: 1, into: 1, key: 1 });
    expect(lost(m, f, 'into')).toBeCloseTo(t.sizes.thickness * t.sizes.width * 30, 2);
    expect(shapesOf(attempt(tuskTenon, meetingOf(mirroredBoards(trestle, 'y', 50)), set).made)).toEqual(shapesOf(t.made));
  },
  { runs: 40 },
);
