/** Every maker against the contract, every example as a whole document: added, taken back, grown, mirrored, and set to nonsense. */
import fc from 'fast-check';
import { readdirSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { type Box, outBox, unionBox } from '../../src/geom/box.ts';
import type { Maker, MakerExample, Setting } from '../../src/makers/kit/maker.ts';
import { makers } from '../../src/makers/makers.ts';
import type { Document } from '../../src/model/document.ts';
import { applyPatches } from '../../src/model/patch.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { law } from '../support/law.ts';
import { expectClean, fill, filled, inPair, openingOf, soundAsDrawn, spaceBox } from '../support/makers.ts';
import { builtOf, jsonDocument } from '../support/piece.ts';

beforeAll(() => loadKernel());

const kebab = (id: string): string => id.replaceAll('_', '-');
test('each file of src/makers is a listed maker, and each listed maker a file', () => {
  const files = readdirSync(new URL('../../src/makers', import.meta.url), { withFileTypes: true }).filter((f) => f.isFile());
  expect(
    Object.keys(makers)
      .map((id) => `${kebab(id)}.ts`)
      .sort(),
  ).toEqual(
    files
      .map((f) => f.name)
      .filter((f) => f !== 'makers.ts')
      .sort(),
  );
});

describe.each(Object.values(makers))('$id', (maker) => {
  test('a form can be made from its settings', () => {
    expect(maker.title).not.toBe('');
    expect(maker.words).toMatch(/\.$/);
    expect(maker.settings['name']?.kind).toBe('id');
    for (const [key, s] of Object.entries(maker.settings)) {
      expect(key).toMatch(/^[a-z][a-z0-9_]*$/);
      expect(s.words, key).not.toBe('');
      expect(s.kind === 'choice', key).toBe(s.options !== undefined);
      if (s.kind === 'choice') expect(Object.keys(s.options ?? {})).toContain(s.initial);
      for (const words of Object.values(s.options ?? {})) expect(words, key).not.toBe('');
    }
    expect(maker.examples.length).toBeGreaterThan(1);
  });
  describe.each(maker.examples)('$name', (ex) => {
    const settings = ex.settings;
    test('only adds, and its undo gives the document back byte for byte', () => {
      const before = JSON.stringify(ex.document);
      const done = filled(maker, ex.document, ex.space, settings);
      expect(new Set(done.patches.map((p) => p.op))).toEqual(new Set(['add']));
      expect(new Set(done.patches.map((p) => p.path)).size).toBe(done.patches.length);
      const back = applyPatches(done.json, done.undo);
      expect(back.ok && JSON.stringify(back.json)).toBe(before);
      expect(JSON.stringify(ex.document)).toBe(before);
    });
    test('what it writes is clean and goes together', () => expectClean(filled(maker, ex.document, ex.space, settings).doc));
    test('it follows the space when that grows', () => {
      const done = filled(maker, ex.document, ex.space, settings);
      const grown = applyPatches(done.json, ex.bigger);
      if (!grown.ok) throw new Error(grown.problem);
      const after = jsonDocument(grown.json);
      expectClean(after);
      const [was, is] = [done.doc, after].map((d) => ({ hull: hullOf(d, done.patches), space: spaceBox(d, ex.space) }));
      if (!was || !is) throw new Error('two pieces are compared');
      const sizes = ([0, 1, 2] as const).map((i) => {
        const grew = (b: 'hull' | 'space'): number => is[b].max[i] - is[b].min[i] - (was[b].max[i] - was[b].min[i]);
        return [grew('space'), grew('hull')] as const;
      });
      expect(sizes.some(([space]) => space > 1)).toBe(true);
      // Nearly as much: gaps for the seasons grow with the space.
      for (const [space, hull] of sizes) {
        expect(hull).toBeGreaterThan(0.9 * space - 1e-6);
        expect(hull).toBeLessThan(1.1 * space + 1e-6);
      }
    });
    test('in a group of mirrored copies it is made once and mirrored with it', () => {
      const plain = builtOf(filled(maker, ex.document, ex.space, settings).doc).drawn.parts;
      const pair = filled(maker, inPair(ex.document), ex.space, settings).doc;
      expectClean(pair);
      const both = builtOf(pair).drawn.parts;
      expect(both.size).toBe(2 * plain.size);
      for (const [path, part] of plain) {
        const [id = '', ...names] = path.split(':');
        for (const copy of ['one', 'two']) expect(both.get([id, copy, ...names].join(':'))?.record.key, path).toBe(part.record.key);
      }
    });
    test('the same name twice is refused with a free one', () => {
      const once = filled(maker, ex.document, ex.space, settings);
      const again = fill(maker, once.json, ex.space, settings);
      const taken = again.ok ? undefined : again.troubles.find((t) => t.setting === 'name');
      expect(taken?.nearest).toBeDefined();
      const ids = openingOf(once.json, ex.space).taken;
      expect([...ids].some((id) => id.startsWith(`${taken?.nearest ?? ''}_`))).toBe(false);
    });
  });
  law(
    `${maker.id}: whatever it is set to, it is refused with the limit and what is nearest, or writes a sound document`,
    fc.record({ which: fc.nat({ max: maker.examples.length - 1 }), odd: oddSettings(maker) }),
    ({ which, odd }) => {
      const ex = maker.examples[which] as MakerExample;
      let settings: Record<string, string> = { ...ex.settings, ...odd };
      for (let round = 0; round < 40; round++) {
        const f = fill(maker, ex.document, ex.space, settings);
        if (f.ok) {
          const done = applyPatches(ex.document, f.patches);
          if (!done.ok) throw new Error(done.problem);
          expect(soundAsDrawn(done.json), JSON.stringify(settings)).toEqual([]);
          return;
        }
        const [first] = f.troubles;
        expect(first?.cannot).not.toBe('');
        expect(Number.isFinite(first?.limit) && Number.isFinite(first?.asked), JSON.stringify(first)).toBe(true);
        const cure = f.troubles.find((t) => t.nearest !== undefined);
        if (!cure) return;
        expect(cure.nearest, `${cure.setting}: ${cure.cannot}`).not.toBe(settings[cure.setting]);
        settings = { ...settings, [cure.setting]: cure.nearest ?? '' };
      }
      throw new Error(`no end of cures for ${JSON.stringify(odd)}: ${JSON.stringify(settings)}`);
    },
    { runs: 12 },
  );
});

/** One to four settings, each of its own kind but often out of bounds, or no such thing at all. */
function oddSettings(maker: Maker): fc.Arbitrary<Record<string, string>> {
  const one = ([key, s]: [string, Setting]) => valueOf(s).map((v) => [key, v] as const);
  return fc
    .array(fc.constantFrom(...Object.entries(maker.settings)).chain(one), { minLength: 1, maxLength: 4 })
    .map((all) => Object.fromEntries(all));
}
function valueOf(s: Setting): fc.Arbitrary<string> {
  const nonsense = fc.constantFrom('', 'x', '-5 mm', '1e9', '5 kg', '__proto__', '0');
  const length = fc.oneof(
    fc.double({ min: 0.1, max: 60, noNaN: true }).map((n) => `${n.toFixed(1)} mm`),
    fc.double({ min: 0.1, max: 900, noNaN: true }).map((n) => `${n.toFixed(1)} mm`),
    fc.constantFrom('1/8 in', '3/4 in', '2-1/2 in'),
  );
  const good: Record<Setting['kind'], fc.Arbitrary<string>> = {
    id: fc.constantFrom('niche', 'box', 'side', 'Box', 'mm'),
    length,
    lengths: fc.array(fc.oneof(length, fc.constant('*')), { maxLength: 6 }).map((a) => a.join(', ')),
    number: fc.double({ min: 0, max: 5, noNaN: true }).map((n) => n.toFixed(2)),
    percent: fc.oneof(
      fc.double({ min: 0, max: 25, noNaN: true }).map((n) => n.toFixed(1)),
      fc.constantFrom('35 % RH', '80 % RH'),
    ),
    count: fc.integer({ min: 0, max: 40 }).map(String),
    choice: fc.constantFrom(...Object.keys(s.options ?? { none: '' })),
    wood: fc.constantFrom('oak', 'pine', 'plywood', 'maple', 'moonwood', 'mdf'),
    part: fc.constantFrom('', 'side:left', 'low_rail', 'nothing', 'top'),
  };
  return fc.oneof({ weight: 6, arbitrary: good[s.kind] }, { weight: 1, arbitrary: nonsense });
}
/** The smallest box round all parts and spaces that these patches wrote, in the world. */
function hullOf(doc: Document, patches: readonly { readonly path: string }[]): Box {
  const ids = new Set(patches.map((p) => p.path.split('/')[1]));
  const written = [...builtOf(doc).drawn.resolution.boxes.values()].filter((b) => ids.has(b.instance.id) && b.instance.kind !== 'group');
  return written.map((b) => outBox(b.frame, b.box)).reduce(unionBox);
}
