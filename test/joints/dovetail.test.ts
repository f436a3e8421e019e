import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { dovetail } from '../../src/joints/dovetail/dovetail.ts';
import { corner, grooveOf, layoutFor } from '../../src/joints/dovetail/lay.ts';
import type { Dovetail } from '../../src/joints/dovetail/params.ts';
import { isRefusal } from '../../src/joints/family.ts';
import type { Meeting } from '../../src/joints/meeting.ts';
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
  recordOf,
  shapesOf,
} from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(dovetail);
const box = (w: number, side: number, front: number, wood = 'oak'): Boards => ({
  tails: { ...board([0, side], [0, 300], [0, w], 'y'), wood },
  pins: { ...board([0, 240], [0, front], [0, w], 'x'), wood },
});
const plain = box(90, 12, 18);
const SET: Partial<Dovetail> = { tails: 2, slope: 1 / 6, pin: 6, half_pin: 6 };
/** The layout that a set of sizes gives: [low, high] of each tail at the outer face. */
const tailsOf = (m: Meeting, s: Dovetail, keep = false): number[][] =>
  layoutFor(corner(m)!, s, keep)?.tails.map((t) => [t.low, t.high]) ?? [];

test('two tails in 90 x 12 through 18: worked by hand', () => {
  const m = meetingOf(plain);
  expect(m.touch).toBe('share');
  const t = attempt(dovetail, m, SET);
  // Rise 18/6 = 3; tails (90 - 12 - 6)/2 = 36 outside, 30 at the base.
  expect(tailsOf(m, t.sizes)).toEqual([
    [6, 42],
    [48, 84],
  ]);
  const f = figures(m, t.made);
  expect(lost(m, f, 'tails')).toBeCloseTo(24 * 18 * 12, 3);
  expect(lost(m, f, 'pins')).toBeCloseTo(66 * 18 * 12, 3);
  // The corner is divided without overlap and without rest.
  expect(f.overlap['tails / pins']).toBeCloseTo(0, 6);
  expect(f.union).toBeCloseTo(90 * (12 * 300 + 240 * 18 - 12 * 18), 3);
  expect(f.pieces).toEqual({ tails: 1, pins: 1 });
});
test('slopes: 1:6 is 9.46 and 1:8 is 7.13 degrees, and either may be set (woodworkersjournal.com, cherry chest)', () => {
  const m = meetingOf(plain);
  const deg = (set: Partial<Dovetail>): number => (attempt(dovetail, m, set).sizes.angle * 180) / Math.PI;
  expect(deg({ slope: 1 / 6 })).toBeCloseTo(9.46232, 4);
  expect(deg({ slope: 1 / 8 })).toBeCloseTo(7.12502, 4);
  expect(attempt(dovetail, m, { angle: Math.atan(1 / 7) }).sizes.slope).toBeCloseTo(1 / 7, 12);
  expect(attempt(dovetail, m).sizes.slope).toBe(1 / 8);
  expect(attempt(dovetail, meetingOf(box(90, 12, 18, 'pine'))).sizes.slope).toBe(1 / 6);
  expect(isRefusal(dovetail.propose({ meeting: m, siblings: [], set: { slope: 1 / 6, angle: 0.5 } }, SHOP))).toBe(true);
});
test.each<[string, number, number[][]]>([
  // A groove 6 wide. Even layout: tails at their base 9..39 and 51..81.
  [
    'already under a tail',
    12,
    [
      [6, 42],
      [48, 84],
    ],
  ],
  [
    'under the pin in the middle, nearer to the lower tail: that tail grows to 45 + 3 = 48 less rise',
    41,
    [
      [6, 47],
      [53, 84],
    ],
  ],
  [
    'right in the half pin: the lowest tail comes down to 5 - 3 = 2',
    8,
    [
      [2, 42],
      [48, 84],
    ],
  ],
])('groove %s', (_name, over, tails) => {
  const m = meetingOf(plain);
  const t = attempt(dovetail, m, { ...SET, half_pin: undefined as never, tail_over: over - 45, over_size: 6 });
  const s = { ...t.sizes, half_pin: 6 };
  const laid = tailsOf(m, s);
  laid.forEach((x, i) => x.forEach((v, k) => expect(v).toBeCloseTo(tails[i]?.[k] ?? NaN, 6)));
});
test('a groove too near the edge for any tail is refused, with the room that it needs', () => {
  const p = dovetail.propose({ meeting: meetingOf(plain), siblings: [], set: { ...SET, tail_over: -45 + 5, over_size: 6 } }, SHOP);
  expect(isRefusal(p)).toBe(true);
  // Half pins are set to 6 and the tail leans 3: the groove must begin at 9 or more; it begins at 2.
  if (isRefusal<Dovetail>(p)) expect([p.limit, p.asked]).toEqual([9, 2]);
});
test('too many tails are refused with the most that go', () => {
  const place = { meeting: meetingOf(plain), siblings: [], set: { ...SET, tails: 40 } };
  const p = dovetail.propose(place, SHOP);
  if (!isRefusal<Dovetail>(p)) throw new Error('forty tails in 90 mm should be refused');
  expect(p.limit).toBe(Math.floor((90 - 12 + 6) / (6 + 6 + 2)));
  expect(p.nearest).toEqual({ tails: p.limit });
  expect(isRefusal(dovetail.propose({ ...place, set: { ...place.set, ...p.nearest } }, SHOP))).toBe(false);
});
test('all four corners of a box, mirrored copies of one: records equal, and each comes apart outward', () => {
  const record = (b: Boards): unknown => {
    const m = meetingOf(b);
    const { made } = attempt(dovetail, m, { ...SET, tail_over: 12 - 45 });
    return [recordOf(m.sides['tails']![0]!, made.features['tails'] ?? []), recordOf(m.sides['pins']![0]!, made.features['pins'] ?? [])].map(
      (r) => r.features.map((f) => [f.name, f.at, f.solid]),
    );
  };
  expect(record(mirroredBoards(plain, 'x', 120))).toEqual(record(plain));
  expect(record(mirroredBoards(plain, 'y', 150))).toEqual(record(plain));
  const rear: Boards = { tails: plain['tails']!, pins: board([0, 240], [282, 300], [0, 90], 'x') };
  expect(attempt(dovetail, meetingOf(rear), SET).made.frees).toEqual([{ moves: ['tails'], along: [-1, 0, 0] }]);
});
const sizes = fc.record({
  w: fc.integer({ min: 60, max: 400 }),
  side: fc.integer({ min: 8, max: 25 }),
  front: fc.integer({ min: 8, max: 25 }),
  over: fc.double({ min: 0.1, max: 0.9, noNaN: true }),
  slope: fc.constantFrom(1 / 4, 1 / 6, 1 / 8),
});
law(
  'whatever the boards, the corner is divided exactly and the groove lies under a tail',
  sizes,
  ({ w, side, front, over, slope }) => {
    const m = meetingOf(box(w, side, front));
    const set: Partial<Dovetail> = { slope, tail_over: (over - 0.5) * w, over_size: 6 };
    const p = dovetail.propose({ meeting: m, siblings: [], set }, SHOP);
    if (isRefusal<Dovetail>(p)) return;
    const { made, sizes: s } = attempt(dovetail, m, set);
    const c = corner(m)!;
    const groove = grooveOf(c, s)!;
    const l = layoutFor(c, s, false)!;
    expect(l.tails.some((t) => t.low + l.rise <= groove[0] + 1e-6 && t.high - l.rise >= groove[1] - 1e-6)).toBe(true);
    const f = figures(m, made);
    expect(f.overlap['tails / pins']).toBeCloseTo(0, 4);
    expect(lost(m, f, 'tails') + lost(m, f, 'pins')).toBeCloseTo(w * side * front, 2);
    expect(f.pieces).toEqual({ tails: 1, pins: 1 });
  },
  { runs: 60 },
);
law('most grooves can be covered: refusals are only near the edges', sizes, ({ w, side, front, over }) => {
  const p = dovetail.propose(
    { meeting: meetingOf(box(w, side, front)), siblings: [], set: { tail_over: (0.2 + 0.6 * over - 0.5) * w, over_size: 6 } },
    SHOP,
  );
  return !isRefusal(p) || p.cannot !== 'no tail can be laid over the groove' || (w / 2) * 0.4 < 20;
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    n: fc.integer({ min: 1, max: 4 }),
    over: fc.double({ min: -30, max: 30, noNaN: true }),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ n, over, axis }) => {
    const m = meetingOf(plain);
    const at = (sense: 1 | -1): Partial<Dovetail> => ({ tails: n, slope: 1 / 8, tail_over: sense * over });
    const image = mirrorMeeting(m, axis);
    if (isRefusal(dovetail.propose({ meeting: m, siblings: [], set: at(1) }, SHOP))) return;
    expect(shapesOf(attempt(dovetail, image, at(axis === 'y' ? -1 : 1)).made)).toEqual(shapesOf(attempt(dovetail, m, at(1)).made, axis));
  },
);

