/** What an edit costs: the whole of it, against the bare kernel calls for the same recuts, pairs and mesh reads. */
import type { Frame } from '../../geom/frame.ts';
import type { PartRecord } from '../../model/record.ts';
import type { Body } from '../../solids/kernel.ts';
import { bareCut, bareMesh, barePair } from './bare.ts';
import { editOf } from './edits.ts';
import { type Figure, figure, median, timed } from './figure.ts';
import { openSession } from './session.ts';
import { shelving } from './shelving.ts';

const MOST = 2;
/** Edits before the first that counts: the engine compiles meanwhile. */
const WARM = 60;
/** So many edits later the bare calls of an edit are repeated: at once, they would find its numbers still lying in the processor's cache. */
const LATER = 8;

/** What reached the kernel in one edit. */
type List = { readonly cuts: PartRecord[]; readonly pairs: { readonly a: PartRecord; readonly b: PartRecord; readonly there: Frame }[]; readonly meshes: PartRecord[] };
const empty = (): List => ({ cuts: [], pairs: [], meshes: [] });

export function edit(edits = 200, warm = WARM): Figure[] {
  let list = empty();
  const lists: List[] = [];
  const session = openSession(shelving(), {
    cut: (record) => list.cuts.push(record),
    pair: (a, b, there) => list.pairs.push({ a, b, there }),
    mesh: (record) => list.meshes.push(record),
  });
  const bare = openBare();
  bare.replay(list);
  const ours: { readonly whole: number; readonly records: number }[] = [];
  const bares: number[] = [];
  for (let n = 0; n < warm + edits + LATER; n++) {
    list = empty();
    const start = performance.now();
    let records = 0;
    const [, whole] = timed(() => session.edit(editOf(n), () => (records = performance.now() - start)));
    lists.push(list);
    ours.push({ whole, records });
    const old = lists[n - LATER];
    if (old) bares.push(timed(() => bare.replay(old))[1]);
  }
  const rows = ours.slice(warm, warm + edits).map((o, i) => ({ ...o, bare: bares[warm + i] ?? Number.NaN, list: lists[warm + i] ?? empty() }));
  bare.close();
  session.close();
  const of = (pick: (r: (typeof rows)[number]) => number): number => median(rows.map(pick));
  return [
    figure('edit', 'edits', rows.length, 'count'),
    figure('edit', 'parts recut in an edit, median', of((r) => r.list.cuts.length), 'count'),
    figure('edit', 'pairs tried in an edit, median', of((r) => r.list.pairs.length), 'count'),
    figure('edit', 'bare calls, median', of((r) => r.bare), 'ms'),
    figure('edit', 'document, records and first verdict, median', of((r) => r.records), 'ms'),
    figure('edit', 'whole edit, median', of((r) => r.whole), 'ms'),
    figure('edit', 'whole edit to bare calls, median', of((r) => r.whole / r.bare), 'ratio', MOST),
    figure('edit', 'all edits to all bare calls', rows.reduce((s, r) => s + r.whole, 0) / rows.reduce((s, r) => s + r.bare, 0), 'ratio'),
  ];
}

/** Bodies by the key of their record, made and used by bare calls alone. */
function openBare(): { readonly replay: (list: List) => void; readonly close: () => void } {
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
    close: () => {
      for (const b of bodies.values()) b.delete();
    },
  };
}
