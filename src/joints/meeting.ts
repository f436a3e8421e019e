/** How two (or more) parts meet, before any joint is cut: pure data from their boxes, in the meeting frame. */
import type { Box } from '../geom/box.ts';
import type { Frame } from '../geom/frame.ts';
import type { Vec2, Vec3 } from '../geom/vec3.ts';
import type { Feature } from '../model/record.ts';

/** All points p with normal·p = off; the normal points out of the wood it bounds. mm, in the frame of whatever holds it. */
export type Plane = { readonly normal: Vec3; readonly off: number };
export type Polygon = readonly Vec2[];

export type MeetKind =
  'end-to-face' | 'end-to-edge' | 'edge-to-edge' | 'edge-to-face' | 'face-to-face' | 'corner' | 'cross' | 'point' | 'none';

/** One part as it comes to the meeting: everything seen in the meeting frame unless said otherwise. */
export type MeetSide = {
  readonly path: string;
  readonly wood: string;
  /** The part's record frame seen in the meeting frame (maybe left-handed). */
  readonly frame: Frame;
  /** Its un-jointed stock, in its own record frame. */
  readonly stock: Box;
  /** The smallest box round the stock in the meeting frame: the stock itself when the parts meet square. */
  readonly box: Box;
  /** Whether `box` is the stock itself (quarter turns). */
  readonly square: boolean;
  /** Unit vector along the grain, in the meeting frame. */
  readonly grain: Vec3;
  /** The face of this part that takes part, by its compass name in the part's own frame: left right front back bottom top. */
  readonly end: string;
  /** Named faces of the wood (marks), as planes in the meeting frame. */
  readonly marks: Readonly<Record<string, Plane>>;
  /** Shapes (tapers, outlines, trims) that are cut from the stock, `at` in the meeting frame. */
  readonly shapes: readonly Feature[];
};

/**
 * The meeting frame belongs to the entering (first) role: origin on the middle of its shoulder (the middle of its end face for
 * an end; the middle of the shared patch else), +z out of it into the receiver. For an entering end, +x runs along the THINNER of
 * the two cross-section sizes of the entering part (its thickness) and +y along the wider (its width); equal sizes: x is the earlier compass axis.
 * For an entering edge or face, +y runs along the entering part's grain or, where the grain is z, along the longer side, and x across.
 * x and y always point along the entering part's own positive compass axes, so the frame may be left-handed; that is what
 * gives handed copies equal records. With a mirrored part everything mirrors with it.
 */
export type Meeting = {
  readonly kind: MeetKind;
  readonly touch: 'touch' | 'share' | 'gap';
  /**
   * Signed distance from the shoulder to the receiver's face along +z: above 0 the shoulder stands open, below 0 it bites. 0 where they share by design,
   * and where a square end bites into a round or slanted surface on which it cannot close: `face` tells where that lies.
   */
  readonly gap: number;
  /** The meeting frame seen from the world. */
  readonly frame: Frame;
  /** What the two touch by, in the meeting frame's xy-plane. */
  readonly patch: Polygon;
  /** The entering part's end plane and the receiver's face plane, in the meeting frame; equal and opposite where they touch. */
  readonly shoulder: Plane;
  readonly face: Plane;
  /** How far the entering part leans from square to the receiver's face, radians: rake in the meeting's yz-plane, splay in its xz-plane. */
  readonly angle: { readonly rake: number; readonly splay: number };
  /** By role; more than one only for roles of count 'many'. */
  readonly sides: Readonly<Record<string, readonly MeetSide[]>>;
};
