/** A build with what earlier builds left equals a build from nothing, whatever was edited; and it hands on what no edit has touched. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { buildPiece } from '../../src/build/build.ts';
import { openBuildCache } from '../../src/build/cache.ts';
import { shelving } from '../../src/cli/bench/shelving.ts';
import type { Document } from '../../src/model/document.ts';
import type { Json, Patch } from '../../src/model/finding.ts';
import { readDocument } from '../../src/model/parse.ts';
import { applyPatches } from '../../src/model/patch.ts';
import { type Seen, nothingSeen } from '../../src/model/seen.ts';
import { catalog, families } from '../../src/piece/catalog.ts';
import { law } from '../support/law.ts';
import { type Change, changes, patchOf } from '../support/mutate.ts';
import { fixtureText, jsonDocument, starterText } from '../support/piece.ts';

const texts = [
  ...['writing-desk', 'hall-bench', 'wall-shelf', 'frame-door', 'spoiled-desk'].map(starterText),
  ...['window-table', 'hearth-stool', 'linen-chest', 'breadboard-top', 'dovetailed-tray', 'short-rail', 'p2-plant-stand'].map(fixtureText),
  JSON.stringify(shelving()),
];
const pieces = texts.map((t) => JSON.parse(t) as Json);

/** Everything that a build says, as plain values. */
function saidBy({ drawn, built, problems }: ReturnType<typeof buildPiece>): object {
  const one = (b: typeof drawn): object => ({
    parts: [...b.parts.values()].map(({ instance, resolved, ...p }) => ({
      ...p,
      names: instance.names,
      parent: instance.parent?.path ?? null,
      box: resolved.box,
      at: resolved.frame,
      trims: resolved.trims,
      misfits: resolved.misfits,
    })),
    extras: [...b.extras.values()],
    places: b.places.map(({ family, input, ...p }) => ({
      ...p,
      family: family.id,
      set: input.set,
      siblings: input.siblings,
      met: input.meeting,
    })),
    sizes: [...b.resolution.sizes],
    spaces: [...b.resolution.boxes].map(([path, r]) => [path, r.box, r.frame]),
    copies: [...b.instances.all.keys()],
  });
  return { drawn: one(drawn), built: one(built), problems };
}
/** A piece being edited, read and built with what was there before. */
function editing(start: Json): {
  json: () => Json;
  doc: () => Document | null;
  apply: (patches: readonly Patch[]) => readonly Patch[] | null;
} {
  const seen: Seen = nothingSeen();
  let json = start;
  const read = (): Document | null => {
    const r = readDocument(json, catalog, undefined, seen);
    return r.ok ? r.doc : null;
  };
  return {
    json: () => json,
    doc: read,
    apply: (patches) => {
      const a = applyPatches(json, patches);
      if (!a.ok) return null;
      json = a.json;
      return a.undo;
    },
  };
}
type Step =
  { readonly kind: 'change'; readonly change: Change } | { readonly kind: 'undo' } | { readonly kind: 'other'; readonly pick: number };
/** Edits that change which parts, copies and joints there are, measure, or say nonsense for a while. */
function otherPatch(doc: Document, pick: number): Patch[] {
  const part = Object.keys(doc.parts ?? {})[pick % Math.max(1, Object.keys(doc.parts ?? {}).length)] ?? '';
  const joint = Object.keys(doc.joints ?? {})[pick % Math.max(1, Object.keys(doc.joints ?? {}).length)] ?? '';
  const size = Object.keys(doc.sizes ?? {})[pick % Math.max(1, Object.keys(doc.sizes ?? {}).length)] ?? '';
  const copies = doc.parts?.[part]?.copies as unknown as Json | undefined;
  const all: Patch[][] = [
    [{ op: 'add', path: `parts/${part}/name`, value: 'board by another name' }],
    [{ op: 'add', path: `parts/${part}/wood`, value: 'walnut' }],
    [
      {
        op: 'add',
        path: 'parts/stray',
        value: {
          wood: 'oak',
          grain: 'x',
          left: '0',
          width: '100',
          front: '2000',
          depth: '40',
          bottom: '0',
          height: '20',
          copies: [{ row: 'x', count: 2 + (pick % 3), step: '200' }],
        } as Json,
      },
    ],
    [{ op: 'remove', path: 'parts/stray' }],
    [{ op: 'remove', path: `joints/${joint}` }],
    [{ op: 'replace', path: `sizes/${size}`, value: '0' }],
    [{ op: 'replace', path: `sizes/${size}`, value: `${size} + 1` }],
    [{ op: 'replace', path: `parts/${part}/wood`, value: 7 }],
    [
      {
        op: 'add',
        path: 'bench',
        value: {
          measured: [
            {
              of: `${[part, ...(doc.parts?.[part]?.copies ?? []).map((c) => ('mirror' in c ? c.names[0] : (c.names?.[0] ?? '1')))].join(':')}.height`,
              is: '30',
              with: 'rule',
            },
          ],
        } as Json,
      },
    ],
    [{ op: 'remove', path: 'bench' }],
    copies === undefined ? [{ op: 'add', path: 'title', value: 'Another title' }] : [{ op: 'remove', path: `parts/${part}/copies` }],
    [{ op: 'add', path: `parts/${part}/datum`, value: ['right'] }],
    [{ op: 'add', path: `parts/${part}/made`, value: [{ staves: { widest: `${40 + (pick % 50)}` }, along: 'width' }] as Json }],
    [{ op: 'replace', path: 'units', value: doc.units === 'mm' ? 'in' : 'mm' }],
  ];
  return all[Math.floor(pick / 7) % all.length] ?? [];
}
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ kind: fc.constant('change' as const), change: changes }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('undo' as const) }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('other' as const), pick: fc.nat(10_000) }) },
);

