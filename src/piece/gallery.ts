/** The gallery: a page for every joint family, shape and maker that is listed, made from its own examples and nothing else. */
import { buildPiece } from '../build/build.ts';
import type { JointPlace } from '../build/part.ts';
import type { Store } from '../build/store.ts';
import type { Family } from '../joints/family.ts';
import { families } from '../joints/families.ts';
import type { Maker } from '../makers/kit/maker.ts';
import { makers } from '../makers/makers.ts';
import type { Document } from '../model/document.ts';
import type { Json } from '../model/finding.ts';
import { readDocument } from '../model/parse.ts';
import { applyPatches } from '../model/patch.ts';
import { problemLine } from '../model/problem.ts';
import { type Page, type PageExample, type PageSort, pageName } from '../papers/page.ts';
import { shapes } from '../shapes/shapes.ts';
import type { ShapeKind } from '../shapes/shape.ts';
import { catalog } from './catalog.ts';
import { drawnOf } from './draw.ts';
import { openingIn } from './opening.ts';
import { settingsOf, shapeSizes } from './page-sizes.ts';
import { fitsOf, sizesOf, tasksOf, wordsOf } from './page-words.ts';

/** What a page is made of, before any work is done. */
export type GalleryEntry = {
  readonly id: string;
  readonly sort: PageSort;
  readonly title: string;
  readonly words: string;
  /** Makes the whole page; the kernel must be loaded. */
  readonly page: (store: Store) => Page;
  /** The example that stands for it, with what it was made from. */
  readonly first: () => { readonly name: string; readonly doc: Document };
};

/** Every entry, joints first, each sort in the order of its list. */
export const galleryEntries = (): readonly GalleryEntry[] => [
  ...Object.values(families).map(jointEntry),
  ...Object.values(shapes).map(shapeEntry),
  ...Object.values(makers).map(makerEntry),
];

type Shown = { readonly name: string; readonly words: string; readonly json: Json };
function documentOf(json: Json, who: string): Document {
  const read = readDocument(json, catalog);
  if (!read.ok) throw new Error(`${who}: ${read.problems.map(problemLine).join('; ')}`);
  return read.doc;
}
/** The first example of the list, read; an entry without one is our fault. */
function firstOf(examples: readonly Shown[], who: string): { readonly name: string; readonly doc: Document } {
  const [first] = examples;
  if (!first) throw new Error(`${who} has no example.`);
  return { name: first.name, doc: documentOf(first.json, `${who}, ${first.name}`) };
}
type Told = Pick<PageExample, 'given' | 'sizes' | 'fits' | 'hand' | 'machine'>;
const NOTHING: Told = { given: [], sizes: [], fits: [], hand: [], machine: [] };
function exampleOf(e: Shown, store: Store, tell: (doc: Document, places: readonly JointPlace[]) => Told): PageExample {
  const doc = documentOf(e.json, e.name);
  const built = buildPiece(doc, families, store.builds);
  if (built.problems.length) throw new Error(`${e.name}: ${built.problems.map(problemLine).join('; ')}`);
  return {
    name: e.name,
    words: e.words,
    units: doc.units,
    document: e.json,
    ...drawnOf(doc, built, store),
    ...tell(doc, built.drawn.places),
  };
}

function jointEntry(f: Family): GalleryEntry {
  const shown = f.examples.map((e): Shown => ({ name: e.name, words: e.words, json: e.document }));
  const head = { id: pageName('joint', f.id), sort: 'joint' as const, title: f.title, words: f.words };
  const tell = (doc: Document, places: readonly JointPlace[]): Told => {
    const place = places.find((p) => p.family.id === f.id && p.made !== null);
    if (!place) throw new Error(`no place of ${f.id} was made.`);
    return { ...sizesOf(f, place, doc.units), fits: fitsOf(place), hand: tasksOf(f, place, true), machine: tasksOf(f, place, false) };
  };
  return {
    ...head,
    first: () => firstOf(shown, f.id),
    page: (store) => ({
      ...head,
      roles: Object.values(f.roles).map((r) => ({ words: r.words, many: r.count === 'many' })),
      rules: f.rules.map((r) => wordsOf(r.words)),
      examples: shown.map((e) => exampleOf(e, store, tell)),
    }),
  };
}
function shapeEntry(kind: ShapeKind): GalleryEntry {
  const shown = kind.examples.map((e): Shown => ({ name: e.name, words: e.words, json: e.document }));
  const head = { id: pageName('shape', kind.id), sort: 'shape' as const, title: kind.title, words: kind.words };
  return {
    ...head,
    first: () => firstOf(shown, kind.id),
    page: (store) => ({
      ...head,
      roles: [],
      rules: [],
      examples: shown.map((e) => exampleOf(e, store, (doc) => ({ ...NOTHING, sizes: shapeSizes(kind, doc) }))),
    }),
  };
}
function makerEntry(m: Maker): GalleryEntry {
  const shown = (): Shown[] => m.examples.map((e) => ({ name: e.name, words: e.words, json: filled(m, e) }));
  const head = { id: pageName('maker', m.id), sort: 'maker' as const, title: m.title, words: m.words };
  return {
    ...head,
    first: () => firstOf(shown(), m.id),
    page: (store) => ({
      ...head,
      roles: [],
      rules: [],
      examples: shown().map((e, i) =>
        exampleOf(e, store, (doc) => ({ ...NOTHING, sizes: settingsOf(m, m.examples[i]?.settings ?? {}, doc.units) })),
      ),
    }),
  };
}
/** The example's space, filled. */
function filled(m: Maker, e: Maker['examples'][number]): Json {
  const found = openingIn(documentOf(e.document, `${m.id}, ${e.name}`), e.space);
  if (!found.ok) throw new Error(`${m.id}, ${e.name}: ${problemLine(found.problem)}`);
  const fill = m.fill(found.opening, e.settings);
  if (!fill.ok) throw new Error(`${m.id}, ${e.name}: ${fill.troubles.map((t) => t.cannot).join('; ')}`);
  const done = applyPatches(e.document, fill.patches);
  if (!done.ok) throw new Error(`${m.id}, ${e.name}: ${done.problem}`);
  return done.json;
}
