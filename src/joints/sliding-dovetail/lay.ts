/** Where tail and socket lie, in the meeting frame: x through the tailed board's thickness, y along the slide, z into the other board. */
import type { Vec2 } from '../../geom/vec3.ts';
import { alongGrain, isSquare, ownSense, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { SlidingDovetail } from './params.ts';

export type Span = readonly [number, number];
export type Ground = {
  readonly enter: MeetSide;
  readonly into: MeetSide;
  /** The tailed board's thickness, and the length that both share along the slide. */
  readonly x: Span;
  readonly y: Span;
  /** Thickness of the board with the socket. */
  readonly thick: number;
  readonly gap: number;
  /** One board moves along the slide with the seasons where the other does not. */
  readonly crosses: boolean;
};
export function ground(m: Meeting): Ground | null {
  const enter = sideIn(m, 'enter');
  const into = sideIn(m, 'into');
  const y = sharedSpan(enter.box, into.box, 'y');
  const x: Span = [enter.box.min[0], enter.box.max[0]];
  const inside = x[0] > into.box.min[0] - x[1] + x[0] && x[1] < into.box.max[0] + x[1] - x[0];
  if (!isSquare(m) || y[1] - y[0] < 1e-6 || !inside) return null;
  const along = (s: MeetSide): boolean => alongGrain(s, [0, 1, 0]);
  return { enter, into, x, y, thick: into.box.max[2] - into.box.min[2], gap: m.gap, crosses: along(enter) !== along(into) };
}
/** Which way along y the tail leaves; null when the word names no edge beside the tail. */
export const leaves = (g: Ground, from: string): 1 | -1 | null => signAlong(g.enter, from, 'y');
/** The low and the high side of the tail along x: does it slant? null when the word names no face beside the tail. */
export function slants(g: Ground, slanted: string): readonly [boolean, boolean] | null {
  if (slanted === 'both') return [true, true];
  const sign = signAlong(g.enter, slanted, 'x');
  return sign === null ? null : [sign < 0, sign > 0];
}
/** The edges beside the tail by their own names, the one that usually goes in last first. */
export function edgeWords(g: Ground): string[] {
  const own = ownSense(g.enter, 'y');
  const words = ['back', 'front', 'left', 'right', 'bottom', 'top'].filter((w) => signAlong(g.enter, w, 'y') !== null);
  return words.includes('back') ? words : words.sort((a) => (signAlong(g.enter, a, 'y') === own ? -1 : 1));
}

export type Lay = {
  readonly slants: readonly [boolean, boolean];
  /** Way along y in which the tail leaves. */
  readonly sign: 1 | -1;
  /** The tail from the end that goes in first to the one that goes in last; where the socket ends, and where it comes out of the board. */
  readonly first: number;
  readonly last: number;
  readonly mouth: number;
  /** Does the socket come out at the far edge too? */
  readonly through: boolean;
  /** Neck and tip of the tail at a spot of y: low and high along x. */
  readonly neck: (y: number) => Span;
  readonly tip: (y: number) => Span;
};
export function lay(g: Ground, s: SlidingDovetail): Lay | null {
  const sides = slants(g, s.slanted);
  const sign = leaves(g, s.from);
  if (!sides || sign === null) return null;
  const [far, last] = sign > 0 ? [g.y[0], g.y[1]] : [g.y[1], g.y[0]];
  const first = far + sign * s.stop;
  const [edge, mouth] = sign > 0 ? [g.into.box.min[1], g.into.box.max[1]] : [g.into.box.max[1], g.into.box.min[1]];
  const count = sides.filter(Boolean).length;
  const run = (last - first) * sign;
  const lost = (y: number): number => (run > 0 ? (s.taper / count) * (1 - ((y - first) * sign) / run) : 0);
  const at =
    (set: number) =>
    (y: number): Span => [g.x[0] + (sides[0] ? set + lost(y) : 0), g.x[1] - (sides[1] ? set + lost(y) : 0)];
  const wide = s.depth * Math.tan(s.slope);
  return {
    slants: sides,
    sign,
    first,
    last,
    mouth,
    through: (first - edge) * sign < 1e-6,
    neck: at(s.shoulder),
    tip: at(s.shoulder - wide),
  };
}
/** The outline at a spot of y, from z = foot to the tip: neck upright below `z`, then the slanted sides. */
export function outline(l: Lay, y: number, foot: number, z: number, depth: number): Vec2[] {
  const [n, t] = [l.neck(y), l.tip(y)];
  return [
    [n[0], foot],
    [n[1], foot],
    [n[1], z],
    [t[1], z + depth],
    [t[0], z + depth],
    [n[0], z],
  ];
}
