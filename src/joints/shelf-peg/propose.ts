import { type Answer, withNearest } from '../nearest.ts';
import { nearestOwned } from '../cutters.ts';
import type { Cutting, Place, Refusal } from '../family.ts';
import { byHabit, settle, tenths } from '../reasons.ts';
import { type Ground, endsOn, ground, holes, pegX, roomOf } from './lay.ts';
import type { ShelfPeg } from './params.ts';

export function propose(p: Place<ShelfPeg>, shop: Cutting): Answer<ShelfPeg> {
  const g = ground(p.meeting);
  if (!g || !endsOn(g)) return { cannot: 'the shelf does not lie level with an end against the side', limit: 0, asked: 0 };
  if (g.thick < 8) return { cannot: 'a side this thin holds no pegs', limit: 8, asked: g.thick };
  return withNearest(p.set, (set) => ask(g, set, shop));
}
function ask(g: Ground, set: Partial<ShelfPeg>, shop: Cutting): Answer<ShelfPeg> {
  const d = set.diameter ?? nearestOwned(shop.bits, Math.min(6, g.thick / 3), [3, 8]);
  const flat = set.flat ?? tenths(d / 6);
  const room = roomOf(g, pegX(g, { diameter: d, flat }));
  const step = set.step ?? 32;
  const spare = (has: number): number => Math.max(0, Math.min(3, Math.floor((has - 2 * d) / step)));
  const out = settle<ShelfPeg>(set, {
    diameter: [d, byHabit('about 6 mm', [5, 8])],
    depth: [Math.min(12, tenths((g.thick * 2) / 3 - 0.05)), byHabit('twice the diameter, two thirds of the side at most')],
    reach: [12, byHabit('enough under the shelf that it does not slip off', [8, 20])],
    flat: [flat, byHabit('a little off the top, so that the shelf does not roll')],
    inset: [tenths(Math.min(37, (g.y[1] - g.y[0]) / 4)), byHabit('about 37 mm from the edges', [25, 60])],
    step: [step, byHabit('32 mm, as rows of holes are usually bored', [20, 50])],
    above: [spare(room.above), byHabit('three above, as far as the side reaches')],
    below: [spare(room.below), byHabit('three below, as far as the side reaches')],
    peg: ['wood', byHabit('turned from the wood of the side')],
  });
  return refuse(g, out.sizes) ?? out;
}
function refuse(g: Ground, s: ShelfPeg): Refusal<ShelfPeg> | null {
  const wide = g.y[1] - g.y[0];
  if (!(s.diameter >= 2 && s.diameter <= Math.min(20, g.thick)))
    return {
      cannot: 'so thick or thin a peg cannot be used here',
      limit: s.diameter >= 2 ? Math.min(20, g.thick) : 2,
      asked: s.diameter,
      nearest: { diameter: 6 },
    };
  if (!(s.depth >= 3) || s.depth > g.thick - 0.5)
    return {
      cannot: 'the holes are at least 3 mm deep and do not come through the side',
      limit: s.depth >= 3 ? g.thick - 0.5 : 3,
      asked: s.depth,
      nearest: { depth: (g.thick * 2) / 3 },
    };
  if (!(s.reach >= 2 && s.reach <= 100))
    return { cannot: 'a peg must reach under the shelf', limit: 2, asked: s.reach, nearest: { reach: 12 } };
  if (!(s.flat > 0 && s.flat <= s.diameter / 2))
    return { cannot: 'the flat takes less than half of the peg', limit: s.diameter / 2, asked: s.flat, nearest: { flat: s.diameter / 6 } };
  if (!(s.inset >= s.diameter / 2) || s.inset > wide / 2 - s.diameter)
    return {
      cannot: 'two pegs must lie under the shelf, one behind the other',
      limit: s.inset >= s.diameter / 2 ? wide / 2 - s.diameter : s.diameter / 2,
      asked: s.inset,
      nearest: { inset: wide / 4 },
    };
  return refuseRow(g, s);
}
function refuseRow(g: Ground, s: ShelfPeg): Refusal<ShelfPeg> | null {
  for (const key of ['above', 'below'] as const)
    if (!Number.isInteger(s[key]) || s[key] < 0 || s[key] > 60)
      return { cannot: 'spare holes are a whole number from 0 to 60', limit: 0, asked: s[key], nearest: { [key]: 0 } };
  if (s.above + s.below > 0 && !(s.step >= s.diameter + 1))
    return { cannot: 'the holes of a row would run into each other', limit: s.diameter + 1, asked: s.step, nearest: { step: 32 } };
  const r = s.diameter / 2 + 0.5;
  const [min, max] = [g.side.box.min, g.side.box.max];
  const all = holes(g, s);
  if (all.some((h) => h.y - min[1] < r || max[1] - h.y < r))
    return { cannot: 'a hole would run out at the edge of the side', limit: r, asked: s.inset, nearest: { inset: (g.y[1] - g.y[0]) / 4 } };
  const room = roomOf(g, pegX(g, s));
  for (const key of ['above', 'below'] as const) {
    const most = Math.max(0, Math.floor((room[key] - r) / s.step + 1e-9));
    if (room[key] < r) return { cannot: 'the side does not reach past the pegs', limit: r, asked: room[key] };
    if (s[key] > most) return { cannot: `so many holes run out ${key} the side`, limit: most, asked: s[key], nearest: { [key]: most } };
  }
  return null;
}
