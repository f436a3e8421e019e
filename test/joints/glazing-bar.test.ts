/** Crossing glazing bars: volumes by hand, a door's bars as published, the scribed moulding, mirror images, rules. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { glazingBar } from '../../src/joints/glazing-bar/glazing-bar.ts';
import type { GlazingBar } from '../../src/joints/glazing-bar/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { board as docBoard, findingsOf, joint, piece } from '../support/checks.ts';
import { type Boards, attempt, board, figures, lost, meetingOf, mirrorMeeting, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { lawOfSettings, rulesSpeak } from '../support/joint-law.ts';

beforeAll(() => loadKernel());
testExamples(glazingBar);

/** An upright 300 long across a bar 240 long, both `wide` across their face and `deep` through it. */
const crossing = (wide: number, deep: number, under = wide): Boards => ({
  over: board([-wide / 2, wide / 2], [0, deep], [-150, 150], 'z'),
  under: board([-120, 120], [0, deep], [-under / 2, under / 2], 'x'),
});
test('bars 1/2 in square are halved: each loses half of the crossing (woodworkings.ca, A Bookcase, 1910: halved bars 1/2 in square)', () => {
  const t = attempt(glazingBar, meetingOf(crossing(12.7, 12.7)), { rabbet_wide: 0, rabbet_deep: 0 });
  const f = figures(t.place.meeting, t.made);
  expect(lost(t.place.meeting, f, 'over')).toBeCloseTo(12.7 ** 3 / 2, 3);
  expect(lost(t.place.meeting, f, 'under')).toBeCloseTo(12.7 ** 3 / 2, 3);
  // With rabbets as proposed they still are parted in the middle, and a third of the bar stays between the rabbets.
  const { sizes } = attempt(glazingBar, meetingOf(crossing(12.7, 12.7)));
  expect(sizes.rabbet_deep).toBeCloseTo(6.35, 9);
  expect(12.7 - 2 * sizes.rabbet_wide).toBeCloseTo(12.7 / 3, 0);
});
test.each<[string, Partial<GlazingBar>]>([
  ['square', {}],
  ['chamfered', { moulding: 'chamfer' }],
  ['quarter round', { moulding: 'ovolo' }],
])('%s bars fill the crossing between them and share nothing', (_name, set) => {
  for (const boards of [crossing(20, 24), crossing(20, 24, 16)]) {
    const t = attempt(glazingBar, meetingOf(boards), set);
    const f = figures(t.place.meeting, t.made);
    expect(f.overlap['over / under']).toBeCloseTo(0, 4);
    expect(f.pieces).toEqual({ over: 1, under: 1 });
    expect(f.union).toBeCloseTo((f.volume['over'] ?? 0) + (f.volume['under'] ?? 0), 3);
  }
});
test('a grid of four crossings is sound: bars are worked to one section, however often they cross', () => {
  const bar = (x: number) => docBoard('z', [x, x + 16], [0, 20], [0, 400]);
  const rail = (z: number) => docBoard('x', [-100, 300], [0, 20], [z, z + 16]);
  const doc = piece(
    { first: bar(0), second: bar(120), lower: rail(100), upper: rail(250) },
    {
      grid: joint(
        'glazing_bar',
        ['first', 'second'].flatMap((over) => ['lower', 'upper'].map((under) => ({ over, under }))),
        { moulding: 'chamfer' },
      ),
    },
  );
  expect(findingsOf(doc).map((f) => f.key)).toEqual([]);
});
test('its mirror image has the same numbers', () => {
  const set = { moulding: 'chamfer' } as const;
  const plain = shapesOf(attempt(glazingBar, meetingOf(crossing(20, 24)), set).made);
  for (const axis of ['x', 'y', 'z'] as const)
    expect(shapesOf(attempt(glazingBar, meetingOf(mirroredBoards(crossing(20, 24), axis, 30)), set).made)).toEqual(plain);
  const m = meetingOf(crossing(20, 24, 16));
  for (const axis of ['x', 'y'] as const)
    expect(shapesOf(attempt(glazingBar, mirrorMeeting(m, axis), set).made)).toEqual(shapesOf(attempt(glazingBar, m, set).made, axis));
});
test('the over bar comes off to the front', () => {
  const t = attempt(glazingBar, meetingOf(crossing(20, 24)));
  const { frame } = t.place.meeting;
  const along = t.made.frees.map((x) => [0, 1, 2].map((i) => x.along[2] * (frame.z[i] ?? 0)));
  expect(along).toEqual([[expect.closeTo(0, 9), expect.closeTo(-1, 9), expect.closeTo(0, 9)]]);
  expect(glazingBar.suits(t.place.meeting)?.rank).toBe(5);
  expect(glazingBar.suits(meetingOf(crossing(60, 24)))).toBeNull();
});
const size = (max: number) => fc.option(fc.double({ min: -1, max, noNaN: true }), { nil: undefined });
lawOfSettings(
  glazingBar,
  [meetingOf(crossing(20, 24)), meetingOf(crossing(12.7, 12.7)), meetingOf(crossing(24, 20, 16))],
  fc
    .record({
      shows: fc.constantFrom<(GlazingBar['shows'] | undefined)[]>('front', 'back', 'left', undefined),
      rabbet_wide: size(12),
      rabbet_deep: size(24),
      moulding: fc.constantFrom<(GlazingBar['moulding'] | undefined)[]>('none', 'chamfer', 'ovolo', undefined),
      moulding_size: size(12),
    })
    .map((s) => Object.fromEntries(Object.entries(s).filter(([, v]) => v !== undefined)) as Partial<GlazingBar>),
);
const m = meetingOf(crossing(20, 24));
rulesSpeak(glazingBar, [
  [m, {}, []],
  [m, { rabbet_wide: 0, rabbet_deep: 0 }, []],
  [m, { rabbet_wide: 8.8 }, ['tongue of a bar thin']],
  [m, { rabbet_wide: 2 }, ['ledge for the glass narrow']],
  [m, { rabbet_deep: 7 }, ['crossing of bars weak']],
  [m, { rabbet_deep: 17 }, ['crossing of bars weak']],
]);
