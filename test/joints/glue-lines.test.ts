import { beforeAll, expect, test } from 'vitest';
import { edgeJoint } from '../../src/joints/edge-joint/edge-joint.ts';
import type { Family } from '../../src/joints/family.ts';
import { isRefusal } from '../../src/joints/family.ts';
import { contactArea, seamOf, seamsOf } from '../../src/joints/glue-line.ts';
import { lamination } from '../../src/joints/lamination/lamination.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { type Boards, SHOP, attempt, board, meetingOf, mirrorMeeting, mirroredBoards, shapesOf } from '../support/joint-bench.ts';
import { testExamples } from '../support/joint-examples.ts';

beforeAll(() => loadKernel());
testExamples(edgeJoint);
testExamples(lamination);
const edges: Boards = { enter: board([0, 800], [0, 120], [0, 22], 'x'), into: board([0, 800], [120, 220], [0, 22], 'x') };
const faces: Boards = { enter: board([0, 700], [0, 60], [0, 22], 'x'), into: board([0, 700], [0, 60], [22, 44], 'x') };
type Row = [string, Family<{ hold: 'glued' | 'dry' }>, Boards];
const both: Row[] = [
  ['edge joint', edgeJoint as unknown as Row[1], edges],
  ['lamination', lamination as unknown as Row[1], faces],
];

test('an edge joint: nothing cut, glued area 800 x 22, over 22 across the grain', () => {
  const { made } = attempt(edgeJoint, meetingOf(edges));
  expect(Object.values(made.features).flat()).toEqual([]);
  expect(made.contacts.map((c) => [contactArea(c), c.glue, c.hold, c.gluedLength])).toEqual([[800 * 22, 'long', 'glued', 22]]);
});
test('a lamination: glued area 700 x 60, over 60 across the grain', () => {
  const { made } = attempt(lamination, meetingOf(faces));
  expect(made.contacts.map((c) => [contactArea(c), c.glue, c.hold, c.gluedLength])).toEqual([[700 * 60, 'long', 'glued', 60]]);
});
test.each(both)('%s: dry when the document says so, and no glued length then', (_name, family, boards) => {
  const { made } = attempt(family, meetingOf(boards), { hold: 'dry' });
  expect([made.holds, made.contacts[0]?.hold, made.contacts[0]?.gluedLength]).toEqual(['dry', 'dry', undefined]);
});
test.each(both)('%s: mirrored boards and mirrored meetings give the mirrored joint', (_name, family, boards) => {
  const m = meetingOf(boards);
  const plain = attempt(family, m).made;
  expect(shapesOf(attempt(family, meetingOf(mirroredBoards(boards, 'y', 60))).made)).toEqual(shapesOf(plain));
  for (const axis of ['x', 'y'] as const) expect(shapesOf(attempt(family, mirrorMeeting(m, axis)).made)).toEqual(shapesOf(plain, axis));
});
test('layers glued across the grain over more than 100 mm are found, over less they pass', () => {
  const says = (w: number): string[] => {
    const m = meetingOf({ enter: board([0, w], [0, w], [0, 22], 'x'), into: board([0, w], [0, w], [22, 44], 'y') });
    const t = attempt(lamination, m);
    expect(t.made.contacts[0]?.glue).toBe('never');
    return lamination.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((x) => x.rule);
  };
  expect(says(100)).toEqual([]);
  expect(says(101)).toEqual(['lamination crossed']);
});
test('end grain glued to an edge is found; its cure is no glue', () => {
  const m = meetingOf({ enter: board([0, 300], [0, 120], [0, 22], 'x'), into: board([300, 400], [0, 120], [0, 22], 'y') });
  const t = attempt(edgeJoint, m);
  expect(edgeJoint.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((x) => [x.rule, x.cures[0]?.set])).toEqual([
    ['edge joint grain', { hold: 'dry' }],
  ]);
  const cured = attempt(edgeJoint, m, { hold: 'dry' });
  expect(edgeJoint.rules.flatMap((r) => r.run(cured.place, cured.sizes, cured.made))).toEqual([]);
});
test('faces that do not lie against each other are refused', () => {
  const m = meetingOf({ ...edges, into: board([0, 800], [180, 280], [0, 22], 'x') });
  expect(isRefusal(edgeJoint.propose({ meeting: m, siblings: [], set: {} }, SHOP))).toBe(true);
});
test('seams of a top glued from three staves of two layers: 4 in the layers, 3 between them', () => {
  const piece = (
    layer: number,
    stave: number,
  ): { name: string; box: { min: [number, number, number]; max: [number, number, number] } } => ({
    name: `${layer}.${stave}`,
    box: { min: [0, stave * 100, layer * 11], max: [1000, stave * 100 + 100, layer * 11 + 11] },
  });
  const pieces = [0, 1].flatMap((l) => [0, 1, 2].map((s) => piece(l, s)));
  const seams = seamsOf(pieces, [1, 0, 0]);
  expect(seams).toHaveLength(7);
  expect(seams.every((c) => c.glue === 'long' && c.hold === 'glued')).toBe(true);
  const areas = seams.map(contactArea).sort((a, b) => a - b);
  expect(areas).toEqual([11000, 11000, 11000, 11000, 100000, 100000, 100000]);
  expect(seamOf(piece(0, 0).box, piece(1, 1).box)).toBeNull();
});