test('a board that stands proud by more than a plane takes off is refused', () => {
  const p = dovetail.propose(
    { meeting: meetingOf({ ...plain, tails: board([0, 12], [-5, 300], [0, 90], 'y') }, 'front'), siblings: [], set: {} },
    SHOP,
  );
  expect(isRefusal<Dovetail>(p) && p.asked).toBeCloseTo(5, 9);
});
test('a front measured half a millimetre thin still closes without overlap', () => {
  const m = meetingOf({ ...plain, pins: board([0, 240], [0.5, 18], [0, 90], 'x') }, 'front');
  const f = figures(m, attempt(dovetail, m, SET).made);
  expect(f.overlap['tails / pins']).toBeCloseTo(0, 6);
});
const speaks = (set: Partial<Dovetail>): string[] => {
  const t = attempt(dovetail, meetingOf(plain), set);
  return dovetail.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[Partial<Dovetail>, string[]]>([
  [{}, []],
  [SET, []],
  [{ ...SET, slope: 1 / 4 }, []],
  [{ ...SET, slope: 1 / 3.9 }, ['dovetail slope']],
  [{ ...SET, slope: 1 / 11 }, ['dovetail slope']],
  [{ ...SET, half_pin: 2.9 }, ['half pin thin']],
  [{ ...SET, pin: 2.9 }, ['pin thin']],
])('rules on %j say %j', (set, rules) => expect(speaks(set)).toEqual(rules));
test('cheeks glue long grain to long grain over the thickness of the side; backs are end grain', () => {
  const { made } = attempt(dovetail, meetingOf(plain), SET);
  const cheeks = made.contacts.filter((c) => c.name.includes('cheek'));
  expect(cheeks).toHaveLength(4);
  expect(cheeks.every((c) => c.glue === 'long' && c.hold === 'glued' && Math.abs((c.gluedLength ?? 0) - 12) < 1e-9)).toBe(true);
  expect(made.contacts.filter((c) => c.name.startsWith('back')).map((c) => c.glue)).toEqual(['end', 'end', 'end', 'end', 'end']);
  // A cheek's normal looks out of the tail and a little back along it: that is what holds.
  for (const c of cheeks) {
    const s = c.between[0].surface;
    if ('plane' in s) expect(s.plane.normal[2]).toBeLessThan(0);
  }
});
test('suits a shared corner of two ends, not a lap in the middle', () => {
  expect(dovetail.suits(meetingOf(plain))?.rank).toBe(9);
  expect(dovetail.suits(meetingOf({ ...plain, pins: board([-100, 240], [0, 18], [0, 90], 'x') }))).toBeNull();
});
