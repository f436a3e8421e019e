import { type Answer, withNearest } from '../nearest.ts';
import type { Cutting, Place } from '../family.ts';
import { byHabit, settle, tenths } from '../reasons.ts';
import { ground } from './lay.ts';
import type { GlueBlock } from './params.ts';

export function propose(p: Place<GlueBlock>, _shop: Cutting): Answer<GlueBlock> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the block does not lie in a corner between the two parts', limit: 0, asked: 0 };
  const leg = Math.min(...g.legs);
  return withNearest(p.set, (set): Answer<GlueBlock> => {
    const out = settle<GlueBlock>(set, {
      bevel: [tenths(leg / 2), byHabit('the free corner holds nothing: half of a leg goes', [0, leg])],
    });
    const { bevel } = out.sizes;
    const most = leg - 1;
    if (!(bevel >= 0) || bevel > most)
      return {
        cannot: 'the bevel leaves nothing of a face',
        limit: bevel >= 0 ? most : 0,
        asked: bevel,
        nearest: { bevel: bevel >= 0 ? leg / 2 : 0 },
      };
    return out;
  });
}
