import type { JointPlace, Part } from '../build/part.ts';
import { compose, inDir, inPoint, outPoint } from '../geom/frame.ts';
import { type Vec3, dot } from '../geom/vec3.ts';
import type { Finding } from '../model/finding.ts';
import { type Facet, bodyOf } from '../joints/convex.ts';
import type { Side } from '../joints/family.ts';
import { isFace } from '../model/ids.ts';
import type { PartRecord } from '../model/record.ts';
import { OPEN_SHOULDER } from '../units/tolerance.ts';
import { type Check, type Facts, cap, finding, jointName, partsOf, reachOf, the, whereAt } from './check.ts';
import { once } from './once.ts';

/** A taper leaves its face by less than this: what leans more is a chamfer on an edge, and meant to be seen. Cosine. */
const LEANS = Math.cos((15 * Math.PI) / 180);

/** A shoulder that should close on a flat face where a taper has begun already: the rail stands over the slope. */
export const shoulderAtShape: Check = {
  id: 'shoulder-at-shape',
  wave: 1,
  words: 'A taper begins under a shoulder, which cannot close there.',
  run: (facts) => facts.built.built.places.flatMap((p) => worstOf(facts, p)),
};
/** Slopes cut from the stock's own faces: not trims, not rounds. */
const slopes = once((record: PartRecord): readonly Facet[] => {
  const shapes = record.features.filter((f) => f.op === 'shape' && f.why === 'shape');
  return shapes.length ? bodyOf(record.stock, shapes).filter((f) => !isFace(f.of) && !f.round) : [];
});
function worstOf(facts: Facts, p: JointPlace): Finding[] {
  let worst = { by: OPEN_SHOULDER, path: '' };
  for (const c of p.made?.contacts ?? []) {
    if (!c.name.startsWith('shoulder')) continue;
    for (const s of c.between) {
      const path = s.feature === 'stock' ? (p.roles[s.role]?.[s.index ?? 0] ?? '') : '';
      const part = facts.built.built.parts.get(path);
      if (part && !part.frozen) for (const by of opened(p, part, s)) if (by > worst.by) worst = { by, path };
    }
  }
  return worst.path ? [describe(facts, p, worst.path, worst.by)] : [];
}
/** How far the slope lies under each corner of the patch. */
function opened(p: JointPlace, part: Part, s: Side): number[] {
  const facets = slopes(part.record);
  if (facets.length === 0 || !('plane' in s.surface)) return [];
  const { patch, patchFrame, plane } = s.surface;
  const at = compose(p.meeting.frame, patchFrame);
  const outOf: Vec3 = inDir(part.frame, compose(p.meeting.frame, { ...patchFrame, z: plane.normal }).z);
  return facets
    .filter((f) => dot(f.plane.normal, outOf) > LEANS)
    .flatMap((f) => patch.map((q) => dot(f.plane.normal, inPoint(part.frame, outPoint(at, [q[0], q[1], 0]))) - f.plane.off));
}
function describe(facts: Facts, p: JointPlace, path: string, by: number): Finding {
  const other = partsOf(p).find((x) => x !== path) ?? path;
  return finding({
    rule: 'shoulder-over-taper',
    grade: 'trouble',
    title: 'A taper begins under the shoulder',
    parts: [path, other],
    joint: jointName(p),
    where: whereAt(p.meeting.frame, reachOf(p)),
    measured: by,
    limit: OPEN_SHOULDER,
    unit: 'mm',
    basis: 'computed',
    why: `${cap(the(facts, path))} is tapered already where ${the(facts, other)} stands on it: the shoulder stays open by up to {mm:${by}}. Begin the taper beyond the shoulder.`,
    source: { name: 'computed from the parts', basis: 'derived' },
  });
}
