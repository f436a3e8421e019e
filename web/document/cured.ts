/** Findings that were put right in this sitting, each with the patches that bring it back. */
import { create } from 'zustand';
import type { Patch } from '../../src/model/finding.ts';
import type { VerdictView } from '../../src/piece/view.ts';

export type Cured = { readonly key: string; readonly title: string; readonly label: string; readonly undo: readonly Patch[] };
export const useCured = create<{ list: readonly Cured[] }>(() => ({ list: [] }));

/** A finding that is there again is not cured; only the last wave can tell. */
export function curedAgain(list: readonly Cured[], verdict: VerdictView): readonly Cured[] {
  if (verdict.wave !== 2) return list;
  const next = list.filter((c) => !verdict.findings.some((f) => f.key === c.key));
  return next.length === list.length ? list : next;
}
