/** Bracket foot: mitre, spline and blocks by hand; which bracket is glued to the base; mirror images; rules. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { bracketFoot } from '../../src/joints/bracket-foot/bracket-foot.ts';
import type { BracketFoot } from '../../src/joints/bracket-foot/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { board as docBoard, findingsOf, joint, piece } from '../support/checks.ts';
import { type Boards, attempt, board, figures, lost, meetingOf, mirrorMeeting, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { lawOfSettings, rulesSpeak } from '../support/joint-law.ts';

beforeAll(() => loadKernel());
testExamples(bracketFoot);

type Foot = { readonly high?: number; readonly side?: number; readonly long?: number; readonly base?: 'x' | 'y' };
/** Brackets at the front left corner of a base 400 by 300 and 20 thick; the front one 20 thick. */
const foot = ({ high = 120, side = 20, long = 180, base = 'x' }: Foot = {}): Boards => ({
  front: board([0, long], [0, 20], [0, high], 'x'),
  side: board([0, side], [0, long], [0, high], 'y'),
  base: board([0, 400], [0, 300], [high, high + 20], base),
});
const plain = meetingOf(foot());

// A mitre takes half of what both share: 20 x 20 x 120 / 2; with a side bracket 16 thick, 20 x 16 x 120 / 2.
test.each<[string, Foot, number]>([
  ['of one thickness', {}, 24000],
  ['of two thicknesses', { side: 16 }, 19200],
  ['90 high', { high: 90 }, 18000],
])('the mitre of brackets %s halves the corner', (_name, boards, volume) => {
  const m = meetingOf(foot(boards));
  const f = figures(m, attempt(bracketFoot, m, { spline: 'none' }).made);
  expect(lost(m, f, 'front')).toBeCloseTo(volume, 3);
  expect(lost(m, f, 'side')).toBeCloseTo(volume, 3);
  for (const [pair, v] of Object.entries(f.overlap)) expect(v, pair).toBeCloseTo(0, 2);
});
test('the spline fills its slot, half of it in each bracket, and lies nearer to the inner corner (Popular Woodworking no. 156, 2006)', () => {
  const { made, sizes } = attempt(bracketFoot, plain, { spline_thick: 3, spline_wide: 10 });
  const f = figures(plain, made);
  expect(lost(plain, f, 'front')).toBeCloseTo(24000 + 3 * 5 * 120, 3);
  expect(f.volume['spline']).toBeCloseTo(3 * 10 * 120, 3);
  expect(sizes.spline).toBe('loose');
  const spline = made.extras.find((e) => e.name === 'spline');
  const front = plain.sides['front']?.[0]?.box;
  const middle = (spline?.at.o[0] ?? 0) + 5 * (spline?.at.x[0] ?? 0) + 1.5 * (spline?.at.y[0] ?? 0);
  // A third of 20 from the inner face.
  const inner = (front?.max[0] ?? 0) + (front?.min[0] ?? 0) > 2 * middle ? middle - (front?.min[0] ?? 0) : (front?.max[0] ?? 0) - middle;
  expect(inner).toBeCloseTo(20 / 3, 6);
});
test('the bracket along the base’s grain is glued to it, the other one screwed in a slot', () => {
  const held = (base: 'x' | 'y', set: Partial<BracketFoot> = {}) =>
    attempt(bracketFoot, meetingOf(foot({ base })), set)
      .made.contacts.filter((c) => /^(front|side) bracket under/.test(c.name))
      .map((c) => [c.name.split(' ')[0], c.hold, c.travel !== undefined]);
  expect(held('x')).toEqual([
    ['front', 'glued', false],
    ['side', 'sliding', true],
  ]);
  expect(held('y')).toEqual([
    ['front', 'sliding', true],
    ['side', 'glued', false],
  ]);
  expect(held('x', { across: 'glued' }).map((h) => h[1])).toEqual(['glued', 'glued']);
});
test('three blocks: an upright one for the weight and a lying one behind each bracket (woodworkersedge.wordpress.com)', () => {
  const { made } = attempt(bracketFoot, plain, { pieces: 1 });
  expect(made.extras.filter((e) => e.words.endsWith('block')).map((e) => [e.name, e.record.grain])).toEqual([
    ['glue block', 'z'],
    ['fixing block front', 'x'],
    ['fixing block side', 'x'],
  ]);
});
test('two feet that are mirror images are one, and a chest stands on them without a finding', () => {
  const plainShapes = shapesOf(attempt(bracketFoot, plain).made);
  for (const axis of ['x', 'y'] as const)
    expect(shapesOf(attempt(bracketFoot, meetingOf(mirroredBoards(foot(), axis, 200))).made)).toEqual(plainShapes);
  for (const axis of ['x', 'y'] as const)
    expect(shapesOf(attempt(bracketFoot, mirrorMeeting(plain, axis)).made)).toEqual(shapesOf(attempt(bracketFoot, plain).made, axis));
  const copies = { copies: [{ mirror: 'x', at: '200', names: ['left', 'right'] }] };
  const doc = piece(
    {
      base: docBoard('x', [0, 400], [0, 300], [90, 110]),
      front: docBoard('x', [0, 150], [0, 20], [0, 90], copies),
      side: docBoard('y', [0, 20], [0, 150], [0, 90], copies),
    },
    { feet: joint('bracket_foot', [{ front: 'front:*', side: 'side:*', base: 'base' }]) },
  );
  expect(findingsOf(doc).map((f) => f.key)).toEqual([]);
});
const size = (max: number) => fc.option(fc.double({ min: -1, max, noNaN: true }), { nil: undefined });
lawOfSettings(
  bracketFoot,
  [plain, meetingOf(foot({ high: 90, side: 16, base: 'y' }))],
  fc
    .record({
      spline: fc.constantFrom<(BracketFoot['spline'] | undefined)[]>('loose', 'none', undefined),
      spline_thick: size(12),
      spline_wide: size(24),
      block: size(120),
      pieces: fc.option(fc.integer({ min: 0, max: 14 }), { nil: undefined }),
      block_grain: fc.constantFrom<(BracketFoot['block_grain'] | undefined)[]>('upright', 'lying', undefined),
      fixing: size(130),
      fixing_long: size(160),
      screw: size(12),
      screw_length: size(60),
      slot: size(6),
      across: fc.constantFrom<(BracketFoot['across'] | undefined)[]>('screwed', 'glued', undefined),
    })
    .map((s) => Object.fromEntries(Object.entries(s).filter(([, v]) => v !== undefined)) as Partial<BracketFoot>),
);
rulesSpeak(bracketFoot, [
  [plain, {}, []],
  [plain, { across: 'glued' }, ['bracket glued across the base']],
  [meetingOf(foot({ long: 110 })), { across: 'glued' }, []],
  [plain, { pieces: 1 }, ['glue block across the grain']],
  [meetingOf(foot({ high: 90 })), { pieces: 1 }, []],
  [plain, { pieces: 1, block_grain: 'lying' }, []],
  [plain, { slot: 0 }, ['screw slot short']],
  [plain, { screw_length: 35 }, ['screw near the face of the base']],
]);
