/** How a lap divides the volume that both parts share: along which axis, which part keeps which side, and where the cut lies. */
import { type Box } from '../../geom/box.ts';
import { type Axis, type Vec2, AXES, axisVec } from '../../geom/vec3.ts';
import { alongGrain, boxOf, ownSense, signAlong } from '../blocks.ts';
import type { Meeting } from '../meeting.ts';
import {
  type SharedBox,
  type Sharer,
  type Span,
  flatPoint,
  grainsAcross,
  oneWay,
  othersOf,
  reachAlong,
  runsAlong,
  sharedBox,
  sizeAlong,
  spanOf,
} from '../shared-box.ts';
import type { Lap } from './params.ts';

export type Ground = {
  readonly s: SharedBox;
  readonly over: Sharer;
  readonly under: Sharer;
  /** The axis along which the wood is divided, and the side of it that the first part keeps. */
  readonly c: Axis;
  readonly keep: 1 | -1;
  /** The lapped thickness. */
  readonly thick: number;
  /** The first part stays whole and lies in the second for its whole thickness. */
  readonly full: boolean;
  readonly kind: 'corner' | 'tee' | 'cross' | 'lengthways';
};
/** Shares of this much and more leave the first part whole. */
export const WHOLE = 1 - 1e-6;
const at = (sign: 1 | -1): 0 | 1 => (sign > 0 ? 1 : 0);

/** null when the parts share no volume that can be notched from open faces. */
export function ground(m: Meeting, set: Partial<Pick<Lap, 'notch' | 'share'>>): Ground | null {
  const s = sharedBox(m, 'over', 'under');
  if (!s) return null;
  const full = (set.share ?? 0.5) >= WHOLE;
  const best = AXES.filter((c) => holdsTogether(s, c, full)).toSorted(
    (p, q) => grainsAcross(s, q) - grainsAcross(s, p) || sizeAlong(s.box, p) - sizeAlong(s.box, q),
  );
  for (const c of best) {
    const keep = keptSide(s, c, full, set.notch ?? 'auto');
    if (keep) return { s, over: s.a, under: s.b, c, keep, thick: sizeAlong(s.box, c), full, kind: kindOf(s, c) };
  }
  return null;
}
/** Each part must go on beside the notch, or it would be cut in two. */
const holdsTogether = (s: SharedBox, c: Axis, full: boolean): boolean =>
  runsAlong(s.a).some((k) => k !== c) && (full ? s.b.on[c][0] || s.b.on[c][1] : true) && runsAlong(s.b).some((k) => k !== c);
/** A notch must open at a face of its own part. */
function keptSide(s: SharedBox, c: Axis, full: boolean, notch: Lap['notch']): 1 | -1 | null {
  const opens = (keep: 1 | -1): boolean =>
    !s.b.on[c][at(keep)] && (full ? s.b.on[c][at(-keep as 1 | -1)] : !s.a.on[c][at(-keep as 1 | -1)]);
  if (notch !== 'auto') {
    const sign = signAlong(s.a.side, notch, c);
    return sign && opens(-sign as 1 | -1) ? (-sign as 1 | -1) : null;
  }
  const first = ownSense(s.a.side, c);
  return opens(first) ? first : opens(-first as 1 | -1) ? (-first as 1 | -1) : null;
}
function kindOf(s: SharedBox, c: Axis): Ground['kind'] {
  const lateral = (p: Sharer): Axis[] => runsAlong(p).filter((k) => k !== c);
  const [a, b] = [lateral(s.a), lateral(s.b)];
  const ends = [a, b].map((axes, i) => axes.length === 1 && oneWay(i === 0 ? s.a : s.b, axes[0] as Axis) !== null);
  if (ends[0] && ends[1]) return a[0] === b[0] ? 'lengthways' : 'corner';
  return ends[0] || ends[1] ? 'tee' : 'cross';
}

