import { isRefusal } from '../joints/family.ts';
import { type Check, finding, jointName, lengthText, partsOf, reachOf, remedy, setPatch, the, whereAt } from './check.ts';

/** A joint that the family says cannot be made so; its nearest possible sizes are the cure. */
export const jointRefused: Check = {
  id: 'joint-refused',
  wave: 1,
  words: 'A joint cannot be cut with the sizes that are asked for.',
  run: (facts) =>
    facts.built.built.places.flatMap((p) => {
      if (!p.refused || !isRefusal<Record<string, unknown>>(p.refused)) return [];
      const r = p.refused;
      const unit = facts.doc.units;
      const set = Object.entries(r.nearest ?? {}).flatMap(([key, v]) => {
        const kind = p.family.params[key]?.kind;
        const text =
          typeof v === 'number' && kind === 'length'
            ? lengthText(v, unit)
            : typeof v === 'number' && kind === 'angle'
              ? `${((v * 180) / Math.PI).toFixed(2)} deg`
              : String(v);
        return [{ key, text, words: p.family.params[key]?.words ?? key }];
      });
      const label = set.map((s) => `${s.words} ${s.text}`).join(', ');
      return [
        finding({
          rule: 'joint-refused',
          grade: 'stops',
          title: `This ${p.family.title.toLowerCase()} cannot be cut`,
          parts: partsOf(p),
          joint: jointName(p),
          where: whereAt(p.meeting.frame, reachOf(p)),
          measured: r.asked,
          limit: r.limit,
          unit: 'mm',
          basis: 'computed',
          why: `Where ${the(facts, partsOf(p)[0] ?? '')} meets ${the(facts, partsOf(p)[1] ?? '')}: ${r.cannot}`,
          source: { name: `the geometry of a ${p.family.title.toLowerCase()}`, basis: 'derived' },
          remedies: set.length
            ? [
                remedy(
                  `Make it ${label}`,
                  set.flatMap((s) => setPatch(facts.doc, p.joint, s.key, s.text)),
                ),
              ]
            : [],
        }),
      ];
    }),
};
