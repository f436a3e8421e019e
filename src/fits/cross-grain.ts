import { type Vec3, dot } from '../geom/vec3.ts';
import type { Contact } from '../joints/family.ts';
import type { JointPlace } from '../build/part.ts';
import { glueTold } from './family-rules.ts';
import { once } from './once.ts';
import { type Check, cap, finding, jointName, partsOf, reachOf, remedy, the, whereAt, withoutGlue } from './check.ts';

/** Wood glued across the grain of other wood over more than this may split or come loose, mm. */
const CROSS_GRAIN_LIMIT = 100;

/**
 * Contacts that may be glued, but across the grain: quiet up to the limit (a 100 mm apron is held by generations of tables), trouble above. What the wood
 * really moves is worked out on its own; this is the rule of thumb.
 */
export const crossGrain: Check = {
  id: 'cross-grain',
  wave: 1,
  words: 'Wide wood is glued across the grain of other wood.',
  run: (facts) =>
    facts.built.built.places.flatMap((p) => {
      const length = fightsOver(p);
      if (length <= CROSS_GRAIN_LIMIT + 1e-6 || glueTold(p)) return [];
      const patches = withoutGlue(facts.doc, p);
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
          remedies: patches.length ? [remedy('Leave it without glue', patches, 'It must then be held otherwise.')] : [],
        }),
      ];
    }),
};

const fightsOver = once((p: JointPlace): number => Math.max(0, ...(p.made?.contacts ?? []).map((c) => conflictOf(p, c))));
/**
 * Over how much of a glued contact the wood on its two sides moves differently, mm: along a way of the glue line that is along the grain of
 * one side and across that of the other. A shelf housed in a side whose width runs the same way moves with it: nothing. What may not be
 * glued at all is told by another check.
 */
function conflictOf(p: JointPlace, c: Contact): number {
  const [a, b] = c.between.map((s) => p.meeting.sides[s.role]?.[s.index ?? 0]?.grain);
  const s = c.between[0].surface;
  if (c.hold !== 'glued' || c.glue === 'never' || !a || !b || !('plane' in s)) return 0;
  const along = (grain: Vec3, way: Vec3): boolean => Math.abs(dot(grain, way)) > 0.7;
  const spans = ([0, 1] as const).map((i) => Math.max(...s.patch.map((q) => q[i])) - Math.min(...s.patch.map((q) => q[i])));
  // Several tenons on one rail hold each other apart: the family counts them as one length across the rail, longer than any patch.
  const whole = (c.gluedLength ?? 0) > Math.max(...spans) + 1e-6 ? (c.gluedLength ?? 0) : 0;
  return Math.max(
    ...[s.patchFrame.x, s.patchFrame.y].map((way, i) => {
      if (along(a, way) === along(b, way)) return 0;
      return along(a, way) ? (spans[i] ?? 0) : Math.max(spans[i] ?? 0, whole);
    }),
  );
}
