import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import { lap } from '../../src/joints/lap/lap.ts';
import type { Lap } from '../../src/joints/lap/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { expectCured, said, soundOrRefused } from '../support/any-params.ts';
import { type Boards, SHOP, attempt, board, figures, lost, meetingOf, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(lap);
const rail = board([0, 300], [0, 60], [0, 20], 'x');
const cross: Boards = { over: rail, under: board([120, 180], [-150, 250], [0, 20], 'y') };
const corner: Boards = { over: rail, under: board([240, 300], [0, 400], [0, 20], 'y') };
const tee: Boards = { over: board([120, 300], [0, 60], [0, 20], 'x'), under: board([120, 180], [-150, 250], [0, 20], 'y') };
const edge: Boards = { over: board([0, 300], [94, 102], [0, 80], 'x'), under: board([146, 154], [0, 200], [0, 80], 'y') };
const inline: Boards = { over: board([0, 300], [0, 60], [0, 20], 'x'), under: board([200, 600], [0, 60], [0, 20], 'x') };
/** A batten 20 thick let into a beam 50 thick, flush with its top. */
const beam: Boards = { over: board([0, 300], [0, 60], [30, 50], 'x'), under: board([120, 180], [-150, 250], [0, 50], 'y') };

// What each part loses, by hand: the lapped square 60 x 60 x 20 = 72 000, or 8 x 8 x 80 = 5120 on edge, 100 x 60 x 20 end to end.
test.each<[string, Boards, Partial<Lap>, number, number]>([
  ['crossing, halved (each gives half of the thickness: common practice)', cross, {}, 36000, 36000],
  ['crossing, a third kept by the first', cross, { share: 1 / 3 }, 48000, 24000],
  ['at a corner', corner, {}, 36000, 36000],
  ['mitred at the corner', corner, { form: 'mitred' }, 54000, 18000],
  ['a tee', tee, {}, 36000, 36000],
  ['a tee, dovetailed 1:6', tee, { form: 'dovetailed', slope: 1 / 6 }, 42000, 30000],
  ['on edge', edge, {}, 2560, 2560],
  ['end to end', inline, {}, 60000, 60000],
  ['let in whole', beam, { share: 1 }, 0, 72000],
  ['let in by half', beam, {}, 36000, 36000],
])('%s', (_name, boards, set, over, under) => {
  const m = meetingOf(boards);
  expect(m.touch).toBe('share');
  const { made } = attempt(lap, m, set);
  const f = figures(m, made);
  expect(lost(m, f, 'over')).toBeCloseTo(over, 3);
  expect(lost(m, f, 'under')).toBeCloseTo(under, 3);
  expect(f.overlap['over / under']).toBeCloseTo(0, 6);
  expect(f.pieces).toEqual({ over: 1, under: 1 });
});
test('dividers on edge: the first is notched from below, the second from above, or the other way when asked', () => {
  const ways = (set: Partial<Lap>): number[] => {
    const m = meetingOf(edge);
    const up = m.frame.z[2];
    return attempt(lap, m, set).made.frees.map((x) => x.along[2] * up);
  };
  expect(ways({})).toEqual([1]);
  expect(ways({ notch: 'bottom' })).toEqual([1]);
  expect(ways({ notch: 'top' })).toEqual([-1]);
});
test('a tee also draws out lengthways; a dovetailed one only lifts off; a plain corner slides off both ways', () => {
  const count = (b: Boards, set: Partial<Lap>): number => attempt(lap, meetingOf(b), set).made.frees.length;
  expect([
    count(tee, {}),
    count(tee, { form: 'dovetailed' }),
    count(cross, {}),
    count(corner, {}),
    count(corner, { form: 'mitred' }),
  ]).toEqual([2, 1, 1, 3, 3]);
});
test('the second part may be the taller: the notch opens where it can', () => {
  const m = meetingOf({ ...edge, under: board([146, 154], [0, 200], [0, 100], 'y') });
  // The second stands out above, so it is notched from below and the first from above, each through half of the 80 that they share.
  const { made } = attempt(lap, m);
  const f = figures(m, made);
  expect([lost(m, f, 'over'), lost(m, f, 'under')].map((n) => Math.round(n))).toEqual([2560, 2560]);
  expect(f.overlap['over / under']).toBeCloseTo(0, 6);
});
test('mirror images have equal numbers', () => {
  for (const [b, set] of [
    [corner, { form: 'mitred' }],
    [tee, { form: 'dovetailed' }],
    [edge, { play: 0.2 }],
  ] as const)
    for (const axis of ['x', 'y', 'z'] as const)
      expect(shapesOf(attempt(lap, meetingOf(mirroredBoards(b, axis, 500)), set).made)).toEqual(
        shapesOf(attempt(lap, meetingOf(b), set).made),
      );
});
test.each<[string, Boards, Partial<Lap>, Partial<Lap> | undefined]>([
  ['mitred where parts cross', cross, { form: 'mitred' }, { form: 'plain' }],
  ['dovetailed at a corner', corner, { form: 'dovetailed' }, { form: 'plain' }],
  ['all of it kept', cross, { share: 1 }, { share: 0.5 }],
  ['a skin kept', cross, { share: 0.98 }, { share: 0.5 }],
  ['notched in an edge', cross, { notch: 'back' }, { notch: 'auto' }],
  ['no neck', tee, { form: 'dovetailed', slope: 0.5 }, { slope: 1 / 8 }],
])('refused with the nearest that goes: %s', (_name, boards, set, nearest) => {
  const p = lap.propose({ meeting: meetingOf(boards), siblings: [], set }, SHOP);
  if (!isRefusal<Lap>(p)) throw new Error('not refused');
  expect(p.nearest).toEqual(nearest);
  expect(isRefusal(lap.propose({ meeting: meetingOf(boards), siblings: [], set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
});
test('rules speak and their cures quiet them', () => {
  expect(said(lap, meetingOf(cross), {})).toEqual([]);
  expectCured(lap, meetingOf(cross), { share: 0.3 }, 'lap cheek thin');
  expect(said(lap, meetingOf(cross), { share: 1 / 3 })).toEqual([]);
  expectCured(lap, meetingOf(corner), { form: 'mitred' }, 'mitred lap small');
  expectCured(lap, meetingOf(tee), { form: 'dovetailed', slope: 0.3 }, 'lap dovetail slope');
  // Neck 60 - 2 x 60 x 0.24 = 31.2 of 60; in a rail of 50 it is 21.2, less than half.
  expect(said(lap, meetingOf(tee), { form: 'dovetailed', slope: 0.24 })).toEqual([]);
  expectCured(
    lap,
    meetingOf({ ...tee, over: board([120, 300], [5, 55], [0, 20], 'x') }),
    { form: 'dovetailed', slope: 0.24 },
    'lap dovetail slope',
  );
  const upright: Boards = { over: board([0, 300], [94, 102], [0, 80], 'z'), under: board([146, 154], [0, 200], [0, 80], 'y') };
  expect(said(lap, meetingOf(upright), {})).toEqual(['lap short grain']);
});
test('nothing but shared wood suits', () => {
  expect([cross, tee, corner, edge].map((b) => lap.suits(meetingOf(b))?.rank)).toEqual([9, 9, 8, 9]);
  expect(lap.suits(meetingOf({ over: rail, under: board([300, 360], [-100, 300], [0, 20], 'y') }))).toBeNull();
});
law(
  'any sizes: refused with a cure that goes, or divided without rest',
  fc.record({
    of: fc.constantFrom(cross, corner, tee, edge, inline, beam),
    form: fc.constantFrom('plain', 'mitred', 'dovetailed'),
    share: fc.oneof(fc.double({ min: -0.2, max: 1.2, noNaN: true }), fc.constant(1)),
    notch: fc.constantFrom('auto', 'auto', 'front', 'back', 'left', 'bottom', 'top'),
    slope: fc.double({ min: 0, max: 0.6, noNaN: true }),
    play: fc.constantFrom(0, 0, 0.2, 3),
  }),
  ({ of, ...set }) => {
    const m = meetingOf(of);
    const t = soundOrRefused(lap, m, set as Partial<Lap>);
    if (!t || t.sizes.play > 0) return;
    const shared =
      Object.values(of).reduce((v, b) => v * 1 + b.box.max.reduce((q, n, i) => q * (n - (b.box.min[i] ?? 0)), 1), 0) - t.f.union;
    expect(lost(m, t.f, 'over') + lost(m, t.f, 'under')).toBeCloseTo(shared, 2);
  },
  { runs: 50 },
);
