import { type Answer, withNearest } from '../nearest.ts';
import type { Cutting, Place, Refusal } from '../family.ts';
import { byHabit, settle, tenths } from '../reasons.ts';
import { byMovement, type RowGround, movesAlong, refuseRow, refuseScrew, screwSizes, slotFor, slotWay } from '../screw-rows.ts';
import { fastOf, ground, shareOf, sizesOf } from './lay.ts';
import type { SlottedCleat } from './params.ts';

/** An odd number of screws about 200 mm apart, the middle one fast, slots that grow with the distance from it. */
export function propose(p: Place<SlottedCleat>, shop: Cutting): Answer<SlottedCleat> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the batten does not lie square on the board', limit: 0, asked: 0 };
  if (g.deep < 8 || g.thick < 8) return { cannot: 'batten or board is too thin for screws', limit: 8, asked: Math.min(g.deep, g.thick) };
  if (!movesAlong(g, g.row))
    return { cannot: 'the board does not move along this batten: plain screws or glue hold it', limit: 90, asked: 0 };
  return withNearest(p.set, (set) => ask(g, set, shop));
}
function ask(g: RowGround, set: Partial<SlottedCleat>, shop: Cutting): Answer<SlottedCleat> {
  const long = g.run[1] - g.run[0];
  const inset = set.inset ?? tenths(Math.min(40, long / 8));
  const fixed = set.fixed ?? 'middle';
  const apart = Math.ceil((long - 2 * inset) / 200 - 1e-6);
  const count = set.count ?? (fixed === 'middle' ? Math.max(3, apart % 2 === 0 ? apart + 1 : apart + 2) : Math.max(2, apart + 1));
  const allow = set.allow ?? tenths(shareOf(g, { fixed, count, inset, off: 0 }) + 0.05);
  const { head: _, ...sizes } = screwSizes(g, { ...set, head: 'round' }, shop, true);
  const out = settle<SlottedCleat>(set, {
    ...sizes,
    count: [count, byHabit('an odd number, about 200 mm apart, so that one is in the middle', [3, 9])],
    inset: [inset, byHabit('near enough to the edges to keep them flat')],
    off: [0, byHabit('in the middle of the batten')],
    fixed: ['middle', byHabit('fast in the middle, so that both edges move alike')],
    allow: [allow, byMovement('1/8 in for each 12 in from the fast screw to the farthest')],
    slot: [slotFor(sizes.diameter[0], allow), byHabit('the shank and the movement both ways, with 1/32 in at each end')],
  });
  return refuse(g, out.sizes) ?? out;
}
function refuse(g: RowGround, s: SlottedCleat): Refusal<SlottedCleat> | null {
  if (!Number.isInteger(s.count) || s.count < 2 || s.count > 99)
    return { cannot: 'a batten takes at least two screws', limit: 2, asked: s.count, nearest: { count: 3 } };
  if (fastOf(g, s) === null)
    return s.fixed === 'middle'
      ? { cannot: 'an even number of screws has none in the middle', limit: s.count + 1, asked: s.count, nearest: { count: s.count + 1 } }
      : { cannot: `the batten does not run to the ${s.fixed} edge of the board`, limit: 0, asked: 0, nearest: { fixed: 'middle' } };
  if (!(s.allow >= 0)) return { cannot: 'movement is not below nothing', limit: 0, asked: s.allow, nearest: { allow: 1 } };
  if (!(s.slot >= s.clearance))
    return {
      cannot: 'a slot is not shorter than the hole is wide',
      limit: s.clearance,
      asked: s.slot,
      nearest: { slot: slotFor(s.diameter, s.allow) },
    };
  return refuseScrew(g, sizesOf(s)) ?? refuseRow(g, sizesOf(s), s, [s.slot], slotWay(g));
}
