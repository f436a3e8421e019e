/** Where buttons, slots and screws lie. The meeting's z runs down from the top's underside into the rail. */
import { type Axis, type Vec3, axisIndex, axisVec } from '../../geom/vec3.ts';
import { isWood } from '../../wood/woods.ts';
import { alongGrain, boxOf, isSquare, ownSense, sharedSpan, sideIn } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { Button } from './params.ts';
import type { Box } from '../../geom/box.ts';

export type Span = readonly [number, number];
export type Ground = {
  readonly under: MeetSide;
  readonly rail: MeetSide;
  /** The axis along the rail, the one across it, and which way along that one the rail's inner face looks. */
  readonly along: 'x' | 'y';
  readonly across: 'x' | 'y';
  readonly inner: 1 | -1;
  /** The rail under the top, along it; and where its inner face stands. */
  readonly run: Span;
  readonly face: number;
  readonly railThick: number;
  readonly railHigh: number;
  readonly topThick: number;
  readonly gap: number;
  /** Distance over which the top moves, from its middle: across the rail, and along it to the farthest end; 0 where it does not. */
  readonly movesAcross: number;
  readonly movesAlong: number;
};
export function ground(m: Meeting): Ground | null {
  const under = sideIn(m, 'under');
  const rail = sideIn(m, 'rail');
  if (!isSquare(m)) return null;
  const along = railAxis(rail);
  const across = along === 'x' ? 'y' : 'x';
  const [i, j] = [axisIndex(along), axisIndex(across)];
  const run = sharedSpan(under.box, rail.box, along);
  const inner = innerSide(under, rail, across);
  const face = inner > 0 ? rail.box.max[j] : rail.box.min[j];
  const middle = (k: 0 | 1 | 2): number => (under.box.min[k] + under.box.max[k]) / 2;
  // Room is needed only where the top itself is there to be held.
  const inside = inner > 0 ? under.box.max[j] - face : face - under.box.min[j];
  if (run[1] - run[0] < 1 || inside < 10) return null;
  const swells = isWood(under.wood);
  return {
    under,
    rail,
    along,
    across,
    inner,
    run,
    face,
    railThick: rail.box.max[j] - rail.box.min[j],
    railHigh: rail.box.max[2] - rail.box.min[2],
    topThick: under.box.max[2] - under.box.min[2],
    gap: m.gap,
    movesAcross: swells && !alongGrain(under, axisVec(across)) ? Math.abs(face - middle(j)) : 0,
    movesAlong: swells && !alongGrain(under, axisVec(along)) ? Math.max(Math.abs(run[0] - middle(i)), Math.abs(run[1] - middle(i))) : 0,
  };
}
function railAxis(rail: MeetSide): 'x' | 'y' {
  if (Math.abs(rail.grain[0]) > 0.99) return 'x';
  if (Math.abs(rail.grain[1]) > 0.99) return 'y';
  return rail.box.max[0] - rail.box.min[0] > rail.box.max[1] - rail.box.min[1] ? 'x' : 'y';
}
/** The side that the mark 'inner' names; else the one that looks to the top's middle. */
function innerSide(under: MeetSide, rail: MeetSide, across: Axis): 1 | -1 {
  const i = axisIndex(across);
  const mark = rail.marks['inner']?.normal[i] ?? 0;
  if (Math.abs(mark) > 0.99) return mark > 0 ? 1 : -1;
  const lead = under.box.min[i] + under.box.max[i] - rail.box.min[i] - rail.box.max[i];
  return Math.abs(lead) < 1e-6 ? ownSense(rail, across) : lead > 0 ? 1 : -1;
}
/** Middles of the buttons along the rail, from its own low end. */
export function spots(g: Ground, s: Pick<Button, 'count' | 'inset'>): number[] {
  const [a, b] = [g.run[0] + s.inset, g.run[1] - s.inset];
  const all = Array.from({ length: s.count }, (_, k) => (s.count === 1 ? (a + b) / 2 : a + ((b - a) * k) / (s.count - 1)));
  return ownSense(g.rail, g.along) > 0 ? all : all.toReversed();
}
/** A point given along the rail, inward from its inner face, and down from the top's underside. */
export function point(g: Ground, along: number, inward: number, down: number): Vec3 {
  const across = g.face + g.inner * inward;
  return g.along === 'x' ? [along, across, down] : [across, along, down];
}
export function boxAt(g: Ground, along: Span, inward: Span, down: Span): Box {
  const [p, q] = [point(g, along[0], inward[0], down[0]), point(g, along[1], inward[1], down[1])];
  return boxOf(p[0], q[0], p[1], q[1], p[2], q[2]);
}
/** The button's height, its upper face `draw` below the top, its lower one flush with the tongue's. */
export const height = (s: Button): number => s.lip + s.tongue - s.draw;
/** How deep the slot is: a little deeper than the tongue at its farthest. */
export const slotDepth = (s: Button): number => s.reach + 1;
/** How much taller than the tongue the slot is, mm. */
export const SLACK = 1;
/** How deep the screw goes into the top. */
export const bite = (g: Ground, s: Button): number => s.screw_length - height(s) - s.draw - g.gap;
/** A groove along the rail, short of its ends where it must stay clear of the tenons. */
export function grooveSpan(g: Ground, s: Pick<Button, 'stop'>): Span {
  const i = axisIndex(g.along);
  return [g.rail.box.min[i] + s.stop, g.rail.box.max[i] - s.stop];
}
/** How far the outermost button can slide along the rail each way before it meets an end of its slot, mm. */
export const slides = (g: Ground, s: Button): number => {
  if (s.slot === 'mortises') return s.allow;
  const [low, high] = grooveSpan(g, s);
  const at = spots(g, s);
  return Math.min(Math.min(...at) - s.width / 2 - low, high - Math.max(...at) - s.width / 2);
};
