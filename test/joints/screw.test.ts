import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import type { Screw } from '../../src/joints/screw/params.ts';
import { screw } from '../../src/joints/screw/screw.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import {
  type Boards,
  SHOP,
  attempt,
  board,
  figures,
  lost,
  meetingOf,
  mirrorMeeting,
  mirroredBoards,
  shapesOf,
} from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(screw);
const IN = 25.4;
/** A strip 18 thick, 40 wide on the side of a rail 20 thick; and on a board 600 wide whose grain it crosses. */
const strip = board([0, 400], [20, 38], [20, 60], 'x');
const alike: Boards = { through: strip, into: board([0, 400], [0, 20], [0, 80], 'x') };
const crossed: Boards = { through: strip, into: board([0, 400], [0, 20], [0, 600], 'z') };
const thick: Boards = { through: board([0, 400], [20, 90], [20, 60], 'x'), into: board([0, 400], [0, 20], [0, 80], 'x') };

test('a screw takes two thirds of its length in the second part where that is thick enough, and leaves wood behind its tip', () => {
  const deep = attempt(screw, meetingOf({ ...alike, into: board([0, 400], [-60, 20], [0, 80], 'x') })).sizes;
  expect(deep.length - 18).toBeGreaterThanOrEqual((2 / 3) * deep.length - 5);
  const s = attempt(screw, meetingOf(alike)).sizes;
  // 18 through and at most 20 - 3 = 17 in: the longest is 30, of which 12 would be in. Half of it is, when the head is sunk by 3.
  expect([s.head, s.sink, s.length]).toEqual(['round', 3, 30]);
  expect(s.length - (18 - s.sink)).toBeLessThanOrEqual(17);
  expect(attempt(screw, meetingOf(thick)).sizes.sink).toBeCloseTo(70 - 15, 9);
});
test('what is lost is the holes: worked by hand', () => {
  const m = meetingOf(alike);
  const t = attempt(screw, m, { count: 3, head: 'round', sink: 0, diameter: 4, clearance: 4.4, pilot: 2.8, length: 30, pilot_depth: 14 });
  const f = figures(m, t.made);
  expect(lost(m, f, 'through')).toBeCloseTo(3 * 18 * Math.PI * 2.2 ** 2, -1);
  // The pilot hole is 2 deeper than the 12 that the screw reaches.
  expect(lost(m, f, 'into')).toBeCloseTo(3 * 14 * Math.PI * 1.4 ** 2, 0);
  expect(Object.values(f.overlap).every((v) => v < 1e-3)).toBe(true);
  expect(t.made.extras.map((e) => [e.name, e.hardware])).toEqual([1, 2, 3].map((n) => [`screw${n}`, true]));
});
test('a slot for a #10 screw that must slide 0.1397 in each way is 0.532 in long (36 in walnut top on cleats, sawmillcreek.org 309295)', () => {
  const s = attempt(screw, meetingOf(crossed), { diameter: 0.19 * IN, travel: 0.13974 * IN }).sizes;
  expect(s.slot / IN).toBeCloseTo(0.53198, 3);
});
test('wood that moves under the strip gets slots; wood that moves with it does not', () => {
  // Screws at 50 and 350: 150 from the middle, 150/96 = 1.56 each way.
  const s = attempt(screw, meetingOf(crossed)).sizes;
  expect([s.travel, s.head]).toEqual([1.6, 'round']);
  expect(attempt(screw, meetingOf(alike)).sizes.travel).toBe(0);
  const three = attempt(screw, meetingOf(crossed), { count: 3, travel: 1.6 });
  expect(three.sizes.fast).toBe('middle');
  expect(three.made.features['through']!.filter((f) => f.name.includes('slot')).map((f) => f.name)).toEqual([
    'screw slot 1',
    'screw slot 3',
  ]);
  expect(three.made.holds).toBe('slides');
  expect(three.made.contacts[0]?.travel).toMatchObject({ low: -1.6, high: 1.6 });
});
test('plugs come out before the screws, the screws before the part; a plug lies with the grain of the face', () => {
  const { made, sizes } = attempt(screw, meetingOf(alike), { head: 'plugged', count: 1 });
  expect(made.frees.map((f) => f.moves[0])).toEqual(['plug1', 'screw1', 'through']);
  const plug = made.extras.find((e) => e.name === 'plug1')!;
  expect([plug.record.grain, plug.record.wood, plug.hardware ?? false]).toEqual(['x', 'oak', false]);
  // The strip's grain runs along the meeting's y, which runs along the strip.
  expect(Math.abs(plug.at.x[1])).toBeCloseTo(1, 9);
  expect(plug.record.stock.max[2]).toBeCloseTo(sizes.sink - 0.6 * sizes.diameter, 6);
});
test('mirrored copies make equal screws', () => {
  const keys = (b: Boards): string[] => attempt(screw, meetingOf(b), { head: 'plugged' }).made.extras.map((e) => e.record.key);
  expect(keys(mirroredBoards(alike, 'x', 500))).toEqual(keys(alike));
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    boards: fc.constantFrom(alike, crossed, thick),
    count: fc.integer({ min: 1, max: 4 }),
    off: fc.integer({ min: -5, max: 5 }),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ boards, axis, ...set }) => {
    const m = meetingOf(boards);
    expect(shapesOf(attempt(screw, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(screw, m, set).made, axis));
  },
  { runs: 20 },
);
const maybe = <T>(a: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(a, { nil: undefined, freq: 2 });
law(
  'whatever is set, it is cut soundly or refused with what goes',
  fc.record({
    t: fc.integer({ min: 6, max: 90 }),
    deep: fc.integer({ min: 6, max: 60 }),
    across: fc.boolean(),
    set: fc.record({
      count: maybe(fc.integer({ min: 0, max: 12 })),
      inset: maybe(fc.integer({ min: 0, max: 250 })),
      off: maybe(fc.integer({ min: -30, max: 30 })),
      diameter: maybe(fc.integer({ min: 0, max: 10 })),
      length: maybe(fc.integer({ min: 0, max: 120 })),
      head: maybe(fc.constantFrom('countersunk' as const, 'round' as const, 'plugged' as const)),
      sink: maybe(fc.integer({ min: 0, max: 60 })),
      travel: maybe(fc.integer({ min: 0, max: 8 })),
      pilot_depth: maybe(fc.integer({ min: 0, max: 70 })),
    }),
  }),
  ({ t, deep, across, set }) => {
    const m = meetingOf({
      through: board([0, 400], [deep, deep + t], [20, 60], 'x'),
      into: board([0, 400], [0, deep], [0, 80], across ? 'z' : 'x'),
    });
    const given = Object.fromEntries(Object.entries(set).filter(([, v]) => v !== undefined)) as Partial<Screw>;
    const p = screw.propose({ meeting: m, siblings: [], set: given }, SHOP);
    if (isRefusal<Screw>(p)) {
      expect(p.nearest, p.cannot).toBeDefined();
      expect(isRefusal(screw.propose({ meeting: m, siblings: [], set: { ...given, ...p.nearest } }, SHOP))).toBe(false);
      return;
    }
    const f = figures(m, attempt(screw, m, given).made);
    expect(Object.entries(f.overlap).filter(([, v]) => v > 2e-3)).toEqual([]);
    expect(Object.entries(f.pieces).filter(([, n]) => n !== 1)).toEqual([]);
  },
  { runs: 30 },
);
law(
  'the proposal says nothing against itself where there is wood enough',
  fc.record({
    t: fc.integer({ min: 8, max: 60 }),
    deep: fc.integer({ min: 15, max: 60 }),
    l: fc.integer({ min: 80, max: 900 }),
    across: fc.boolean(),
  }),
  ({ t, deep, l, across }) => {
    const m = meetingOf({
      through: board([0, l], [deep, deep + t], [20, 60], 'x'),
      into: board([0, l], [0, deep], [0, 80], across ? 'z' : 'x'),
    });
    const tried = attempt(screw, m);
    expect(screw.rules.flatMap((r) => r.run(tried.place, tried.sizes, tried.made)).filter((w) => w.grade !== 'note')).toEqual([]);
  },
  { runs: 40 },
);
const fired = (boards: Boards, set: Partial<Screw>) => {
  const t = attempt(screw, meetingOf(boards), set);
  return screw.rules.flatMap((r) => r.run(t.place, t.sizes, t.made));
};
describe('rules', () => {
  test.each<[string, Boards, Partial<Screw>, string]>([
    ['a pilot hole that leaves 1', alike, { pilot_depth: 19 }, 'pilot hole breaks through'],
    ['a pilot hole right through', alike, { pilot_depth: 20.5 }, 'pilot hole breaks through'],
    ['25 of which 7 hold', alike, { head: 'countersunk', length: 25 }, 'screw holds too little'],
    ['slots too short for the wood', crossed, { travel: 1.6, slot: 6 }, 'screw slot short'],
    ['round holes over wood that moves', crossed, { travel: 0 }, 'screw slot short'],
    ['a row 5 from the edge', alike, { off: 15, diameter: 4, head: 'round', sink: 0, length: 30 }, 'screw near the edge'],
  ])('%s is told and cured', (_name, boards, set, rule) => {
    const mine = fired(boards, set).find((w) => w.rule === rule)!;
    expect(mine.grade).toBe('trouble');
    const cured = mine.cures.some((c) => {
      const left = Object.fromEntries(Object.entries(set).filter(([k]) => !(k in c.set)));
      return !fired(boards, left as Partial<Screw>).some((w) => w.rule === rule);
    });
    expect(cured).toBe(true);
  });
  test('end grain is a note without a cure', () => {
    const end: Boards = { through: board([0, 100], [0, 60], [0, 20], 'x'), into: board([20, 80], [0, 60], [-300, 0], 'z') };
    expect(fired(end, {}).map((w) => [w.rule, w.grade])).toEqual([['screw in end grain', 'note']]);
  });
});
test('suits a part on another, not a beam', () => {
  expect(screw.suits(meetingOf(alike))?.rank).toBe(3);
  expect(screw.suits(meetingOf({ ...alike, through: board([0, 400], [20, 180], [0, 200], 'x') }))).toBeNull();
});
