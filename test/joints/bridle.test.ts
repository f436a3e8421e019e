/** Bridle: how the shared wood is divided at corners and tees, any settings, each rule fired and cured. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { bridle } from '../../src/joints/bridle/bridle.ts';
import type { Bridle } from '../../src/joints/bridle/params.ts';
import { isRefusal } from '../../src/joints/family.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { madeOrRefused, spoken } from '../support/any-settings.ts';
import { type Boards, SHOP, attempt, board, figures, lost, meetingOf, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
const corner: Boards = { fork: board([0, 50], [0, 24], [0, 300], 'z'), tongue: board([0, 240], [0, 24], [240, 300], 'x') };
const tee: Boards = { ...corner, tongue: board([-100, 240], [0, 24], [240, 300], 'x') };

test('a third of the thickness, as of a tenon (PTSW, Rivington)', () => {
  expect(attempt(bridle, meetingOf(corner)).sizes.thickness).toBe(8);
  const p = bridle.propose({ meeting: meetingOf(corner), siblings: [], set: {} }, SHOP);
  expect('because' in p && Object.keys(p.because).sort()).toEqual(Object.keys(bridle.params).sort());
});
test.each([
  ['a corner', corner, 2],
  ['a tee', tee, 4],
] as const)('%s: slot and notches worked by hand; the two fill what they share', (_name, boards, shoulders) => {
  const m = meetingOf(boards);
  const { made } = attempt(bridle, m, { thickness: 8 });
  const f = figures(m, made);
  expect(lost(m, f, 'fork')).toBeCloseTo(8 * 50 * 60, 3);
  expect(lost(m, f, 'tongue')).toBeCloseTo(16 * 50 * 60, 3);
  expect(f.overlap['fork / tongue']).toBeCloseTo(0, 5);
  expect(made.contacts.filter((c) => c.name.startsWith('shoulder'))).toHaveLength(shoulders);
});
test('two cheeks of long grain take the glue, over the width of the part with the tongue', () => {
  const glued = attempt(bridle, meetingOf(corner)).made.contacts.filter((c) => c.hold === 'glued');
  expect(glued.map((c) => [c.glue, c.gluedLength])).toEqual([
    ['long', 60],
    ['long', 60],
  ]);
});
test('a corner leaves two ways, a tee one', () => {
  // The fork's width, along which the rail runs on, is the meeting's y.
  expect(attempt(bridle, meetingOf(corner)).made.frees.map((f) => f.along)).toEqual([
    [0, 0, -1],
    [0, -1, 0],
  ]);
  expect(attempt(bridle, meetingOf(tee)).made.frees).toEqual([{ moves: ['fork'], along: [0, 0, -1] }]);
});
test.each<[string, Boards, Partial<Bridle>, string[]]>([
  ['a corner', corner, {}, []],
  ['a tee, dry', tee, { glue: 'no' }, []],
  ['a corner, dry', corner, { glue: 'no' }, ['bridle dry']],
  ['set over', corner, { offset: 4 }, ['bridle cheek thin']],
  ['a thick tongue', corner, { thickness: 14 }, ['bridle cheek thin']],
  ['a thin tongue', corner, { thickness: 5 }, ['bridle tongue thin']],
])('rules on %s', (_name, boards, set, rules) => {
  expect(spoken(bridle, meetingOf(boards), set)).toEqual(rules.map((rule) => ({ rule, cured: true })));
});
test.each<[string, Boards]>([
  ['two parts that only touch', { ...corner, tongue: board([50, 240], [0, 24], [240, 300], 'x') }],
  ['a fork that stops short of the far edge', { ...corner, tongue: board([-100, 240], [0, 24], [240, 330], 'x') }],
  ['a tongue thicker than the fork', { ...corner, tongue: board([0, 240], [-10, 34], [240, 300], 'x') }],
])('no bridle: %s', (_name, boards) => {
  const m = meetingOf(boards);
  expect(bridle.suits(m)).toBeNull();
  expect(isRefusal(bridle.propose({ meeting: m, siblings: [], set: {} }, SHOP))).toBe(true);
});
test('suits a shared corner after the dovetail, and a tee', () => {
  expect([corner, tee].map((b) => bridle.suits(meetingOf(b))?.rank)).toEqual([7, 7]);
});
test.each<[string, Partial<Bridle>]>([
  ['thicker than its part', { thickness: 25 }],
  ['nothing', { thickness: 0 }],
  ['out at the side', { offset: 9 }],
  ['both', { thickness: 30, offset: 20 }],
])('refused with the nearest that goes: %s', (_name, set) => {
  expect(madeOrRefused(bridle, meetingOf(corner), set)).toBeNull();
});
law(
  'any corner and tee, any settings: refused with a nearest that goes, or sound, no wood lost but what both shared; handed copies alike',
  fc.record({
    thick: fc.integer({ min: 12, max: 60 }),
    in_: fc.integer({ min: 0, max: 12 }),
    wide: fc.integer({ min: 20, max: 100 }),
    left: fc.constantFrom(0, -80),
    thickness: fc.double({ min: -1, max: 50, noNaN: true }),
    offset: fc.double({ min: -12, max: 12, noNaN: true }),
    axis: fc.constantFrom('x', 'y', 'z'),
  }),
  ({ thick, in_, wide, left, thickness, offset, axis }) => {
    const inside = Math.min(in_, (thick - 10) / 2);
    const boards: Boards = {
      fork: board([0, 50], [0, thick], [0, 300], 'z'),
      tongue: board([left, 240], [inside, thick - inside], [300 - wide, 300], 'x'),
    };
    const m = meetingOf(boards);
    const t = madeOrRefused(bridle, m, { thickness, offset });
    if (!t) return;
    const f = figures(m, t.made);
    expect(f.pieces).toEqual({ fork: 1, tongue: 1 });
    const shared = 50 * (thick - 2 * inside) * wide;
    expect(lost(m, f, 'fork') + lost(m, f, 'tongue')).toBeCloseTo(shared, 2);
    expect(shapesOf(attempt(bridle, meetingOf(mirroredBoards(boards, axis as 'x', 50)), { thickness, offset }).made)).toEqual(
      shapesOf(t.made),
    );
  },
  { runs: 40 },
);
