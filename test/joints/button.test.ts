import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { button } from '../../src/joints/button/button.ts';
import { ground } from '../../src/joints/button/lay.ts';
import type { Button } from '../../src/joints/button/params.ts';
import { isRefusal } from '../../src/joints/family.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { type Boards, SHOP, attempt, board, figures, meetingOf, mirrorMeeting, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(button);
/** A top 1200 x 600 x 22, grain along x; a long rail at its front and a short one at its left. */
const top = board([0, 1200], [0, 600], [713, 735], 'x');
const long: Boards = { under: top, rail: board([85, 1115], [43, 63], [623, 713], 'x') };
const short: Boards = { under: top, rail: board([43, 63], [85, 515], [623, 713], 'y') };
const inch = 25.4;

test('on the long rail the top moves across it: room before the shoulder; on the short one along it: a longer slot, the button home', () => {
  const a = attempt(button, meetingOf(long)).sizes;
  // The rail's inner face stands 300 - 63 = 237 from the top's middle: 237/96 = 2.47.
  expect([a.room, a.allow]).toEqual([2.5, 1]);
  expect(a.reach).toBeCloseTo(2 * 2.5 + 6, 9);
  const b = attempt(button, meetingOf(short)).sizes;
  // The rail ends 300 - 85 = 215 from the top's middle: 215/96 = 2.24.
  expect([b.room, b.allow]).toEqual([0, 2.2]);
});
test.each<[number, number]>([
  // 2 in from each end, at most 20 in apart: 2 for 24 in, 3 for 24.1 in and up to 44 in, 4 beyond.
  [12 * inch, 2],
  [24 * inch, 2],
  [24.1 * inch, 3],
  [44 * inch, 3],
  [44.1 * inch, 4],
])('a rail %f long takes %i buttons, about 20 in apart and 2 in from the corners (Woodcraft Magazine 2010)', (l, n) => {
  const m = meetingOf({ under: board([-50, l + 50], [0, 600], [700, 722], 'x'), rail: board([0, l], [40, 60], [620, 700], 'x') });
  expect(attempt(button, m).sizes.count).toBe(n);
});
test('the slot stands 1/32 in lower than the tongue, so that it draws down (woodcraft.com)', () => {
  const { made, sizes } = attempt(button, meetingOf(long));
  expect(sizes.draw).toBeCloseTo(inch / 32, 9);
  const upper = made.contacts.find((c) => c.name === 'button 1 under the top');
  expect([upper?.meant, upper?.fit]).toEqual([sizes.draw, 'gap']);
});
test('the inner face looks to the top’s middle, unless a mark says otherwise', () => {
  expect(ground(meetingOf(long))?.face).toBeCloseTo(63 - 53, 6);
  const marked = { ...long, rail: board([85, 1115], [43, 63], [623, 713], 'x', { inner: 'front' }) };
  const m = meetingOf(marked);
  const g = ground(m)!;
  expect(g.face).toBeCloseTo(43 - 53, 6);
  expect(g.inner).toBe(-ground(meetingOf(long))!.inner);
});
test.each([
  ['long rail', long],
  ['short rail', short],
] as const)('%s: buttons, screws, top and rail keep clear of each other', (_name, boards) => {
  const m = meetingOf(boards);
  for (const slot of ['mortises', 'groove'] as const) {
    const { made } = attempt(button, m, { slot });
    const f = figures(m, made);
    expect(Object.entries(f.overlap).filter(([, v]) => v > 1e-3)).toEqual([]);
    expect(new Set(Object.values(f.pieces))).toEqual(new Set([1]));
  }
});
test('the tongue clears the slot by as much as the top may move, and touches its upper wall', () => {
  const m = meetingOf(long);
  const { made, sizes } = attempt(button, m);
  const slot = made.features['rail']?.[0];
  const rebate = made.contacts.find((c) => c.name === 'tongue of button 1 under the rail');
  const offs = rebate?.between.map((s) => ('plane' in s.surface ? s.surface.plane.off : NaN)) ?? [];
  expect((offs[0] ?? 0) + (offs[1] ?? NaN)).toBeCloseTo(0, 9);
  const depth = slot?.solid.kind === 'prism' ? (slot.solid.profile[0] ?? []).map((c) => c.at) : [];
  const deep = Math.max(...depth.map((c) => c[0])) - Math.min(...depth.map((c) => c[0]));
  // Slot depth = reach + 1 - room: the tongue, reach - room deep now, may go in by room and still has 1 left.
  expect(deep).toBeCloseTo(sizes.reach + 1 - sizes.room, 6);
});
test('all buttons of a rail and of its mirror image are one part', () => {
  const a = attempt(button, meetingOf(long)).made.extras;
  const b = attempt(button, meetingOf(mirroredBoards(long, 'y', 300))).made.extras;
  expect(new Set([...a, ...b].filter((e) => e.words === 'button').map((e) => e.record.key)).size).toBe(1);
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    boards: fc.constantFrom(long, short),
    count: fc.integer({ min: 1, max: 4 }),
    slot: fc.constantFrom('mortises' as const, 'groove' as const),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ boards, axis, ...set }) => {
    const m = meetingOf(boards);
    expect(shapesOf(attempt(button, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(button, m, set).made, axis));
  },
  { runs: 30 },
);
law(
  'whatever top and rail, the proposal goes together and says nothing against itself',
  fc.record({
    deep: fc.integer({ min: 300, max: 1000 }),
    l: fc.integer({ min: 200, max: 1400 }),
    t: fc.integer({ min: 14, max: 40 }),
    rail: fc.integer({ min: 18, max: 30 }),
    high: fc.integer({ min: 45, max: 120 }),
    set: fc.integer({ min: 0, max: 60 }),
  }),
  ({ deep, l, t, rail, high, set }) => {
    const m = meetingOf({ under: board([-30, l + 30], [0, deep], [0, t], 'x'), rail: board([0, l], [set, set + rail], [-high, 0], 'x') });
    const tried = attempt(button, m);
    const f = figures(m, tried.made);
    expect(Object.entries(f.overlap).filter(([, v]) => v > 1e-3)).toEqual([]);
    expect(button.rules.flatMap((r) => r.run(tried.place, tried.sizes, tried.made)).filter((w) => w.grade !== 'note')).toEqual([]);
  },
  { runs: 12 },
);
test('buttons in a groove of 1/4 in let the top travel: across a long rail by their room, along a short one until they meet the end of the groove', () => {
  const set: Partial<Button> = { slot: 'groove', tongue: inch / 4 - 1 };
  const high = (b: Boards): number => {
    const f = attempt(button, meetingOf(b), set).made.features['rail']![0]!;
    return f.solid.kind === 'prism' ? f.solid.to - f.solid.from : NaN;
  };
  expect([high(long), high(short)].map((x) => Math.round(x * 1e6) / 1e6)).toEqual([6.35, 6.35]);
  const travel = (b: Boards, more: Partial<Button> = {}) =>
    attempt(button, meetingOf(b), { ...set, ...more }).made.contacts[0]?.travel?.high;
  expect(travel(long)).toBe(2.5);
  // The first button's middle stands 50.8 in, half of its width is 15, the groove stops 20 from the end: 15.8 to slide.
  expect(travel(short, { stop: 20 })).toBeCloseTo(15.8, 9);
  // As far as the rule of thumb asks at the end of this rail: 215/96.
  expect(travel(short)!).toBeGreaterThan(215 / 96 - 0.05);
});
const speaks = (boards: Boards, set: Partial<Button>): string[] => {
  const t = attempt(button, meetingOf(boards), set);
  return button.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[Boards, Partial<Button>, string[]]>([
  [long, {}, []],
  [short, {}, []],
  [long, { grain: 'across' }, ['grain of a button']],
  [long, { room: 1 }, ['top held fast']],
  [short, { allow: 1 }, ['top held fast']],
  [short, { allow: 1, slot: 'groove' }, []],
  [long, { slot: 'groove', stop: 0 }, ['groove at the tenon']],
  [long, { slot: 'groove', stop: 20 }, []],
  [long, { slot: 'groove', stop: 0, reach: 7, room: 2 }, []],
  [long, { room: 0 }, ['top held fast']],
  [short, { room: 0 }, []],
  [long, { reach: 7.5 }, ['tongue slips out']],
  [long, { screw_length: 35 }, ['screw near the face']],
  [short, { reach: 16 }, ['slot wall']],
  [long, { count: 2 }, ['buttons far apart']],
  [long, { draw: 0.2 }, ['button without draw']],
])('rules %#', (boards, set, rules) => expect(speaks(boards, set)).toEqual(rules));
test.each<[string, Partial<Button>]>([
  ['slots through the rail', { reach: 25 }],
  ['slots below the rail', { lip: 90 }],
  ['a tongue that does not reach the rail', { room: 8, reach: 6 }],
  ['a screw through the top', { screw_length: 60 }],
  ['a screw that ends below the top', { screw_length: 12 }],
  ['more slots than rail', { count: 60 }],
  ['a groove that stops before its buttons', { slot: 'groove', stop: 45 }],
  ['a slot past the end of the rail', { inset: 5 }],
])('refused with the nearest that goes: %s', (_name, set) => {
  const place = { meeting: meetingOf(long), siblings: [], set };
  const p = button.propose(place, SHOP);
  if (!isRefusal<Button>(p)) throw new Error('should be refused');
  expect(isRefusal(button.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
});
test('suits a top on a rail, not two edges', () => {
  expect(button.suits(meetingOf(long))?.rank).toBe(8);
  expect(
    button.suits(meetingOf({ under: board([0, 100], [0, 50], [0, 20], 'x'), rail: board([0, 100], [50, 100], [0, 20], 'x') })),
  ).toBeNull();
});
