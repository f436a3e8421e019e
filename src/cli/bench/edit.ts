/**
 * What an edit costs: the whole of it (patch, document, build, first verdict, recuts, meshes, pairs, second verdict) against the bare kernel
 * calls for the same recuts, pairs and mesh reads.
 */
import type { Frame } from '../../geom/frame.ts';
import type { Json } from '../../model/finding.ts';
import type { PartRecord } from '../../model/record.ts';
import { cutPart } from '../../solids/cut.ts';
import type { Body } from '../../solids/kernel.ts';
import { withSolids } from '../../solids/scope.ts';
import { bareCut, bareMesh, barePair } from './bare.ts';
import { editOf } from './edits.ts';
import { type Figure, figure, median, timed } from './figure.ts';
import { openSession } from './session.ts';
import { shelving } from './shelving.ts';

const MOST = 2;
/** Edits before the first that counts: the engine compiles meanwhile. */
const WARM = 200;
/**
 * The second of two who do the same work finds its numbers and its code lying ready in the processor's cache. So the bare calls of an edit
 * are repeated some edits later, and before either begins more memory is walked through than such a cache holds.
 */
const LATER = 8;
const walk = new Float64Array(1 << 20);
const stir = (): void => {
  for (let i = 0; i < walk.length; i += 8) walk[i] = (walk[i] ?? 0) + 1;
};

/** What reached the kernel in one edit. */
type List = {
  readonly cuts: PartRecord[];
  readonly pairs: { readonly a: PartRecord; readonly b: PartRecord; readonly there: Frame }[];
  readonly meshes: PartRecord[];
};
const empty = (): List => ({ cuts: [], pairs: [], meshes: [] });

export function edit(edits = 200, warm = WARM): Figure[] {
  // Flat cuts are the kernel's quickest, so the plain piece is the hard one; round holes are what joints have.
  return [
    ...run('edit', shelving(), edits, warm),
    ...run('edit, pegged', shelving({ pegs: true }), Math.ceil(edits / 4), Math.ceil(warm / 4)),
  ];
}
function run(bench: string, piece: Json, edits: number, warm: number): Figure[] {
  let list = empty();
  const waiting: List[] = [];
  const session = openSession(piece, {
    cut: (record) => list.cuts.push(record),
    pair: (a, b, there) => list.pairs.push({ a, b, there }),
    mesh: (record) => list.meshes.push(record),
  });
  const bare = openBare();
  bare.replay(list);
  bare.compare(list);
  const rows: Row[] = [];
  const bares: number[] = [];
  for (let n = 0; n < warm + edits + LATER; n++) {
    list = empty();
    stir();
    const start = performance.now();
    let records = 0;
    const [, whole] = timed(() => session.edit(editOf(n), () => (records = performance.now() - start)));
    rows.push({ whole, records, cuts: list.cuts.length, pairs: list.pairs.length });
    waiting.push(list);
    const old = n < LATER ? undefined : waiting.shift();
    stir();
    if (old) bares.push(timed(() => bare.replay(old))[1]);
  }
  bare.close();
  session.close();
  return report(bench, rows.slice(warm, warm + edits), bares.slice(warm, warm + edits));
}
type Row = { readonly whole: number; readonly records: number; readonly cuts: number; readonly pairs: number };
function report(bench: string, rows: readonly Row[], bares: readonly number[]): Figure[] {
  const of = (pick: (r: Row, bare: number) => number): number => median(rows.map((r, i) => pick(r, bares[i] ?? Number.NaN)));
  const sum = (all: readonly number[]): number => all.reduce((s, n) => s + n, 0);
  return [
    figure(bench, 'edits', rows.length, 'count'),
    figure(
      bench,
      'parts recut in an edit, median',
      of((r) => r.cuts),
      'count',
    ),
    figure(
      bench,
      'pairs tried in an edit, median',
      of((r) => r.pairs),
      'count',
    ),
    figure(
      bench,
      'bare calls, median',
      of((_, bare) => bare),
      'ms',
    ),
    figure(
      bench,
      'document, records and first verdict, median',
      of((r) => r.records),
      'ms',
    ),
    figure(
      bench,
      'whole edit, median',
      of((r) => r.whole),
      'ms',
    ),
    figure(
      bench,
      'whole edit to bare calls, median',
      of((r, bare) => r.whole / bare),
      'ratio',
      MOST,
    ),
    figure(bench, 'all edits to all bare calls', sum(rows.map((r) => r.whole)) / sum(bares), 'ratio'),
  ];
}

type Bare = {
  readonly replay: (list: List) => void;
  /** Throws unless the bare calls cut the same wood. */
  readonly compare: (list: List) => void;
  readonly close: () => void;
};
/** Bodies by the key of their record, made and used by bare calls alone. */
function openBare(): Bare {
  const bodies = new Map<string, Body>();
  const body = (r: PartRecord): Body => {
    const known = bodies.get(r.key);
    if (!known) throw new Error('a pair was tried of a part that was never cut');
    return known;
  };
  return {
    replay: ({ cuts, pairs, meshes }) => {
      for (const r of cuts) {
        bodies.get(r.key)?.delete();
        bodies.set(r.key, bareCut(r));
      }
      for (const r of meshes) bareMesh(body(r));
      for (const { a, b, there } of pairs) barePair(body(a), body(b), there);
    },
    compare: ({ cuts }) =>
      withSolids(() => {
        for (const r of cuts) {
          const cut = cutPart(r, { who: r.key });
          const [ours, theirs] = [cut.ok ? cut.solid.body.volume() : Number.NaN, body(r).volume()];
          if (!(Math.abs(ours - theirs) <= 1e-6 * ours))
            throw new Error(`a part of ${ours} mm³ comes out of the bare calls as ${theirs} mm³`);
        }
      }),
    close: () => {
      for (const b of bodies.values()) b.delete();
    },
  };
}
