import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { bedBolt } from '../../src/joints/bed-bolt/bed-bolt.ts';
import { ground, tipIn } from '../../src/joints/bed-bolt/lay.ts';
import type { BedBolt } from '../../src/joints/bed-bolt/params.ts';
import { isRefusal } from '../../src/joints/family.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { findingsOf } from '../support/checks.ts';
import { type Boards, SHOP, attempt, board, figures, meetingOf, mirrorMeeting, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(bedBolt);
const bed = (thick = 30, wide = 150, post = 70): Boards => ({
  rail: board([post, 700], [20, 20 + thick], [250, 250 + wide], 'x', { inner: 'back' }),
  post: board([0, post], [0, 70], [0, 500], 'z'),
});
const tried = (set: Partial<BedBolt> = {}, boards = bed()) => attempt(bedBolt, meetingOf(boards), set);

test('the bolt passes its nut, the hole passes the bolt, the nut lies 45 and more behind the end', () => {
  const { sizes: s } = tried();
  const g = ground(meetingOf(bed()))!;
  expect(s.back).toBeGreaterThanOrEqual(45);
  // Under the head 70 - 8.8 of post; a bolt of 120 reaches 58.8 into the rail: nut from 49.3 to 55.8.
  expect([s.length, s.sink]).toEqual([120, 8.8]);
  expect(tipIn(g, s)).toBeCloseTo(58.8, 9);
  expect(s.back + s.nut_long / 2).toBeCloseTo(55.8, 9);
  expect(s.depth).toBeCloseTo(66.8, 9);
  expect(s.hole - s.diameter).toBe(1);
});
test('it comes apart: bolt out of the post, nut out of the inner face, rail off; all metal is hardware', () => {
  const { made, sizes } = tried();
  expect(sizes.from).toBe('back');
  expect(made.frees.map((f) => f.moves[0])).toEqual(['bolt1', 'nut1', 'rail']);
  expect(made.holds).toBe('dry');
  expect(made.extras.map((e) => [e.name, e.hardware, e.record.wood])).toEqual([
    ['bolt1', true, 'steel'],
    ['nut1', true, 'steel'],
  ]);
  expect(made.contacts.some((c) => c.hold === 'glued')).toBe(false);
});
test.each(['square', 'barrel'] as const)('bolt, %s nut, rail and post share no wood or metal', (nut) => {
  const m = meetingOf(bed());
  const f = figures(m, tried({ nut, count: 2, apart: 60, stub: 0 }).made);
  expect(Object.entries(f.overlap).filter(([, v]) => v > 1e-3)).toEqual([]);
  expect(Object.entries(f.pieces).filter(([, n]) => n !== 1)).toEqual([]);
});
test('mirrored rails have equal nuts and bolts', () => {
  const keys = (b: Boards): string[] => tried({}, b).made.extras.map((e) => e.record.key);
  expect(keys(mirroredBoards(bed(), 'x', 400))).toEqual(keys(bed()));
});
law(
  'a mirrored meeting makes the mirrored joint',
  fc.record({
    nut: fc.constantFrom('square' as const, 'barrel' as const),
    off: fc.integer({ min: -8, max: 8 }),
    count: fc.integer({ min: 1, max: 2 }),
    axis: fc.constantFrom('x' as const, 'y' as const),
  }),
  ({ axis, ...set }) => {
    const m = meetingOf(bed());
    expect(shapesOf(attempt(bedBolt, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(bedBolt, m, set).made, axis));
  },
  { runs: 10 },
);
const maybe = <T>(a: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> => fc.option(a, { nil: undefined, freq: 2 });
law(
  'whatever is set, it is bored soundly or refused with what goes; what is proposed is quiet',
  fc.record({
    thick: fc.integer({ min: 20, max: 50 }),
    wide: fc.integer({ min: 90, max: 250 }),
    post: fc.integer({ min: 40, max: 100 }),
    set: fc.record({
      count: maybe(fc.integer({ min: 0, max: 3 })),
      apart: maybe(fc.integer({ min: 0, max: 150 })),
      off: maybe(fc.integer({ min: -60, max: 60 })),
      length: maybe(fc.integer({ min: 30, max: 200 })),
      sink: maybe(fc.integer({ min: 0, max: 60 })),
      nut: maybe(fc.constantFrom('square' as const, 'barrel' as const)),
      back: maybe(fc.integer({ min: 0, max: 90 })),
      hole: maybe(fc.integer({ min: 6, max: 20 })),
      stub: maybe(fc.integer({ min: 0, max: 40 })),
      stub_off: maybe(fc.integer({ min: 0, max: 90 })),
    }),
  }),
  ({ thick, wide, post, set }) => {
    const m = meetingOf(bed(thick, wide, post));
    const bare = attempt(bedBolt, m);
    expect(bedBolt.rules.flatMap((r) => r.run(bare.place, bare.sizes, bare.made))).toEqual([]);
    const given = Object.fromEntries(Object.entries(set).filter(([, v]) => v !== undefined)) as Partial<BedBolt>;
    const p = bedBolt.propose({ meeting: m, siblings: [], set: given }, SHOP);
    if (isRefusal<BedBolt>(p)) {
      expect(p.nearest, p.cannot).toBeDefined();
      expect(isRefusal(bedBolt.propose({ meeting: m, siblings: [], set: { ...given, ...p.nearest } }, SHOP))).toBe(false);
      return;
    }
    const f = figures(m, attempt(bedBolt, m, given).made);
    expect(Object.entries(f.overlap).filter(([, v]) => v > 2e-3)).toEqual([]);
    expect(['rail', 'post'].map((k) => f.pieces[k])).toEqual([1, 1]);
  },
  { runs: 20 },
);
const fired = (set: Partial<BedBolt>, boards = bed()) => {
  const t = tried(set, boards);
  return bedBolt.rules.flatMap((r) => r.run(t.place, t.sizes, t.made));
};
test.each<[string, Partial<BedBolt>, string, number]>([
  // The upper stub runs from 50 - 12.5 to 62.5 above the middle; a hole of 9 at 40 takes 4.5 - (40 - 37.5) + ... all of its own 9.
  ['a bolt through a stub tenon', { off: 50, stub_off: 50, stub_width: 25 }, 'bolt hole meets a tenon', -17],
  ['a bolt 2 beside a stub tenon', { off: 31, stub_off: 50, stub_width: 25 }, 'bolt hole meets a tenon', 2],
  ['a nut 20 behind the end', { back: 23.25 }, 'nut near the end of the rail', 20],
  ['a hole that ends with the bolt', { depth: 59.8 }, 'bolt hole shallow', 1],
  ['10 of the post under the head', { sink: 60, length: 70 }, 'little wood under the bolt head', 10],
  ['a barrel 2 from the face', { nut: 'barrel', nut_long: 26 }, 'nut near the face', 2],
])('%s is told and cured', (_name, set, rule, measured) => {
  const mine = fired(set).find((w) => w.rule === rule)!;
  expect([mine.grade, Math.round(mine.measured * 1e6) / 1e6]).toEqual(['trouble', measured]);
  const cured = mine.cures.some((c) => {
    const left = Object.fromEntries(Object.entries(set).filter(([k]) => !(k in c.set)));
    return !fired(left).some((w) => w.rule === rule);
  });
  expect(cured).toBe(true);
});
test('two rails in one post: bolts at one height meet, set apart in joints of their own they pass', () => {
  const parts = {
    post: { wood: 'oak', grain: 'z', left: 0, width: 70, front: 0, depth: 70, bottom: 0, height: 500 },
    long: { wood: 'oak', grain: 'x', left: 70, width: 900, front: 20, depth: 30, bottom: 250, height: 150 },
    short: { wood: 'oak', grain: 'y', left: 20, width: 30, front: 70, depth: 700, bottom: 250, height: 150 },
  };
  const of = (joints: object): string[] =>
    findingsOf({ dryfit: 1, title: 'Bed corner', units: 'mm', parts, joints }).map((f) => `${f.rule}: ${f.grade}`);
  const places = [
    { rail: 'long', post: 'post' },
    { rail: 'short', post: 'post' },
  ];
  expect(of({ bolted: { as: 'bed_bolt@1', places, set: { stub: '0' } } })).toContain('bolts-meet-in-the-post: stops');
  const apart = (off: string, i: number): object => ({ as: 'bed_bolt@1', places: [places[i]], set: { off, stub: '0' } });
  expect(of({ a: apart('25', 0), b: apart('-25', 1) })).toEqual([]);
});
test('suits a strong rail on a post, not a slat', () => {
  expect(bedBolt.suits(meetingOf(bed()))?.rank).toBe(4);
  expect(bedBolt.suits(meetingOf(bed(15)))).toBeNull();
});
