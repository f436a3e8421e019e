/** Any parameters at all: either a refusal whose nearest values then work, or a joint of sound solids that share no wood. */
import { expect } from 'vitest';
import { type Family, isRefusal } from '../../src/joints/family.ts';
import type { Meeting } from '../../src/joints/meeting.ts';
import { type Figures, SHOP, type Tried, attempt, figures } from './joint-bench.ts';

/** What was made, or null where it is refused and no value would do. */
export function soundOrRefused<P extends object>(family: Family<P>, meeting: Meeting, set: Partial<P>): (Tried<P> & { f: Figures }) | null {
  const proposed = family.propose({ meeting, siblings: [], set }, SHOP);
  if (isRefusal<P>(proposed)) {
    expect(proposed.cannot).not.toBe('');
    if (!proposed.nearest) return null;
    const cured = { ...set, ...proposed.nearest };
    const again = family.propose({ meeting, siblings: [], set: cured }, SHOP);
    expect(isRefusal(again) ? [proposed, again] : null, JSON.stringify(set)).toBeNull();
    return soundOrRefused(family, meeting, cured);
  }
  const tried = attempt(family, meeting, set);
  const f = figures(meeting, tried.made);
  for (const [pair, v] of Object.entries(f.overlap)) expect(v, `${pair} with ${JSON.stringify(set)}`).toBeLessThan(0.01);
  for (const [piece, n] of Object.entries(f.pieces)) expect([piece, n], JSON.stringify(set)).toEqual([piece, 1]);
  for (const [piece, v] of Object.entries(f.volume)) expect(v, piece).toBeGreaterThan(0);
  return { ...tried, f };
}
/** What the family's own rules say of the joint made so. */
export const said = <P extends object>(family: Family<P>, meeting: Meeting, set: Partial<P>): string[] => {
  const t = attempt(family, meeting, set);
  return family.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).map((w) => w.rule);
};
/** The rule speaks for these parameters, and each of its cures, as it would be written in the document, quiets it. */
export function expectCured<P extends object>(family: Family<P>, meeting: Meeting, set: Partial<P>, rule: string): void {
  const t = attempt(family, meeting, set);
  const w = family.rules.flatMap((r) => r.run(t.place, t.sizes, t.made)).find((x) => x.rule === rule);
  expect(w?.rule, `${rule} on ${JSON.stringify(set)}`).toBe(rule);
  for (const cure of w?.cures ?? []) {
    const next: Record<string, unknown> = { ...set };
    for (const [key, text] of Object.entries(cure.set)) {
      if (text === null) delete next[key];
      else next[key] = /^[\d.]+ mm$/.test(text) ? parseFloat(text) : /^[\d.]+$/.test(text) ? Number(text) : text;
    }
    expect(said(family, meeting, next as Partial<P>), cure.label).not.toContain(rule);
  }
}
