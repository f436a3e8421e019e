/** Two placed solids against each other. Touching is not overlapping, and nothing here asks whether a body is empty. */
import { type Box, boxesNear, middleOf, outBox } from '../geom/box.ts';
import { type Frame, inDir, outPoint, seenFrom } from '../geom/frame.ts';
import { type Vec3, scale } from '../geom/vec3.ts';
import { type Facets, placedFacets } from './facets.ts';
import { huskOf } from './husk.ts';
import { type Body } from './kernel.ts';
import { LEAST_VOLUME, boxOf } from './measure.ts';
import { readBody } from './read.ts';
import { own, withSolids } from './scope.ts';
import { placed } from './shape.ts';
import type { Solid } from './solid.ts';

/** What two solids share; mm, mm², mm³, world. */
export type Bite = {
  readonly volume: number;
  /** Of its surface, without the sheets of no thickness where the two only touch. */
  readonly area: number;
  /** 2 volume / area: about how deep they bite into each other, whatever the shape. */
  readonly thickness: number;
  readonly box: Box;
  readonly at: Vec3;
  /** Triangles of the shared wood, only when asked for. */
  readonly facets: Facets | null;
};

/**
 * The wood that `a` standing in `fa` and `b` standing in `fb` both claim; null when it is no more than rounding
 * (`LEAST_VOLUME`), which is so for all that only touch. Whether a bite is deep enough to matter is for the caller's tolerance.
 */
export function overlap(a: Solid, fa: Frame, b: Solid, fb: Frame, want: { readonly facets?: boolean } = {}): Bite | null {
  if (!mayTouch(a, fa, b, fb)) return null;
  return withSolids(() => {
    const shared = own(a.body.intersect(beside(b, seenFrom(fa, fb))));
    const volume = shared.volume();
    if (!(volume > LEAST_VOLUME)) return null;
    const { area, box, facets } = huskOf(readBody(shared));
    if (!box) return null;
    const at = outPoint(fa, middleOf(box));
    return {
      volume,
      area,
      thickness: (2 * volume) / area,
      box: outBox(fa, box),
      at,
      facets: want.facets ? placedFacets(facets, fa) : null,
    };
  });
}
/**
 * mm² over which two solids that touch lie on each other, looking along `along` (unit, world, from a to b): what they share
 * when b comes `step` nearer, divided by that step.
 */
export function contactArea(a: Solid, fa: Frame, b: Solid, fb: Frame, along: Vec3, step = 1e-3): number {
  if (!mayTouch(a, fa, b, fb, step)) return 0;
  return withSolids(() => {
    const there = seenFrom(fa, fb);
    const by = scale(inDir(fa, along), -step);
    const nearer: Frame = { ...there, o: [there.o[0] + by[0], there.o[1] + by[1], there.o[2] + by[2]] };
    return own(a.body.intersect(beside(b, nearer))).volume() / step;
  });
}
/** mm of air between two solids that stand apart, `upTo` when it is more; 0 when they touch anywhere or overlap. */
export function gapBetween(a: Solid, fa: Frame, b: Solid, fb: Frame, upTo: number): number {
  if (!mayTouch(a, fa, b, fb, upTo)) return upTo;
  return withSolids(() => a.body.minGap(beside(b, seenFrom(fa, fb)), upTo));
}
/** Do the boxes of the two come within `by` of each other? Looked at from both, since a leaning box looks too large from outside. */
function mayTouch(a: Solid, fa: Frame, b: Solid, fb: Frame, by = 0): boolean {
  const [boxA, boxB] = [boxOf(a), boxOf(b)];
  if (!boxA || !boxB) return false;
  return boxesNear(boxA, outBox(seenFrom(fa, fb), boxB), by) && boxesNear(outBox(seenFrom(fb, fa), boxA), boxB, by);
}

/**
 * b, brought into a's frame. Relative frames that are whole quarter turns come out of sines with a last bit too many, which
 * would part faces that lie on each other; nothing a maker means is as small as what is dropped here.
 */
function beside(b: Solid, there: Frame): Body {
  return placed(b.body, { o: near(there.o, 1e9), x: near(there.x, 1e12), y: near(there.y, 1e12), z: near(there.z, 1e12) });
}
const near = (v: Vec3, grain: number): Vec3 => [
  Math.round(v[0] * grain) / grain,
  Math.round(v[1] * grain) / grain,
  Math.round(v[2] * grain) / grain,
];
