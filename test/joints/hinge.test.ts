/** Butt hinges: where they lie, what they cut, what is refused, and each rule fired and cured. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { hinge } from '../../src/joints/hinge/hinge.ts';
import type { Hinge } from '../../src/joints/hinge/params.ts';
import { isRefusal } from '../../src/joints/family.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { type Boards, SHOP, attempt, board, meetingOf, mirrorMeeting, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { lawOfSettings, rulesSpeak } from '../support/joint-law.ts';

beforeAll(() => loadKernel());
testExamples(hinge);

const side = board([-18, 0], [0, 200], [-2, 602], 'z');
const inset: Boards = { enter: board([1, 301], [0, 20], [0, 600], 'z'), into: side };
const overlaid: Boards = { enter: board([-18, 300], [-21, -1], [0, 600], 'z'), into: side };
const tall: Boards = { enter: board([2, 502], [0, 22], [0, 1400], 'z'), into: board([-18, 0], [0, 200], [0, 1400], 'z') };

test('the knuckle stands where the two faces are flush: in front of an inset door, at the outer edge of an overlaid one', () => {
  expect(attempt(hinge, meetingOf(inset)).sizes.side).toBe('front');
  expect(attempt(hinge, meetingOf(overlaid)).sizes.side).toBe('left');
});
test('a hinge’s own length from the end, and a third one above 1.2 m (common practice)', () => {
  const a = attempt(hinge, meetingOf(inset)).sizes;
  // An eighth of 600 is 75: the next smaller that is sold is 64.
  expect([a.count, a.length, a.inset]).toEqual([2, 64, 64]);
  expect(attempt(hinge, meetingOf(tall)).sizes.count).toBe(3);
});
test('hinges of a door and of its mirror image are one part', () => {
  const a = attempt(hinge, meetingOf(inset)).made.extras;
  const b = attempt(hinge, meetingOf(mirroredBoards(inset, 'x', 100))).made.extras;
  expect(new Set([...a, ...b].map((e) => e.record.key)).size).toBe(1);
});
test.each(['x', 'y'] as const)('a meeting mirrored along %s makes the mirrored joint', (axis) => {
  const m = meetingOf(inset);
  expect(shapesOf(attempt(hinge, mirrorMeeting(m, axis), { count: 3 }).made)).toEqual(shapesOf(attempt(hinge, m, { count: 3 }).made, axis));
});
test('without a gap, and where the faces are not flush, there is no hinge', () => {
  for (const enter of [board([0.1, 301], [0, 20], [0, 600], 'z'), board([1, 301], [5, 20], [0, 600], 'z')]) {
    const p = hinge.propose({ meeting: meetingOf({ enter, into: side }), siblings: [], set: { side: 'front' } }, SHOP);
    expect(isRefusal(p)).toBe(true);
  }
});
const some = <T>(a: fc.Arbitrary<T>) => fc.option(a, { nil: undefined, freq: 3 });
const num = (min: number, max: number) => some(fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10));
lawOfSettings(
  hinge,
  [inset, overlaid, tall].map((b) => meetingOf(b)),
  fc
    .record({
      count: some(fc.integer({ min: -1, max: 12 })),
      inset: num(-5, 400),
      length: num(-5, 300),
      wide: num(-1, 40),
      thick: num(-1, 30),
      knuckle: num(0, 20),
      proud: num(-5, 30),
      side: some(fc.constantFrom('front', 'back', 'left', 'right', 'top', 'bottom')),
    })
    .map((r) => Object.fromEntries(Object.entries(r).filter(([, v]) => v !== undefined)) as Partial<Hinge>)
    // A side on which the two are not flush is another joint, not a setting to be mended.
    .filter((r) => r.side !== 'back' && r.side !== 'right'),
  { runs: 40 },
);
const ends = meetingOf({ enter: board([1, 301], [0, 20], [0, 600], 'x'), into: side }, 'left');
rulesSpeak(hinge, [
  [meetingOf(inset), {}, []],
  [meetingOf(overlaid), {}, []],
  [meetingOf(inset), { wide: 18.5 }, ['wall beside a leaf']],
  [meetingOf(inset), { thick: 12, knuckle: 26, proud: 13 }, ['thin under a leaf']],
  [meetingOf(inset), { count: 1 }, ['few hinges']],
  [meetingOf(tall), { count: 2 }, ['few hinges']],
  [ends, {}, ['screws in end grain']],
]);
