import type { JointPlace, Part } from '../build/part.ts';
import { inDir, outDir } from '../geom/frame.ts';
import { type Vec3, axisIndex, axisVec, dot } from '../geom/vec3.ts';
import { isWood } from '../wood/woods.ts';
import {
  type Check,
  type Facts,
  cap,
  finding,
  jointName,
  partsOf,
  placesByPart,
  reachOf,
  remedy,
  the,
  whereAt,
  withoutGlue,
} from './check.ts';

/** Glue on both long edges of a panel whose neighbours are tied together along the way in which it moves: it cannot shrink without splitting. */
export const panelHeld: Check = {
  id: 'panel-held',
  wave: 1,
  words: 'A panel is glued to a frame at both of its edges and cannot shrink.',
  run: (facts) =>
    [...facts.built.built.parts.values()].flatMap((part) => {
      if (!isWood(part.wood)) return [];
      const glued = (placesByPart(facts.built.built).entering.get(part.path) ?? []).filter((p) =>
        p.made?.contacts.some((c) => c.hold === 'glued' && c.glue === 'long'),
      );
      return ([0, 1, 2] as const).flatMap((axis) => {
        if (axis === axisIndex(part.record.grain)) return [];
        const low = glued.find((p) => entersAlong(part, p, axis) < 0);
        const high = glued.find((p) => entersAlong(part, p, axis) > 0);
        const tie = low && high ? tieOf(facts, part, axis, partsOf(low)[1] ?? '', partsOf(high)[1] ?? '') : null;
        return low && high && tie !== null ? [describe(facts, part, low, high, axis, tie)] : [];
      });
    }),
};
/** +1 or -1 when the part enters its neighbour along this axis of its own, else 0. */
function entersAlong(part: Part, p: JointPlace, axis: 0 | 1 | 2): number {
  const dir = inDir(part.frame, outDir(p.meeting.frame, [0, 0, 1]))[axis];
  return Math.abs(dir) > 0.9 ? Math.sign(dir) : 0;
}
/** A part that holds the two neighbours at one distance: joined to both, its grain running from one to the other. */
function tieOf(facts: Facts, panel: Part, axis: 0 | 1 | 2, a: string, b: string): string | null {
  if (a === b) return a;
  const { parts } = facts.built.built;
  const { all } = placesByPart(facts.built.built);
  const way = outDir(panel.frame, axisVec((['x', 'y', 'z'] as const)[axis]));
  const near = (path: string): Set<string> => new Set((all.get(path) ?? []).filter((p) => p.made?.holds === 'glue').flatMap(partsOf));
  const both = near(b);
  for (const path of near(a)) {
    const q = parts.get(path);
    if (!q || path === panel.path || path === a || path === b || !both.has(path)) continue;
    const grain: Vec3 = outDir(q.frame, axisVec(q.record.grain));
    if (Math.abs(dot(grain, way)) > 0.9) return path;
  }
  return null;
}
function describe(facts: Facts, part: Part, low: JointPlace, high: JointPlace, axis: 0 | 1 | 2, tie: string): ReturnType<typeof finding> {
  const wide = part.record.stock.max[axis] - part.record.stock.min[axis];
  const patches = [low, high].filter((p, i) => i === 0 || p.joint !== low.joint).flatMap((p) => withoutGlue(facts.doc, p));
  return finding({
    rule: 'panel-held',
    grade: 'trouble',
    title: 'A panel is glued in at both edges',
    parts: [part.path, partsOf(low)[1] ?? '', partsOf(high)[1] ?? ''],
    joint: jointName(low),
    where: whereAt(low.meeting.frame, reachOf(low)),
    measured: wide,
    limit: 0,
    unit: 'mm',
    basis: 'computed',
    why: `${cap(the(facts, part.path))} is {mm:${wide}} wide across its grain and glued at both edges, while ${the(facts, tie)} keeps these at one distance. When it dries it splits. Let it lie loose in its grooves, or glue it at the middle alone.`,
    source: { name: 'woodworkingtips.com, panels in frames', basis: 'read' },
    remedies: patches.length ? [remedy('Leave it without glue', patches, 'The grooves alone hold it.')] : [],
  });
}
