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
test('a side measured a millimetre short closes without overlap, and leaves only that millimetre open', () => {
  const m = meetingOf({ ...plain, tails: board([0, 12], [1, 300], [0, 90], 'y') });
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

test.each([
  // tan 14.04 = 1/4 and so on: a table of slopes worked out, checked the other way round.
  [1 / 4, 14.0362],
  [1 / 5, 11.3099],
  [1 / 6, 9.46232],
  [1 / 7, 8.1301],
  [1 / 8, 7.12502],
])('a slope of %f is %f degrees', (slope, deg) => {
  const m = meetingOf(plain);
  expect((attempt(dovetail, m, { slope }).sizes.angle * 180) / Math.PI).toBeCloseTo(deg, 3);
  expect(attempt(dovetail, m, { angle: (deg * Math.PI) / 180 }).sizes.slope).toBeCloseTo(slope, 5);
});
test('eight whole pins 1-7/8 in apart: 13-1/8 in from the first to the last (woodworkersjournal.com, cherry chest)', () => {
  const pitch = 1.875 * 25.4;
  // Nine tails stand between eight whole pins and two half ones; 18 in wide leaves (457.2 - 9 x 47.625 + 8)/2 = 18.29 for the half pins.
  const m = meetingOf(box(18 * 25.4, 19, 19));
  const t = attempt(dovetail, m, { tails: 9, pitch, pin: 8 });
  expect(t.sizes.half_pin).toBeCloseTo((457.2 - 9 * 47.625 + 8) / 2, 6);
  const l = layoutFor(corner(m)!, t.sizes, true)!;
  const middles = l.tails.slice(1).map((x, i) => (l.tails[i]!.high + x.low) / 2);
  expect(middles).toHaveLength(8);
  expect((middles.at(-1)! - middles[0]!) / 25.4).toBeCloseTo(13.125, 9);
});
test('spaced by the width of the pins: tails two and a half times as wide; by distance: as many as go', () => {
  // 350 wide, pins 10 at their narrow end, rise 20/8 = 2.5: 12.5 in the middle, 3.5 x 12.5 = 43.75 apart: eight.
  expect(attempt(dovetail, meetingOf(box(350, 20, 20)), { pin: 10 }).sizes.tails).toBe(8);
  // The narrow end of a half pin is 3 at least: (350 - 3)/50 = 6.94.
  const t = attempt(dovetail, meetingOf(box(350, 20, 20)), { pitch: 50 });
  expect([t.sizes.tails, t.sizes.pitch]).toEqual([6, 50]);
  expect(t.sizes.half_pin).toBeCloseTo((350 - 6 * 50 + t.sizes.pin) / 2, 9);
});

const half = (short: number, front = 18): Boards => ({ ...box(90, 12, front), tails: board([0, 12], [short, 300], [0, 90], 'y') });
test('a side that ends 6 behind the face of its front is lapped by 6', () => {
  const m = meetingOf(half(6));
  const t = attempt(dovetail, m, SET);
  expect(t.sizes.lap).toBe(6);
  // Tails 12 long, rise 2: 36 outside, mean 34.
  const f = figures(m, t.made);
  expect(lost(m, f, 'tails')).toBeCloseTo(22 * 12 * 12, 3);
  expect(lost(m, f, 'pins')).toBeCloseTo(68 * 12 * 12, 3);
  expect(f.overlap['tails / pins']).toBeCloseTo(0, 6);
  expect(dovetail.suits(m)?.because).toContain('short of its face');
  expect(t.made.contacts.filter((x) => x.name.includes('on the lap'))).toHaveLength(2);
  expect(dovetail.rules.flatMap((r) => r.run(t.place, t.sizes, t.made))).toEqual([]);
});
test('a lap that is set cuts off a side drawn too long, and cannot lengthen one that is too short', () => {
  const m = meetingOf(plain);
  const t = attempt(dovetail, m, { ...SET, lap: 5 });
  const f = figures(m, t.made);
  // All of the side within the lap goes, 90 x 12 x 5; behind it tails 13 long with a rise of 13/6 lose 2 x (36 - 13/6).
  expect(lost(m, f, 'tails')).toBeCloseTo(90 * 12 * 5 + (90 - 2 * (36 - 13 / 6)) * 13 * 12, 3);
  expect(f.overlap['tails / pins']).toBeCloseTo(0, 6);
  const p = dovetail.propose({ meeting: meetingOf(half(9)), siblings: [], set: { ...SET, lap: 5 } }, SHOP);
  if (!isRefusal<Dovetail>(p)) throw new Error('the side ends 9 behind the face');
  expect([p.limit, p.nearest]).toEqual([9, { lap: 9 }]);
});
test('a measured side that is a little short keeps the lap that is set and leaves the gap', () => {
  const m = meetingOf(half(6.5));
  const { made } = attempt(dovetail, m, { ...SET, lap: 6 });
  const end = made.contacts.find((c) => c.name === 'end of tail 1 on the lap')!;
  const [a, b] = end.between.map((s) => ('plane' in s.surface ? s.surface.plane.off : NaN));
  expect(-b! - a!).toBeCloseTo(0.5, 9);
});
test.each(['bottom', 'top', 'both'] as const)(
  'a mitred shoulder at the %s: the corner is divided exactly, and comes apart as before',
  (mitre) => {
    const m = meetingOf(plain);
    const t = attempt(dovetail, m, { ...SET, mitre, mitre_width: 9 });
    const f = figures(m, t.made);
    expect(f.overlap['tails / pins']).toBeCloseTo(0, 6);
    expect(f.union).toBeCloseTo(90 * (12 * 300 + 240 * 18 - 12 * 18), 3);
    expect(f.pieces).toEqual({ tails: 1, pins: 1 });
    const n = mitre === 'both' ? 2 : 1;
    // Each mitre 9 wide takes a triangle from each board; the tails share what is left.
    const tails = 90 - 9 * n - 18 - 2 * 3;
    expect(lost(m, f, 'pins')).toBeCloseTo(tails * 18 * 12 + n * 9 * 12 * 9, 3);
    const faces = t.made.contacts.filter((c) => c.name.startsWith('mitre'));
    expect(faces.map((c) => [c.name, c.glue])).toEqual((mitre === 'both' ? ['bottom', 'top'] : [mitre]).map((w) => [`mitre ${w}`, 'end']));
    expect(t.made.frees).toEqual([{ moves: ['tails'], along: [-corner(m)!.inward, 0, 0] }]);
  },
);
law(
  'lapped and mitred corners are mirrored with their meeting',
  fc.record({
    axis: fc.constantFrom('x' as const, 'y' as const),
    lap: fc.constantFrom(0, 5),
    mitre: fc.constantFrom('none', 'bottom', 'both'),
  }),
  ({ axis, lap, mitre }) => {
    const m = meetingOf(plain);
    const set: Partial<Dovetail> = { ...SET, lap, mitre: (lap > 0 ? 'none' : mitre) as Dovetail['mitre'] };
    expect(shapesOf(attempt(dovetail, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(dovetail, m, set).made, axis));
  },
  { runs: 8 },
);
const maybe = <T>(a: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(a, { nil: undefined, freq: 2 });
law(
  'whatever is set, it is cut soundly or refused with what goes',
  fc.record({
    w: fc.integer({ min: 20, max: 300 }),
    front: fc.integer({ min: 6, max: 30 }),
    short: fc.integer({ min: 0, max: 8 }),
    set: fc.record({
      tails: maybe(fc.integer({ min: -1, max: 40 })),
      pitch: maybe(fc.integer({ min: 1, max: 120 })),
      slope: maybe(fc.double({ min: 0, max: 0.6, noNaN: true })),
      pin: maybe(fc.integer({ min: -1, max: 30 })),
      half_pin: maybe(fc.integer({ min: 0, max: 30 })),
      lap: maybe(fc.integer({ min: -1, max: 20 })),
      mitre: maybe(fc.constantFrom('none' as const, 'bottom' as const, 'both' as const, 'left' as const)),
      mitre_width: maybe(fc.integer({ min: 0, max: 60 })),
    }),
  }),
  ({ w, front, short, set }) => {
    const m = meetingOf({ ...box(w, 12, front), tails: board([0, 12], [Math.min(short, front / 2), 300], [0, w], 'y') });
    const given = Object.fromEntries(Object.entries(set).filter(([, v]) => v !== undefined)) as Partial<Dovetail>;
    const p = dovetail.propose({ meeting: m, siblings: [], set: given }, SHOP);
    if (isRefusal<Dovetail>(p)) {
      if (p.nearest) expect(isRefusal(dovetail.propose({ meeting: m, siblings: [], set: { ...given, ...p.nearest } }, SHOP))).toBe(false);
      else expect(w).toBeLessThan(40);
      return;
    }
    const { made } = attempt(dovetail, m, given);
    const f = figures(m, made);
    expect(f.overlap['tails / pins']).toBeCloseTo(0, 4);
    expect(f.pieces).toEqual({ tails: 1, pins: 1 });
  },
  { runs: 40 },
);
const fired = (set: Partial<Dovetail>, boards: Boards = plain) => {
  const t = attempt(dovetail, meetingOf(boards), set);
  return dovetail.rules.flatMap((r) => r.run(t.place, t.sizes, t.made));
};
test.each<[string, Partial<Dovetail>, string, Boards?]>([
  ['a pin thinner than the saw', { ...SET, pin: 0.9 }, 'dovetail slope through its neighbour'],
  // Six tails in 90, pins 7: (90 - 12 - 35)/6 = 7.17 outside, less 4.5: 2.67 at the base.
  ['tails that nearly meet at their base', { ...SET, slope: 1 / 8, tails: 6, pin: 7 }, 'dovetail slope through its neighbour'],
  ['a lap of a fifth', { ...SET, lap: 3.6 }, 'lap of a dovetail'],
  ['a lap of 2', { ...SET, lap: 2.5 }, 'lap of a dovetail'],
  ['a lap of half the front', { ...SET, lap: 9 }, 'lap of a dovetail', half(3)],
  ['a slope of 1 in 9', { ...SET, slope: 1 / 9 }, 'dovetail slope'],
])('%s is told and cured', (_name, set, rule, boards = plain) => {
  const mine = fired(set, boards).find((w) => w.rule === rule)!;
  expect(mine.cures.length).toBeGreaterThan(0);
  for (const cure of mine.cures) {
    const cured: Record<string, unknown> = { ...set };
    for (const [k, v] of Object.entries(cure.set))
      if (v === null) delete cured[k];
      else cured[k] = parseFloat(v);
    expect(fired(cured as Partial<Dovetail>, boards).map((w) => w.rule)).not.toContain(rule);
  }
});
test('a lap of a quarter to a third is quiet, a side drawn longer than it needs to be is a note', () => {
  expect(fired({ ...SET, lap: 4.5 }, half(4.5)).map((w) => w.rule)).toEqual([]);
  expect(fired({ ...SET, lap: 6 }).map((w) => [w.rule, w.grade])).toEqual([['tail board longer than its lap', 'note']]);
});
