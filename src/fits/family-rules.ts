import { outPoint } from '../geom/frame.ts';
import { type Check, finding, jointName, partsOf, reachOf, remedy, setPatch, the, whereAt } from './check.ts';

/** The rules that each joint family brings: thin walls beside a mortise, the grain of a button, wedges the wrong way. */
export const familyRules: Check = {
  id: 'family-rules',
  wave: 1,
  words: 'A joint breaks one of the rules of its own trade.',
  run: (facts) =>
    facts.built.built.places.flatMap((p) => {
      const made = p.made;
      const sizes = p.sizes;
      if (!made || !sizes) return [];
      return p.family.rules.flatMap((rule) =>
        rule.run(p.input, sizes, made).map((w) => {
          const parts = w.roles.flatMap((r) => p.roles[r] ?? []);
          return finding({
            rule: w.rule.replaceAll(' ', '-'),
            grade: w.grade,
            title: w.title,
            parts: parts.length ? parts : partsOf(p),
            joint: jointName(p),
            where: { ...whereAt(p.meeting.frame, reachOf(p)), at: outPoint(p.meeting.frame, w.at) },
            measured: w.measured,
            limit: w.limit,
            unit: w.unit,
            basis: 'computed',
            why: `Where ${the(facts, partsOf(p)[0] ?? '')} meets ${the(facts, partsOf(p)[1] ?? '')}: ${w.why}`,
            source: w.source,
            remedies: w.cures.map((c) => remedy(c.label, Object.entries(c.set).flatMap(([k, v]) => setPatch(facts.doc, p.joint, k, v)))).filter((r) => r.patches.length > 0),
          });
        }),
      );
    }),
};
