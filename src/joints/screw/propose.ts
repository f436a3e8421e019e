import { type Answer, withNearest } from '../nearest.ts';
import type { Cutting, Place, Refusal } from '../family.ts';
import { byHabit, settle, tenths } from '../reasons.ts';
import { byMovement, type RowGround, refuseRow, refuseScrew, screwSizes, slotFor, slotWay } from '../screw-rows.ts';
import { LEAST_TRAVEL, ground, needOf } from './lay.ts';
import type { Screw } from './params.ts';

/** About 200 mm apart, two at least; slots where one part moves under the other. */
export function propose(p: Place<Screw>, shop: Cutting): Answer<Screw> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the two parts do not lie square on each other over any width', limit: 0, asked: 0 };
  if (g.deep < 5 || g.thick < 4)
    return { cannot: 'a part this thin takes no screw', limit: g.deep < 5 ? 5 : 4, asked: Math.min(g.deep, g.thick) };
  return withNearest(p.set, (set) => ask(g, set, shop));
}
function ask(g: RowGround, set: Partial<Screw>, shop: Cutting): Answer<Screw> {
  const long = g.run[1] - g.run[0];
  const inset = set.inset ?? tenths(Math.min(50, long / 5));
  const count = set.count ?? Math.max(long < 40 ? 1 : 2, Math.ceil((long - 2 * inset) / 200 - 1e-6) + 1);
  const need = needOf(g, { count, inset });
  const travel = set.travel ?? (need >= LEAST_TRAVEL ? tenths(need + 0.05) : 0);
  const sizes = screwSizes(g, set, shop, travel > 0);
  const clearance = sizes.clearance[0];
  const out = settle<Screw>(set, {
    ...sizes,
    count: [count, byHabit('about 200 mm apart, at least two', [150, 300])],
    inset: [inset, byHabit('about 50 mm from the ends, a fifth of short parts')],
    off: [0, byHabit('in the middle')],
    travel: [
      travel,
      travel > 0 ? byMovement('1/8 in for each 12 in from the middle to the farthest screw') : byHabit('the parts move alike, or hardly'),
    ],
    slot: [
      travel > 0 ? slotFor(sizes.diameter[0], travel) : clearance,
      byHabit('the shank and the movement both ways, with 1/32 in at each end'),
    ],
    fast: [travel > 0 && count % 2 === 1 ? 'middle' : 'none', byHabit('the middle one where there is one, so that both sides move alike')],
  });
  return refuse(g, out.sizes) ?? out;
}
function refuse(g: RowGround, s: Screw): Refusal<Screw> | null {
  if (!(s.travel >= 0)) return { cannot: 'movement is not below nothing', limit: 0, asked: s.travel, nearest: { travel: 0 } };
  if (s.travel > 0 && s.head !== 'round')
    return { cannot: 'in a slot only a flat, open head can slide', limit: 0, asked: s.travel, nearest: { head: 'round', sink: 0 } };
  if (s.travel > 0 && s.slot < s.diameter)
    return {
      cannot: 'the slot is shorter than the screw is thick',
      limit: s.diameter,
      asked: s.slot,
      nearest: { slot: slotFor(s.diameter, s.travel) },
    };
  const slots = s.travel > 0 ? [s.slot] : [];
  return refuseScrew(g, s) ?? refuseRow(g, s, s, slots, slotWay(g));
}
