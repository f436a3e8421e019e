import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { dot } from '../../src/geom/vec3.ts';
import { isRefusal } from '../../src/joints/family.ts';
import type { SlidingDovetail } from '../../src/joints/sliding-dovetail/params.ts';
import { slidingDovetail } from '../../src/joints/sliding-dovetail/sliding-dovetail.ts';
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
testExamples(slidingDovetail);
const DEG = Math.PI / 180;
/** A shelf 280 wide and 18 thick on a side 18 thick; and a batten 40 x 360 under a top 400 wide. */
const shelf: Boards = { enter: board([18, 318], [0, 280], [150, 168], 'x'), into: board([0, 18], [0, 280], [0, 400], 'z') };
const batten: Boards = { enter: board([430, 470], [40, 400], [70, 100], 'y'), into: board([0, 900], [0, 400], [100, 124], 'x') };

const flankAngle = (slope: number): number => {
  const { made } = attempt(slidingDovetail, meetingOf(shelf), { slope, depth: 6 });
  const s = made.contacts.find((c) => c.name.endsWith('flank of the tail'))?.between[0].surface;
  return s && 'plane' in s ? Math.asin(Math.abs(dot(s.plane.normal, [0, 0, 1]))) / DEG : 0;
};
test('slopes 1:6 and 1:8 lean 9.46 and 7.13 degrees', () => {
  // woodworkersjournal.com, classic cherry chest, gives "about 10 degrees" for 1:6; the angles are arctan(1/6) and arctan(1/8).
  expect(flankAngle(Math.atan(1 / 6))).toBeCloseTo(9.46232, 4);
  expect(flankAngle(Math.atan(1 / 8))).toBeCloseTo(7.12502, 4);
});
test('proposed at a third of the board, the rule for dadoes', () => {
  // Port Townsend School of Woodworking: a dado takes 1/4 of the stock, not over 1/3; 18 / 3 = 6.
  expect(attempt(slidingDovetail, meetingOf(shelf)).sizes.depth).toBe(6);
});
test('a shelf whose board moves with it is glued along, a batten across the grain at its end alone', () => {
  const glue = (b: Boards): [string, number] => {
    const t = attempt(slidingDovetail, meetingOf(b), { glued: 50 });
    const glued = t.made.contacts.filter((c) => c.hold === 'glued' && c.name.includes('flank'));
    const long = glued.map((c) => {
      const s = c.between[0].surface;
      return 'plane' in s ? Math.max(...s.patch.map((q) => q[0])) - Math.min(...s.patch.map((q) => q[0])) : 0;
    });
    return [t.sizes.hold, Math.max(...long)];
  };
  expect(glue(shelf)).toEqual(['glued', 280]);
  expect(glue(batten)).toEqual(['end', 50]);
});
const ways = (boards: Boards, set: Partial<SlidingDovetail>): number[] =>
  attempt(slidingDovetail, meetingOf(boards), set).made.frees.map((f) => f.along[1]);
