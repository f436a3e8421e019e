import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { byBook, byHabit, settle } from '../reasons.ts';
import { withNearest } from '../nearest.ts';
import { type Ground, ground, isCrossed, mitres } from './lay.ts';
import type { CockBead } from './params.ts';

export const BEADS = 'woodcentral.com, cockbeading a drawer (Tindall)';
/** Beads longer than this across the front's grain are pinned instead, mm. */
const CROSSED = 100;
/** Least radius, mm. */
const LEAST = 0.2;
type Proposed = { readonly sizes: CockBead; readonly because: Readonly<Record<keyof CockBead, Reason>> };

export function propose(p: Place<CockBead>, _shop: Cutting): Proposed | Refusal<CockBead> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the bead does not lie in the edge of the front, standing proud of one face', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => {
    const out = proposals(g, set);
    return refuse(g, out.sizes) ?? out;
  });
}
function proposals(g: Ground, set: Partial<CockBead>): Proposed {
  const long = g.shared[g.along][1] - g.shared[g.along][0];
  const pinned = isCrossed(g) && long > CROSSED;
  return settle<CockBead>(set, {
    radius: [g.thick / 2, byBook('half round: half of the bead’s thickness', BEADS, [g.thick / 4, g.thick / 2])],
    mitred: ['none', byHabit('square, until the beads that it meets are there')],
    hold: [
      pinned ? 'pinned' : 'glued',
      pinned ? byHabit('across the grain of a wide front glue would hold it fast: pins give') : byHabit('glued along the grain'),
    ],
  });
}
function refuse(g: Ground, s: CockBead): Refusal<CockBead> | null {
  if (!(s.radius >= LEAST) || s.radius > g.thick / 2 + 1e-6)
    return {
      cannot: 'a bead’s radius is at most half of its thickness, and no less than can be seen',
      limit: s.radius >= LEAST ? g.thick / 2 : LEAST,
      asked: s.radius,
      nearest: { radius: g.thick / 2 },
    };
  const ends = mitres(g, s);
  if (!ends) return { cannot: `"${s.mitred}" is not an end of the bead`, limit: 0, asked: 0, nearest: { mitred: 'none' } };
  const long = g.shared[g.along][1] - g.shared[g.along][0];
  const least = 2 * g.thick + 1;
  return ends.includes(true) && long < least
    ? { cannot: 'so short a bead cannot be mitred', limit: least, asked: long, nearest: { mitred: 'none' } }
    : null;
}
