import { nearestOwned, stepOf } from '../cutters.ts';
import type { Cutting, Place, Refusal } from '../family.ts';
import { type Answer, withNearest } from '../nearest.ts';
import { byBook, byHabit, settle } from '../reasons.ts';
import { PTSW, RIV } from '../sources.ts';
import { type Ground, cheeksOf, ground, notchesOf, thicknessOf, tongueOf } from './lay.ts';
import type { Bridle } from './params.ts';

/** The thinnest cheek that can be sawn at all, and the thinnest tongue, mm. */
const LEAST = 1;
export function propose(p: Place<Bridle>, shop: Cutting): Answer<Bridle> {
  const g = ground(p.meeting);
  if (!g)
    return {
      cannot: 'the end of one part does not stand astride the other: both run to the outer edge, and the fork is the thicker or as thick',
      limit: 0,
      asked: 0,
    };
  return withNearest(p.set, (set) => ask(g, set, shop));
}
/** A third of the fork, or of the other part where that is much the thinner. */
const wanted = (g: Ground): number => Math.min(thicknessOf(g.fork, g.c) / 3, thicknessOf(g.tongue, g.c) / 2);

function ask(g: Ground, set: Partial<Bridle>, shop: Cutting): Answer<Bridle> {
  const third = wanted(g);
  const out = settle<Bridle>(set, {
    thickness: [
      nearestOwned(shop.mortiseWidths, third, [third * 0.75, third * 1.25], stepOf(shop)),
      byBook('a third of the thickness, as of a tenon', `${PTSW}; ${RIV}`, [third * 0.75, third * 1.25]),
    ],
    offset: [0, byHabit('in the middle of the part with the tongue')],
    glue: ['yes', byHabit('glued: two broad cheeks of long grain')],
  });
  return refuse(g, out.sizes) ?? out;
}
function refuse(g: Ground, s: Bridle): Refusal<Bridle> | null {
  const most = Math.min(thicknessOf(g.tongue, g.c), thicknessOf(g.fork, g.c) - 2 * LEAST);
  if (!(s.thickness >= LEAST) || s.thickness > most + 1e-6)
    return {
      cannot: 'the tongue must be thinner than the fork, and no thicker than its own part',
      limit: s.thickness >= LEAST ? most : LEAST,
      asked: s.thickness,
      ...(wanted(g) >= LEAST ? { nearest: { thickness: wanted(g) } } : {}),
    };
  const t = tongueOf(g, s);
  const least = Math.min(...notchesOf(g, t), ...cheeksOf(g, t).map((c) => c - LEAST));
  if (!(least >= -1e-6))
    return {
      cannot: 'the offset sets the tongue out of its part, or through the side of the fork',
      limit: Math.max(0, Math.abs(s.offset) + least),
      asked: Math.abs(s.offset),
      nearest: { offset: 0, thickness: wanted(g) },
    };
  return null;
}
