/** What must hold of a family whatever it is set to, and its rules fired and cured. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Family, isRefusal } from '../../src/joints/family.ts';
import type { Meeting } from '../../src/joints/meeting.ts';
import { SHOP, figures } from './joint-bench.ts';
import { law } from './law.ts';

/** Whatever it is set to, the joint is refused, with a nearest that then goes, or makes sound wood that does not overlap. */
export function lawOfSettings<P>(
  family: Family<P>,
  meetings: readonly Meeting[],
  set: fc.Arbitrary<Partial<P>>,
  options: { readonly runs?: number; readonly shared?: number } = {},
): void {
  law(
    `${family.id}: any settings are refused with the nearest that goes, or make sound wood`,
    fc.record({ set, which: fc.nat({ max: meetings.length - 1 }) }),
    ({ set, which }) => {
      const meeting = meetings[which] as Meeting;
      const place = { meeting, siblings: [], set };
      const p = family.propose(place, SHOP);
      if (isRefusal<P>(p)) {
        expect(p.nearest, `${p.cannot}: nearest to ${JSON.stringify(set)}`).toBeDefined();
        const again = family.propose({ ...place, set: { ...set, ...p.nearest } }, SHOP);
        expect(isRefusal(again) ? again : null, JSON.stringify(set)).toBeNull();
        return;
      }
      const f = figures(meeting, family.make(place, p.sizes));
      expect([...new Set(Object.values(f.pieces))], JSON.stringify(f.pieces)).toEqual([1]);
      for (const [pair, volume] of Object.entries(f.overlap)) expect(volume, pair).toBeLessThanOrEqual(options.shared ?? 0.02);
    },
    { runs: options.runs ?? 30 },
  );
}
/** Each of these settings makes exactly these rules speak, and each cure that a rule offers quiets it. */
export function rulesSpeak<P>(family: Family<P>, cases: readonly (readonly [Meeting, Partial<P>, readonly string[]])[]): void {
  const said = (meeting: Meeting, set: Partial<P>) => {
    const place = { meeting, siblings: [], set };
    const p = family.propose(place, SHOP);
    if (isRefusal(p)) throw new Error(`refused: ${p.cannot}`);
    const { sizes } = p as { sizes: P };
    const made = family.make(place, sizes);
    return family.rules.flatMap((r) => r.run(place, sizes, made));
  };
  test.each(cases.map((c, i) => [i + 1, JSON.stringify(c[1]), c] as const))(
    `${family.id}, rules %i: %s`,
    (_i, _set, [meeting, set, rules]) => {
      const warnings = said(meeting, set);
      expect(warnings.map((w) => w.rule).sort()).toEqual([...rules].sort());
      for (const w of warnings)
        for (const cure of w.cures) {
          const next: Record<string, unknown> = { ...set };
          for (const [key, text] of Object.entries(cure.set)) {
            if (text === null) delete next[key];
            else next[key] = /^-?\d+(\.\d+)?( mm)?$/.test(text) ? Number.parseFloat(text) : text;
          }
          expect(
            said(meeting, next as Partial<P>).map((x) => x.rule),
            `"${cure.label}" leaves it standing`,
          ).not.toContain(w.rule);
        }
    },
  );
  test(`${family.id}: every rule is tried`, () => {
    expect([...new Set(cases.flatMap((c) => c[2]))].sort()).toEqual(family.rules.map((r) => r.id).sort());
  });
}
