/** Where round, cove and hinges lie. In the meeting x runs through the thickness, y along the joint, z from the leaf into the top. */
import type { Box } from '../../geom/box.ts';
import type { Corner, Loop } from '../../geom/loop.ts';
import type { Vec2, Vec3 } from '../../geom/vec3.ts';
import { boxOf, isSquare, ownSense, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import { showing } from '../profile.ts';
import type { Face } from '../../model/ids.ts';
import type { RuleJoint } from './params.ts';

export type Span = readonly [number, number];
/** Surfaces may fail to be flush by this much as built, mm. */
const FLUSH = 2;
/** How much wider than the knuckle its channel is, all round, mm. */
export const SLACK = 0.5;
export type Ground = {
  readonly leaf: MeetSide;
  readonly top: MeetSide;
  readonly run: Span;
  readonly thick: number;
  readonly gap: number;
  /** How far leaf and top reach from the joint. */
  readonly leafDeep: number;
  readonly topDeep: number;
};
export function ground(m: Meeting): Ground | null {
  const [leaf, top] = [sideIn(m, 'leaf'), sideIn(m, 'top')];
  const run = sharedSpan(leaf.box, top.box, 'y');
  const flush = [leaf.box.min[0] - top.box.min[0], leaf.box.max[0] - top.box.max[0]].every((d) => Math.abs(d) <= FLUSH);
  if (!isSquare(m) || !flush || run[1] - run[0] < 1) return null;
  return {
    leaf,
    top,
    run,
    thick: top.box.max[0] - top.box.min[0],
    gap: m.gap,
    leafDeep: -leaf.box.min[2],
    topDeep: top.box.max[2] - m.gap,
  };
}
/** The leaf's face that is the table's surface where nothing is said. */
export const upperOf = (g: Ground): Face => {
  const own: readonly Face[] = ['right', 'back', 'top'];
  return showing(g.leaf, 'x', ['top', ...own], 'top');
};
/** Everything as it hangs on the sizes: depths count from the surface down, `out` from the line that shows towards the leaf. */
export type Laid = {
  readonly g: Ground;
  readonly s: RuleJoint;
  /** Which way along x the surface looks, and where it lies. */
  readonly up: 1 | -1;
  readonly surface: number;
  /** Depth of the pin, and the pin above the underside. */
  readonly pin: number;
  readonly above: number;
  /** Radius of the cove, and where the round comes out at the underside. */
  readonly cove: number;
  readonly foot: number;
  /** Depths of the flaps' two faces. */
  readonly flap: Span;
};
export function layOut(g: Ground, s: RuleJoint): Laid {
  const up = signAlong(g.leaf, s.upper, 'x');
  if (up === null) throw new Error(`"${s.upper}" is no face of the leaf's surface: propose refuses it`);
  const pin = s.fillet + s.radius;
  const above = g.thick - pin;
  const low = pin + s.knuckle / 2;
  return {
    g,
    s,
    up,
    surface: up > 0 ? g.top.box.max[0] : g.top.box.min[0],
    pin,
    above,
    cove: s.radius + s.clearance,
    foot: Math.sqrt(s.radius * s.radius - above * above),
    flap: [low - s.flap_thick, low],
  };
}
/** The depth past which a cut from below runs out of both boards. */
export const under = (l: Laid): number => {
  const far = l.up > 0 ? Math.min(l.g.top.box.min[0], l.g.leaf.box.min[0]) : Math.max(l.g.top.box.max[0], l.g.leaf.box.max[0]);
  return (l.surface - far) * l.up;
};
export const xAt = (l: Laid, depth: number): number => l.surface - l.up * depth;
/** Spots of the meeting's xz-plane from depth and out, as measured from the top's own edge or from the leaf's. */
export const onTop = (l: Laid, [depth, out]: Vec2): Vec2 => [xAt(l, depth), l.g.gap - out];
export const onLeaf = (l: Laid, [depth, out]: Vec2): Vec2 => [xAt(l, depth), -out];
export const pinAt = (l: Laid, y: number, off = l.g.gap): Vec3 => [xAt(l, l.pin), y, off];
export function loopOf(at: (p: Vec2) => Vec2, corners: readonly Corner[]): Loop {
  return corners.map((c) => (c.via ? { at: at(c.at), via: at(c.via) } : { at: at(c.at) }));
}
/** A spot on a circle about the pin's centre, by its angle from straight up towards the leaf. */
export const about = (l: Laid, r: number, angle: number): Vec2 => [l.pin - r * Math.cos(angle), r * Math.sin(angle)];
/** Middles of the hinges along the joint, from the leaf's own low end. */
export function spots(l: Laid): number[] {
  const [a, b] = [l.g.run[0] + l.s.inset, l.g.run[1] - l.s.inset];
  const n = l.s.hinges;
  const all = Array.from({ length: n }, (_, k) => (n === 1 ? (l.g.run[0] + l.g.run[1]) / 2 : a + ((b - a) * k) / (n - 1)));
  return ownSense(l.g.leaf, 'y') > 0 ? all : all.toReversed();
}
export const hingeSpan = (l: Laid, at: number): Span => [at - l.s.hinge_long / 2, at + l.s.hinge_long / 2];
/** A box between two depths and two spots out, measured from the top's edge or the leaf's. */
export function boxAt(l: Laid, depth: Span, run: Span, out: Span, off: number): Box {
  return boxOf(xAt(l, depth[0]), xAt(l, depth[1]), run[0], run[1], off - out[0], off - out[1]);
}
