/** Every listed joint, shape and maker has a drawing that is looked at once and kept; none is kept for what is no longer listed. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import { type Store, openStore } from '../../src/build/store.ts';
import { svg } from '../../src/exports/svg.ts';
import { families } from '../../src/joints/families.ts';
import { makers } from '../../src/makers/makers.ts';
import { drawnOnce } from '../../src/piece/draw.ts';
import { galleryEntries } from '../../src/piece/gallery.ts';
import { shapes } from '../../src/shapes/shapes.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { expectGolden, orphans } from '../support/golden.ts';

let store: Store;
beforeAll(async () => {
  await loadKernel();
  store = openStore();
});
afterAll(() => store.close());

const entries = galleryEntries();

test('every family, shape and maker has a page of its own, and every kept drawing an owner', () => {
  expect(entries.length).toBe([families, shapes, makers].reduce((n, list) => n + Object.keys(list).length, 0));
  expect(new Set(entries.map((e) => e.id)).size).toBe(entries.length);
  for (const e of entries) expect(e.id).toMatch(/^[a-z][a-z0-9-]{0,59}$/);
  expect(orphans(entries.map((e) => `${e.id}.svg`))).toEqual([]);
  expect(orphans(['housing.svg'], ['housing.svg', 'gone.svg', 'housing-changed.svg', 'note.md'])).toEqual(['gone.svg']);
});
describe.each(entries)('$id', (entry) => {
  test('is drawn as it was', () => {
    const { name, doc } = entry.first();
    // What makers write is whole pieces: drawn apart they would be as long as all others together.
    const drawing = drawnOnce(doc, buildPiece(doc, families, store.builds), store, entry.sort !== 'maker');
    const text = svg(drawing, `${entry.title}: ${name}`);
    expect(text.length).toBeLessThan(entry.sort === 'maker' ? 24_000 : 12_000);
    expectGolden(`${entry.id}.svg`, text);
  });
});

test('a slope is told as a maker sets it out: one in six for pine, and a share stays a number', () => {
  const sizes = (id: string) =>
    entries
      .find((e) => e.id === id)
      ?.page(store)
      .examples.flatMap((e) => e.sizes) ?? [];
  const slope = sizes('dovetail').find((s) => s.id === 'slope');
  expect([slope?.value, ...(slope?.range ?? [])]).toEqual(['{n:1} in {n:6}', '{n:1} in {n:8}', '{n:1} in {n:4}']);
  expect(sizes('lap').find((s) => s.id === 'share')?.value).toBe('{n:0.5}');
});
