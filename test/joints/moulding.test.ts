/** Mouldings across the side of a case: what is glued, what slides, volumes by hand, mirror images, rules. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { moulding } from '../../src/joints/moulding/moulding.ts';
import type { Moulding } from '../../src/joints/moulding/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { board as docBoard, findingsOf, joint, piece } from '../support/checks.ts';
import { type Boards, attempt, board, figures, lost, meetingOf, mirrorMeeting, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { lawOfSettings, rulesSpeak } from '../support/joint-law.ts';

beforeAll(() => loadKernel());
testExamples(moulding);

/** A moulding 25 by 60 on the left of a side 20 thick and so deep; it stands 25 past its front. */
const cased = (deep = 300, grain: 'y' | 'z' = 'z'): Boards => ({
  moulding: board([-25, 0], [-25, deep], [340, 400], 'y'),
  side: board([0, 20], [0, deep], [0, 400], grain),
});
const plain = meetingOf(cased());

test('across the grain it is glued at its front end only (Popular Woodworking, tip for 15 November); along the grain all the way', () => {
  const held = (b: Boards) =>
    attempt(moulding, meetingOf(b)).made.contacts.flatMap((c) => (c.name.startsWith('moulding') ? [[c.hold, c.gluedLength ?? null]] : []));
  expect(held(cased())).toEqual([
    ['glued', 50],
    ['sliding', null],
  ]);
  expect(held(cased(300, 'y'))).toEqual([['glued', 60]]);
});
test('the slots give the side 1/8 in of movement for each 12 in (woodworkingtips.com)', () => {
  const t = attempt(moulding, meetingOf(cased(12 * 25.4)));
  // 1/8 in in all, from one edge that is held: so much each way at the least.
  expect(t.sizes.room).toBeGreaterThanOrEqual(25.4 / 8 - 1e-9);
  expect(t.sizes.room).toBeLessThan(25.4 / 8 + 0.1);
});
test('screws lie in slots through the side, long the way that the side moves', () => {
  const t = attempt(moulding, plain, { count: 3, room: 2, screw: 4, screw_length: 35 });
  const f = figures(plain, t.made);
  // Polygons for circles: a little less than 4.5 wide and 4 longer, through 20.
  expect(lost(plain, f, 'side')).toBeGreaterThan(3 * 20 * (4 * 4.5 + Math.PI * 2.25 ** 2) * 0.997);
  expect(lost(plain, f, 'side')).toBeLessThan(3 * 20 * (4 * 4.5 + Math.PI * 2.25 ** 2));
  for (const c of t.made.contacts.filter((x) => x.name.endsWith('in its slot')))
    expect(c.travel).toEqual({ along: [0, 1, 0], low: -2, high: 2 });
});
test('on keys it slides off forward and nothing holds it sideways but them', () => {
  const t = attempt(moulding, plain, { hold: 'keys' });
  const f = figures(plain, t.made);
  for (const [pair, v] of Object.entries(f.overlap)) expect(v, pair).toBeCloseTo(0, 2);
  const ahead = t.made.frees.filter((x) => x.moves.includes('moulding')).map((x) => x.along);
  const { frame } = plain;
  expect(ahead.map((v) => [0, 1, 2].map((i) => v[1] * (frame.y[i] ?? 0)))).toEqual([
    [expect.closeTo(0, 9), expect.closeTo(-1, 9), expect.closeTo(0, 9)],
  ]);
});
test('side and front mouldings mitred round a case: nothing overlaps, nothing is told', () => {
  const doc = piece(
    {
      side: docBoard('z', [0, 20], [0, 300], [0, 400], { copies: [{ mirror: 'x', at: '250', names: ['left', 'right'] }] }),
      rail: docBoard('x', [20, 480], [0, 20], [340, 400]),
      crown: docBoard('y', [-25, 0], [-25, 300], [340, 400], { copies: [{ mirror: 'x', at: '250', names: ['left', 'right'] }] }),
      front: docBoard('x', [-25, 525], [-25, 0], [340, 400]),
    },
    {
      sides: joint('moulding', [{ moulding: 'crown:*', side: 'side:*' }], { mitred: 'front' }),
      fronts: joint('moulding', [{ moulding: 'front', side: 'rail' }], { mitred: 'both' }),
      corners: joint('housing', [{ enter: 'rail', into: 'side:*' }], { depth: '5' }),
    },
  );
  expect(
    findingsOf(doc)
      .filter((f) => f.grade !== 'note')
      .map((f) => f.key),
  ).toEqual([]);
});
test('its mirror image has the same numbers', () => {
  for (const set of [{ mitred: 'front' }, { hold: 'keys' }] as const) {
    const made = shapesOf(attempt(moulding, plain, set).made);
    for (const axis of ['x', 'y', 'z'] as const)
      expect(shapesOf(attempt(moulding, meetingOf(mirroredBoards(cased(), axis, 30)), set).made)).toEqual(made);
    for (const axis of ['x', 'y'] as const)
      expect(shapesOf(attempt(moulding, mirrorMeeting(plain, axis), set).made)).toEqual(shapesOf(attempt(moulding, plain, set).made, axis));
  }
});
test('suits a strip across a board best', () => {
  expect(moulding.suits(plain)?.rank).toBe(7);
  expect(moulding.suits(meetingOf(cased(300, 'y')))?.rank).toBe(3);
  expect(moulding.suits(meetingOf({ ...cased(), moulding: board([-25, 0], [0, 300], [100, 400], 'y') }))).toBeNull();
});
const size = (max: number) => fc.option(fc.double({ min: -1, max, noNaN: true }), { nil: undefined });
lawOfSettings(
  moulding,
  [plain, meetingOf(cased(140)), meetingOf(cased(300, 'y'))],
  fc
    .record({
      hold: fc.constantFrom<(Moulding['hold'] | undefined)[]>('slots', 'keys', 'glued', undefined),
      front: fc.constantFrom<(Moulding['front'] | undefined)[]>('front', 'back', 'top', undefined),
      mitred: fc.constantFrom<(Moulding['mitred'] | undefined)[]>('none', 'front', 'both', undefined),
      glued: size(320),
      count: fc.option(fc.integer({ min: 0, max: 12 }), { nil: undefined }),
      inset: size(320),
      room: size(8),
      screw: size(12),
      screw_length: size(60),
      key_wide: size(70),
      key_deep: size(30),
      key_long: size(120),
      slope: size(0.7),
    })
    .map((s) => Object.fromEntries(Object.entries(s).filter(([, v]) => v !== undefined)) as Partial<Moulding>),
  { runs: 40 },
);
rulesSpeak(moulding, [
  [plain, {}, []],
  [plain, { hold: 'keys' }, []],
  [plain, { hold: 'glued' }, ['moulding glued across the grain']],
  [plain, { glued: 120 }, ['moulding glued across the grain']],
  [plain, { glued: 100 }, []],
  [meetingOf(cased(300, 'y')), { hold: 'glued' }, []],
  [plain, { room: 0.5 }, ['moulding held fast behind']],
  [plain, { inset: 120 }, ['moulding loose behind']],
  [plain, { screw_length: 43 }, ['screw near the moulding’s face']],
  [plain, { hold: 'keys', key_deep: 22 }, ['screw near the moulding’s face']],
]);