law(
  'a build after any edits equals a build from nothing',
  fc.record({ start: fc.constantFrom(...pieces), steps: fc.array(step, { minLength: 5, maxLength: 25 }) }),
  ({ start, steps }) => {
    const piece = editing(start);
    const cache = openBuildCache();
    const undos: (readonly Patch[])[] = [];
    let last = piece.doc();
    for (const s of steps) {
      const asked =
        s.kind === 'undo'
          ? (undos.pop() ?? [])
          : last === null
            ? []
            : s.kind === 'other'
              ? otherPatch(last, s.pick)
              : [patchOf(last, s.change)].filter((p) => p !== null);
      const undo = piece.apply(asked);
      if (undo && s.kind !== 'undo') undos.push(undo);
      const doc = piece.doc();
      // What cannot be read goes again, as the app has it.
      if (!doc) {
        piece.apply(undos.pop() ?? []);
        continue;
      }
      last = doc;
      const cold = jsonDocument(JSON.parse(JSON.stringify(piece.json())));
      expect(doc).toEqual(cold);
      expect(saidBy(buildPiece(doc, families, cache))).toEqual(saidBy(buildPiece(cold, families)));
    }
  },
  { runs: 12, timeout: 300_000 },
);

test('each named size changed alone, and each setting of a joint, is followed as from nothing', () => {
  for (const start of [starterText('writing-desk'), fixtureText('window-table'), fixtureText('hearth-stool'), JSON.stringify(shelving())]) {
    const piece = editing(JSON.parse(start) as Json);
    const cache = openBuildCache();
    const doc = piece.doc() as Document;
    const sizes = Object.entries(doc.sizes ?? {}).map(([id, was]): Patch => ({
      op: 'replace',
      path: `sizes/${id}`,
      value: `(${was}) * 1.01`,
    }));
    const settings = Object.entries(doc.joints ?? {}).flatMap(([id, j]) =>
      Object.entries(j.set ?? {}).flatMap(([key, was]): Patch[] =>
        typeof was === 'string' && /\d/.test(was) ? [{ op: 'replace', path: `joints/${id}/set/${key}`, value: `(${was}) * 0.99` }] : [],
      ),
    );
    for (const patch of [...sizes, ...settings]) {
      // From the piece itself each time: the step is then the change and nothing else.
      buildPiece(piece.doc() as Document, families, cache);
      const undo = piece.apply([patch]);
      const changed = piece.doc() as Document;
      expect(saidBy(buildPiece(changed, families, cache)), patch.path).toEqual(saidBy(buildPiece(changed, families)));
      piece.apply(undo ?? []);
    }
  }
});
test('settings of a joint that read named sizes, or faces of parts, follow them', () => {
  const piece = editing(shelving());
  const cache = openBuildCache();
  const depth = (): unknown =>
    buildPiece(piece.doc() as Document, families, cache).built.places.find((p) => p.joint === 'slat_1_ends')?.sizes?.['depth'];
  expect(depth()).toBe(7);
  piece.apply([{ op: 'replace', path: 'sizes/housed', value: '8' }]);
  expect(depth()).toBe(8);
  piece.apply([{ op: 'replace', path: 'joints/slat_1_ends/set/depth', value: 'tray.height / 2' }]);
  expect(depth()).toBe(6);
  // The tray has no part in the joint.
  piece.apply([{ op: 'replace', path: 'parts/tray/height', value: '14' }]);
  expect(depth()).toBe(7);
});

test('an edit of one level of a shelving leaves the parts and joints of the others as the very same objects', () => {
  const piece = editing(shelving());
  const cache = openBuildCache();
  const before = buildPiece(piece.doc() as Document, families, cache).built;
  piece.apply([{ op: 'replace', path: 'sizes/slat_w_2', value: '63' }]);
  const after = buildPiece(piece.doc() as Document, families, cache).built;
  const changed = [...after.parts.values()].filter((p) => before.parts.get(p.path) !== p).map((p) => p.path);
  expect(changed.length).toBe(12);
  expect(changed.every((path) => /^(slat_2:|long_2:)/.test(path))).toBe(true);
  const old = new Set(before.places);
  expect(new Set(after.places.filter((p) => !old.has(p)).map((p) => p.joint))).toEqual(new Set(['slat_2_ends']));
});
test('parts that are cut alike have one key, and joints that are made alike one making, wherever and in whichever hand they stand', () => {
  const b = buildPiece(jsonDocument(shelving()), families).built;
  expect(b.parts.size).toBe(60);
  expect(b.places.length).toBe(110);
  expect(new Set([...b.parts.values()].map((p) => p.record.key)).size).toBe(12);
  const ends = b.places.filter((p) => p.joint === 'long_1_ends');
  expect(ends.length).toBe(4);
  expect(new Set(ends.map((p) => p.made)).size).toBe(2);
});
test('the same document built twice with one cache is the same in every object', () => {
  const doc = jsonDocument(JSON.parse(starterText('writing-desk')));
  const cache = openBuildCache();
  const [a, b] = [buildPiece(doc, families, cache), buildPiece(doc, families, cache)];
  expect([...a.built.parts.values()].every((p) => b.built.parts.get(p.path) === p)).toBe(true);
  expect(a.built.places.every((p, i) => b.built.places[i] === p)).toBe(true);
});
