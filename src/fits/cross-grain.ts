import { type Vec3, dot } from '../geom/vec3.ts';
import type { Contact } from '../joints/family.ts';
import type { JointPlace } from '../build/part.ts';
import { type Check, finding, jointName, partsOf, reachOf, the, whereAt } from './check.ts';

/** Wood glued across the grain of other wood over more than this may split or come loose, mm. */
export const CROSS_GRAIN_LIMIT = 100;

/**
 * Contacts glued across the grain: quiet up to the limit (a 100 mm apron is held by generations of tables), trouble above. What the wood
 * really moves is worked out on its own; this is the rule of thumb.
 */
export const crossGrain: Check = {
  id: 'cross-grain',
  wave: 1,
  words: 'Wide wood is glued across the grain of other wood.',
  run: (facts) =>
    facts.built.built.places.flatMap((p) => {
      if (!p.made) return [];
      const glued = p.made.contacts.filter((c) => c.hold === 'glued' && (c.gluedLength ?? 0) > CROSS_GRAIN_LIMIT + 1e-6 && fights(p, c));
      const worstOf = glued.reduce<(typeof glued)[number] | null>((w, c) => (w && (w.gluedLength ?? 0) >= (c.gluedLength ?? 0) ? w : c), null);
      if (!worstOf) return [];
      const length = worstOf.gluedLength ?? 0;
      return [
        finding({
          rule: 'cross-grain',
          grade: 'trouble',
          title: 'Glued across the grain',
          parts: partsOf(p),
          joint: jointName(p),
          where: whereAt(p.meeting.frame, reachOf(p)),
          measured: length,
          limit: CROSS_GRAIN_LIMIT,
          unit: 'mm',
          basis: 'rule of thumb',
          why: `${cap(the(facts, partsOf(p)[0] ?? ''))} is glued to ${the(facts, partsOf(p)[1] ?? '')} over {mm:${length}} across the grain. One moves with the seasons where the other does not: above about {mm:${CROSS_GRAIN_LIMIT}} the joint works loose or the wood splits. Glue only part of it, and leave the rest room to move.`,
          source: { name: 'common practice: no published single limit; 75 to 100 mm is usual', basis: 'common practice' },
        }),
      ];
    }),
};
const cap = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/**
 * Does the wood on the two sides move differently along the glue line? It does where the line runs along the grain of one and across
 * that of the other. A shelf housed in a side whose width runs the same way moves with it.
 */
function fights(p: JointPlace, c: Contact): boolean {
  const [a, b] = c.between.map((s) => p.meeting.sides[s.role]?.[s.index ?? 0]?.grain);
  const line = glueLine(c);
  if (!a || !b || !line) return false;
  const along = (grain: Vec3): boolean => Math.abs(dot(grain, line)) > 0.7;
  return along(a) !== along(b);
}
/** The direction over which a flat contact is glued: the way of its patch that is as long as the glue. */
function glueLine(c: Contact): Vec3 | null {
  const s = c.between[0].surface;
  if (!('plane' in s)) return null;
  const span = (i: 0 | 1): number => Math.max(...s.patch.map((q) => q[i])) - Math.min(...s.patch.map((q) => q[i]));
  const off = [span(0), span(1)].map((n) => Math.abs(n - (c.gluedLength ?? 0)));
  return (off[0] ?? 0) < (off[1] ?? 0) ? s.patchFrame.x : s.patchFrame.y;
}
