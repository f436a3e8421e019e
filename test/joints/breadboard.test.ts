import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { breadboard } from '../../src/joints/breadboard/breadboard.ts';
import { ground, lay } from '../../src/joints/breadboard/lay.ts';
import type { Breadboard } from '../../src/joints/breadboard/params.ts';
import { isRefusal } from '../../src/joints/family.ts';
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
testExamples(breadboard);
/** A top 500 x 600 x 24 and an end board 75 wide at its right. */
const plain: Boards = { top: board([0, 500], [0, 600], [0, 24], 'x'), end: board([500, 575], [0, 600], [0, 24], 'y') };
const slotsOf = (set: Partial<Breadboard>): number[] => {
  const m = meetingOf(plain);
  return lay(ground(m)!, attempt(breadboard, m, set).sizes).tenons.map((t) => t.allow);
};
test('the top grows, and by what: its blank is longer by the tenons', () => {
  const m = meetingOf(plain);
  const { made, sizes } = attempt(breadboard, m, {});
  const reach = made.features['top']?.filter((f) => f.op === 'add').map((f) => (f.solid.kind === 'prism' ? f.solid.to : 0)) ?? [];
  expect(Math.max(...reach)).toBe(sizes.tenon_length);
  expect(sizes.tenon_length).toBe(50);
});
test('slots: none at the fast peg, in proportion to the distance from it', () => {
  // 600 wide, three tenons 200 apart: the outer pegs 200 from the middle, 200/96 = 2.08 each way.
  expect(slotsOf({})).toEqual([2.1, 0, 2.1]);
  expect(slotsOf({ fixed: 'front' })).toEqual([0, 2.1, 4.2]);
  expect(slotsOf({ fixed: 'back', allow: 6 })).toEqual([6, 3, 0]);
});
test('a slot of 3/4 in for a 3/8 in pin lets the tenon slide 3/16 in each way', () => {
  const inch = 25.4;
  const { made } = attempt(breadboard, meetingOf(plain), { peg: (3 / 8) * inch, allow: (3 / 16) * inch });
  const slot = made.features['top']?.find((f) => f.name === 'peg1 slot');
  const ys = slot?.solid.kind === 'prism' ? (slot.solid.profile[0] ?? []).flatMap((c) => [c.at[0], c.via?.[0] ?? c.at[0]]) : [];
  expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo((3 / 4) * inch, 9);
});
test('slots are in the tenons, holes in the end board are round', () => {
  const { made } = attempt(breadboard, meetingOf(plain), {});
  const named = (role: string, word: string): string[] => (made.features[role] ?? []).map((f) => f.name).filter((n) => n.endsWith(word));
  expect(named('top', 'slot')).toEqual(['peg1 slot', 'peg3 slot']);
  expect(named('top', 'hole')).toEqual(['peg2 hole']);
  expect(named('end', 'slot')).toEqual([]);
  expect(named('end', 'hole')).toHaveLength(3);
  expect(made.extras.map((e) => e.name)).toEqual(['peg1', 'peg2', 'peg3']);
});
test('glue only at the fast tenon, over its width; everything else slides by its own amount', () => {
  const { made, sizes } = attempt(breadboard, meetingOf(plain), {});
  const glued = made.contacts.filter((c) => c.hold === 'glued');
  expect(glued.map((c) => [c.name.split(' of ')[1], c.glue, c.gluedLength])).toEqual([
    ['tenon 2', 'long', sizes.tenon_width],
    ['tenon 2', 'long', sizes.tenon_width],
  ]);
  const slides = made.contacts.filter((c) => c.travel && c.name.startsWith('peg')).map((c) => [c.travel?.low, c.travel?.high]);
  expect(slides).toEqual([
    [-2.1, 2.1],
    [-2.1, 2.1],
  ]);
});
test('everything goes together: no overlap, every part one piece', () => {
  const m = meetingOf(plain);
  const f = figures(m, attempt(breadboard, m, {}).made);
  for (const [pair, v] of Object.entries(f.overlap)) expect([pair, v < 1e-3]).toEqual([pair, true]);
  expect(new Set(Object.values(f.pieces))).toEqual(new Set([1]));
});
test('the end moved by all that is allowed still clears tenons and pegs', () => {
  const m = meetingOf(plain);
  const { made, sizes } = attempt(breadboard, m, {});
  // The top's outer third tenon as it stands when the top has grown by 2.1 there: its slot still clears the peg, its edges the mortise.
  const mortise = made.features['end']?.find((f) => f.name === 'mortise 3');
  const tenon = made.features['top']?.find((f) => f.name === 'tenon 3');
  const span = (f: typeof mortise): number[] => (f?.solid.kind === 'prism' ? (f.solid.profile[0] ?? []).map((c) => c.at[1]) : []);
  expect(Math.max(...span(mortise)) - Math.max(...span(tenon))).toBeCloseTo(sizes.allow, 9);
  expect(Math.min(...span(tenon)) - Math.min(...span(mortise))).toBeCloseTo(sizes.allow, 9);
});
test('at the other end of the top the mirrored copy has the same numbers', () => {
  const set: Partial<Breadboard> = { fixed: 'front' };
  expect(shapesOf(attempt(breadboard, meetingOf(mirroredBoards(plain, 'x', 250)), set).made)).toEqual(
    shapesOf(attempt(breadboard, meetingOf(plain), set).made),
  );
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    fixed: fc.constantFrom('middle' as const, 'front' as const, 'back' as const),
    tenons: fc.constantFrom(3, 5),
    allow: fc.double({ min: 0, max: 5, noNaN: true }),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ axis, ...set }) => {
    const m = meetingOf(plain);
    expect(shapesOf(attempt(breadboard, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(breadboard, m, set).made, axis));
  },
);
law(
  'whatever top, what is proposed can be made, goes together and says nothing against itself',
  fc.record({
    w: fc.integer({ min: 250, max: 1200 }),
    t: fc.integer({ min: 16, max: 45 }),
    b: fc.integer({ min: 45, max: 130 }),
    fixed: fc.constantFrom('middle' as const, 'front' as const),
  }),
  ({ w, t, b, fixed }) => {
    const m = meetingOf({ top: board([0, 500], [0, w], [0, t], 'x'), end: board([500, 500 + b], [0, w], [0, t], 'y') });
    const tried = attempt(breadboard, m, { fixed });
    const f = figures(m, tried.made);
    expect(Object.entries(f.overlap).filter(([, v]) => v > 1e-3)).toEqual([]);
    expect(new Set(Object.values(f.pieces))).toEqual(new Set([1]));
    expect(breadboard.rules.flatMap((r) => r.run(tried.place, tried.sizes, tried.made))).toEqual([]);
  },
  { runs: 12 },
);
const speaks = (boards: Boards, set: Partial<Breadboard>): string[] => {
  const t = attempt(breadboard, meetingOf(boards), set);
  return breadboard.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[Boards, Partial<Breadboard>, string[]]>([
  [plain, {}, []],
  [plain, { allow: 1.05 }, []],
  [plain, { allow: 1 }, ['slot short']],
  [plain, { tenons: 1, tenon_width: 151 }, ['breadboard glued wide']],
  [{ ...plain, end: board([500, 575], [0, 600], [0, 24], 'x') }, {}, ['breadboard grain']],
])('rules %#', (boards, set, rules) => expect(speaks(boards, set)).toEqual(rules));
test.each<[string, Partial<Breadboard>]>([
  ['no tenon in the middle of four', { tenons: 4 }],
  ['a face that is no edge of the top', { fixed: 'top' }],
  ['a slot wider than its tenon', { tenon_width: 14, allow: 4 }],
  ['mortises through the end board', { tenon_length: 75 }],
  ['a tenon shorter than the tongue', { tongue: 20, tenon_length: 15 }],
  ['pegs beyond the tenons', { peg_back: 60 }],
])('refused with the nearest that goes: %s', (_name, set) => {
  const place = { meeting: meetingOf(plain), siblings: [], set };
  const p = breadboard.propose(place, SHOP);
  if (!isRefusal<Breadboard>(p)) throw new Error('should be refused');
  expect(isRefusal(breadboard.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
});
test('net wood: what leaves the end board is what the tongue, the tenons and the pegs need, and the room', () => {
  const m = meetingOf(plain);
  const { made } = attempt(breadboard, m, {
    thickness: 8,
    tongue: 10,
    tenon_width: 40,
    tenon_length: 50,
    spare: 1.5,
    allow: 0,
    peg: 6,
    peg_back: 30,
  });
  const f = figures(m, made);
  // 64 chords: a hole of radius 3 takes 64 x 3² x sin(2π/64)/2.
  const round = 32 * 9 * Math.sin((2 * Math.PI) / 64);
  expect(lost(m, f, 'end')).toBeCloseTo(55200 + 8 * 40 * 120 + 3 * round * 16, 2);
  expect(lost(m, f, 'top')).toBeCloseTo(-86400 + 3 * round * 8, 2);
});
