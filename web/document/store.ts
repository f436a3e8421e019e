/** The document as the app owns it: plain JSON, the steps that made it what it is, and the last state that the core accepted. */
import { create } from 'zustand';
import type { Json, Patch } from '../../src/model/finding.ts';
import { applyPatches } from '../../src/model/patch.ts';

export type Step = {
  readonly words: string;
  readonly patches: readonly Patch[];
  readonly undo: readonly Patch[];
  readonly tag: string | null;
};
type State = { readonly id: string | null; readonly json: Json; readonly past: readonly Step[]; readonly future: readonly Step[] };
/** The last document that the core could use: where a refused change falls back to. */
type Good = Pick<State, 'id' | 'json' | 'past'>;
export type DocumentStore = State & { readonly good: Good | null };

const MOST_STEPS = 500;
export const useDocument = create<DocumentStore>(() => ({ id: null, json: null, past: [], future: [], good: null }));
const now = (): DocumentStore => useDocument.getState();
const put = (next: Partial<DocumentStore>): void => useDocument.setState(next);

export const documentText = (): string | null => (now().json === null ? null : JSON.stringify(now().json));
/** The same for a file that a person may read and compare. */
export const documentFile = (): string => `${JSON.stringify(now().json, null, 2)}\n`;
export function titleOf(json: Json): string {
  const title = json !== null && typeof json === 'object' && !Array.isArray(json) ? (json as Record<string, Json>)['title'] : null;
  return typeof title === 'string' && title.trim() ? title : 'Piece without a name';
}
export function startDocument(id: string, json: Json): void {
  put({ id, json, past: [], future: [] });
}
export type Changed = { readonly ok: true; readonly patches: readonly Patch[] } | { readonly ok: false; readonly words: string };

/** One step. Steps with the same tag, one right after the other (a pointer being dragged), are undone as one. */
export function changeDocument(words: string, patches: readonly Patch[], tag: string | null = null): Changed {
  const { json, past } = now();
  const applied = applyPatches(json, patches);
  if (!applied.ok) return { ok: false, words: applied.problem };
  const last = past.at(-1);
  const joined = tag !== null && last?.tag === tag;
  const step: Step = joined
    ? { words, patches: [...last.patches, ...patches], undo: [...applied.undo, ...last.undo], tag }
    : { words, patches, undo: applied.undo, tag };
  put({
    json: applied.json,
    past: [...past.slice(joined ? 0 : Math.max(0, past.length + 1 - MOST_STEPS), joined ? -1 : undefined), step],
    future: [],
  });
  return { ok: true, patches };
}
/** Ends a run of like-tagged steps: the next one stands on its own. */
export function closeStep(): void {
  const { past } = now();
  const last = past.at(-1);
  if (last?.tag != null) put({ past: [...past.slice(0, -1), { ...last, tag: null }] });
}
/** Takes back the last step; the patches that did it, or null when there is none. */
export function undoDocument(): readonly Patch[] | null {
  const { json, past, future } = now();
  const step = past.at(-1);
  const applied = step ? applyPatches(json, step.undo) : null;
  if (!step || !applied?.ok) return null;
  put({ json: applied.json, past: past.slice(0, -1), future: [step, ...future] });
  return step.undo;
}
export function redoDocument(): readonly Patch[] | null {
  const { json, past, future } = now();
  const step = future[0];
  const applied = step ? applyPatches(json, step.patches) : null;
  if (!step || !applied?.ok) return null;
  put({ json: applied.json, past: [...past, { ...step, undo: applied.undo, tag: null }], future: future.slice(1) });
  return step.patches;
}
/** The core has accepted the document as it stands. */
export function acceptDocument(): void {
  const { id, json, past } = now();
  put({ good: { id, json, past } });
}
/** Back to the last accepted document. The steps since then are returned; none is lost silently. */
export function fallBack(): readonly Step[] {
  const { good, past } = now();
  if (!good) {
    put({ id: null, json: null, past: [], future: [] });
    return [];
  }
  const dropped = past.slice(good.past.length);
  put({ ...good, future: [] });
  return dropped;
}
