import { isRefusal } from '../joints/family.ts';
import { type Check, cap, finding, jointName, partsOf, reachOf, the, whereAt } from './check.ts';
import { reachFarther } from './move-face.ts';

/** A joint between parts that do not touch, or of which one stands deep in the other. */
export const jointApart: Check = {
  id: 'joint-apart',
  wave: 1,
  words: 'A joint is asked for between parts that do not touch.',
  run: (facts) =>
    facts.built.built.places.flatMap((p) => {
      if (!p.refused || isRefusal(p.refused)) return [];
      const { apart } = p.refused;
      const [a, b] = partsOf(p).map((path) => the(facts, path));
      const base = {
        grade: 'stops' as const,
        parts: partsOf(p),
        where: whereAt(p.meeting.frame, reachOf(p)),
        measured: Math.abs(apart),
        limit: 0,
        unit: 'mm' as const,
        basis: 'computed' as const,
      };
      const source = { name: 'geometry of the two parts', basis: 'derived' as const };
      // Told by the solids too, with cures: the same words for the same thing, until they have been looked at.
      if (apart < 0)
        return [
          finding({
            ...base,
            rule: 'overlap',
            title: 'Two parts in the same place',
            source,
            why: `${cap(a ?? '')} and ${b ?? ''} are asked to be in the same place. They may touch; they may not share.`,
          }),
        ];
      return [
        finding({
          ...base,
          rule: 'joint-apart',
          title: 'These parts do not touch',
          joint: jointName(p),
          source,
          why: `The joint "${p.joint}" should join ${a ?? ''} and ${b ?? ''}, but they stand {mm:${apart}} apart. Let a face of one read the face of the other, or name other parts.`,
          remedies: reachFarther(facts, p, apart),
        }),
      ];
    }),
};
