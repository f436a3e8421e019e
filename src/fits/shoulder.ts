import { OPEN_SHOULDER } from '../units/tolerance.ts';
import { type Check, finding, jointName, partsOf, reachOf, the, whereAt } from './check.ts';

/** A shoulder that stands open or bites: judged from the two surfaces as built, never from an overlap. */
export const shoulder: Check = {
  id: 'shoulder',
  wave: 1,
  bySize: ['open-shoulder', 'biting-shoulder'],
  words: 'A shoulder stands open, or bites into the part that it should only touch.',
  run: (facts) =>
    facts.built.built.places.flatMap((p) => {
      const gap = p.meeting.gap;
      if (!p.made || Math.abs(gap) <= OPEN_SHOULDER || !p.family.touch.includes('touch')) return [];
      const open = gap > 0;
      const [a, b] = partsOf(p);
      const measured = partsOf(p).some((path) => (facts.built.built.parts.get(path)?.resolved.misfits.length ?? 0) > 0 || facts.built.built.parts.get(path)?.frozen);
      return [
        finding({
          rule: open ? 'open-shoulder' : 'biting-shoulder',
          grade: 'stops',
          title: open ? 'A shoulder stands open' : 'A shoulder bites',
          parts: partsOf(p),
          joint: jointName(p),
          where: whereAt(p.meeting.frame, reachOf(p)),
          measured: Math.abs(gap),
          limit: OPEN_SHOULDER,
          unit: 'mm',
          basis: measured ? 'measured' : 'computed',
          why: open
            ? `Between ${the(facts, a ?? '')} and ${the(facts, b ?? '')} the shoulder stands {mm:${Math.abs(gap)}} open.`
            : `${cap(the(facts, a ?? ''))} is {mm:${Math.abs(gap)}} too long: its shoulder bites into ${the(facts, b ?? '')}.`,
          source: { name: 'the two surfaces as built', basis: 'derived' },
        }),
      ];
    }),
};
const cap = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);
