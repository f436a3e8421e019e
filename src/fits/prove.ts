/** Remedies are tried before they are offered: on a fork of the document, the finding must go and nothing as bad may come. */
import type { Document } from '../model/document.ts';
import type { Finding, Grade, Json, Remedy } from '../model/finding.ts';
import { hashText } from '../model/hash.ts';
import { applyPatches } from '../model/patch.ts';

const SEVERITY: Readonly<Record<Grade, number>> = { note: 1, trouble: 2, stops: 3 };
/** All findings of a document, both waves; null when it cannot be built at all. */
export type Judge = (doc: Document) => readonly Finding[] | null;

/**
 * The remedies of one finding that hold, each with its proof. A remedy is kept when, in the changed document, the finding's key is gone
 * and every finding that was not there before is of a lower grade than the one removed.
 */
export function proveRemedies(doc: Document, before: readonly Finding[], f: Finding, judge: Judge): Remedy[] {
  const kept: Remedy[] = [];
  for (const r of f.remedies) {
    // The same cure with its figure rounded the other way is tried only where the first did not hold.
    if (kept.some((k) => stem(k) === stem(r))) continue;
    const proof = proveOne(doc, before, f, r, judge);
    if (proof) kept.push({ ...r, proof });
  }
  return kept;
}
const stem = (r: Remedy): string => r.label.replace(/\{mm:[^}]*\}/g, '');
function proveOne(
  doc: Document,
  before: readonly Finding[],
  f: Finding,
  r: Remedy,
  judge: Judge,
): Exclude<Remedy['proof'], 'untried'> | null {
  if (r.patches.length === 0) return null;
  const forked = applyPatches(doc as unknown as Json, r.patches);
  if (!forked.ok) return null;
  const after = judge(forked.json as unknown as Document);
  if (!after || after.some((a) => a.key === f.key)) return null;
  const known = new Map(before.map((b) => [b.key, b.grade]));
  const adds = after.filter((a) => SEVERITY[a.grade] > SEVERITY[known.get(a.key) ?? 'note'] || !known.has(a.key));
  if (adds.some((a) => SEVERITY[a.grade] >= SEVERITY[f.grade])) return null;
  const still = new Set(after.map((a) => a.key));
  return {
    removes: before.filter((b) => !still.has(b.key)).map((b) => b.key),
    adds: adds.map((a) => ({ key: a.key, grade: a.grade })),
    rev: hashText(JSON.stringify(forked.json)),
  };
}