test('it comes out along the slide alone: both ways through, to its mouth stopped or tapered', () => {
  expect(ways(shelf, {})).toEqual([1, -1]);
  expect(ways(shelf, { stop: 12 })).toEqual([1]);
  expect(ways(shelf, { taper: 2 })).toEqual([1]);
  expect(ways(shelf, { stop: 12, from: 'front' })).toEqual([-1]);
  expect(ways(batten, {})).toEqual([1]);
  const all = attempt(slidingDovetail, meetingOf(shelf)).made.frees;
  expect(all.every((f) => f.along[0] === 0 && f.along[2] === 0 && f.moves.join() === 'enter')).toBe(true);
});
test('tapered, the tail is narrower by the taper where it goes in first and lets the front end in before it binds', () => {
  const { made } = attempt(slidingDovetail, meetingOf(batten), { taper: 4, shoulder: 8, depth: 8, slope: 10 * DEG });
  const tail = made.features['enter']?.[0]?.solid;
  if (tail?.kind !== 'prism' || !tail.profileTo) throw new Error('a tapered tail goes over from one outline to another');
  const wide = (loop: readonly { readonly at: readonly [number, number] }[] = []): number =>
    Math.max(...loop.map((c) => c.at[0])) - Math.min(...loop.map((c) => c.at[0]));
  expect(wide(tail.profile[0]) - wide(tail.profileTo[0])).toBeCloseTo(4, 9);
});
test('a one-sided tail keeps its other side flush with the board', () => {
  const { made } = attempt(slidingDovetail, meetingOf(shelf), { slanted: 'bottom', depth: 6, shoulder: 2 });
  const flat = made.contacts.find((c) => c.name === 'top flank of the tail')?.between[0].surface;
  expect(flat && 'plane' in flat ? [Math.abs(flat.plane.normal[0]), Math.abs(flat.plane.off)] : []).toEqual([1, 9]);
});
test('a shelf set back at the front leaves no empty socket before it, and one set back behind slides in from the edge', () => {
  const m = meetingOf({ ...shelf, enter: board([18, 318], [30, 260], [150, 168], 'x') });
  const { made } = attempt(slidingDovetail, m, { depth: 6, shoulder: 2, slope: 8 * DEG });
  // Mean width 14 + 6 tan 8 deg, from 30 behind the front edge to the back edge.
  expect(lost(m, figures(m, made), 'into')).toBeCloseTo((14 + 6 * Math.tan(8 * DEG)) * 6 * 250, 3);
});
test('at the other end of the shelf the mirrored copy has the same numbers', () => {
  const set: Partial<SlidingDovetail> = { stop: 12, slanted: 'bottom', taper: 2 };
  expect(shapesOf(attempt(slidingDovetail, meetingOf(mirroredBoards(shelf, 'x', 250)), set).made)).toEqual(
    shapesOf(attempt(slidingDovetail, meetingOf(shelf), set).made),
  );
});
const any = fc.record(
  {
    depth: fc.double({ min: -1, max: 22, noNaN: true }),
    slope: fc.double({ min: 0, max: 40 * DEG, noNaN: true }),
    slanted: fc.constantFrom<SlidingDovetail['slanted']>('both', 'top', 'bottom', 'front'),
    shoulder: fc.double({ min: 0, max: 12, noNaN: true }),
    from: fc.constantFrom<SlidingDovetail['from']>('back', 'front', 'top'),
    taper: fc.double({ min: -1, max: 12, noNaN: true }),
    stop: fc.double({ min: -1, max: 300, noNaN: true }),
    hold: fc.constantFrom<SlidingDovetail['hold']>('glued', 'end', 'dry'),
    glued: fc.double({ min: -1, max: 300, noNaN: true }),
  },
  { requiredKeys: [] },
);
law(
  'any settings: refused with a nearest that goes, or sound, mirrored alike and clear of the socket',
  any,
  (set) => {
    const m = meetingOf(shelf);
    const place = { meeting: m, siblings: [], set };
    const p = slidingDovetail.propose(place, SHOP);
    if (isRefusal<SlidingDovetail>(p)) {
      expect(p.nearest).toBeDefined();
      expect(isRefusal(slidingDovetail.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP))).toBe(false);
      return;
    }
    const { sizes } = p as { sizes: SlidingDovetail };
    const made = slidingDovetail.make(place, sizes);
    const f = figures(m, made);
    expect(f.overlap['enter / into']).toBeCloseTo(0, 4);
    expect(f.pieces).toEqual({ enter: 1, into: 1 });
    expect(lost(m, f, 'into')).toBeCloseTo(-lost(m, f, 'enter'), 2);
    for (const axis of ['x', 'y'] as const)
      expect(shapesOf(slidingDovetail.make({ ...place, meeting: mirrorMeeting(m, axis) }, sizes))).toEqual(shapesOf(made, axis));
  },
  { runs: 20 },
);
const speaks = (boards: Boards, set: Partial<SlidingDovetail>): string[] => {
  const t = attempt(slidingDovetail, meetingOf(boards), set);
  return slidingDovetail.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
const nearEnd: Boards = { ...shelf, enter: board([18, 318], [0, 280], [0, 18], 'x'), into: board([0, 18], [0, 280], [-5, 400], 'z') };
test.each<[string, Boards, Partial<SlidingDovetail>, string[]]>([
  ['as proposed', shelf, {}, []],
  ['a batten as proposed', batten, {}, []],
  ['too deep', shelf, { depth: 6.1 }, ['socket too deep']],
  ['too steep', shelf, { slope: 15 * DEG, depth: 4 }, ['sliding dovetail steep']],
  ['1:4 is not', shelf, { slope: Math.atan(1 / 4) }, []],
  ['thin at the neck', shelf, { shoulder: 4.6 }, ['tail neck thin']],
  ['thin by its taper', shelf, { shoulder: 3, taper: 3.1 }, ['tail neck thin']],
  ['a batten glued along', batten, { hold: 'glued' }, ['sliding dovetail glued across']],
  ['a batten glued over 101', batten, { glued: 101 }, ['sliding dovetail glued across']],
  ['a batten dry', batten, { hold: 'dry' }, []],
  ['near the end of the board', nearEnd, {}, ['socket near the end']],
])('rules: %s', (_name, boards, set, rules) => expect(speaks(boards, set)).toEqual(rules));
test('the socket that breaks out at the end of the board is refused', () => {
  const m = meetingOf({ ...shelf, enter: board([18, 318], [0, 280], [0, 18], 'x') });
  const p = slidingDovetail.propose({ meeting: m, siblings: [], set: {} }, SHOP);
  expect(isRefusal(p) ? p.cannot : '').toBe('the socket would break out at the side of the board');
});
test('suits an end on a face across its grain and an edge on a wide board, not two edges', () => {
  expect(slidingDovetail.suits(meetingOf(shelf))?.rank).toBe(7);
  expect(slidingDovetail.suits(meetingOf(batten))?.rank).toBe(7);
  const edges: Boards = { enter: board([0, 100], [0, 50], [0, 20], 'x'), into: board([0, 100], [50, 100], [0, 20], 'x') };
  expect(slidingDovetail.suits(meetingOf(edges))).toBeNull();
});
