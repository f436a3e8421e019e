/** Which wood of the shared volume each part keeps. */
import { type Axis, AXES, axisVec } from '../../geom/vec3.ts';
import { alongGrain, faceToward, ownSense } from '../blocks.ts';
import type { Place } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { type SharedBox, type Sharer, type Span, oneWay, sharedBox, sizeAlong, spanOf } from '../shared-box.ts';
import type { Bridle } from './params.ts';

export type Ground = {
  readonly s: SharedBox;
  readonly fork: Sharer;
  readonly tongue: Sharer;
  /** Across the thickness, in which the wood is divided, and along the part with the tongue; the fork runs along z. */
  readonly c: 'x' | 'y';
  readonly run: 'x' | 'y';
  readonly kind: 'corner' | 'tee';
  /** The way along `run` in which the tongue's part goes on from a corner; 0 for a tee. */
  readonly on: 1 | -1 | 0;
};
const known = new WeakMap<Meeting, Ground | null>();
/** null where the end of a fork cannot stand astride the other part: they do not share a corner or a tee, or the other is the thicker. */
export function ground(m: Meeting): Ground | null {
  let g = known.get(m);
  if (g === undefined) known.set(m, (g = survey(m)));
  return g;
}
function survey(m: Meeting): Ground | null {
  const s = sharedBox(m, 'fork', 'tongue');
  if (!s) return null;
  const [fork, tongue] = [s.a, s.b];
  const run = AXES.find((k): k is 'x' | 'y' => k !== 'z' && alongGrain(tongue.side, axisVec(k)));
  if (!run || !alongGrain(fork.side, [0, 0, 1])) return null;
  const c = run === 'x' ? 'y' : 'x';
  const ends = fork.on.z[0] && !fork.on.z[1] && !tongue.on.z[0] && !tongue.on.z[1];
  const within = !fork.on[run][0] && !fork.on[run][1] && !tongue.on[c][0] && !tongue.on[c][1];
  const goesOn = tongue.on[run][0] || tongue.on[run][1];
  if (!ends || !within || !goesOn) return null;
  const on = oneWay(tongue, run) ?? 0;
  return { s, fork, tongue, c, run, kind: on === 0 ? 'tee' : 'corner', on };
}
/** The tongue across the thickness. */
export function tongueOf(g: Ground, b: Pick<Bridle, 'thickness' | 'offset'>): Span {
  const own = spanOf(g.tongue.side.box, g.c);
  const mid = (own[0] + own[1]) / 2 + b.offset * ownSense(g.tongue.side, g.c);
  return [mid - b.thickness / 2, mid + b.thickness / 2];
}
/** Wood of the fork left on its low and its high side. */
export function cheeksOf(g: Ground, t: Span): readonly [number, number] {
  const own = spanOf(g.fork.side.box, g.c);
  return [t[0] - own[0], own[1] - t[1]];
}
/** How deep the tongue's part is notched on its low and its high side. */
export function notchesOf(g: Ground, t: Span): readonly [number, number] {
  const own = spanOf(g.tongue.side.box, g.c);
  return [t[0] - own[0], own[1] - t[1]];
}
/** Notches shallower than this are none, mm. */
export const LEAST = 1e-3;
export const thicknessOf = (p: Sharer, c: Axis): number => sizeAlong(p.side.box, c);

export type Laid = { readonly g: Ground; readonly s: Bridle; readonly t: Span };
export function layOut(p: Place<Bridle>, s: Bridle): Laid {
  const g = ground(p.meeting);
  if (!g) throw new Error('a bridle needs a fork that stands astride the other part: propose refuses the others');
  return { g, s, t: tongueOf(g, s) };
}
export const notchName = (g: Ground, sign: 1 | -1): string => `notch ${faceToward(g.tongue.side, axisVec(g.c, sign))}`;
export const wallName = (g: Ground, way: 1 | -1): string => `shoulder ${faceToward(g.tongue.side, axisVec(g.run, way))}`;
