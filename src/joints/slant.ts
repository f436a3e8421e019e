/** Flat contacts that lean: a patch given by its corners in the meeting frame, and wood that goes over from one outline to another. */
import { type Frame, inPoint } from '../geom/frame.ts';
import { polygon } from '../geom/loop.ts';
import { type Vec2, type Vec3, cross, dot, scale, sub, unit } from '../geom/vec3.ts';
import type { FaceRef, Feature, FeatureOp } from '../model/record.ts';
import type { FlatPatch } from './blocks.ts';
import type { Polygon } from './meeting.ts';

/** A flat patch by its corners, in order; its normal is square to them and looks more with `out` than against it. */
export function slant(corners: readonly [Vec3, Vec3, Vec3, ...Vec3[]], out: Vec3): FlatPatch {
  const [a, b, c] = corners;
  const x = unit(sub(b, a));
  const n = unit(cross(x, sub(c, b)));
  const z = dot(n, out) < 0 ? scale(n, -1) : n;
  const frame: Frame = { o: a, x, y: cross(z, x), z };
  return { frame, patch: corners.map((p): Vec2 => [inPoint(frame, p)[0], inPoint(frame, p)[1]]) };
}
/**
 * An outline in the meeting's xz-plane that goes over straight from the one at `low` to the one at `high` along y. Both have the same
 * corners, counter-clockwise as x is drawn to the right and z up; `sides` names the side after each corner.
 */
export function loft(
  name: string,
  op: FeatureOp,
  ends: readonly [{ readonly y: number; readonly outline: Polygon }, { readonly y: number; readonly outline: Polygon }],
  sides: readonly (string | null)[],
  faces: readonly [string, string],
): Feature {
  const [low, high] = ends;
  const named: Record<string, FaceRef> = { [faces[0]]: { of: 'to' }, [faces[1]]: { of: 'from' } };
  sides.forEach((word, corner) => {
    if (word) named[word] = { of: 'side', corner };
  });
  // The solid's frame is right-handed with its z against y: it runs from the high outline to the low one.
  const at: Frame = { o: [0, 0, 0], x: [1, 0, 0], y: [0, 0, 1], z: [0, -1, 0] };
  const same = low.outline.every((p, i) => p[0] === high.outline[i]?.[0] && p[1] === high.outline[i]?.[1]);
  return {
    name,
    op,
    at,
    why: 'joint',
    solid: {
      kind: 'prism',
      profile: [polygon(...high.outline)],
      from: -high.y,
      to: -low.y,
      ...(same ? {} : { profileTo: [polygon(...low.outline)] }),
    },
    faces: named,
  };
}
