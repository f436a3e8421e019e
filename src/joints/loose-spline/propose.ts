import { type Answer, withNearest } from '../nearest.ts';
import { nearestOwned } from '../cutters.ts';
import type { Cutting, Place, Refusal } from '../family.ts';
import { byBook, byHabit, settle, tenths } from '../reasons.ts';
import { type Ground, ground, lay } from './lay.ts';
import type { LooseSpline } from './params.ts';

const NAVED = 'NAVEDTRA 14119, wood joinery';
/** Least wood beside the grooves and behind them, and least of the spline, mm. */
const CHEEK = 1;
const BEHIND = 2;
const LEAST = 0.5;

export function propose(p: Place<LooseSpline>, shop: Cutting): Answer<LooseSpline> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the two parts do not lie square along a seam', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => ask(g, set, shop));
}
function ask(g: Ground, set: Partial<LooseSpline>, shop: Cutting): Answer<LooseSpline> {
  const thick = g.x[1] - g.x[0];
  const long = g.y[1] - g.y[0];
  const room = 2 * (Math.min(...g.deep) / 2);
  const spare = set.spare ?? 0.5;
  const out = settle<LooseSpline>(set, {
    thickness: [
      nearestOwned(shop.grooveWidths, thick / 3, [thick / 4, thick / 2]),
      byBook('a third of the thickness', NAVED, [thick / 4, thick / 2]),
    ],
    width: [tenths(Math.min(2 * thick, room)), byBook('twice the thickness: 3/4 in stock takes 1/4 by 1-1/2 in', NAVED)],
    spare: [spare, byHabit('a little room for glue at each edge')],
    stopped: ['none', byHabit('a through groove is the plainest to cut')],
    stop: [tenths(Math.min(25, long / 6)), byHabit('about an inch from the end, so that the spline does not show')],
    made: ['ply', byHabit('plywood neither splits along the seam nor moves along it')],
    hold: ['glued', byHabit('glued; a spline between boards that must move is left dry')],
  });
  return refuse(g, out.sizes) ?? out;
}
function refuse(g: Ground, s: LooseSpline): Refusal<LooseSpline> | null {
  const thick = g.x[1] - g.x[0];
  if (!(s.thickness >= LEAST) || s.thickness > thick - 2 * CHEEK)
    return {
      cannot: 'the grooves must leave a cheek on both sides of the spline',
      limit: s.thickness >= LEAST ? thick - 2 * CHEEK : LEAST,
      asked: s.thickness,
      nearest: { thickness: thick / 3 },
    };
  const most = Math.min(...g.deep) - BEHIND;
  if (!(s.spare >= 0) || !(s.width >= 2) || s.width / 2 + s.spare > most)
    return {
      cannot: 'the grooves must leave wood behind the spline',
      limit: s.spare >= 0 ? 2 * (most - s.spare) : 0,
      asked: s.spare >= 0 ? s.width : s.spare,
      nearest: { width: Math.min(2 * thick, most), spare: Math.min(0.5, most / 4) },
    };
  const l = lay(g, s);
  if (!l) return { cannot: `"${s.stopped}" is no end of the seam`, limit: 0, asked: 0, nearest: { stopped: 'none' } };
  if (!(s.stop >= 0) || l.y[1] - l.y[0] < 5)
    return {
      cannot: 'the stops must leave a groove between them',
      limit: s.stop < 0 ? 0 : (g.y[1] - g.y[0] - 5) / 2,
      asked: s.stop,
      nearest: { stop: (g.y[1] - g.y[0]) / 6 },
    };
  return null;
}
