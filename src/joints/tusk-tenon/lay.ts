/** Where tenon, hole and key lie in the meeting frame. */
import { ownSense } from '../blocks.ts';
import type { Meeting } from '../meeting.ts';
import { type Ground, type Span, across, ground, whole } from '../tenons.ts';
import type { TuskTenon } from './params.ts';

export type Laid = {
  readonly g: Ground;
  readonly s: TuskTenon;
  readonly x: Span;
  readonly y: Span;
  /** Along the key and across it: two of the meeting's axes. */
  readonly along: 'x' | 'y';
  readonly across: 'x' | 'y';
  /** The tenon along the key; the hole, and the key, across. */
  readonly k: Span;
  readonly c: Span;
  /** The key from end to end. */
  readonly key: Span;
  /** +1 where the key deepens with `along`: it goes in from the entering part's own high side. */
  readonly sense: 1 | -1;
  /** z of the far face of the mortised part, on which the key bears, and of the tenon's end. */
  readonly face: number;
  readonly tip: number;
  /** z of the key's slope at a coordinate along it. */
  readonly slopeAt: (k: number) => number;
};
export const ROW = { tenons: 1, between: 0 } as const;
/** Depth of the hole where it is deepest, from the far face. */
export const deepest = (s: Pick<TuskTenon, 'key_deep' | 'slope'>, width: number): number => s.key_deep + (s.slope * width) / 2;
/** Depth of the key at its thin end. */
export const thinEnd = (s: Pick<TuskTenon, 'key_deep' | 'slope' | 'key_over'>, width: number): number =>
  s.key_deep - s.slope * (width / 2 + s.key_over);

export function layOut(m: Meeting, s: TuskTenon): Laid {
  const g = ground(m);
  if (!g) throw new Error('a tusk tenon needs an end that points into the receiver: propose refuses the others');
  const x = across(g.enter, { ...s, from: 'middle' });
  const y = whole(g, { ...s, ...ROW });
  const [along, other]: readonly ['x' | 'y', 'x' | 'y'] = s.way === 'width' ? ['y', 'x'] : ['x', 'y'];
  const [k, o] = along === 'y' ? [y, x] : [x, y];
  const mid = (k[0] + k[1]) / 2;
  const sense = ownSense(g.enter, along);
  const face = g.gap + g.deep;
  return {
    g,
    s,
    x,
    y,
    along,
    across: other,
    k,
    c: [(o[0] + o[1] - s.key_thick) / 2, (o[0] + o[1] + s.key_thick) / 2],
    key: [k[0] - s.key_over, k[1] + s.key_over],
    sense,
    face,
    tip: face + deepest(s, k[1] - k[0]) + s.relish,
    slopeAt: (at) => face + s.key_deep + s.slope * sense * (at - mid),
  };
}
/** A point of the meeting from its coordinates along and across the key. */
export const pointOf = (l: Laid, along: number, over: number, z: number): readonly [number, number, number] =>
  l.along === 'y' ? [over, along, z] : [along, over, z];
