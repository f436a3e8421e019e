import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import { ground, holes } from '../../src/joints/shelf-peg/lay.ts';
import type { ShelfPeg } from '../../src/joints/shelf-peg/params.ts';
import { shelfPeg } from '../../src/joints/shelf-peg/shelf-peg.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { findingsOf } from '../support/checks.ts';
import { type Boards, SHOP, attempt, board, figures, lost, meetingOf, mirrorMeeting, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(shelfPeg);
const case_ = (gap = 1, thick = 18, deep = 280): Boards => ({
  shelf: board([gap, 700], [10, 270], [300, 318], 'x'),
  side: board([-thick, 0], [0, deep], [0, 900], 'z'),
});
test('two rows: worked by hand', () => {
  const m = meetingOf(case_());
  const t = attempt(shelfPeg, m, { diameter: 6, depth: 12, inset: 37, step: 32, above: 2, below: 3, flat: 1, reach: 12 });
  const f = figures(m, t.made);
  expect(lost(m, f, 'side')).toBeCloseTo(12 * 9 * Math.PI * 12, -2);
  expect(lost(m, f, 'shelf')).toBeCloseTo(0, 6);
  expect(Object.values(f.overlap).every((v) => v < 1e-3)).toBe(true);
  // A peg runs 12 under the shelf, over 1 of air and 11 into its hole.
  expect(t.made.extras.map((e) => e.record.stock.max)).toEqual([
    [6, 6, 24],
    [6, 6, 24],
  ]);
  const g = ground(m)!;
  // The shelf's underside at 300 is its own -9; pegs of 3 less a flat of 1 stand 2 below; rows of six, 32 apart.
  const xs = holes(g, t.sizes).map((h) => (h.x - g.under) * g.up);
  expect(xs.slice(0, 6).map((x) => Math.round(x * 1e6) / 1e6)).toEqual([-98, -66, -34, -2, 30, 62]);
  expect(xs.slice(6)).toEqual(xs.slice(0, 6));
});
test('the shelf lies loose: it lifts off upward, no glue', () => {
  const m = meetingOf(case_());
  const { made } = attempt(shelfPeg, m);
  expect(made.holds).toBe('loose');
  expect(made.frees[0]).toEqual({ moves: ['shelf'], along: [ground(m)!.up, 0, 0] });
  expect(made.contacts.every((c) => c.hold === 'dry' && c.glue === 'never')).toBe(true);
  expect(attempt(shelfPeg, m, { peg: 'metal' }).made.extras.every((e) => e.hardware && e.record.wood === 'brass')).toBe(true);
});
test('spare holes stay within the side', () => {
  const low: Boards = { ...case_(), shelf: board([1, 700], [10, 270], [60, 78], 'x') };
  // 60 less 2 to the pegs' middle, less two diameters of 6: (58 - 12)/32 = 1.4 below.
  const s = attempt(shelfPeg, meetingOf(low), { diameter: 6 }).sizes;
  expect([s.above, s.below]).toEqual([3, 1]);
  const p = shelfPeg.propose({ meeting: meetingOf(low), siblings: [], set: { below: 5 } }, SHOP);
  expect(isRefusal<ShelfPeg>(p) && p.nearest).toEqual({ below: 1 });
});
test('a bookcase 800 wide outside with sides of 18 takes loose shelves of 764 less 1 at each end (charnwoodhome.eu, wooden shelf: 776 with 6 in both housings)', () => {
  const side = {
    wood: 'pine',
    grain: 'z',
    copies: [{ mirror: 'x', names: ['left', 'right'] }],
    left: '-400',
    width: '18',
    front: '0',
    depth: '280',
    bottom: '0',
    height: '1800',
  };
  const across = (z: string): object => ({
    wood: 'pine',
    grain: 'x',
    left: 'side:left.right',
    right: 'side:right.left',
    front: '0',
    depth: '276',
    bottom: z,
    height: '18',
  });
  const shelf = { ...across('500'), left: 'side:left.right + 1', right: 'side:right.left - 1' };
  const json = {
    dryfit: 1,
    title: 'Bookcase with loose shelves',
    units: 'mm',
    parts: { side, floor: across('60'), head: across('1782'), shelf: { ...shelf, copies: [{ row: 'z', count: 3, step: '320' }] } },
    joints: {
      housed: {
        as: 'housing@1',
        places: [
          { enter: 'floor', into: 'side:*' },
          { enter: 'head', into: 'side:*' },
        ],
        set: { depth: '6' },
      },
      loose: { as: 'shelf_peg@1', places: ['left', 'right'].map((s) => ({ shelf: 'shelf:*', side: `side:${s}` })), set: { step: '32' } },
    },
  };
  // 776 with 6 in each housing is 764 between the sides.
  expect(776 - 2 * 6).toBe(800 - 2 * 18);
  expect(findingsOf(json).map((f) => f.rule)).toEqual([]);
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    above: fc.integer({ min: 0, max: 4 }),
    inset: fc.integer({ min: 20, max: 90 }),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ axis, ...set }) => {
    const m = meetingOf(case_());
    expect(shapesOf(attempt(shelfPeg, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(shelfPeg, m, set).made, axis));
  },
  { runs: 6 },
);
const maybe = <T>(a: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(a, { nil: undefined, freq: 2 });
law(
  'whatever is set, it is bored soundly or refused with what goes; what is proposed is quiet',
  fc.record({
    thick: fc.integer({ min: 10, max: 40 }),
    deep: fc.integer({ min: 270, max: 400 }),
    set: fc.record({
      diameter: maybe(fc.integer({ min: 0, max: 14 })),
      depth: maybe(fc.integer({ min: 0, max: 40 })),
      reach: maybe(fc.integer({ min: 0, max: 20 })),
      flat: maybe(fc.integer({ min: 0, max: 5 })),
      inset: maybe(fc.integer({ min: 0, max: 150 })),
      step: maybe(fc.integer({ min: 1, max: 60 })),
      above: maybe(fc.integer({ min: -1, max: 6 })),
    }),
  }),
  ({ thick, deep, set }) => {
    const m = meetingOf(case_(1, thick, deep));
    const bare = attempt(shelfPeg, m);
    expect(shelfPeg.rules.flatMap((r) => r.run(bare.place, bare.sizes, bare.made))).toEqual([]);
    const given = Object.fromEntries(Object.entries(set).filter(([, v]) => v !== undefined)) as Partial<ShelfPeg>;
    const p = shelfPeg.propose({ meeting: m, siblings: [], set: given }, SHOP);
    if (isRefusal<ShelfPeg>(p)) {
      expect(p.nearest, p.cannot).toBeDefined();
      expect(isRefusal(shelfPeg.propose({ meeting: m, siblings: [], set: { ...given, ...p.nearest } }, SHOP))).toBe(false);
      return;
    }
    const f = figures(m, attempt(shelfPeg, m, given).made);
    expect(Object.entries(f.overlap).filter(([, v]) => v > 2e-3)).toEqual([]);
    expect(Object.entries(f.pieces).filter(([, n]) => n !== 1)).toEqual([]);
  },
  { runs: 15 },
);
const fired = (set: Partial<ShelfPeg>, boards = case_()) => {
  const t = attempt(shelfPeg, meetingOf(boards), set);
  return shelfPeg.rules.flatMap((r) => r.run(t.place, t.sizes, t.made));
};
test.each<[string, Partial<ShelfPeg>, string, Boards?]>([
  // The shelf lies 10 behind the front edge of the side: holes 11 from it.
  ['holes 11 from the edge', { inset: 1 + 3, diameter: 8 }, 'peg hole near the edge'],
  ['2 of wood behind', { depth: 16 }, 'peg hole deep'],
  ['pegs 6 long with 1 of air', { reach: 6 }, 'shelf slips off its pegs'],
])('%s is told and cured', (_name, set, rule, boards = case_()) => {
  const mine = fired(set, boards).find((w) => w.rule === rule)!;
  expect(mine.grade).toBe('trouble');
  const left = Object.fromEntries(Object.entries(set).filter(([k]) => !(k in mine.cures[0]!.set)));
  expect(fired(left, boards).map((w) => w.rule)).not.toContain(rule);
});
test('a shelf as long as its opening is a note', () =>
  expect(fired({}, case_(0)).map((w) => [w.rule, w.grade])).toEqual([['shelf without air at its ends', 'note']]));
test('suits a level shelf with air at its end before one that touches', () => {
  expect([shelfPeg.suits(meetingOf(case_(1)))?.rank, shelfPeg.suits(meetingOf(case_(0)))?.rank]).toEqual([7, 3]);
  expect(shelfPeg.suits(meetingOf(case_(10)))).toBeNull();
});
