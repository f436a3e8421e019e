/** Checks tried on whole documents: what is said, and what is not. */
import { expect, test } from 'vitest';
import { type Store, openStore } from '../../src/build/store.ts';
import type { Finding } from '../../src/model/finding.ts';
import { problemLine } from '../../src/model/problem.ts';
import { judge, prove } from '../../src/piece/judge.ts';
import { jsonDocument } from './piece.ts';

/** Runs work on a store of its own; the kernel must be loaded. */
export function withStore<T>(work: (store: Store) => T): T {
  const store = openStore();
  try {
    return work(store);
  } finally {
    store.close();
  }
}
/** All findings of a document that can be worked out, remedies untried. */
export function findingsOf(json: unknown, wave: 1 | 2 = 2): readonly Finding[] {
  return withStore((store) => {
    const j = judge(jsonDocument(json), wave === 2 ? store : null, wave);
    if (j.problems.length) throw new Error(j.problems.map(problemLine).join('\n'));
    return j.findings;
  });
}
/** The same with those remedies only that hold. */
const provedOf = (json: unknown): readonly Finding[] =>
  withStore((store) => prove(jsonDocument(json), judge(jsonDocument(json), store, 2).findings, store));

type Spoken = {
  readonly in: unknown;
  readonly parts: readonly string[];
  readonly measured?: number;
  readonly cure?: string;
  readonly alone?: boolean;
};
/**
 * A check as two tables: documents on which the rule is quiet, and documents on which it speaks once, of these parts, with this number (mm
 * unless it says otherwise) and a cure that holds. Unless `alone` is false nothing else above 'note' is said.
 */
export function tryRule(
  rule: string,
  table: { readonly quiet: Readonly<Record<string, unknown>>; readonly speaks: Readonly<Record<string, Spoken>> },
): void {
  test.each(Object.entries(table.quiet))(`${rule} is quiet: %s`, (_, json) => {
    expect(findingsOf(json).filter((f) => f.rule === rule)).toEqual([]);
  });
  test.each(Object.entries(table.speaks))(`${rule} speaks: %s`, (_, s) => {
    const all = provedOf(s.in);
    const mine = all.filter((f) => f.rule === rule);
    expect(mine.map((f) => f.parts)).toEqual([[...s.parts].sort()]);
    if (s.measured !== undefined) expect(mine[0]?.measured).toBeCloseTo(s.measured, 4);
    if (s.cure !== undefined) expect(mine[0]?.remedies.map((r) => r.label)).toContain(s.cure);
    if (s.alone !== false) expect(all.filter((f) => f.grade !== 'note' && f.rule !== rule).map((f) => f.key)).toEqual([]);
  });
}

type Entries = Readonly<Record<string, object>>;
export const piece = (parts: Entries, joints: Entries = {}, more: object = {}): object => ({
  dryfit: 1,
  title: 'Trial',
  units: 'mm',
  parts,
  joints,
  ...more,
});
/** A board by its spans: [left, right], [front, back], [bottom, top], in mm. */
export const board = (
  grain: 'x' | 'y' | 'z',
  x: readonly [number, number],
  y: readonly [number, number],
  z: readonly [number, number],
  more: object = {},
): object => ({
  wood: 'oak',
  grain,
  left: x[0],
  right: x[1],
  front: y[0],
  back: y[1],
  bottom: z[0],
  top: z[1],
  ...more,
});
export const joint = (as: string, places: readonly object[], set: object = {}): object => ({ as: `${as}@1`, places, set });
