import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { isRefusal } from '../../src/joints/family.ts';
import { looseSpline } from '../../src/joints/loose-spline/loose-spline.ts';
import type { LooseSpline } from '../../src/joints/loose-spline/params.ts';
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
testExamples(looseSpline);
const INCH = 25.4;
const edges: Boards = { enter: board([0, 600], [120, 220], [0, 18], 'x'), into: board([0, 600], [0, 120], [0, 18], 'x') };
const ends: Boards = { enter: board([0, 500], [0, 90], [0, 18], 'x'), into: board([500, 800], [0, 90], [0, 18], 'x') };

test('3/4 in stock takes a spline 1/4 by 1-1/2 in', () => {
  // NAVEDTRA 14119: a third of the thickness, twice as wide as the stock is thick.
  const m = meetingOf({
    enter: board([0, 24 * INCH], [0, 4 * INCH], [0, 0.75 * INCH], 'x'),
    into: board([0, 24 * INCH], [-4 * INCH, 0], [0, 0.75 * INCH], 'x'),
  });
  const inch = { mortiseWidths: [], bits: [], grooveWidths: [2, 4, 6, 8].map((n) => (n / 16) * INCH) };
  const p = looseSpline.propose({ meeting: m, siblings: [], set: {} }, inch);
  if (isRefusal(p)) throw new Error(p.cannot);
  const { sizes } = p as { sizes: LooseSpline };
  expect([sizes.thickness / INCH, sizes.width / INCH]).toEqual([0.25, 38.1 / INCH]);
  expect(sizes.width / INCH).toBeCloseTo(1.5, 9);
});
test.each<[string, Boards, Partial<LooseSpline>, number]>([
  // Each groove: thickness x (half the width + room) x run.
  ['edges', edges, { thickness: 6, width: 36, spare: 0.5 }, 6 * 18.5 * 600],
  ['ends, stopped', ends, { thickness: 6, width: 30, spare: 0, stopped: 'both', stop: 15 }, 6 * 15 * 60],
  ['edges, stopped at the right', edges, { thickness: 5, width: 20, spare: 1, stopped: 'right', stop: 40 }, 5 * 11 * 560],
])('grooves and spline: %s', (_name, boards, set, volume) => {
  const m = meetingOf(boards);
  const { made, sizes } = attempt(looseSpline, m, set);
  const f = figures(m, made);
  expect(lost(m, f, 'enter')).toBeCloseTo(volume, 3);
  expect(lost(m, f, 'into')).toBeCloseTo(volume, 3);
  for (const [pair, v] of Object.entries(f.overlap)) expect([pair, v < 1e-3]).toEqual([pair, true]);
  expect(f.volume['spline']).toBeCloseTo((2 * volume * sizes.width) / (sizes.width + 2 * sizes.spare), 3);
  expect(f.pieces).toEqual({ enter: 1, into: 1, spline: 1 });
});
test('the spline goes in towards the next part, and slides out along a through seam alone', () => {
  const ways = (set: Partial<LooseSpline>): string[] =>
    attempt(looseSpline, meetingOf(edges), set).made.frees.map((f) => `${f.moves.join()} ${f.along.join(' ')}`);
  expect(ways({ stopped: 'both' })).toEqual(['enter 0 0 -1', 'spline 0 0 -1']);
  expect(ways({})).toHaveLength(6);
});
test('the mirrored copy has the same numbers', () => {
  const set: Partial<LooseSpline> = { stopped: 'right', stop: 30, made: 'across' };
  expect(shapesOf(attempt(looseSpline, meetingOf(mirroredBoards(edges, 'z', 250)), set).made)).toEqual(
    shapesOf(attempt(looseSpline, meetingOf(edges), set).made),
  );
});
law(
  'any settings: refused with a nearest that goes, or sound, mirrored alike and fitting',
  fc.tuple(
    fc.record(
      {
        thickness: fc.double({ min: -1, max: 20, noNaN: true }),
        width: fc.double({ min: -1, max: 260, noNaN: true }),
        spare: fc.double({ min: -1, max: 60, noNaN: true }),
        stopped: fc.constantFrom<LooseSpline['stopped']>('none', 'both', 'left', 'front', 'top'),
        stop: fc.double({ min: -1, max: 320, noNaN: true }),
        made: fc.constantFrom<LooseSpline['made']>('ply', 'across', 'along'),
        hold: fc.constantFrom<LooseSpline['hold']>('glued', 'dry'),
      },
      { requiredKeys: [] },
    ),
    fc.constantFrom(edges, ends),
  ),
  ([set, boards]) => {
    const m = meetingOf(boards);
    const place = { meeting: m, siblings: [], set };
    const p = looseSpline.propose(place, SHOP);
    if (isRefusal<LooseSpline>(p)) {
      expect(p.nearest).toBeDefined();
      expect(isRefusal(looseSpline.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
      return;
    }
    const { sizes } = p as { sizes: LooseSpline };
    const made = looseSpline.make(place, sizes);
    const f = figures(m, made);
    for (const [pair, v] of Object.entries(f.overlap)) expect([pair, v < 1e-3]).toEqual([pair, true]);
    expect(f.pieces).toEqual({ enter: 1, into: 1, spline: 1 });
    for (const axis of ['x', 'y'] as const)
      expect(shapesOf(looseSpline.make({ ...place, meeting: mirrorMeeting(m, axis) }, sizes))).toEqual(shapesOf(made, axis));
  },
  { runs: 25 },
);
const speaks = (boards: Boards, set: Partial<LooseSpline>): string[] => {
  const t = attempt(looseSpline, meetingOf(boards), set);
  return looseSpline.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
test.each<[string, Boards, Partial<LooseSpline>, string[]]>([
  ['as proposed', edges, {}, []],
  ['half of the thickness', edges, { thickness: 9 }, []],
  ['more', edges, { thickness: 9.1 }, ['spline too thick']],
  ['grain along at end grain', ends, { made: 'along' }, ['spline grain along the seam']],
  ['grain across at end grain', ends, { made: 'across' }, []],
  ['grain along at edges', edges, { made: 'along' }, []],
  ['solid across long edges', edges, { made: 'across' }, ['spline crosses the grain']],
  ['the same without glue', edges, { made: 'across', hold: 'dry' }, []],
])('rules: %s', (_name, boards, set, rules) => expect(speaks(boards, set)).toEqual(rules));
test('suits edges and ends', () => {
  expect(looseSpline.suits(meetingOf(edges))?.rank).toBe(5);
  expect(looseSpline.suits(meetingOf(ends))?.rank).toBe(6);
});
