/** Sizes settled one by one, each with its reason: what the document sets stands, the rest is proposed. */
import { quantise } from '../geom/vec3.ts';
import type { Source } from '../model/finding.ts';
import type { Reason } from './family.ts';

export const HABIT: Source = { name: 'common practice', basis: 'common practice' };
/** The document sets it. */
export const GIVEN: Reason = { rule: 'as the document says', source: { name: 'the document', basis: 'derived' } };
/** A rule of the trade without a publication behind it. */
export const byHabit = (rule: string, range?: readonly [number, number]): Reason => ({ rule, source: HABIT, ...(range ? { range } : {}) });
/** A rule read in a publication. */
export const byBook = (rule: string, name: string, range?: readonly [number, number]): Reason => ({
  rule,
  source: { name, basis: 'read' },
  ...(range ? { range } : {}),
});

export type Reasons<P> = { readonly [K in keyof P]: readonly [P[K], Reason] };
/** The sizes as proposed, with what the document sets put over them; a set value's reason is the document. */
export function settle<P extends object>(
  set: Partial<P>,
  proposed: Reasons<P>,
): { readonly sizes: P; readonly because: Readonly<Record<keyof P & string, Reason>> } {
  const sizes: Record<string, unknown> = {};
  const because: Record<string, Reason> = {};
  for (const [key, [value, reason]] of Object.entries(proposed) as [string, readonly [unknown, Reason]][]) {
    const given = (set as Record<string, unknown>)[key];
    sizes[key] = given ?? value;
    because[key] = given === undefined ? reason : GIVEN;
  }
  return { sizes: sizes as P, because: because as Record<keyof P & string, Reason> };
}
/** A length in mm as a maker could type it, for the cures that set a parameter. */
export const typed = (mm: number): string => `${quantise(Math.round(mm * 100) / 100)} mm`;
/** Rounded down to whole tenths of a mm: proposals that a rule can read off. */
export const tenths = (mm: number): number => quantise(Math.round(mm * 10) / 10);