/** Where the wood is divided along c. */
export function cutAt(g: Ground, share: number): number {
  const [low, high] = spanOf(g.s.box, g.c);
  if (g.full) return g.keep > 0 ? low : high;
  return g.keep > 0 ? high - share * g.thick : low + share * g.thick;
}
/** What a part loses along c: from the cut to its own open face. */
export function lostSpan(g: Ground, p: Sharer, cut: number): Span {
  const reach = reachAlong(p, g.s.box, g.c);
  const low = (p === g.over) === g.keep > 0;
  return low ? [reach[0], cut] : [cut, reach[1]];
}
/** Play on each side of a trench; a shoulder or an open end is cut to the line. */
export const playOn = (p: Sharer, axis: Axis, play: number): number => (p.on[axis][0] && p.on[axis][1] ? play / 2 : 0);
/** The notch of a part, run out to its own faces where it opens there. */
export function notchBox(g: Ground, p: Sharer, cut: number, play: number): Box {
  const span = (k: Axis): Span => {
    if (k === g.c) return lostSpan(g, p, cut);
    const [r, slack] = [reachAlong(p, g.s.box, k), playOn(p, k, play)];
    return [r[0] - slack, r[1] + slack];
  };
  const [x, y, z] = [span('x'), span('y'), span('z')];
  return boxOf(x[0], x[1], y[0], y[1], z[0], z[1]);
}
/** How much of the part's own thickness is left beside its notch. */
export const leftIn = (g: Ground, p: Sharer, cut: number): number => {
  const lost = lostSpan(g, p, cut);
  return p === g.over && g.full ? sizeAlong(p.side.box, g.c) : sizeAlong(p.side.box, g.c) - (lost[1] - lost[0]);
};
export const shortGrained = (g: Ground, p: Sharer): boolean => alongGrain(p.side, axisVec(g.c)) && !(p === g.over && g.full);

/** Which way a part runs away from a corner or tee: the axis and the sign. */
export type Run = { readonly axis: Axis; readonly way: 1 | -1 };
function runOf(g: Ground, p: Sharer): Run | null {
  const axes = runsAlong(p).filter((k) => k !== g.c);
  const way = axes.length === 1 && axes[0] ? oneWay(p, axes[0]) : null;
  return way && axes[0] ? { axis: axes[0], way } : null;
}

/** The line of a mitred corner in the plane across c, from the inner corner to the outer; `out` points from the first part into the second. */
export type MitreLine = { readonly inner: Vec2; readonly outer: Vec2; readonly out: Vec2; readonly far: number };
export function mitreLine(g: Ground): MitreLine | null {
  const [a, b] = [runOf(g, g.over), runOf(g, g.under)];
  if (g.kind !== 'corner' || g.full || !a || !b) return null;
  const side = (axis: Axis, way: 1 | -1): number => spanOf(g.s.box, axis)[way > 0 ? 1 : 0];
  const point = (onA: number, onB: number): Vec2 => flatPoint(g.c, a.axis, onA, onB);
  const inner = point(side(a.axis, a.way), side(b.axis, b.way));
  const outer = point(side(a.axis, -a.way as 1 | -1), side(b.axis, -b.way as 1 | -1));
  const [da, db] = [sizeAlong(g.s.box, a.axis), sizeAlong(g.s.box, b.axis)];
  const long = Math.hypot(da, db);
  const n = point((-a.way * db) / long, (b.way * da) / long);
  return { inner, outer, out: n, far: da + db };
}

/** The dovetailed tongue in the plane across c: wide at its tip, narrowed by `inset` on each side where it leaves the shoulder. */
export type Tongue = {
  readonly run: Run;
  readonly across: Axis;
  readonly shoulder: number;
  readonly tip: number;
  readonly width: Span;
  readonly inset: number;
};
export function tongueOf(g: Ground, slope: number): Tongue | null {
  const run = runOf(g, g.over);
  if (!run || g.full || g.kind !== 'tee') return null;
  const span = spanOf(g.s.box, run.axis);
  const [low, high] = othersOf(g.c);
  const across = low === run.axis ? high : low;
  const [shoulder, tip] = run.way > 0 ? [span[1], span[0]] : [span[0], span[1]];
  return { run, across, shoulder, tip, width: spanOf(g.s.box, across), inset: slope * (span[1] - span[0]) };
}
