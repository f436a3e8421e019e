import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import type { SlottedCleat } from '../../src/joints/slotted-cleat/params.ts';
import { slottedCleat } from '../../src/joints/slotted-cleat/slotted-cleat.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import {
  type Boards,
  SHOP,
  attempt,
  board,
  figures,
  meetingOf,
  mirrorMeeting,
  mirroredBoards,
  recordOf,
  shapesOf,
} from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(slottedCleat);
const IN = 25.4;
/** A top 1500 x 36 in x 1 in, grain along x, and a batten across all of it. */
const wide: Boards = {
  cleat: board([400, 450], [0, 36 * IN], [-20, 0], 'y'),
  board: board([0, 1500], [0, 36 * IN], [0, 25.4], 'x'),
};
const slots = (set: Partial<SlottedCleat>, boards = wide): string[] =>
  (attempt(slottedCleat, meetingOf(boards), set).made.features['cleat'] ?? []).map((f) => f.name).filter((n) => !n.startsWith('counter'));

test('36 in of walnut, the outermost #10 screw 1 in from the edge, 3 points each way: slots 0.532 in long (sawmillcreek.org 309295, worked out)', () => {
  // 17 in from the middle, 0.00274 a point (Wood Handbook Table 13-5), 3 points: 0.13974 in each way.
  const allow = 17 * 0.00274 * 3;
  expect(allow).toBeCloseTo(0.13974, 5);
  const { sizes } = attempt(slottedCleat, meetingOf(wide), { inset: IN, diameter: 0.19 * IN, count: 5, allow: allow * IN });
  expect(sizes.slot / IN).toBeCloseTo(0.53198, 3);
});
test('the rule of thumb allows more than that: 17/96 in', () => {
  const { sizes } = attempt(slottedCleat, meetingOf(wide), { inset: IN, count: 5 });
  expect(sizes.allow / IN).toBeCloseTo(17 / 96, 2);
  expect(sizes.allow / IN).toBeGreaterThanOrEqual(17 / 96 - 1e-9);
});
test('slots grow with the distance from the fast screw', () => {
  const t = attempt(slottedCleat, meetingOf(wide), { count: 5, diameter: 5, clearance: 5.3, slot: 12 });
  const lengths = (t.made.features['cleat'] ?? []).flatMap((f) => {
    if (!/slot|clearance/.test(f.name) || f.solid.kind !== 'prism') return [];
    const xs = (f.solid.profile[0] ?? []).flatMap((c) => [c.at[0], c.via?.[0] ?? c.at[0]]);
    return [Math.max(...xs) - Math.min(...xs)];
  });
  const least = 5 + IN / 16;
  [12, (12 + least) / 2, 5.3, (12 + least) / 2, 12].forEach((v, i) => expect(lengths[i]).toBeCloseTo(v, 2));
});
test('fast at an edge: the screw there is round, whichever way the batten is drawn', () => {
  expect(slots({ count: 3, fixed: 'front' })).toEqual(['clearance hole 1', 'screw slot 2', 'screw slot 3']);
  expect(slots({ count: 3, fixed: 'back' })).toEqual(['screw slot 1', 'screw slot 2', 'clearance hole 3']);
});
test('the batten is held dry and slides along itself', () => {
  const { made, sizes } = attempt(slottedCleat, meetingOf(wide));
  expect(made.holds).toBe('slides');
  expect(made.contacts.every((c) => c.glue === 'never')).toBe(true);
  expect(made.contacts[0]?.travel).toMatchObject({ low: -sizes.allow, high: sizes.allow });
  expect(made.extras).toHaveLength(sizes.count);
  expect(sizes.count % 2).toBe(1);
});
test('a batten along the grain has nothing to hold flat', () => {
  const along: Boards = { ...wide, cleat: board([0, 900], [100, 145], [-20, 0], 'x') };
  const p = slottedCleat.propose({ meeting: meetingOf(along), siblings: [], set: {} }, SHOP);
  expect(isRefusal(p) && p.cannot).toContain('does not move along');
  expect(slottedCleat.suits(meetingOf(along))).toBeNull();
  expect(slottedCleat.suits(meetingOf(wide))?.rank).toBe(6);
});
test('mirrored battens are equal parts', () => {
  const record = (b: Boards): unknown => {
    const m = meetingOf(b);
    const { made } = attempt(slottedCleat, m, { count: 4, fixed: 'front' });
    return recordOf(m.sides['cleat']![0]!, made.features['cleat']!).features.map((f) => [f.name, f.at, f.solid]);
  };
  expect(record(mirroredBoards(wide, 'x', 800))).toEqual(record(wide));
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    count: fc.constantFrom(3, 5),
    fixed: fc.constantFrom('middle' as const, 'front' as const),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ axis, ...set }) => {
    const m = meetingOf(wide);
    expect(shapesOf(attempt(slottedCleat, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(slottedCleat, m, set).made, axis));
  },
  { runs: 8 },
);
const maybe = <T>(a: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(a, { nil: undefined, freq: 2 });
law(
  'whatever is set, it is cut soundly or refused with what goes; what is proposed is quiet',
  fc.record({
    w: fc.integer({ min: 200, max: 900 }),
    t: fc.integer({ min: 15, max: 50 }),
    lid: fc.integer({ min: 16, max: 40 }),
    set: fc.record({
      count: maybe(fc.integer({ min: 0, max: 14 })),
      inset: maybe(fc.integer({ min: 0, max: 300 })),
      fixed: maybe(fc.constantFrom('middle' as const, 'front' as const, 'left' as const)),
      allow: maybe(fc.integer({ min: -1, max: 12 })),
      slot: maybe(fc.integer({ min: 1, max: 60 })),
      sink: maybe(fc.integer({ min: 0, max: 30 })),
      length: maybe(fc.integer({ min: 5, max: 90 })),
    }),
  }),
  ({ w, t, lid, set }) => {
    const m = meetingOf({ cleat: board([100, 140], [0, w], [-t, 0], 'y'), board: board([0, 1000], [0, w], [0, lid], 'x') });
    const bare = attempt(slottedCleat, m);
    expect(slottedCleat.rules.flatMap((r) => r.run(bare.place, bare.sizes, bare.made)).filter((x) => x.grade !== 'note')).toEqual([]);
    const given = Object.fromEntries(Object.entries(set).filter(([, v]) => v !== undefined)) as Partial<SlottedCleat>;
    const p = slottedCleat.propose({ meeting: m, siblings: [], set: given }, SHOP);
    if (isRefusal<SlottedCleat>(p)) {
      expect(p.nearest, p.cannot).toBeDefined();
      expect(isRefusal(slottedCleat.propose({ meeting: m, siblings: [], set: { ...given, ...p.nearest } }, SHOP))).toBe(false);
      return;
    }
    const f = figures(m, attempt(slottedCleat, m, given).made);
    expect(Object.entries(f.overlap).filter(([, v]) => v > 2e-3)).toEqual([]);
    expect(Object.entries(f.pieces).filter(([, n]) => n !== 1)).toEqual([]);
  },
  { runs: 20 },
);
const fired = (set: Partial<SlottedCleat>): string[] => {
  const t = attempt(slottedCleat, meetingOf(wide), set);
  return slottedCleat.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
describe('rules', () => {
  test.each<[string, Partial<SlottedCleat>, string[]]>([
    ['as proposed', {}, []],
    ['slots too short for the movement asked', { allow: 4, slot: 10 }, ['screw slot short']],
    ['hardly a slot', { allow: 0.5, slot: 6.5 }, ['screw slot short']],
    ['a pilot hole that comes through', { pilot_depth: 26 }, ['pilot hole breaks through']],
    ['two screws and one between', { count: 3 }, ['batten screws far apart']],
  ])('%s', (_name, set, rules) => expect(fired(set)).toEqual(rules));
  test('given back to the proposal, the slots follow the wood', () => {
    const t = attempt(slottedCleat, meetingOf(wide), { allow: 4, slot: 10 });
    const [said] = slottedCleat.rules.flatMap((r) => r.run(t.place, t.sizes, t.made));
    expect([said?.limit, said?.cures[0]?.set]).toEqual([4, { allow: null, slot: null }]);
    expect(said?.measured).toBeCloseTo((10 - t.sizes.diameter) / 2, 9);
  });
});
