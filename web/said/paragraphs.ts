/** Findings as the column numbers them. */
import type { Finding as FindingRecord } from '../../src/model/finding.ts';

const RANK = { stops: 0, trouble: 1, note: 2 } as const;
/** Findings as the column numbers them: what stops it first, else in the core's order. */
const inOrder = (findings: readonly FindingRecord[]): FindingRecord[] => [...findings].sort((a, b) => RANK[a.grade] - RANK[b.grade]);
/** From so many of one rule on, they fold into one paragraph with a count. */
const FOLD = 5;
export type Paragraph = { readonly first: FindingRecord; readonly number: number; readonly all: readonly FindingRecord[] };

export function paragraphs(findings: readonly FindingRecord[]): Paragraph[] {
  const sorted = inOrder(findings);
  const groups = grouped(sorted);
  const out: Paragraph[] = [];
  const done = new Set<string>();
  for (const f of sorted) {
    const id = `${f.grade} ${f.rule}`;
    const all = groups.get(id) ?? [f];
    if (all.length < FOLD) out.push({ first: f, number: out.length + 1, all: [f] });
    else if (!done.has(id)) out.push({ first: f, number: out.length + 1, all });
    done.add(id);
  }
  return out;
}
function grouped(list: readonly FindingRecord[]): Map<string, FindingRecord[]> {
  const out = new Map<string, FindingRecord[]>();
  for (const f of list) {
    const group = out.get(`${f.grade} ${f.rule}`);
    if (group) group.push(f);
    else out.set(`${f.grade} ${f.rule}`, [f]);
  }
  return out;
}
