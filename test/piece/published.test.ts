/** What only a change of a published piece shows: how long its tenons may be, which faces are tapered. Sources stand in the documents. */
import { beforeAll, expect, test } from 'vitest';
import { loadKernel } from '../../src/solids/kernel.ts';
import type { Json } from '../../src/model/finding.ts';
import { findingsOf } from '../support/checks.ts';
import { builtOf, documentOf, fixtureText } from '../support/piece.ts';

beforeAll(() => loadKernel());

const IN = 25.4;
type Doc = { joints: Record<string, { set: Record<string, Json> }> };
/** The side table with square tenons of this length, in inches. */
const square = (length: string): object => {
  const doc = JSON.parse(fixtureText('p1-side-table')) as Doc;
  const corners = doc.joints['corners'];
  if (!corners) throw new Error('no corners');
  corners.set = { ...corners.set, end: 'square', length };
  return doc;
};
const stopped = (length: string): { parts: readonly string[]; limit: number }[] =>
  findingsOf(square(length))
    .filter((f) => f.rule === 'tenons-meet')
    .map((f) => ({ parts: f.parts, limit: f.limit / IN }));

// Legs 2 wide and 2-1/8 deep, mortises 3/8 in the middle of each face: from one face to the cheek of the other mortise there are
// 1 - 3/16 = 13/16 along the width and 1-1/16 - 3/16 = 7/8 along the depth.
test.each([
  ['13/16', 0],
  ['27/32', 4],
  ['29/32', 4],
  ['1', 4],
])('square tenons %s long: %i legs in which they meet', (length, legs) => {
  expect(stopped(length)).toHaveLength(legs);
});
test('the longest that clears is named: 13/16 for the rails that run along the width', () => {
  for (const f of stopped('27/32')) expect(f.limit).toBeCloseTo(13 / 16, 6);
});
test('mitred, tenons 1 long do not meet', () => {
  expect(findingsOf(JSON.parse(fixtureText('p1-side-table'))).filter((f) => f.grade !== 'note')).toEqual([]);
});

test('the stand’s tapered faces are the two with mortises, cut at 1.88° from the untouched ones', () => {
  const parts = builtOf(documentOf(fixtureText('p2-plant-stand'))).built.parts;
  const legs = ['1', '2', '3', '4'].map((n) => parts.get(`leg:${n}`)?.record);
  expect(new Set(legs.map((r) => r?.key)).size).toBe(1);
  const record = legs[0];
  const tapers = (record?.features ?? []).filter((f) => f.op === 'shape').map((f) => (f.solid.kind === 'half' ? f.solid.normal : null));
  // Falls from 1-1/2 to 7/8 over 23 - 4.
  const lean = Math.atan((1.5 - 0.875) / 19);
  expect((lean * 180) / Math.PI).toBeCloseTo(1.884, 3);
  expect(tapers.map((n) => n?.map((v) => Number(v.toFixed(6))))).toEqual([
    [0, Number(Math.cos(lean).toFixed(6)), -Number(Math.sin(lean).toFixed(6))],
    [Number(Math.cos(lean).toFixed(6)), 0, -Number(Math.sin(lean).toFixed(6))],
  ]);
  // A mortise goes in against the way that its face looks.
  const mortised = (record?.features ?? []).filter((f) => f.name === 'mortise').map((f) => f.at.z.map((v) => Math.round(v)));
  expect(mortised.map((z) => z.join()).sort()).toEqual(['-1,0,0', '0,-1,0']);
});
