import { isRefusal } from '../joints/family.ts';
import { type Check, finding, jointName, partsOf, reachOf, the, whereAt } from './check.ts';

/** A joint between parts that do not touch. */
export const jointApart: Check = {
  id: 'joint-apart',
  wave: 1,
  words: 'A joint is asked for between parts that do not touch.',
  run: (facts) =>
    facts.built.built.places.flatMap((p) => {
      if (!p.refused || isRefusal(p.refused)) return [];
      const [a, b] = partsOf(p);
      return [
        finding({
          rule: 'joint-apart',
          grade: 'stops',
          title: 'These parts do not touch',
          parts: partsOf(p),
          joint: jointName(p),
          where: whereAt(p.meeting.frame, reachOf(p)),
          measured: p.refused.apart,
          limit: 0,
          unit: 'mm',
          basis: 'computed',
          why: `The joint "${p.joint}" should join ${the(facts, a ?? '')} and ${the(facts, b ?? '')}, but they stand {mm:${p.refused.apart}} apart. Let a face of one read the face of the other, or name other parts.`,
          source: { name: 'geometry of the two parts', basis: 'derived' },
        }),
      ];
    }),
};
