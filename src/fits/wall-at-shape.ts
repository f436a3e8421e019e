import type { Part } from '../build/part.ts';
import { outPoint } from '../geom/frame.ts';
import { dot } from '../geom/vec3.ts';
import { type Facet, bodyOf } from '../joints/convex.ts';
import { isFace } from '../model/ids.ts';
import type { PartRecord } from '../model/record.ts';
import { type Check, type Facts, finding, jointName, partsOf, the } from './check.ts';
import { type JointCut, jointCuts, middle } from './joint-cuts.ts';
import { once } from './once.ts';

const LEAST = 4;
const PLAY = 0.05;

/** Wood left between a mortise and a tapered or otherwise shaped face beside it. The flat faces of the stock are the families' own matter. */
export const wallAtShape: Check = {
  id: 'wall-at-shape',
  wave: 1,
  words: 'A taper or another shape leaves only thin wood beside a mortise.',
  run: (facts) =>
    [...jointCuts(facts.built)].flatMap(([path, cuts]) => {
      const part = facts.built.built.parts.get(path);
      return part ? cuts.filter((c) => !c.name.startsWith('hole')).flatMap((c) => thin(facts, part, c)) : [];
    }),
};
const shapedFaces = once((record: PartRecord): readonly Facet[] => {
  const shapes = record.features.filter((f) => f.op === 'shape' && f.why === 'shape');
  return shapes.length ? bodyOf(record.stock, shapes).filter((f) => !isFace(f.of)) : [];
});
function thin(facts: Facts, part: Part, cut: JointCut): ReturnType<typeof finding>[] {
  const walls = shapedFaces(part.record)
    // Neither the face that it is cut into nor the one at its bottom: its own family looks at these.
    .filter((f) => Math.abs(dot(f.plane.normal, cut.goesIn)) < 0.7)
    .map((f) => ({ of: f.of, wall: f.plane.off - Math.max(...cut.points.map((p) => dot(f.plane.normal, p))) }));
  const worst = walls.reduce<(typeof walls)[number] | null>((w, x) => (w && w.wall <= x.wall ? w : x), null);
  if (!worst || worst.wall >= LEAST - PLAY) return [];
  const out = worst.wall <= 0;
  const other = the(facts, partsOf(cut.place)[0] ?? '');
  return [
    finding({
      rule: 'wall-at-shape',
      grade: out ? 'stops' : 'trouble',
      title: out ? 'The mortise comes out at a shaped face' : 'Thin wood between a mortise and a shaped face',
      parts: [part.path, partsOf(cut.place)[0] ?? ''],
      joint: jointName(cut.place),
      where: { at: outPoint(part.frame, middle(cut.points)), reach: 25 },
      measured: Math.max(0, worst.wall),
      limit: LEAST,
      unit: 'mm',
      basis: 'computed',
      why: out
        ? `In ${the(facts, part.path)} the ${cut.name} for ${other} reaches {mm:${-worst.wall}} through the face of the ${worst.of}.`
        : `In ${the(facts, part.path)} only {mm:${worst.wall}} of wood is left between the ${cut.name} for ${other} and the face of the ${worst.of}.`,
      source: { name: 'common practice: wood beside a mortise is at least 4 mm thick', basis: 'common practice' },
    }),
  ];
}
