import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { withNearest } from '../nearest.ts';
import { byBook, byHabit, settle, tenths } from '../reasons.ts';
import { APART, type Ground, bite, ground, screwAlong, splineRoom } from './lay.ts';
import type { BracketFoot } from './params.ts';

const SPLINED = 'Popular Woodworking no. 156, 2006, bracket feet: the spline towards the inner corner';
const BLOCKS = 'woodworkersedge.wordpress.com, foot-to-case connections: one upright block for the weight, two lying ones for the case';
/** Share of a width that a base may move from where it is held; wood glued across the grain over more than this works loose, mm. */
export const SHARE = 1 / 96;
export const CROSS_GLUE = 100;
const LENGTHS = [16, 20, 25, 30, 35, 40, 45, 50, 60] as const;
type Proposed = { readonly sizes: BracketFoot; readonly because: Readonly<Record<keyof BracketFoot, Reason>> };

export function propose(p: Place<BracketFoot>, _shop: Cutting): Proposed | Refusal<BracketFoot> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the brackets do not share a square corner under the base', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => {
    const out = proposals(g, set);
    return refuse(g, out.sizes) ?? out;
  });
}
const thinnest = (g: Ground): number => Math.min(Math.abs(g.inner[0] - g.outer[0]), Math.abs(g.inner[1] - g.outer[1]));
const shortest = (g: Ground): number => Math.min(g.long.front, g.long.side);
function proposals(g: Ground, set: Partial<BracketFoot>): Proposed {
  const block = set.block ?? tenths(Math.min(45, shortest(g) / 3));
  const fixing = set.fixing ?? tenths(Math.min(20, g.high / 3));
  const long = set.fixing_long ?? tenths(Math.min(60, (shortest(g) - block) * 0.8));
  const upright = (set.block_grain ?? 'upright') === 'upright';
  const reach = thinnest(g) + screwAlong({ block, fixing_long: long } as BracketFoot);
  const crossed = g.crossed.front || g.crossed.side;
  return settle<BracketFoot>(set, {
    spline: ['loose', byBook('a spline keeps the mitre true as it is glued', SPLINED)],
    spline_thick: [Math.min(3, tenths(thinnest(g) / 5)), byHabit('about a saw cut or 3 mm')],
    spline_wide: [tenths(thinnest(g) / 2), byHabit('half of the bracket: a quarter of it in each')],
    block: [block, byBook('one upright block carries the weight', BLOCKS, [30, 50])],
    pieces: [
      upright ? Math.max(1, Math.ceil((g.high - 1e-6) / CROSS_GLUE)) : 2,
      byHabit('no piece longer across the brackets’ grain than 100 mm; lying pieces alternate'),
    ],
    block_grain: ['upright', byHabit('upright: it stands on end grain; lying pieces glue better', undefined)],
    fixing: [fixing, byBook('a lying block behind each bracket', BLOCKS)],
    fixing_long: [long, byHabit('about 60 mm')],
    screw: [4, byHabit('about 4 mm')],
    screw_length: [screwLength(g, fixing), byHabit('as long as two thirds of the base allow')],
    slot: [crossed ? Math.max(1, tenths(reach * SHARE)) : 0, byHabit('1 mm, or 1/8 in for each 12 in from the front where that is more')],
    across: ['screwed', byHabit('what lies across the base’s grain is screwed in a slot, not glued')],
  });
}
const screwLength = (g: Ground, through: number): number =>
  LENGTHS.reduce<number>((best, l) => (l - through <= (g.baseThick * 2) / 3 ? l : best), LENGTHS[0]);

type No = Refusal<BracketFoot> | null;
function refuse(g: Ground, s: BracketFoot): No {
  const least = Math.min(s.block, s.fixing, s.fixing_long, s.screw, s.screw_length);
  if (!(least >= 1)) return { cannot: 'blocks and screws need their sizes', limit: 1, asked: least };
  if (!(s.slot >= 0)) return { cannot: 'room for a screw is no less than nothing', limit: 0, asked: s.slot, nearest: { slot: 1 } };
  return refuseSpline(g, s) ?? refuseBlocks(g, s) ?? refuseScrew(g, s);
}
function refuseSpline(g: Ground, s: BracketFoot): No {
  if (s.spline === 'none') return null;
  const least = Math.min(s.spline_thick, s.spline_wide);
  if (!(least >= 0.5)) return { cannot: 'a spline needs its sizes', limit: 0.5, asked: least, nearest: { spline: 'none' } };
  const room = splineRoom(g, s);
  return room < 1 ? { cannot: 'the spline’s slot leaves wood in both brackets', limit: 1, asked: room, nearest: { spline: 'none' } } : null;
}
function refuseBlocks(g: Ground, s: BracketFoot): No {
  const most = Math.max(1, Math.floor(g.high / 10));
  if (!Number.isInteger(s.pieces) || s.pieces < 1 || s.pieces > most)
    return {
      cannot: 'the glue block stands in a whole number of pieces, each 10 mm high at least',
      limit: s.pieces > most ? most : 1,
      asked: s.pieces,
      nearest: { pieces: Math.min(most, 2) },
    };
  const room = shortest(g) - s.block - APART;
  if (s.fixing_long > room)
    return {
      cannot: 'glue block and fixing block lie behind the bracket',
      limit: Math.max(0, room),
      asked: s.fixing_long,
      nearest: shorter(g),
    };
  if (s.fixing > g.high - 1)
    return { cannot: 'a fixing block is lower than the foot', limit: g.high - 1, asked: s.fixing, nearest: { fixing: g.high / 3 } };
  return null;
}
const shorter = (g: Ground): Partial<BracketFoot> => ({ block: shortest(g) / 3, fixing_long: shortest(g) / 2 });
function refuseScrew(g: Ground, s: BracketFoot): No {
  const most = Math.min(s.fixing - 2, s.fixing_long - 2 - 2 * s.slot, g.baseThick - 1);
  if (s.screw > most) return { cannot: 'the screw needs wood round it', limit: Math.max(0, most), asked: s.screw };
  const deep = bite(g, s);
  return deep < 3 || deep > g.baseThick - 1
    ? {
        cannot: deep < 3 ? 'the screw does not hold in the base' : 'the screw would come through the base',
        limit: s.screw_length - deep + (deep < 3 ? 3 : g.baseThick - 1),
        asked: s.screw_length,
        nearest: { screw_length: s.screw_length - deep + Math.min(g.baseThick - 1, Math.max(3, (g.baseThick * 2) / 3)) },
      }
    : null;
}
