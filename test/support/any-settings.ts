/** Families under any settings: what is refused has a nearest that goes, what is made is sound; and rules that speak have a cure that holds. */
import { expect } from 'vitest';
import { type Family, type Made, type Place, isRefusal } from '../../src/joints/family.ts';
import type { Meeting } from '../../src/joints/meeting.ts';
import { SHOP, figures } from './joint-bench.ts';

/** What was made, or null where it was refused with a nearest that goes. `bites`: pieces that may share wood by design, as in 'enter / peg1'. */
export function madeOrRefused<P>(family: Family<P>, meeting: Meeting, set: Partial<P>, bites?: RegExp): { made: Made; sizes: P } | null {
  const place: Place<P> = { meeting, siblings: [], set };
  const answer = family.propose(place, SHOP);
  if (isRefusal<P>(answer)) {
    expect(answer.nearest, answer.cannot).toBeDefined();
    const again = family.propose({ ...place, set: { ...set, ...answer.nearest } }, SHOP);
    expect(isRefusal<P>(again) ? again.cannot : 'goes', answer.cannot).toBe('goes');
    return null;
  }
  const { sizes } = answer as { sizes: P };
  const made = family.make(place, sizes);
  const f = figures(meeting, made);
  for (const [pair, v] of Object.entries(f.overlap)) if (!bites?.test(pair)) expect(v, pair).toBeLessThan(0.05);
  return { made, sizes };
}
/** The rules that speak of a meeting with these settings, and, for each, whether one of its cures silences it without a refusal. */
export function spoken<P>(
  family: Family<P>,
  meeting: Meeting,
  set: Partial<P>,
  siblings: readonly Meeting[] = [],
): { rule: string; cured: boolean }[] {
  const told = (s: Partial<P>) => {
    const place: Place<P> = { meeting, siblings, set: s };
    const p = family.propose(place, SHOP);
    if (isRefusal<P>(p)) return null;
    const { sizes } = p as { sizes: P };
    const made = family.make(place, sizes);
    return family.rules.flatMap((r) => r.run(place, sizes, made));
  };
  const before = told(set);
  if (!before) throw new Error('refused');
  return before.map((w) => ({
    rule: w.rule,
    cured: w.cures.some((c) => told(withCure(set, c.set))?.every((a) => a.rule !== w.rule) === true),
  }));
}
function withCure<P>(set: Partial<P>, cure: Readonly<Record<string, string | null>>): Partial<P> {
  const out: Record<string, unknown> = { ...set };
  for (const [key, value] of Object.entries(cure)) {
    if (value === null) delete out[key];
    else out[key] = /^[\d.]+( mm)?$/.test(value) ? parseFloat(value) : value;
  }
  return out as Partial<P>;
}
