/** The cut list: what is one kind, and what has to be bought over-size. */
import { expect, test } from 'vitest';
import { blankJobs, cutRows } from '../../src/piece/list.ts';
import { builtOf, documentOf, fixtureText, jsonDocument } from '../support/piece.ts';

const board = (more: object = {}): object => ({
  wood: 'oak',
  grain: 'x',
  left: '0',
  width: '400',
  front: '0',
  depth: '100',
  bottom: '0',
  height: '40',
  loose: true,
  ...more,
});
const piece = (parts: object): ReturnType<typeof jsonDocument> => jsonDocument({ dryfit: 1, title: 'T', units: 'mm', parts });

test('equal sizes glued up otherwise are parts of two kinds, and are found on boards as such', () => {
  const doc = piece({
    glued: board({ made: [{ layers: ['20', '20'], along: 'height' }] }),
    solid: board({ front: '200' }),
    third: board({ front: '400' }),
  });
  const built = builtOf(doc);
  expect(cutRows(doc, built).map((r) => [r.count, r.words])).toEqual([
    [1, 'glued'],
    [2, 'solid and third'],
  ]);
  expect(blankJobs(built).map((j) => j.pieces?.map((p) => p.thickness))).toEqual([[20, 20], undefined]);
});
test('a sheet has its thickness, glass is ordered to size, wood is left over-size', () => {
  const plate = { grain: undefined, height: '6' };
  const doc = piece({
    back: board({ ...plate, wood: 'plywood' }),
    pane: board({ ...plate, wood: 'glass', front: '200' }),
    shelf: board({ front: '400' }),
  });
  const rough = Object.fromEntries(cutRows(doc, builtOf(doc)).map((r) => [r.part, r.rough]));
  expect(rough['pane']).toEqual({ length: 400, width: 100, thickness: 6 });
  expect(rough['back']?.thickness).toBe(6);
  expect(rough['back']?.width).toBeGreaterThan(100);
  expect(rough['shelf']?.thickness).toBeGreaterThan(40);
});
test('wedges of one size are one row, whichever way their legs lean', () => {
  const doc = documentOf(fixtureText('hearth-stool'));
  expect(
    cutRows(doc, builtOf(doc))
      .filter((r) => r.words === 'wedge')
      .map((r) => r.count),
  ).toEqual([3]);
});
