import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { PieceView, SizeView } from '../../src/piece/view.ts';
import { lathOf, othersOf } from '../../web/stick/lanes.ts';
import { isPlain, placeOfSize, sizePatch } from '../../web/stick/sizes.ts';
import { law } from '../support/law.ts';

const size = (id: string, from: number, to: number): SizeView => ({
  id,
  words: id,
  text: String(to - from),
  value: to - from,
  kind: 'length',
  axis: 'x',
  span: [from, to],
  usedBy: [],
});
const piece = (sizes: readonly SizeView[]): PieceView => ({
  rev: 'r1',
  title: 'x',
  units: 'mm',
  box: { min: [0, 0, 0], max: [1000, 400, 700] },
  parts: [],
  joints: [],
  sizes,
});

const spans = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 990 }), fc.integer({ min: 1, max: 1000 })), { maxLength: 14 })
  .map((list) => list.map(([a, l], i) => size(`s${i}`, a, Math.min(1000, a + l))));
law('on the upper lane no spans cross, and each size stands once: on the stick or under others', spans, (sizes) => {
  const { slots } = lathOf(piece(sizes), 'x', null);
  const upper = slots.filter((s) => s.lane === 'upper').sort((a, b) => a.from - b.from);
  upper.forEach((s, i) => expect(s.from).toBeGreaterThanOrEqual((upper[i - 1]?.to ?? 0) - 1e-9));
  const ids = [...slots.map((s) => s.size.id), ...othersOf(piece(sizes), null).map((s) => s.id)];
  expect(ids.toSorted()).toEqual(sizes.map((s) => s.id).toSorted());
});
law('the chosen size is always on its face', fc.tuple(spans, fc.nat()), ([sizes, n]) => {
  const chosen = sizes[n % Math.max(1, sizes.length)];
  if (!chosen) return;
  expect(lathOf(piece(sizes), 'x', chosen.id).slots.filter((s) => s.size.id === chosen.id)).toHaveLength(1);
});

test('a size is found where it is written, and nowhere else', () => {
  const doc = { sizes: { high: '700' }, parts: { leg: { width: '40' } }, spaces: { niche: { depth: '200' } } };
  expect(placeOfSize(doc, 'high')).toBe('sizes/high');
  expect(placeOfSize(doc, 'leg:left:front.width')).toBe('parts/leg/width');
  expect(placeOfSize(doc, 'niche.depth')).toBe('spaces/niche/depth');
  expect(placeOfSize(doc, 'leg.height')).toBe(null);
  expect(placeOfSize(doc, '__proto__')).toBe(null);
  expect(sizePatch(doc, 'high', '720 mm')).toEqual({ op: 'replace', path: 'sizes/high', value: '720 mm', was: '700' });
});
test('a length is plain, an expression of other sizes is not', () => {
  for (const text of ['20', '1-1/2 in', '1\' 8"', '50.8 cm']) expect(isPlain({ ...size('a', 0, 1), text })).toBe(true);
  for (const text of ['top - 28', 'high/2', 'leg:left.right + 3', 'w']) expect(isPlain({ ...size('a', 0, 1), text })).toBe(false);
});
