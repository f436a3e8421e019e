/** Cock bead: the rabbet and the round by hand, all four edges of a drawer front, mirror images, rules. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { cockBead } from '../../src/joints/cock-bead/cock-bead.ts';
import type { CockBead } from '../../src/joints/cock-bead/params.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { findingsOf, board as docBoard, joint, piece } from '../support/checks.ts';
import { type Boards, attempt, board, figures, lost, meetingOf, mirrorMeeting, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';
import { lawOfSettings, rulesSpeak } from '../support/joint-law.ts';

beforeAll(() => loadKernel());
testExamples(cockBead);

const front = board([0, 300], [0, 18], [0, 100], 'x');
/** A bead of this thickness along one edge of the front, so far proud and so deep in it. */
const edged = (edge: 'top' | 'bottom' | 'left' | 'right', thick = 3, proud = 1.5, deep = 12): Boards => {
  const y = [-proud, deep] as const;
  if (edge === 'top') return { bead: board([0, 300], y, [100 - thick, 100], 'x'), front };
  if (edge === 'bottom') return { bead: board([0, 300], y, [0, thick], 'x'), front };
  if (edge === 'left') return { bead: board([0, thick], y, [0, 100], 'z'), front };
  return { bead: board([300 - thick, 300], y, [0, 100], 'z'), front };
};
// Worked by hand: thickness x length x depth of the rabbet.
test.each<['top' | 'bottom' | 'left' | 'right', number]>([
  ['top', 3 * 300 * 12],
  ['bottom', 3 * 300 * 12],
  ['left', 3 * 100 * 12],
  ['right', 3 * 100 * 12],
])('along the %s edge the rabbet takes what both share', (edge, volume) => {
  const m = meetingOf(edged(edge));
  const f = figures(m, attempt(cockBead, m).made);
  expect(lost(m, f, 'front')).toBeCloseTo(volume, 3);
  expect(Object.values(f.overlap)).toEqual([expect.closeTo(0, 6)]);
  expect(f.pieces).toEqual({ bead: 1, front: 1 });
});
test('four mitred beads go round a front and share nothing', () => {
  const strip = (x: readonly [number, number], z: readonly [number, number], grain: 'x' | 'z') => docBoard(grain, x, [-1.5, 12], z);
  const doc = piece(
    {
      front: docBoard('x', [0, 300], [0, 18], [0, 90]),
      upper: strip([0, 300], [87, 90], 'x'),
      lower: strip([0, 300], [0, 3], 'x'),
      port: strip([0, 3], [0, 90], 'z'),
      starboard: strip([297, 300], [0, 90], 'z'),
    },
    {
      beads: joint(
        'cock_bead',
        ['upper', 'lower', 'port', 'starboard'].map((bead) => ({ bead, front: 'front' })),
        { mitred: 'both' },
      ),
    },
  );
  expect(findingsOf(doc).map((f) => f.key)).toEqual([]);
});
test('a bead 1/8 in thick and half round stands proud by its radius (woodcentral.com: 1/8 to 3/16 in thick, half round)', () => {
  const t = attempt(cockBead, meetingOf(edged('top', 25.4 / 8, 25.4 / 16)));
  expect(t.sizes.radius).toBeCloseTo(25.4 / 16, 9);
});
test('glued along the grain; across a wide front it is pinned', () => {
  const holds = (b: Boards): string[] => attempt(cockBead, meetingOf(b)).made.contacts.map((c) => c.hold);
  expect(holds(edged('top'))).toEqual(['glued', 'glued']);
  expect(attempt(cockBead, meetingOf(edged('left'))).made.contacts.map((c) => [c.hold, c.glue])).toEqual([
    ['glued', 'end'],
    ['dry', 'never'],
  ]);
  const tall = { bead: board([0, 3], [-1.5, 12], [0, 160], 'z'), front: board([0, 300], [0, 18], [0, 160], 'x') };
  expect(holds(tall)).toEqual(['pinned', 'pinned']);
});
test('its mirror image has the same numbers', () => {
  for (const edge of ['top', 'left'] as const)
    for (const axis of ['x', 'y', 'z'] as const) {
      const set = { mitred: edge === 'top' ? 'left' : 'top' } as const;
      expect(shapesOf(attempt(cockBead, meetingOf(mirroredBoards(edged(edge), axis, 30)), set).made)).toEqual(
        shapesOf(attempt(cockBead, meetingOf(edged(edge)), set).made),
      );
    }
  const m = meetingOf(edged('bottom'));
  for (const axis of ['x', 'y'] as const)
    expect(shapesOf(attempt(cockBead, mirrorMeeting(m, axis)).made)).toEqual(shapesOf(attempt(cockBead, m).made, axis));
});
test('a strip that lies wholly in the front, or beside it, is no bead', () => {
  const inside = { bead: board([0, 300], [0, 12], [97, 100], 'x'), front };
  const beside = { bead: board([0, 300], [-1.5, 12], [100, 103], 'x'), front };
  for (const b of [inside, beside])
    expect(
      cockBead.propose({ meeting: meetingOf(b), siblings: [], set: {} }, { mortiseWidths: [], bits: [], grooveWidths: [] }),
    ).toHaveProperty('cannot');
  expect(cockBead.suits(meetingOf(edged('top')))?.rank).toBe(8);
});
lawOfSettings(
  cockBead,
  [meetingOf(edged('top')), meetingOf(edged('left')), meetingOf(edged('bottom', 4, 2, 18))],
  fc.record({
    radius: fc.double({ min: -1, max: 4, noNaN: true }),
    mitred: fc.constantFrom<CockBead['mitred']>('none', 'both', 'left', 'top', 'front'),
    hold: fc.constantFrom<CockBead['hold']>('glued', 'pinned'),
  }),
  { runs: 25 },
);
rulesSpeak(cockBead, [
  [meetingOf(edged('top')), {}, []],
  [meetingOf(edged('top', 4, 1)), {}, ['bead buried']],
  [meetingOf(edged('top', 3, 4)), {}, ['bead far out']],
  [meetingOf(edged('top', 6, 3)), {}, ['bead heavy']],
  [meetingOf(edged('top', 3, 1.5, 16)), {}, ['wood behind a bead']],
  [meetingOf(edged('top', 3, 1.5, 18)), {}, []],
]);
