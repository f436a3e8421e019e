import { downTo, nearestOwned, roundTo, stepOf } from '../cutters.ts';
import type { Cutting, Place, Refusal } from '../family.ts';
import { type Answer, withNearest } from '../nearest.ts';
import { byBook, byHabit, settle } from '../reasons.ts';
import { NOYES, PTSW } from '../sources.ts';
import { type Ground, across, ground, runsAlongGrain, whole } from '../tenons.ts';
import { ROW, deepest, thinEnd } from './lay.ts';
import type { TuskTenon } from './params.ts';

type P = TuskTenon;
/** The thin end of a key, mm: thinner, it splits when it is knocked out again. */
const THIN_END = 4;
/** The least of a tenon and of its key that can be cut at all, mm. */
const LEAST = 3;
const LEAST_KEY = 1;

export function propose(p: Place<P>, shop: Cutting): Answer<P> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the tenon does not point into the receiving part', limit: 0, asked: 0 };
  if (!g.square) return { cannot: 'a keyed tenon stands square to the part that it goes through', limit: 0, asked: 0 };
  if (p.meeting.touch === 'share')
    return { cannot: 'the two share wood here: the rail must end at the receiving part, its tenon is added', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => ask(g, set, shop));
}
function ask(g: Ground, set: Partial<P>, shop: Cutting): Answer<P> {
  const step = stepOf(shop);
  const [stock, wide] = [g.x[1] - g.x[0], g.y[1] - g.y[0]];
  const thickness = nearestOwned(shop.mortiseWidths, stock / 2, [stock / 3, (stock * 2) / 3], step);
  const t = set.thickness ?? thickness;
  const width = Math.max(Math.min(step, wide), downTo(step, Math.min((wide * 2) / 3, 6 * t)));
  const w = set.width ?? width;
  const way = set.way ?? (runsAlongGrain(g) ? 'width' : 'thickness');
  const [along, over] = way === 'width' ? [w, t] : [t, w];
  const keyThick = nearestOwned(shop.mortiseWidths, Math.min(over / 3, 16), [Math.min(4, over / 4), over / 3], step);
  const thick = set.key_thick ?? keyThick;
  const keyOver = roundTo(step, Math.max(15, along / 4));
  const slope = set.slope ?? 0.1;
  const half = slope * (along / 2 + (set.key_over ?? keyOver));
  const keyDeep = roundTo(step, Math.max(2 * thick, THIN_END + 2 + half));
  const hole = deepest({ key_deep: set.key_deep ?? keyDeep, slope }, along);
  const out = settle<P>(set, {
    thickness: [thickness, byHabit('half of the rail: the key takes a third of it again', [stock / 3, (stock * 2) / 3])],
    width: [width, byBook('two thirds of the rail’s width, at most 6 times the thickness', PTSW)],
    offset: [0, byHabit('in the middle of the thickness')],
    drop: [0, byHabit('in the middle of the width')],
    way: [way, byHabit('along the grain of the part that it bears on: upright in a post, so that it stays in by its weight')],
    key_thick: [keyThick, byHabit('a third of the tenon at most', [over / 4, over / 3])],
    key_deep: [keyDeep, byHabit('twice as deep as thick, and no thinner than 4 mm at its thin end')],
    slope: [0.1, byHabit('1 in 10: it draws, and does not work out by itself', [1 / 12, 1 / 8])],
    key_over: [keyOver, byHabit('enough to be knocked out again from below')],
    pull: [step === 1 ? 1.5 : 25.4 / 16, byBook('the hole starts 1/16 in inside the mortised face, so that the key pulls', NOYES)],
    relish: [Math.ceil(relishWanted(hole, t) / step - 1e-6) * step, byHabit('as long as the hole is deep, and as the tenon is thick')],
  });
  return refuse(g, out.sizes) ?? out;
}
/** The least wood beyond the key, mm: less shears out along the grain when the key is driven. */
export const relishWanted = (hole: number, thickness: number): number => Math.max(hole, thickness);

function refuse(g: Ground, s: P): Refusal<P> | null {
  return refuseTenon(g, s) ?? refuseKey(s);
}
function refuseTenon(g: Ground, s: P): Refusal<P> | null {
  const [stock, wide] = [g.x[1] - g.x[0], g.y[1] - g.y[0]];
  if (!(s.thickness >= LEAST) || s.thickness > stock + 1e-6)
    return {
      cannot: 'the tenon must be thinner than the part that carries it',
      limit: s.thickness >= LEAST ? stock : LEAST,
      asked: s.thickness,
      nearest: { thickness: stock / 2 },
    };
  if (!(s.width >= LEAST) || s.width > wide + 1e-6)
    return {
      cannot: 'the tenon must be narrower than the part that carries it',
      limit: s.width >= LEAST ? wide : LEAST,
      asked: s.width,
      nearest: { width: (wide * 2) / 3 },
    };
  const x = across(g.enter, { ...s, from: 'middle' });
  if (x[0] < g.x[0] - 1e-6 || x[1] > g.x[1] + 1e-6)
    return {
      cannot: 'the offset sets the tenon beside the part that carries it',
      limit: (stock - s.thickness) / 2,
      asked: Math.abs(s.offset),
      nearest: { offset: 0 },
    };
  const y = whole(g, { ...s, ...ROW });
  if (y[0] < g.y[0] - 1e-6 || y[1] > g.y[1] + 1e-6)
    return {
      cannot: 'the drop sets the tenon beside the part that carries it',
      limit: (wide - s.width) / 2,
      asked: Math.abs(s.drop),
      nearest: { drop: 0 },
    };
  return null;
}
function refuseKey(s: P): Refusal<P> | null {
  const [along, over] = s.way === 'width' ? [s.width, s.thickness] : [s.thickness, s.width];
  if (!(s.key_thick >= LEAST_KEY) || s.key_thick > over - 2)
    return {
      cannot: 'the key leaves nothing of the tenon beside it',
      limit: s.key_thick >= LEAST_KEY ? over - 2 : LEAST_KEY,
      asked: s.key_thick,
      nearest: { key_thick: Math.min(over / 3, over - 2) },
    };
  if (!(s.slope >= 0.01) || s.slope > 0.5)
    return {
      cannot: 'a key slopes between 1 in 100 and 1 in 2',
      limit: s.slope > 0.5 ? 0.5 : 0.01,
      asked: s.slope,
      nearest: { slope: 0.1 },
    };
  if (!(s.key_over >= 1))
    return {
      cannot: 'the key must stand out at both ends, to bear and to be driven',
      limit: 1,
      asked: s.key_over,
      nearest: { key_over: 15 },
    };
  const thin = thinEnd(s, along);
  if (!(thin >= THIN_END - 1e-6))
    return {
      cannot: 'so steep, the key runs out to nothing at its thin end',
      limit: s.key_deep + THIN_END - thin,
      asked: s.key_deep,
      nearest: { key_deep: s.slope * (along / 2 + s.key_over) + THIN_END + 2 },
    };
  if (!(s.pull >= 0))
    return { cannot: 'the hole cannot begin outside the face on which the key bears', limit: 0, asked: s.pull, nearest: { pull: 1.5 } };
  if (!(s.relish >= 1)) return { cannot: 'there must be wood beyond the key', limit: 1, asked: s.relish, nearest: { relish: 25 } };
  return null;
}
