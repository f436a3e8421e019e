import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import type { Vec3 } from '../../src/geom/vec3.ts';
import { isRefusal } from '../../src/joints/family.ts';
import { corner } from '../../src/joints/mitre/lay.ts';
import { sawSettings } from '../../src/joints/mitre/make.ts';
import { mitre } from '../../src/joints/mitre/mitre.ts';
import type { Mitre } from '../../src/joints/mitre/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { expectCured, said, soundOrRefused } from '../support/any-params.ts';
import {
  type Board,
  type Boards,
  SHOP,
  attempt,
  board,
  figures,
  lost,
  meetingOf,
  mirroredBoards,
  shapesOf,
} from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { law } from '../support/law.ts';

beforeAll(() => loadKernel());
testExamples(mitre);
const frame: Boards = { first: board([0, 300], [0, 60], [0, 21], 'x'), second: board([240, 300], [0, 400], [0, 21], 'y') };
const box: Boards = { first: board([0, 300], [0, 200], [0, 18], 'x'), second: board([0, 18], [0, 200], [0, 400], 'z') };
const uneven: Boards = { first: board([0, 300], [0, 60], [0, 21], 'x'), second: board([260, 300], [0, 400], [0, 21], 'y') };
/** A square column glued up from boards with upright grain: mitred along the grain. */
const column: Boards = { first: board([0, 200], [0, 18], [0, 700], 'z'), second: board([182, 200], [0, 200], [0, 700], 'z') };
/** A board that runs from the origin along its own x, at an angle. */
const leaning = (x: Vec3, y: Vec3, z: Vec3, size: Board['box']): Board => ({ box: size, grain: 'x', frame: { o: [0, 0, 0], x, y, z } });

test.each<[string, Boards, number, number]>([
  ['a frame', frame, 37800, 37800],
  ['a case', box, 32400, 32400],
  // From corner to corner the cut is no longer at 45 degrees: half of 60 x 40 x 21 each.
  ['parts of unequal width', uneven, 25200, 25200],
  ['a column, along the grain', column, 113400, 113400],
])('%s: each loses half of what they share', (_name, boards, first, second) => {
  const m = meetingOf(boards);
  const { made } = attempt(mitre, m);
  const f = figures(m, made);
  expect(lost(m, f, 'first')).toBeCloseTo(first, 1);
  expect(lost(m, f, 'second')).toBeCloseTo(second, 1);
  expect(f.overlap['first / second']).toBeCloseTo(0, 4);
  expect(f.pieces).toEqual({ first: 1, second: 1 });
});
test('the column’s mitre is long grain and glues; a frame’s is end grain', () => {
  const glue = (b: Boards): string | undefined => attempt(mitre, meetingOf(b)).made.contacts[0]?.glue;
  expect([glue(frame), glue(box), glue(column)]).toEqual(['end', 'end', 'long']);
});
test('a six-sided frame is cut at 180/6 = 30 degrees from square, and nothing is left over', () => {
  const [c, s] = [0.5, Math.sqrt(3) / 2];
  const boards: Boards = {
    first: board([-300, 0], [0, 60], [0, 20], 'x'),
    second: leaning([c, s, 0], [-s, c, 0], [0, 0, 1], { min: [0, 0, 0], max: [300, 60, 20] }),
  };
  const m = meetingOf(boards);
  expect(m.touch).toBe('share');
  const laid = corner(m)!;
  expect(sawSettings(laid, laid.first)).toEqual({ gauge: expect.closeTo(30, 6), blade: expect.closeTo(0, 6) });
  expect(sawSettings(laid, laid.second)).toEqual({ gauge: expect.closeTo(30, 6), blade: expect.closeTo(0, 6) });
  for (const form of ['plain', 'splined', 'keyed'] as const) {
    const f = figures(m, attempt(mitre, m, { form }).made);
    for (const [pair, v] of Object.entries(f.overlap)) expect(v, pair).toBeLessThan(0.01);
    // A triangle of 60 by 60 tan 30 from the end of each, filled again by spline or key.
    if (form === 'plain') expect(lost(m, f, 'first')).toBeCloseTo((60 * 60 * 20) / Math.sqrt(3) / 2, 0);
  }
});
test('spline a third of a 3/4 frame: 1/4 thick and as deep each side as the frame is thick, 1-1/2 wide in all (US Navy manual)', () => {
  const t = 19.05;
  const m = meetingOf({ first: board([0, 300], [0, 60], [0, t], 'x'), second: board([240, 300], [0, 400], [0, t], 'y') });
  const p = mitre.propose({ meeting: m, siblings: [], set: { form: 'splined' } }, { ...SHOP, grooveWidths: [3.175, 6.35, 9.525] });
  expect(isRefusal<Mitre>(p) ? null : [p.sizes.thick, p.sizes.depth]).toEqual([6.35, 19.1]);
});
test('a part that stops short of the long point is refused with what it lacks', () => {
  const m = meetingOf({ ...frame, first: board([0, 290], [0, 60], [0, 21], 'x') });
  const p = mitre.propose({ meeting: m, siblings: [], set: {} }, SHOP);
  // The other's end is the outer corner at 290 now; it goes on from there both ways.
  expect(isRefusal(p)).toBe(true);
});
test('mirror images have equal numbers', () => {
  for (const b of [frame, box, uneven])
    for (const form of ['splined', 'keyed'] as const)
      for (const axis of ['x', 'y', 'z'] as const)
        expect(shapesOf(attempt(mitre, meetingOf(mirroredBoards(b, axis, 500)), { form }).made)).toEqual(
          shapesOf(attempt(mitre, meetingOf(b), { form }).made),
        );
});
test('rules speak and their cures quiet them', () => {
  expectCured(mitre, meetingOf(frame), {}, 'mitre end grain');
  expect(said(mitre, meetingOf(column), {})).toEqual([]);
  for (const b of [frame, box]) for (const form of ['splined', 'keyed'] as const) expect(said(mitre, meetingOf(b), { form })).toEqual([]);
  expectCured(mitre, meetingOf(frame), { form: 'splined', thick: 12 }, 'mitre spline thick');
  expectCured(mitre, meetingOf(frame), { form: 'keyed', thick: 4, count: 2 }, 'mitre spline thick');
  expectCured(mitre, meetingOf(frame), { form: 'keyed', depth: 70 }, 'mitre key shallow');
  expectCured(mitre, meetingOf(box), { form: 'splined', depth: 2 }, 'mitre key shallow');
});
test('suits corners that share wood only', () => {
  expect([frame, box].map((b) => mitre.suits(meetingOf(b))?.rank)).toEqual([7, 6]);
  expect(mitre.suits(meetingOf({ ...frame, second: board([120, 180], [-100, 400], [0, 21], 'y') }))).toBeNull();
});
law(
  'any sizes: refused with a cure that goes, or sound',
  fc.record({
    of: fc.constantFrom(frame, box, uneven, column),
    form: fc.constantFrom('plain', 'splined', 'keyed'),
    thick: fc.oneof(fc.double({ min: -1, max: 30, noNaN: true }), fc.constant(undefined)),
    depth: fc.oneof(fc.double({ min: -1, max: 90, noNaN: true }), fc.constant(undefined)),
    count: fc.oneof(fc.integer({ min: -1, max: 40 }), fc.constant(undefined)),
  }),
  ({ of, ...set }) => {
    const given = Object.fromEntries(Object.entries(set).filter(([, v]) => v !== undefined)) as Partial<Mitre>;
    expect(soundOrRefused(mitre, meetingOf(of), given)).not.toBeNull();
  },
  { runs: 40 },
);
