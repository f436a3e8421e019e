/** A piece being edited, as the app's worker does it: patches in; document, build, both waves of the verdict and new meshes out. */
import { buildPiece } from '../../build/build.ts';
import { type Store, type Watch, openStore } from '../../build/store.ts';
import { asPlaced } from '../../fits/check.ts';
import type { Json, Patch } from '../../model/finding.ts';
import { readDocument } from '../../model/parse.ts';
import { applyPatches } from '../../model/patch.ts';
import { problemLine } from '../../model/problem.ts';
import { nothingSeen } from '../../model/seen.ts';
import { catalog, families } from '../../piece/catalog.ts';
import { judge } from '../../piece/judge.ts';
import { type Judged } from '../../piece/judging.ts';

export type Session = {
  /** The whole edit; `records` is called when the first wave is there. Throws when the changed piece cannot be read or built. */
  readonly edit: (patches: readonly Patch[], records?: () => void) => Judged;
  readonly close: () => void;
};

export function openSession(start: Json, watch?: Watch): Session {
  const store = openStore(watch);
  const seen = nothingSeen();
  const sent = new Set<string>();
  let json = start;
  const edit: Session['edit'] = (patches, records) => {
    const applied = applyPatches(json, patches);
    if (!applied.ok) throw new Error(applied.problem);
    json = applied.json;
    const read = readDocument(json, catalog, undefined, seen);
    if (!read.ok) throw new Error(read.problems.map(problemLine).join('\n'));
    const built = buildPiece(read.doc, families, store.builds);
    if (built.problems.length) throw new Error(built.problems.map(problemLine).join('\n'));
    judge(read.doc, null, 1, built);
    records?.();
    newMeshes(store, built, sent);
    const judged = judge(read.doc, store, 2, built);
    store.prune();
    return judged;
  };
  edit([]);
  return { edit, close: store.close };
}
function newMeshes(store: Store, { built }: Judged['built'], sent: Set<string>): void {
  for (const p of [...built.parts.values(), ...built.extras.values()]) {
    if (sent.has(p.record.key)) continue;
    store.mesh(asPlaced(p));
    sent.add(p.record.key);
  }
}
