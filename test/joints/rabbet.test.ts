import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import { ground, lay, spanIn } from '../../src/joints/rabbet/lay.ts';
import type { Rabbet } from '../../src/joints/rabbet/params.ts';
import { rabbet } from '../../src/joints/rabbet/rabbet.ts';
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
import { builtOf, jsonDocument } from '../support/piece.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(rabbet);
const INCH = 25.4;
/** A drawer side 12 thick behind the left end of a front 18 thick; and a back drawn 6 inside the side of a case. */
const corner: Boards = { enter: board([0, 12], [18, 318], [0, 90], 'y'), into: board([0, 400], [0, 18], [0, 90], 'x') };
const shared: Boards = { enter: board([12, 400], [276, 280], [0, 600], 'z'), into: board([0, 18], [0, 280], [0, 600], 'z') };

test.each<[string, Boards, Partial<Rabbet>, number, number]>([
  // Lost by the other part and by the board, worked by hand.
  ['half of the front', corner, {}, 12 * 9 * 90, -12 * 9 * 90],
  ['a third', corner, { depth: 6 }, 12 * 6 * 90, -12 * 6 * 90],
  ['room at the edge', corner, { depth: 6, spare: 1 }, 12 * 7 * 90, -12 * 6 * 90],
  ['tongue of 4 under a lip', corner, { depth: 6, outer: 4, inner: 4 }, 4 * 6 * 90, -4 * 6 * 90],
  ['shoulder inside alone', corner, { depth: 6, inner: 4 }, 8 * 6 * 90, -8 * 6 * 90],
  ['drawn one in the other', shared, {}, 6 * 4 * 600, 0],
  ['and rabbeted inside', shared, { inner: 1 }, 6 * 3 * 600, 6 * 1 * 600],
])('%s', (_name, boards, set, into, enter) => {
  const m = meetingOf(boards);
  const f = figures(m, attempt(rabbet, m, set).made);
  expect(lost(m, f, 'into')).toBeCloseTo(into, 3);
  expect(lost(m, f, 'enter')).toBeCloseTo(enter, 3);
  expect(f.overlap['enter / into']).toBeCloseTo(0, 6);
  expect(f.pieces).toEqual({ enter: 1, into: 1 });
});
test('a 3/4 board rabbeted 3/8 from one face and 1/8 from the other keeps a 1/4 tongue, central once a 1/4 strip is glued under its edge', () => {
  // Common practice, worked out: 3/4 - 3/8 - 1/8 = 1/4; over 3/4 + 1/4 the tongue stands from 3/8 to 5/8, its middle at 1/2.
  const m = meetingOf({
    enter: board([0, 0.75 * INCH], [0.75 * INCH, 12 * INCH], [0, 4 * INCH], 'y'),
    into: board([-1 * INCH, 10 * INCH], [0, 0.75 * INCH], [0, 4 * INCH], 'x'),
  });
  const { sizes } = attempt(rabbet, m, { outer: (3 / 8) * INCH, inner: (1 / 8) * INCH, depth: 0.25 * INCH });
  const g = ground(m);
  if (!g) throw new Error('a rabbet suits here');
  const [low, high] = spanIn(lay(g, sizes).board, g.bed.axis);
  expect((high - low) / INCH).toBeCloseTo(1 / 4, 9);
  const [a, b] = spanIn(g.enter.box, g.bed.axis);
  const strip = INCH / 4;
  const [from, to] = g.bed.sign > 0 ? [a, b + strip] : [a - strip, b];
  expect((low + high) / 2).toBeCloseTo((from + to) / 2, 9);
});
test('an old bookcase: back boards 29-3/4 long between sides 28-3/4 apart stand 1/2 in in each', () => {
  // Sides 3/4 in, bottom 28-3/4, back boards 29-3/4: woodworkings.ca, A Bookcase (1910); (29.75 - 28.75) / 2.
  const sides = 0.75 * INCH;
  const m = meetingOf({
    enter: board([sides - 0.5 * INCH, sides - 0.5 * INCH + 29.75 * INCH], [13.5 * INCH, 14 * INCH], [0, 4 * INCH], 'x'),
    into: board([0, sides], [0, 14 * INCH], [0, 50 * INCH], 'z'),
  });
  const t = attempt(rabbet, m, { hold: 'dry' });
  expect(t.sizes.depth / INCH).toBeCloseTo(0.5, 9);
  expect(rabbet.rules.flatMap((r) => r.run(t.place, t.sizes, t.made))).toEqual([]);
});
test('a board drawn in its rabbet is not made deeper by a parameter', () => {
  const place = { meeting: meetingOf(shared), siblings: [], set: { depth: 8 } };
  const p = rabbet.propose(place, SHOP);
  expect(isRefusal(p) ? [p.limit, p.nearest] : null).toEqual([6, { depth: 6 }]);
});
test('out of the mouth, off the bed, and along it; under a lip not off the bed; stopped not along it', () => {
  const ways = (boards: Boards, set: Partial<Rabbet>): string[] =>
    attempt(rabbet, meetingOf(boards), set)
      .made.frees.map((f) => f.along.join(' '))
      .sort();
  const set: Boards = { ...shared, enter: board([12, 400], [276, 280], [20, 580], 'z') };
  expect(ways(corner, {})).toHaveLength(4);
  expect(ways(corner, { outer: 3 })).toHaveLength(3);
  expect(ways(set, {})).toHaveLength(4);
  expect(ways(set, { ends: 'fits' })).toHaveLength(2);
});
test('a back shorter than the side, stopped where it ends', () => {
  const m = meetingOf({ ...shared, enter: board([12, 400], [276, 280], [20, 580], 'z') });
  expect(lost(m, figures(m, attempt(rabbet, m, { ends: 'fits' }).made), 'into')).toBeCloseTo(6 * 4 * 560, 3);
  expect(lost(m, figures(m, attempt(rabbet, m, {}).made), 'into')).toBeCloseTo(6 * 4 * 600, 3);
});
test('a thick back drawn in its rabbet, shorter than the side: the joint is made, and cuts the side alone', () => {
  const side = { wood: 'pine', grain: 'z', left: '0', width: '18', front: '0', depth: '280', bottom: '0', height: '600' };
  const back = { wood: 'pine', grain: 'z', left: '9', width: '391', back: '280', depth: '12', bottom: '20', height: '560' };
  const { drawn } = builtOf(
    jsonDocument({
      dryfit: 1,
      title: 'Thick back',
      units: 'mm',
      parts: { side, back },
      joints: { edge: { as: 'rabbet@1', places: [{ enter: 'back', into: 'side' }], set: { ends: 'fits' } } },
    }),
  );
  expect(drawn.places.map((p) => [p.refused, p.sizes?.['depth']])).toEqual([[null, 9]]);
});
test('a board set in 2 mm from the edge has its rabbet cut out to the edge', () => {
  const m = meetingOf({ ...corner, enter: board([2, 14], [18, 318], [0, 90], 'y') });
  expect(lost(m, figures(m, attempt(rabbet, m, {}).made), 'into')).toBeCloseTo(14 * 9 * 90, 3);
});
test.each([
  ['touching', corner],
  ['drawn one in the other', shared],
] as const)('the mirrored copy at the other side has the same numbers: %s', (_name, boards) => {
  const set: Partial<Rabbet> = { inner: 1, outer: 1 };
  expect(shapesOf(attempt(rabbet, meetingOf(mirroredBoards(boards, 'x', 250)), set).made)).toEqual(
    shapesOf(attempt(rabbet, meetingOf(boards), set).made),
  );
});
law(
  'any settings: refused with a nearest that goes, or sound, mirrored alike and fitting',
  fc.tuple(
    fc.record(
      {
        depth: fc.double({ min: -1, max: 20, noNaN: true }),
        spare: fc.double({ min: -1, max: 20, noNaN: true }),
        outer: fc.double({ min: -1, max: 13, noNaN: true }),
        inner: fc.double({ min: -1, max: 13, noNaN: true }),
        ends: fc.constantFrom<Rabbet['ends']>('through', 'fits'),
        hold: fc.constantFrom<Rabbet['hold']>('glued', 'dry'),
      },
      { requiredKeys: [] },
    ),
    fc.constantFrom(corner, shared, { ...shared, enter: board([12, 400], [276, 280], [20, 580], 'z') }),
  ),
  ([set, boards]) => {
    const m = meetingOf(boards);
    const place = { meeting: m, siblings: [], set };
    const p = rabbet.propose(place, SHOP);
    if (isRefusal<Rabbet>(p)) {
      expect(p.nearest).toBeDefined();
      expect(isRefusal(rabbet.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
      return;
    }
    const { sizes } = p as { sizes: Rabbet };
    const made = rabbet.make(place, sizes);
    const f = figures(m, made);
    expect(f.overlap['enter / into']).toBeCloseTo(0, 4);
    expect(f.pieces).toEqual({ enter: 1, into: 1 });
    for (const axis of ['x', 'y'] as const)
      expect(shapesOf(rabbet.make({ ...place, meeting: mirrorMeeting(m, axis) }, sizes))).toEqual(shapesOf(made, axis));
  },
  { runs: 25 },
);
const speaks = (boards: Boards, set: Partial<Rabbet>): string[] => {
  const t = attempt(rabbet, meetingOf(boards), set);
  return rabbet.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[string, Boards, Partial<Rabbet>, string[]]>([
  ['as proposed', corner, {}, []],
  ['a lip of 4.5 of 18', corner, { depth: 13.5 }, []],
  ['a lip of 4.4', corner, { depth: 13.6 }, ['rabbet lip thin']],
  ['a lip of 4.4 by its room', corner, { depth: 12.6, spare: 1 }, ['rabbet lip thin']],
  ['edge lip of 2', corner, { outer: 2 }, ['rabbet edge lip thin']],
  ['edge lip of 4', corner, { outer: 4 }, []],
  ['a solid back 388 wide, pinned, no room', shared, { hold: 'dry' }, ['rabbeted board without room']],
  // 388 / 96 / 2 = 2.02, of which 0.6 is 1.2.
  ['with room', shared, { hold: 'dry', spare: 1.3 }, []],
])('rules: %s', (_name, boards, set, rules) => expect(speaks(boards, set)).toEqual(rules));
test('a board in the middle of a face has no edge to be rabbeted at, and is not offered one', () => {
  const m = meetingOf({ ...corner, enter: board([100, 112], [18, 318], [0, 90], 'y') });
  expect(rabbet.suits(m)).toBeNull();
  expect(isRefusal(rabbet.propose({ meeting: m, siblings: [], set: {} }, SHOP))).toBe(true);
  expect(rabbet.suits(meetingOf(corner))?.rank).toBe(6);
  expect(rabbet.suits(meetingOf(shared))?.rank).toBe(6);
});
