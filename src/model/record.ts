/**
 * What a part is, as data: a stock box and the features cut from it or left standing on it. Joints and shapes make these;
 * `solids/` is one interpreter of them, the exact B-rep reader used in tests is another. Everything is mm in the part's
 * record frame, rounded to 1e-6.
 */
import type { Box } from '../geom/box.ts';
import type { Frame } from '../geom/frame.ts';
import type { Loop } from '../geom/loop.ts';
import type { Axis, Vec3 } from '../geom/vec3.ts';

/**
 * A simple solid in its own frame (`Feature.at`).
 * prism: the profile (first loop the outline, the others holes) in the frame's xy-plane, swept from z = from to z = to (from < to);
 *   with `profileTo` (same corners) the outline goes over straight into that one at `to`.
 * turned: the profile's x is the radius (>= 0) and its y runs along the frame's z; turned once round z.
 * half: all points p with normal·p >= off.
 */
export type Shape =
  | {
      readonly kind: 'prism';
      readonly profile: readonly Loop[];
      readonly from: number;
      readonly to: number;
      readonly profileTo?: readonly Loop[];
    }
  | { readonly kind: 'turned'; readonly profile: Loop }
  | { readonly kind: 'half'; readonly normal: Vec3; readonly off: number };

/** Which face of a feature's solid: the side that starts at corner n of loop `loop` (0 the outline), an end, or the plane of a half. */
export type FaceRef =
  | { readonly of: 'side'; readonly loop?: number; readonly corner: number }
  | { readonly of: 'from' }
  | { readonly of: 'to' }
  | { readonly of: 'plane' };

/**
 * A part's solid is ((stock - shapes) + adds) - removes, then - lates, so the order of joints does not matter.
 * `late` is only for flush trimming of pegs, wedges and plugs.
 */
export type FeatureOp = 'shape' | 'add' | 'remove' | 'late';
export type Feature = {
  /** What it is in the trade's word, unique within its joint: 'mortise', 'tenon', 'peg hole 1'. */
  readonly name: string;
  readonly op: FeatureOp;
  readonly solid: Shape;
  /** The solid's frame, seen from the part's record frame (from the meeting frame while a family makes it). May be left-handed. */
  readonly at: Frame;
  /** Names of the faces that matter: 'cheek left', 'bottom', 'shoulder'. */
  readonly faces: Readonly<Record<string, FaceRef>>;
  readonly why: 'joint' | 'shape' | 'trim';
};

/** Serialisable and hashable: what `bench.cut` freezes. Features are sorted by `partRecord`. */
export type PartRecord = {
  readonly stock: Box;
  readonly grain: Axis;
  readonly wood: string;
  readonly features: readonly Feature[];
  /** Hash of the geometry and wood, without names: equal keys, equal solids. */
  readonly key: string;
};
