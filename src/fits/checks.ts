/** The list of all checks, in the order in which they speak. A new one is a file beside this and a line here. */
import type { Built } from '../build/build.ts';
import type { Document } from '../model/document.ts';
import type { Finding } from '../model/finding.ts';
import type { Check, Facts } from './check.ts';
import { crossGrain } from './cross-grain.ts';
import { contactGap } from './contact-gap.ts';
import { cutAlready } from './cut-already.ts';
import { familyRules } from './family-rules.ts';
import { grooveShows } from './groove-shows.ts';
import { heldByNothing } from './held-by-nothing.ts';
import { jointApart } from './joint-apart.ts';
import { jointRefused } from './joint-refused.ts';
import { overlap } from './overlap.ts';
import { mirroredPair } from './mirrored-pair.ts';
import { mustNotGlue } from './must-not-glue.ts';
import { once } from './once.ts';
import { panelHeld } from './panel-held.ts';
import { pegsMeet } from './pegs-meet.ts';
import { shoulderAtShape } from './shoulder-at-shape.ts';
import { wallAtShape } from './wall-at-shape.ts';
import { wallBetweenCuts } from './wall-between.ts';
import { woodLeft } from './wood-left.ts';
import { wrongWay } from './wrong-way.ts';

export const checks: readonly Check[] = [
  // Before the joint between the same two parts, whose words give way to what the solids say.
  overlap,
  pegsMeet,
  jointApart,
  jointRefused,
  contactGap,
  shoulderAtShape,
  woodLeft,
  wallBetweenCuts,
  wallAtShape,
  cutAlready,
  heldByNothing,
  mustNotGlue,
  panelHeld,
  crossGrain,
  grooveShows,
  mirroredPair,
  wrongWay,
  familyRules,
];

const recordFindings = once((_built: Built) => new Map<Check, { readonly doc: Document; readonly findings: readonly Finding[] }>());

const ORDER = { stops: 0, trouble: 1, note: 2 } as const;
/** All findings up to a wave, the worst first, then by key: the same list from a cold start and after any edits. One finding a key. */
export function runChecks(facts: Facts, wave: 1 | 2): Finding[] {
  const byKey = new Map<string, Finding>();
  const known = recordFindings(facts.built);
  // Two waves look at one build: what the first found by its records stands in the second.
  const findings = (c: Check): readonly Finding[] => {
    if (c.wave === 2) return c.run(facts);
    const before = known.get(c);
    if (before && before.doc === facts.doc) return before.findings;
    const found = c.run(facts);
    known.set(c, { doc: facts.doc, findings: found });
    return found;
  };
  for (const c of checks) if (c.wave <= wave) for (const f of findings(c)) if (!byKey.has(f.key)) byKey.set(f.key, f);
  return [...byKey.values()].sort((a, b) => ORDER[a.grade] - ORDER[b.grade] || (a.key < b.key ? -1 : 1));
}
