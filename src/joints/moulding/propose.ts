import { signAlong } from '../blocks.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { withNearest } from '../nearest.ts';
import { byBook, byHabit, settle, tenths } from '../reasons.ts';
import { type Ground, EASY, SHARE, bite, frontOf, ground, halfKey, halfOf, layOut } from './lay.ts';
import type { Moulding } from './params.ts';

export const FRONT_ONLY = 'Popular Woodworking, tip for 15 November, cross-grain trim: only the front end is glued';
export const MOVES = 'woodworkingtips.com: up to 1/8 in of movement for each 12 in of width';
const KEYS = 'ncwoodworker.net, crossgrain moulding: a dovetailed strip on the case in a slot of the moulding';
/** Usual lengths of wood screws, mm; common practice. */
const LENGTHS = [12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80] as const;
type Proposed = { readonly sizes: Moulding; readonly because: Readonly<Record<keyof Moulding, Reason>> };

export function propose(p: Place<Moulding>, _shop: Cutting): Proposed | Refusal<Moulding> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the moulding does not lie along the face of the side', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => {
    const out = proposals(g, set);
    return refuse(g, out.sizes) ?? out;
  });
}
function proposals(g: Ground, set: Partial<Moulding>): Proposed {
  const hold = set.hold ?? (g.crossed ? 'slots' : 'glued');
  const run = g.run[1] - g.run[0];
  const glued = set.glued ?? Math.min(50, tenths(run / 4));
  const inset = set.inset ?? Math.min(40, tenths(run / 6));
  const room = set.room ?? (g.crossed ? Math.max(1, Math.ceil(run * SHARE * 10) / 10) : 0);
  const keyDeep = set.key_deep ?? Math.min(8, tenths(g.deep / 3));
  const keyLong = Math.min(40, tenths(run / 8));
  return settle<Moulding>(set, {
    hold: [
      hold,
      g.crossed
        ? byBook('glued at the front only, where the side moves along it', FRONT_ONLY)
        : byHabit('along the grain it is glued all the way'),
    ],
    front: [frontOf(g), byHabit('its front, or the end that stands past the side')],
    mitred: ['none', byHabit('square, until the moulding that it meets is there')],
    glued: [glued, byHabit('two inches behind the mitre', [40, 75])],
    count: [Math.max(1, Math.ceil((run - glued - inset) / 200)), byHabit('one each 200 mm')],
    inset: [inset, byHabit('near the back end')],
    room: [room, g.crossed ? byBook('1/8 in for each 12 in of the side', MOVES) : byHabit('nothing moves')],
    screw: [4, byHabit('about 4 mm')],
    screw_length: [screwLength(g, hold, keyDeep), byHabit('as long as two thirds of the wood allow')],
    key_wide: [tenths(Math.min(16, g.high / 3)), byHabit('about a third of the moulding')],
    key_deep: [keyDeep, byHabit('a third of the moulding')],
    key_long: [keyLong, byBook('short keys, screwed on in line', KEYS)],
    slope: [1 / 6, byHabit('as the cutter is', [1 / 8, 1 / 4])],
  });
}
function screwLength(g: Ground, hold: Moulding['hold'], keyDeep: number): number {
  const [through, into] = hold === 'keys' ? [keyDeep, g.thick] : [g.thick + g.gap, g.deep];
  return LENGTHS.reduce<number>((best, l) => (l - through <= (into * 2) / 3 ? l : best), LENGTHS[0]);
}
type No = Refusal<Moulding> | null;
function refuse(g: Ground, s: Moulding): No {
  if (signAlong(g.moulding, s.front, 'y') === null)
    return { cannot: `"${s.front}" is not an end of the moulding`, limit: 0, asked: 0, nearest: { front: frontOf(g) } };
  const l = layOut(g, s);
  if (l.long < 20) return { cannot: 'the mitres leave the moulding too short', limit: 20, asked: l.long, nearest: { mitred: 'none' } };
  if (s.hold === 'glued') return null;
  if (!(s.glued >= 5) || s.glued > l.long - 5)
    return {
      cannot: 'the front end is glued, the rest is not',
      limit: s.glued >= 5 ? l.long - 5 : 5,
      asked: s.glued,
      nearest: { glued: l.long / 4 },
    };
  if (!(s.room >= 0)) return { cannot: 'room to move is no less than nothing', limit: 0, asked: s.room, nearest: { room: 1 } };
  if (!(s.screw >= 1)) return { cannot: 'a screw has a thickness', limit: 1, asked: s.screw, nearest: { screw: 4 } };
  return (s.hold === 'keys' ? refuseKeys(g, s) : null) ?? refuseSpots(l.long, s) ?? refuseScrew(g, s);
}
function refuseSpots(long: number, s: Moulding): No {
  if (!Number.isInteger(s.count) || s.count < 1 || s.count > 50)
    return {
      cannot: 'the number of screws or keys is a whole number from 1',
      limit: s.count > 50 ? 50 : 1,
      asked: s.count,
      nearest: { count: 1 },
    };
  const half = halfOf(s);
  if (!(s.inset >= half + 1))
    return { cannot: 'the last one stands in from the back end', limit: half + 1, asked: s.inset, nearest: { inset: half + 5 } };
  const room = long - s.inset - (s.glued + half + s.room + 5);
  const most = room < 0 ? 0 : 1 + Math.floor(room / (2 * half + 2));
  return s.count > most
    ? {
        cannot: 'screws or keys have their places behind the glued end',
        limit: most,
        asked: s.count,
        nearest: most > 0 ? { count: most } : { count: 1, glued: Math.max(5, long / 8), inset: half + 5 },
      }
    : null;
}
function refuseKeys(g: Ground, s: Moulding): No {
  if (!(s.slope >= 0.02) || s.slope > 0.5)
    return {
      cannot: 'a key’s flanks lean between 1 in 50 and 1 in 2',
      limit: s.slope > 0.5 ? 0.5 : 0.02,
      asked: s.slope,
      nearest: { slope: 1 / 6 },
    };
  if (!(s.key_deep >= 2) || s.key_deep > g.deep - EASY - 1)
    return {
      cannot: 'the keys’ groove leaves wood in the moulding',
      limit: s.key_deep >= 2 ? g.deep - EASY - 1 : 2,
      asked: s.key_deep,
      nearest: { key_deep: Math.max(2, g.deep / 3) },
    };
  if (!(s.key_long >= s.screw + 4)) return { cannot: 'a key is longer than its screw is thick', limit: s.screw + 4, asked: s.key_long };
  const narrow = 2 * halfKey(s, 0);
  if (!(narrow >= s.screw + EASY + 1) || s.key_wide + 2 * EASY * s.slope > g.high - 2)
    return { cannot: 'a key is wider than its screw and narrower than the moulding', limit: g.high - 2, asked: s.key_wide };
  return null;
}
function refuseScrew(g: Ground, s: Moulding): No {
  const into = s.hold === 'keys' ? g.thick : g.deep;
  const through = s.screw_length - bite(g, s);
  if (s.hold === 'slots' && s.screw + EASY > g.high - 4)
    return {
      cannot: 'so thick a screw splits the moulding',
      limit: g.high - 4 - EASY,
      asked: s.screw,
      nearest: { screw: Math.min(4, g.high / 4) },
    };
  if (bite(g, s) < 3 || bite(g, s) > into - 1)
    return {
      cannot: bite(g, s) < 3 ? 'the screw does not reach the wood that it is to hold' : 'the screw would come through',
      limit: through + (bite(g, s) < 3 ? 3 : into - 1),
      asked: s.screw_length,
      nearest: { screw_length: through + Math.min(into - 1, Math.max(3, (into * 2) / 3)) },
    };
  return null;
}
