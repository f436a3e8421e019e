import { downTo, nearestOwned, roundTo, stepOf } from '../cutters.ts';
import type { Cutting, Place, Refusal } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { type Answer, withNearest } from '../nearest.ts';
import { byBook, byHabit, settle } from '../reasons.ts';
import { PTSW, RIV } from '../sources.ts';
import { type Ground, MITRE_SPACE, across, crossings, endSide, ground, hasFaceSide, runsAlongGrain, whole } from '../tenons.ts';
import { ownSense } from '../blocks.ts';
import type { LooseTenon } from './params.ts';

type P = LooseTenon;
export function propose(p: Place<P>, shop: Cutting): Answer<P> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the end does not point into the other part', limit: 0, asked: 0 };
  if (!g.square)
    return { cannot: 'a loose tenon stands square to both parts: lean neither, or cut the tenon on the part itself', limit: 0, asked: 0 };
  if (p.meeting.touch === 'share') return { cannot: 'the two share wood here: the part must end at the other one', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => ask(g, set, p.siblings, shop));
}
function ask(g: Ground, set: Partial<P>, siblings: readonly Meeting[], shop: Cutting): Answer<P> {
  const step = stepOf(shop);
  const [stock, wide] = [g.x[1] - g.x[0], g.y[1] - g.y[0]];
  const room = g.into.box.max[0] - g.into.box.min[0];
  const third = Math.min(stock / 3, room / 3);
  const thickness = nearestOwned(shop.mortiseWidths, third, [third * 0.75, third * 1.5], step);
  const t = set.thickness ?? thickness;
  const all = (wide * 2) / 3;
  const n = Math.max(1, Math.round(set.tenons ?? countFor(all, t)));
  const between = n > 1 ? Math.max(step, roundTo(step, all / (2 * n - 1))) : 0;
  const width = Math.max(
    Math.min(step, all),
    downTo(step, n === 1 ? Math.min(all, 6 * t) : (all - (n - 1) * (set.between ?? between)) / n),
  );
  const rows = { width: set.width ?? width, tenons: n, between: set.between ?? between };
  const drop = dropFor(g, n * rows.width + (n - 1) * rows.between, step);
  const placing = { thickness: t, offset: set.offset ?? 0, from: set.from ?? ('middle' as const), ...rows, drop: set.drop ?? drop };
  const clear = Math.min(Infinity, ...crossings(g, placing, siblings).map((c) => c.square - MITRE_SPACE));
  const spare = step === 1 ? 1.5 : 25.4 / 16;
  const deepIn = Math.max(0, downTo(step, Math.min((g.deep * 2) / 3 - (set.spare ?? spare), 4 * t, clear)));
  const deep = byBook('the mortise 3 to 5 times as deep as wide, two thirds of the part at most', PTSW, [3 * t, 5 * t]);
  const out = settle<P>(set, {
    thickness: [thickness, byBook('a third of the thinner part, as a chisel or bit is owned', `${PTSW}; ${RIV}`, [stock / 4, stock / 2])],
    width: [width, byBook('two thirds of the part’s width, at most 6 times the thickness', PTSW)],
    deep_in: [deepIn, Number.isFinite(clear) && clear <= 4 * t ? byHabit('the longest that clears the other tenon') : deep],
    deep_own: [roundTo(step, 4 * t), deep],
    tenons: [n, byBook('one tenon is not wider than 6 times its thickness; else several', PTSW)],
    between: [between, byHabit('parted by about their own width')],
    offset: [0, (set.from ?? 'middle') === 'middle' ? byHabit('in the middle of the thickness') : byHabit('flush with that face')],
    from: ['middle', byHabit('the middle, unless both parts are routed from their faces')],
    drop: [drop, byHabit('in the middle of the width; lower where the mortise would come near the end of the other part')],
    ends: ['square', byHabit('square for a chisel; round for a router, the tenon’s edges rounded to suit')],
    spare: [spare, byHabit('a little room for glue at either end')],
    glue: ['yes', byHabit('glued')],
  });
  return refuse(g, out.sizes) ?? out;
}
const countFor = (all: number, t: number): number => (all <= 9 * t ? 1 : Math.min(20, Math.max(2, Math.ceil((all / (6 * t) + 1) / 2))));
/** A third of the slack towards the near end's far side, as for a tenon cut on the part. */
function dropFor(g: Ground, all: number, step: number): number {
  const near = endSide(g);
  const wide = g.y[1] - g.y[0];
  if (!runsAlongGrain(g) || near.room > wide / 3 || near.room < -1e-6) return 0;
  return roundTo(step, (near.side * ownSense(g.enter, 'y') * (wide - all)) / 6);
}

