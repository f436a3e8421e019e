import type { Face } from '../../model/ids.ts';
import type { Cutting, Place, Refusal } from '../family.ts';
import { type Answer, withNearest } from '../nearest.ts';
import { byBook, byHabit, settle, tenths } from '../reasons.ts';
import { NOYES, PTSW } from '../sources.ts';
import { type Ground, edgeWords, ground, lay, leaves, slants } from './lay.ts';
import type { SlidingDovetail } from './params.ts';

const DEG = Math.PI / 180;
/** Wood that must be left, mm: behind the socket, of the neck, and of the board beside the socket. */
const BEHIND = 2;
const NECK = 3;
const BESIDE = 1;
/** Slopes that can be cut at all, radians. */
const SLOPES = [2 * DEG, 30 * DEG] as const;

export function propose(p: Place<SlidingDovetail>, _shop: Cutting): Answer<SlidingDovetail> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the board does not stand square along the other board', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => ask(g, set));
}
function ask(g: Ground, set: Partial<SlidingDovetail>): Answer<SlidingDovetail> {
  const depth = set.depth ?? tenths(g.thick / 3);
  const slope = set.slope ?? 8 * DEG;
  const from = set.from ?? (edgeWords(g)[0] as Face);
  const run = g.y[1] - g.y[0] - (set.stop ?? 0);
  const least = Math.ceil(depth * Math.tan(Math.max(0, Math.min(slope, 1))) * 10 - 1e-6) / 10;
  const out = settle<SlidingDovetail>(set, {
    depth: [depth, byBook('a third of the board at most, so that it is not weakened', PTSW, [g.thick / 4, g.thick / 3])],
    slope: [slope, byBook('anything near 1:4 to 1:8 holds alike; 8 degrees is 1:7', 'lostartpress.com, 2023', [7 * DEG, 14 * DEG])],
    slanted: ['both', byBook('one slanted side is usually enough; two look alike from both faces', NOYES)],
    shoulder: [least, byHabit('the tip of the tail just as thick as the board')],
    from: [from, byHabit('from the back, so that a stopped socket does not show at the front')],
    taper: [0, byHabit('parallel; a long one is tapered by 2 to 3 mm so that it binds only at the last', [0, 4])],
    stop: [0, byHabit('through unless the end may not show')],
    hold: g.crosses
      ? ['end', byHabit('across the grain it is glued at one end alone, so that the wide board can move')]
      : ['glued', byHabit('both boards move alike: it may be glued all along')],
    glued: [Math.max(1, Math.min(60, tenths(run / 4))), byHabit('two or three inches at the front', [25, 75])],
  });
  return refuseShape(g, out.sizes) ?? refuseRun(g, out.sizes) ?? out;
}
function refuseShape(g: Ground, s: SlidingDovetail): Refusal<SlidingDovetail> | null {
  const sides = slants(g, s.slanted);
  if (!sides) return { cannot: `"${s.slanted}" is no face of the board beside the tail`, limit: 0, asked: 0, nearest: { slanted: 'both' } };
  if (leaves(g, s.from) === null)
    return {
      cannot: `"${s.from}" is no edge that the tail can slide to`,
      limit: 0,
      asked: 0,
      nearest: { from: edgeWords(g)[0] as Face },
    };
  if (!(s.depth > 0.5) || s.depth > g.thick - BEHIND)
    return {
      cannot: 'the socket must leave wood behind it',
      limit: Math.max(0, g.thick - BEHIND),
      asked: s.depth,
      nearest: { depth: g.thick / 3 },
    };
  if (!(s.slope >= SLOPES[0]) || s.slope > SLOPES[1])
    return {
      cannot: 'the flanks lean between 2 and 30 degrees',
      limit: s.slope > SLOPES[1] ? SLOPES[1] : SLOPES[0],
      asked: s.slope,
      nearest: { slope: 8 * DEG },
    };
  const wide = s.depth * Math.tan(s.slope);
  if (!(s.shoulder >= wide - 1e-6))
    return { cannot: 'the tip of the tail is cut from the board’s thickness', limit: wide, asked: s.shoulder, nearest: { shoulder: wide } };
  return null;
}
/** Along the slide: a neck that holds, a socket that stays inside the board, some length of it, and glue no longer than that. */
function refuseRun(g: Ground, s: SlidingDovetail): Refusal<SlidingDovetail> | null {
  const run = g.y[1] - g.y[0];
  if (!(s.stop >= 0) || s.stop > run - 5)
    return { cannot: 'the stop must leave a socket before it', limit: s.stop < 0 ? 0 : run - 5, asked: s.stop, nearest: { stop: 0 } };
  const l = lay(g, s);
  if (!l) throw new Error('the words of a sliding dovetail were judged before');
  const [low, high] = l.neck(l.first);
  if (!(s.taper >= 0) || high - low < NECK)
    return {
      cannot: 'the neck of the tail must hold',
      limit: s.taper < 0 ? 0 : Math.max(0, high - low + s.taper - NECK),
      asked: s.taper,
      nearest: s.taper > 0 ? { taper: 0 } : { shoulder: s.depth * Math.tan(s.slope), taper: 0 },
    };
  const tip = l.tip(l.mouth);
  const beside = Math.min(tip[0] - g.into.box.min[0], g.into.box.max[0] - tip[1]);
  if (beside < BESIDE) return { cannot: 'the socket would break out at the side of the board', limit: BESIDE, asked: beside };
  if (!(s.glued > 0) || (s.hold === 'end' && s.glued > run - s.stop - 1))
    return {
      cannot: 'the glued end is a part of the tail’s length',
      limit: s.glued > 0 ? run - s.stop - 1 : 0,
      asked: s.glued,
      nearest: { glued: (run - s.stop) / 4 },
    };
  return null;
}
