import { type Answer, withNearest } from '../nearest.ts';
import type { Cutting, Place } from '../family.ts';
import { byHabit, settle, tenths } from '../reasons.ts';
import { type RowGround, refuseRow, refuseScrew, screwSizes } from '../screw-rows.ts';
import { ground } from './lay.ts';
import type { WallFixing } from './params.ts';

/** Two screws at least, about 400 mm apart, 5 mm thick or more; how the wall holds them is for whoever knows the wall. */
export function propose(p: Place<WallFixing>, shop: Cutting): Answer<WallFixing> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the rail does not lie flat on the wall', limit: 0, asked: 0 };
  if (g.deep < 40 || g.thick < 8)
    return {
      cannot: 'draw the wall at least 40 mm thick and the rail 8 mm',
      limit: g.deep < 40 ? 40 : 8,
      asked: g.deep < 40 ? g.deep : g.thick,
    };
  return withNearest(p.set, (set) => ask(g, set, shop));
}
function ask(g: RowGround, set: Partial<WallFixing>, shop: Cutting): Answer<WallFixing> {
  const long = g.run[1] - g.run[0];
  const inset = set.inset ?? tenths(Math.min(60, long / 5));
  const count = set.count ?? Math.max(2, Math.ceil((long - 2 * inset) / 400 - 1e-6) + 1);
  const diameter = set.diameter ?? 5;
  const sized = screwSizes(g, { ...set, diameter, head: set.head ?? 'round' }, shop, true);
  const path = g.thick - sized.sink[0] + g.gap;
  // In a wall a screw is longer than in wood: 40 mm and more beyond plaster and rail.
  const length =
    set.length ?? [50, 60, 70, 80, 90, 100, 120, 140, 160].find((l) => l - path >= Math.min(40, g.deep - 5)) ?? sized.length[0];
  const bite = length - path;
  const out = settle<WallFixing>(set, {
    ...sized,
    length: [length, byHabit('40 mm and more in what holds, plaster not counted')],
    pilot_depth: [Math.max(1, Math.min(bite + 5, g.deep)), byHabit('5 mm past the tip, where the dust stays')],
    count: [count, byHabit('two at least, about 400 mm apart: as the studs stand')],
    inset: [inset, byHabit('about 60 mm from the ends')],
    off: [0, byHabit('in the middle')],
  });
  return refuseScrew(g, out.sizes) ?? refuseRow(g, out.sizes, out.sizes, [], g.row) ?? out;
}
