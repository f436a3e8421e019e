/** Seeded changes of documents, of the kinds that people make: another size, another setting, a face moved. */
import fc from 'fast-check';
import type { Document } from '../../src/model/document.ts';
import type { Json, Patch } from '../../src/model/finding.ts';
import { applyPatches } from '../../src/model/patch.ts';
import { readDocument } from '../../src/model/parse.ts';
import { catalog, families } from '../../src/piece/catalog.ts';

export type Change = { readonly kind: 'size' | 'setting' | 'face'; readonly pick: number; readonly by: number };
export const changes: fc.Arbitrary<Change> = fc.record({
  kind: fc.constantFrom('size', 'setting', 'face'),
  pick: fc.nat(10_000),
  by: fc.double({ min: -1, max: 1, noNaN: true }),
});

/** The change as a patch of this document; null where it has nothing of that kind. */
export function patchOf(doc: Document, c: Change): Patch | null {
  return c.kind === 'size' ? sizePatch(doc, c) : c.kind === 'setting' ? settingPatch(doc, c) : facePatch(doc, c);
}
/** Up to 40 % more or less, on whole ticks. */
function sizePatch(doc: Document, c: Change): Patch | null {
  const all = Object.entries(doc.sizes ?? {});
  const [id, was] = all[c.pick % all.length] ?? [];
  return id === undefined || was === undefined
    ? null
    : { op: 'replace', path: `sizes/${id}`, value: `(${was}) * ${(1 + 0.4 * c.by).toFixed(3)}`, was };
}
function settingPatch(doc: Document, c: Change): Patch | null {
  const all = Object.entries(doc.joints ?? {}).flatMap(([id, j]) =>
    Object.entries(families[j.as.split('@')[0] ?? '']?.params ?? {}).map(([key, field]) => ({ id, j, key, field })),
  );
  const it = all[c.pick % all.length];
  if (!it) return null;
  const { id, j, key, field } = it;
  const share = (c.by + 1) / 2;
  const options = Object.keys(field.options ?? {});
  const value: Json =
    field.kind === 'choice'
      ? (options[Math.floor(share * options.length * 0.999)] ?? 'yes')
      : field.kind === 'count'
        ? Math.floor(share * 4)
        : field.kind === 'ratio'
          ? `1/${4 + Math.floor(share * 8)}`
          : field.kind === 'angle'
            ? `${(5 + 10 * share).toFixed(1)} deg`
            : `${(share * 60).toFixed(1)} mm`;
  const was = j.set?.[key] as Json | undefined;
  const path = `joints/${id}/set/${key}`;
  return was === undefined ? { op: 'add', path, value } : { op: 'replace', path, value, was };
}
function facePatch(doc: Document, c: Change): Patch | null {
  const words = ['left', 'right', 'front', 'back', 'bottom', 'top', 'width', 'depth', 'height'] as const;
  const all = Object.entries(doc.parts ?? {}).flatMap(([id, p]) =>
    words.flatMap((w) => (typeof p[w] === 'string' ? [{ path: `parts/${id}/${w}`, was: p[w] }] : [])),
  );
  const it = all[c.pick % all.length];
  return it
    ? { op: 'replace', path: it.path, value: `${it.was} ${c.by < 0 ? '-' : '+'} ${Math.abs(15 * c.by).toFixed(2)} mm`, was: it.was }
    : null;
}

/** The document with a patch applied, and the patches that undo it; null when it can no longer be read. */
export function changed(doc: Document, patches: readonly Patch[]): { readonly doc: Document; readonly undo: readonly Patch[] } | null {
  const a = applyPatches(doc as unknown as Json, patches);
  if (!a.ok) return null;
  const r = readDocument(a.json, catalog);
  return r.ok ? { doc: r.doc, undo: a.undo } : null;
}
