import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import { glueBlock } from '../../src/joints/glue-block/glue-block.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { findingsOf } from '../support/checks.ts';
import { type Boards, SHOP, attempt, board, figures, lost, meetingOf, mirrorMeeting, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(glueBlock);
const corner = (long = 60, grain: 'x' | 'y' = 'x', leg = 25): Boards => ({
  block: board([100, 100 + long], [30, 30 + leg], [200 - leg, 200], grain),
  on: board([0, 400], [0, 200], [200, 220], 'x'),
  beside: board([0, 400], [10, 30], [120, 200], 'x'),
});
/** The block runs across the grain of the board above it. */
const crossed = (long: number): Boards => ({ ...corner(long), on: board([0, 400], [0, 200], [200, 220], 'y') });
const fired = (boards: Boards): string[] => {
  const t = attempt(glueBlock, meetingOf(boards));
  return glueBlock.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => `${w.rule}: ${w.grade}`);
};

test('it lies on both parts with long grain, loses its free corner alone and is glued', () => {
  const m = meetingOf(corner());
  const t = attempt(glueBlock, m);
  expect(t.sizes.bevel).toBe(12.5);
  const f = figures(m, t.made);
  expect(lost(m, f, 'block')).toBeCloseTo((12.5 * 12.5 * 60) / 2, 4);
  expect([lost(m, f, 'on'), lost(m, f, 'beside')].map((v) => Math.abs(v) < 1e-6)).toEqual([true, true]);
  expect(t.made.contacts.map((c) => [c.hold, c.glue])).toEqual([
    ['glued', 'long'],
    ['glued', 'long'],
  ]);
  expect(t.made.holds).toBe('glue');
});
test.each<[string, Boards, string[]]>([
  ['short along the grain', corner(), []],
  ['long, all along the grain', corner(300), []],
  ['short across the grain', crossed(75), []],
  ['long across the grain', crossed(76), ['glue block long: trouble']],
  ['end grain in the corner', corner(60, 'y'), ['glue block grain: trouble']],
  ['small', corner(60, 'x', 11), ['glue block small: note']],
])('%s', (_name, boards, said) => expect(fired(boards)).toEqual(said));
test('a long block across the grain is told of once, by its own rule', () => {
  const part = (x: number[], y: number[], z: number[], grain: string): object => ({
    wood: 'oak',
    grain,
    left: x[0],
    right: x[1],
    front: y[0],
    back: y[1],
    bottom: z[0],
    top: z[1],
  });
  const parts = {
    block: part([100, 250], [30, 55], [175, 200], 'x'),
    top: part([0, 400], [0, 200], [200, 220], 'y'),
    rail: part([0, 400], [10, 30], [120, 200], 'x'),
  };
  const joints = { corner: { as: 'glue_block@1', places: [{ block: 'block', on: 'top', beside: 'rail' }], set: {} } };
  expect(findingsOf({ dryfit: 1, title: 'Trial', units: 'mm', parts, joints }).map((f) => f.rule)).toEqual(['glue-block-long']);
});
test('a block that stands off the second part is refused; one a little off is an open contact', () => {
  const off = (by: number): Boards => ({ ...corner(), block: board([100, 160], [30 + by, 55 + by], [175, 200], 'x') });
  expect(isRefusal(glueBlock.propose({ meeting: meetingOf(off(5)), siblings: [], set: {} }, SHOP))).toBe(true);
  const c = attempt(glueBlock, meetingOf(off(1))).made.contacts[1]!;
  const [a, b] = c.between.map((s) => ('plane' in s.surface ? s.surface.plane.off : NaN));
  expect(-b! - a!).toBeCloseTo(1, 9);
});
test('a bevel that takes a whole leg is refused with one that goes', () => {
  for (const bevel of [24.5, -1]) {
    const place = { meeting: meetingOf(corner()), siblings: [], set: { bevel } };
    const p = glueBlock.propose(place, SHOP);
    if (!isRefusal(p)) throw new Error('should be refused');
    expect(isRefusal(glueBlock.propose({ ...place, set: { bevel, ...p.nearest } }, SHOP))).toBe(false);
  }
});
law(
  'a mirrored meeting makes the mirrored joint, in one piece and clear of both parts',
  fc.record({
    bevel: fc.integer({ min: 0, max: 24 }),
    long: fc.integer({ min: 10, max: 200 }),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ bevel, long, axis }) => {
    const m = meetingOf(corner(long));
    const { made } = attempt(glueBlock, m, { bevel });
    expect(shapesOf(attempt(glueBlock, mirrorMeeting(m, axis), { bevel }).made)).toEqual(shapesOf(made, axis));
    const f = figures(m, made);
    expect(Object.values(f.overlap).every((v) => v < 1e-6)).toBe(true);
    expect(f.pieces['block']).toBe(1);
  },
  { runs: 15 },
);
