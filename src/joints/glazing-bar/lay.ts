/** Where the crossing lies. In the meeting z runs through the bars' thickness, y along the over bar and x along the under bar. */
import type { Corner } from '../../geom/loop.ts';
import { type Vec2, axisIndex, axisVec } from '../../geom/vec3.ts';
import type { Face } from '../../model/ids.ts';
import { alongGrain, isSquare, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import { showing } from '../profile.ts';
import type { GlazingBar } from './params.ts';

export type Span = readonly [number, number];
/** Faces may fail to be flush by this much, mm. */
const FLUSH = 0.5;
/** One bar: the axis that it runs along, the one across it, where it lies on that, and how wide it is. */
export type Bar = {
  readonly side: MeetSide;
  readonly along: 'x' | 'y';
  readonly across: 'x' | 'y';
  readonly at: Span;
  readonly wide: number;
};
export type Ground = { readonly over: Bar; readonly under: Bar; readonly z: Span; readonly thick: number };
export function ground(m: Meeting): Ground | null {
  const [over, under] = [barOf(sideIn(m, 'over'), 'y'), barOf(sideIn(m, 'under'), 'x')];
  if (!isSquare(m) || !over || !under) return null;
  const [a, b] = [over.side.box, under.side.box];
  const crosses = (['x', 'y'] as const).every((axis) => {
    const shared = sharedSpan(a, b, axis);
    const [narrow, long] = axis === 'x' ? [a, b] : [b, a];
    const i = axisIndex(axis);
    return shared[1] - shared[0] > 1 && long.min[i] < narrow.min[i] - 1e-3 && long.max[i] > narrow.max[i] + 1e-3;
  });
  const flush = Math.abs(a.min[2] - b.min[2]) <= FLUSH && Math.abs(a.max[2] - b.max[2]) <= FLUSH;
  return crosses && flush ? { over, under, z: [a.min[2], a.max[2]], thick: a.max[2] - a.min[2] } : null;
}
function barOf(side: MeetSide, along: 'x' | 'y'): Bar | null {
  const across = along === 'x' ? 'y' : 'x';
  const i = axisIndex(across);
  const at: Span = [side.box.min[i], side.box.max[i]];
  return alongGrain(side, axisVec(along)) ? { side, along, across, at, wide: at[1] - at[0] } : null;
}
/** The over bar's face that shows where nothing is said: its face side, else its front or top. */
export const showsOf = (g: Ground): Face => showing(g.over.side, 'z', ['front', 'top', 'left'], 'front');

export type Laid = {
  readonly g: Ground;
  readonly s: GlazingBar;
  /** Which way along z the face that shows looks, and where it lies. */
  readonly face: 1 | -1;
  readonly front: number;
  /** Depth at which the bars are parted. */
  readonly lap: number;
  readonly size: number;
};
export function layOut(g: Ground, s: GlazingBar): Laid {
  const face = signAlong(g.over.side, s.shows, 'z');
  if (face === null) throw new Error(`"${s.shows}" is no face of the bar that could show: propose refuses it`);
  return { g, s, face, front: face > 0 ? g.z[1] : g.z[0], lap: lapOf(g, s), size: s.moulding === 'none' ? 0 : s.moulding_size };
}
export const isRabbeted = (s: Pick<GlazingBar, 'rabbet_deep'>): boolean => s.rabbet_deep > 0;
export const lapOf = (g: Ground, s: Pick<GlazingBar, 'rabbet_deep'>): number => (isRabbeted(s) ? g.thick - s.rabbet_deep : g.thick / 2);
export const zAt = (l: Laid, depth: number): number => l.front - l.face * depth;
export const depths = (l: Laid, a: number, b: number): Span => {
  const [p, q] = [zAt(l, a), zAt(l, b)];
  return p < q ? [p, q] : [q, p];
};
/** A bar's tongue across it; its whole width where it has no rabbets. */
export function tongue(l: Laid, b: Bar): Span {
  const less = isRabbeted(l.s) ? l.s.rabbet_wide : 0;
  return [b.at[0] + less, b.at[1] - less];
}
/** The moulded arris at one side of a bar, from the face to the side, in [across, z]: two corners, the first with its round. */
export function arris(l: Laid, b: Bar, sign: 1 | -1): readonly [Corner, Corner] {
  const side = sign > 0 ? b.at[1] : b.at[0];
  const at = (inward: number, depth: number): Vec2 => [side - sign * inward, zAt(l, depth)];
  const c = l.size * (1 - Math.SQRT1_2);
  const from = at(l.size, 0);
  return [l.s.moulding === 'ovolo' ? { at: from, via: at(c, c) } : { at: from }, { at: at(0, l.size) }];
}
