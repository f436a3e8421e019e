import type { Part } from '../build/part.ts';
import { boxesNear } from '../geom/box.ts';
import { outPoint } from '../geom/frame.ts';
import { dot } from '../geom/vec3.ts';
import type { Remedy } from '../model/finding.ts';
import { type Check, type Facts, exactText, finding, lengthKept, lengthTick, partsOf, remedy, setPatch, the } from './check.ts';
import { type JointCut, jointCuts, wallBetween } from './joint-cuts.ts';

/** Least wood between two cuts that stand side by side, and between the bottoms of two that come from opposite faces, mm. */
const BESIDE = 4;
const BACK_TO_BACK = 3;
const PLAY = 0.05;

/** Wood left between the cuts of two joints in one part. Each family looks at its own; this one at all of them together. */
export const wallBetweenCuts: Check = {
  id: 'wall-between',
  wave: 1,
  words: 'Two joints leave only a thin wall of wood between them.',
  run: (facts) =>
    [...jointCuts(facts.built)].flatMap(([path, cuts]) => {
      const part = facts.built.built.parts.get(path);
      // Of several cuts between the same two joints the thinnest wall speaks.
      return part
        ? neighbours(cuts)
            .flatMap(([a, b]) => thin(facts, part, a, b))
            .sort((x, y) => x.measured - y.measured)
        : [];
    }),
};
/** Cuts that come near enough to each other to be looked at: a row of housings has very many that do not. */
function neighbours(cuts: readonly JointCut[]): [JointCut, JointCut][] {
  const near = (a: JointCut, b: JointCut): boolean => boxesNear(a.box, b.box, BESIDE);
  return cuts.flatMap((a, i) => {
    const out: [JointCut, JointCut][] = [];
    for (let k = i + 1; k < cuts.length; k++) {
      const b = cuts[k] as JointCut;
      if (a.place !== b.place && near(a, b)) out.push([a, b]);
    }
    return out;
  });
}
function thin(facts: Facts, part: Part, a: JointCut, b: JointCut): ReturnType<typeof finding>[] {
  const { wall, across, at } = wallBetween(a, b);
  const depthwise = [a, b].filter((c) => Math.abs(dot(c.goesIn, across)) > 0.7).length;
  // A mortise whose bottom comes near the cheek of another is usual: they often run into each other inside a leg.
  if (depthwise === 1 || (depthwise === 2 && dot(a.goesIn, b.goesIn) > 0)) return [];
  const limit = depthwise === 2 ? BACK_TO_BACK : BESIDE;
  if (wall < -1e-6 || wall >= limit - PLAY) return [];
  const [p, q] = [partsOf(a.place)[0] ?? '', partsOf(b.place)[0] ?? ''];
  return [
    finding({
      rule: 'wall-between',
      grade: 'trouble',
      title: 'Thin wood between two joints',
      parts: [part.path, p, q],
      joint: [a.place, b.place].map((x) => `${x.joint}/${x.place}`).join(' '),
      where: { at: outPoint(part.frame, at), reach: 25 },
      measured: wall,
      limit,
      unit: 'mm',
      basis: 'computed',
      why: `In ${the(facts, part.path)} only {mm:${wall}} of wood is left between the ${a.name} for ${the(facts, p)} and the ${b.name} for ${the(facts, q)}; it breaks when either is driven home.`,
      source: { name: 'common practice: wood beside a mortise is at least 4 mm thick', basis: 'common practice' },
      remedies: [a, b].flatMap((c) => shifted(facts, c, limit - wall)),
    }),
  ];
}
/** A tenon set higher or lower on its part by what is wanting: whichever way proves to clear. */
function shifted(facts: Facts, { place }: JointCut, by: number): Remedy[] {
  const drop = place.sizes?.['drop'];
  if (typeof drop !== 'number' || place.family.params['drop']?.kind !== 'length') return [];
  const unit = facts.doc.units;
  const far = lengthKept(by, unit) < by - 1e-6 ? lengthKept(by, unit) + lengthTick(unit) : by;
  const part = the(facts, partsOf(place)[0] ?? '');
  const to = (n: number): string => (n < 0 ? `-${exactText(-n, unit)}` : exactText(n, unit));
  return ([1, -1] as const).map((way) =>
    remedy(
      `Set the end of ${part} {mm:${far}} ${way > 0 ? 'lower' : 'higher'}`,
      setPatch(facts.doc, place.joint, 'drop', to(drop + way * far)),
      'The wood beside it grows by as much.',
    ),
  );
}
