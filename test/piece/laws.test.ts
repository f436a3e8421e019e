/** What must hold whatever is edited: one document, one set of findings; what does not shape the wood does not change it; nothing is left in memory. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { openBuildCache } from '../../src/build/cache.ts';
import { buildPiece } from '../../src/build/build.ts';
import { openStore } from '../../src/build/store.ts';
import type { Document } from '../../src/model/document.ts';
import type { Finding, Patch } from '../../src/model/finding.ts';
import { families } from '../../src/piece/catalog.ts';
import { judge, proving } from '../../src/piece/judge.ts';
import { blankJobs } from '../../src/piece/list.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { liveSolids } from '../../src/solids/scope.ts';
import { law } from '../support/law.ts';
import { withStore } from '../support/checks.ts';
import { changed, changes, patchOf } from '../support/mutate.ts';
import { documentOf, fixtureText, starterText } from '../support/piece.ts';

beforeAll(() => loadKernel());

const docs = [starterText('spoiled-desk'), starterText('hall-bench'), fixtureText('window-table'), fixtureText('hearth-stool')].map(
  documentOf,
);
const told = (findings: readonly Finding[]): string => JSON.stringify(findings);
const cold = (doc: Document): string => withStore((store) => told(judge(doc, store, 2).findings));

const EDITS = 200;
law(
  `findings are those of a cold start after any ${EDITS} edits and undos`,
  fc.record({
    doc: fc.constantFrom(...docs),
    steps: fc.array(fc.record({ change: changes, undo: fc.boolean() }), { minLength: EDITS, maxLength: EDITS }),
  }),
  ({ doc: first, steps }) => {
    const store = openStore();
    const cache = openBuildCache();
    try {
      let doc = first;
      const undos: (readonly Patch[])[] = [];
      for (const [i, s] of steps.entries()) {
        const back = s.undo ? undos.pop() : undefined;
        const patch = patchOf(doc, s.change);
        const next = changed(doc, back ?? (patch ? [patch] : []));
        if (next) {
          doc = next.doc;
          if (!back && patch) undos.push(next.undo);
        }
        const wave = i % 20 === 19 ? 2 : 1;
        const j = judge(doc, wave === 2 ? store : null, wave, buildPiece(doc, families, cache));
        if (wave === 2) store.prune();
        if (i === EDITS / 2 - 1) expect(told(j.findings)).toBe(cold(doc));
      }
      expect(told(judge(doc, store, 2, buildPiece(doc, families, cache)).findings)).toBe(cold(doc));
      while (undos.length) doc = changed(doc, undos.pop() ?? [])?.doc ?? doc;
      expect(doc).toEqual(first);
      expect(told(judge(doc, store, 2, buildPiece(doc, families, cache)).findings)).toBe(cold(first));
    } finally {
      store.close();
    }
    expect(liveSolids()).toBe(0);
  },
  { runs: 3, timeout: 120_000 },
);

/** Everything that shapes the wood: record keys of parts and extras, and the blanks to be found on boards. */
const wood = (doc: Document): object => {
  const b = buildPiece(doc, families);
  expect(b.problems).toEqual([]);
  const keys = [...b.built.parts.values(), ...b.built.extras.values()].map((p) => [p.path, p.record.key, p.frame]);
  return { keys, blanks: blankJobs(b) };
};
const CHANGES: Readonly<Record<string, (doc: Document) => Document>> = {
  'an accepted layout': (doc) => ({ ...doc, placed: { key: 'any', plan: { boards: [{ id: 'one', at: [1, 2, 3] }] } } }),
  'another layout': (doc) => ({ ...doc, placed: { key: 'other', plan: null } }),
  title: (doc) => ({ ...doc, title: 'Called otherwise' }),
  note: (doc) => ({ ...doc, note: 'Another note.' }),
  names: (doc) => ({
    ...doc,
    parts: Object.fromEntries(Object.entries(doc.parts ?? {}).map(([id, p]) => [id, { ...p, name: `the ${id} by another name` }])),
  }),
  'words about a measurement': (doc) =>
    doc.bench?.measured
      ? { ...doc, bench: { ...doc.bench, measured: doc.bench.measured.map((m) => ({ ...m, with: 'another rule', on: 'another day' })) } }
      : doc,
};
test.each(Object.entries(CHANGES))('blanks and solids do not change with %s', (_, change) => {
  for (const doc of docs) expect(wood(change(doc))).toEqual(wood(doc));
});

test('a proving that is broken off leaves no solid alive', () => {
  const doc = docs[0] as Document;
  const before = liveSolids();
  const store = openStore();
  const run = proving(doc, judge(doc, store, 2).findings, store);
  for (let i = 0; i < 4; i++) expect(run.next().done).toBe(false);
  expect(liveSolids()).toBeGreaterThan(before);
  run.return([]);
  store.close();
  expect(liveSolids()).toBe(before);
});