/** The least of a tenon and of a mortise that can be cut at all, mm. */
const LEAST = 1;
function refuse(g: Ground, s: P): Refusal<P> | null {
  return refusePlace(g, s) ?? refuseDepth(g, s);
}
function refusePlace(g: Ground, s: P): Refusal<P> | null {
  const [stock, wide] = [g.x[1] - g.x[0], g.y[1] - g.y[0]];
  if (s.from === 'face' && !hasFaceSide(g.enter))
    return { cannot: 'the part has no mark on a broad face to count the offset from', limit: 0, asked: 0, nearest: { from: 'middle' } };
  if (!Number.isInteger(s.tenons) || s.tenons < 1 || s.tenons > 20)
    return { cannot: 'the number of tenons must be a whole number from 1 to 20', limit: 20, asked: s.tenons, nearest: { tenons: 1 } };
  if (!(s.thickness >= LEAST) || s.thickness >= stock)
    return {
      cannot: 'the tenon must be thinner than the part',
      limit: s.thickness >= LEAST ? stock : LEAST,
      asked: s.thickness,
      nearest: { thickness: stock / 3 },
    };
  if (s.tenons > 1 && !(s.between >= LEAST))
    return { cannot: 'mortises side by side need wood between them', limit: LEAST, asked: s.between, nearest: { between: s.thickness } };
  const y = whole(g, s);
  if (!(s.width >= LEAST) || y[1] - y[0] >= wide)
    return {
      cannot: 'the tenons must be narrower than the part',
      limit: s.width >= LEAST ? wide : LEAST,
      asked: y[1] - y[0],
      nearest: { width: (wide * 2) / 3 / (2 * s.tenons - 1), between: s.tenons > 1 ? (wide * 2) / 3 / (2 * s.tenons - 1) : 0 },
    };
  if (s.ends === 'round' && s.width <= s.thickness + 1e-6)
    return { cannot: 'a tenon with round edges is wider than thick', limit: s.thickness, asked: s.width, nearest: { ends: 'square' } };
  const x = across(g.enter, s);
  if (x[0] <= g.x[0] + 1e-6 || x[1] >= g.x[1] - 1e-6)
    return {
      cannot: 'the offset sets the mortise through the side of the part',
      limit: (stock - s.thickness) / 2,
      asked: Math.abs(s.offset),
      nearest: { offset: 0, from: 'middle' },
    };
  if (y[0] <= g.y[0] + 1e-6 || y[1] >= g.y[1] - 1e-6)
    return {
      cannot: 'the drop sets the mortise through the edge of the part',
      limit: (wide - (y[1] - y[0])) / 2,
      asked: Math.abs(s.drop),
      nearest: { drop: 0 },
    };
  return null;
}
function refuseDepth(g: Ground, s: P): Refusal<P> | null {
  if (!(s.spare >= 0)) return { cannot: 'a mortise is not shallower than its tenon', limit: 0, asked: s.spare, nearest: { spare: 0 } };
  if (!(s.deep_in >= LEAST))
    return {
      cannot: 'the tenon must go into the part that is met',
      limit: 1,
      asked: s.deep_in,
      nearest: { deep_in: g.deep / 2, spare: 0 },
    };
  const long = g.enter.box.max[2] - g.enter.box.min[2];
  if (!(s.deep_own >= LEAST) || s.deep_own + s.spare >= long)
    return {
      cannot: 'the tenon must end inside the part that it is glued into',
      limit: s.deep_own >= LEAST ? long - s.spare : LEAST,
      asked: s.deep_own,
      nearest: { deep_own: Math.min(4 * s.thickness, long / 3), ...(s.spare > long / 3 ? { spare: 0 } : {}) },
    };
  return null;
}
