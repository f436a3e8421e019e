import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import type { WallFixing } from '../../src/joints/wall-fixing/params.ts';
import { wallFixing } from '../../src/joints/wall-fixing/wall-fixing.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { findingsOf } from '../support/checks.ts';
import { type Boards, SHOP, attempt, board, figures, meetingOf, mirrorMeeting, shapesOf } from '../support/joint-bench.ts';
import { fixtureText } from '../support/piece.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(wallFixing);
const wall = { ...board([-200, 1000], [300, 400], [0, 2000], 'x'), wood: 'stone' };
const fixed = (thick = 18, high = 70, long = 764): Boards => ({
  rail: board([0, long], [300 - thick, 300], [1700, 1700 + high], 'x'),
  wall,
});

test('screws go 40 and more into the wall, about 400 apart, two at least', () => {
  const { sizes, made } = attempt(wallFixing, meetingOf(fixed()));
  // 18 of rail: the shortest sold of which 40 are left is 60.
  expect([sizes.length, sizes.count, sizes.head]).toEqual([60, 3, 'round']);
  expect(sizes.pilot_depth).toBe(60 - 18 + 5);
  expect(made.holds).toBe('dry');
  expect(made.extras.every((e) => e.hardware)).toBe(true);
});
test('the work at the wall says what decides, and warns of cables and of tipping', () => {
  const t = attempt(wallFixing, meetingOf(fixed()));
  const said = wallFixing
    .bench(t.place, t.sizes, t.made, true)
    .map((o) => o.caution ?? '')
    .join(' ');
  for (const word of ['cables', 'decides what holds', 'licensed', 'tips', 'F2057']) expect(said).toContain(word);
});
test('the tall bookcase with a rail fixed to a wall has nothing against it', () => {
  const json = JSON.parse(fixtureText('p4-bookcase')) as { parts: object; joints: object };
  const rail = {
    wood: 'pine',
    grain: 'x',
    left: 'side:left.right',
    right: 'side:right.left',
    back: 'back.front',
    depth: '18',
    top: 'shelf:5.bottom - 30',
    height: '60',
  };
  const behind = { wood: 'stone', left: '-wide', right: 'wide', front: 'deep', depth: '100', bottom: '0', top: 'high + 400', loose: true };
  // The rail lies on the wall itself, in the room of the back, which stops below it.
  const parts = {
    ...json.parts,
    back: { ...(json.parts as { back: object }).back, top: 'rail.bottom' },
    rail: { ...rail, back: 'wall_behind.front', front: undefined },
    wall_behind: behind,
  };
  const joints = {
    ...json.joints,
    holds: {
      as: 'housing@1',
      places: [
        { enter: 'rail', into: 'side:left' },
        { enter: 'rail', into: 'side:right' },
      ],
      set: { depth: '6' },
    },
    fixed: { as: 'wall_fixing@1', places: [{ rail: 'rail', wall: 'wall_behind' }] },
  };
  const before = findingsOf(json).map((f) => f.key);
  expect(
    findingsOf(JSON.parse(JSON.stringify({ ...json, parts, joints })))
      .filter((f) => !before.includes(f.key))
      .map((f) => `${f.rule} ${f.parts.join(' ')}`),
  ).toEqual([]);
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    count: fc.integer({ min: 1, max: 4 }),
    off: fc.integer({ min: -10, max: 10 }),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ axis, ...set }) => {
    const m = meetingOf(fixed());
    expect(shapesOf(attempt(wallFixing, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(wallFixing, m, set).made, axis));
  },
  { runs: 8 },
);
const maybe = <T>(a: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(a, { nil: undefined, freq: 2 });
law(
  'whatever is set, it is bored soundly or refused with what goes; what is proposed is quiet',
  fc.record({
    thick: fc.integer({ min: 10, max: 40 }),
    long: fc.integer({ min: 150, max: 1200 }),
    set: fc.record({
      count: maybe(fc.integer({ min: 0, max: 9 })),
      inset: maybe(fc.integer({ min: 0, max: 700 })),
      off: maybe(fc.integer({ min: -50, max: 50 })),
      diameter: maybe(fc.integer({ min: 0, max: 10 })),
      length: maybe(fc.integer({ min: 10, max: 200 })),
      head: maybe(fc.constantFrom('round' as const, 'countersunk' as const, 'plugged' as const)),
      sink: maybe(fc.integer({ min: 0, max: 40 })),
    }),
  }),
  ({ thick, long, set }) => {
    const m = meetingOf(fixed(thick, 70, Math.min(long, 1000)));
    const bare = attempt(wallFixing, m);
    expect(wallFixing.rules.flatMap((r) => r.run(bare.place, bare.sizes, bare.made)).map((w) => w.rule)).toEqual([]);
    const given = Object.fromEntries(Object.entries(set).filter(([, v]) => v !== undefined)) as Partial<WallFixing>;
    const p = wallFixing.propose({ meeting: m, siblings: [], set: given }, SHOP);
    if (isRefusal<WallFixing>(p)) {
      expect(p.nearest, p.cannot).toBeDefined();
      expect(isRefusal(wallFixing.propose({ meeting: m, siblings: [], set: { ...given, ...p.nearest } }, SHOP))).toBe(false);
      return;
    }
    const f = figures(m, attempt(wallFixing, m, given).made);
    expect(Object.entries(f.overlap).filter(([, v]) => v > 2e-3)).toEqual([]);
    expect(Object.entries(f.pieces).filter(([, n]) => n !== 1)).toEqual([]);
  },
  { runs: 20 },
);
const fired = (set: Partial<WallFixing>, boards = fixed()) => {
  const t = attempt(wallFixing, meetingOf(boards), set);
  return wallFixing.rules.flatMap((r) => r.run(t.place, t.sizes, t.made));
};
test.each<[string, Partial<WallFixing>, string]>([
  ['40 long, 22 in the wall', { length: 40, pilot_depth: 25 }, 'wall screw short'],
  ['one screw', { count: 1 }, 'one screw in the wall'],
  ['two screws 644 apart', { count: 2 }, 'wall screws far apart'],
])('%s is told and cured', (_name, set, rule) => {
  const mine = fired(set).find((w) => w.rule === rule)!;
  const left = Object.fromEntries(Object.entries(set).filter(([k]) => !(k in mine.cures[0]!.set)));
  expect(fired(left).map((w) => w.rule)).not.toContain(rule);
});
test('suits a rail on what is no wood', () => {
  expect(wallFixing.suits(meetingOf(fixed()))?.rank).toBe(8);
  expect(wallFixing.suits(meetingOf({ ...fixed(), wall: { ...wall, wood: 'oak' } }))).toBeNull();
});
