import { isWood } from '../../wood/woods.ts';
import { axisVec } from '../../geom/vec3.ts';
import { alongGrain } from '../blocks.ts';
import type { Rule, Warning } from '../family.ts';
import { HABIT } from '../reasons.ts';
import { type Ground, grainAlong, ground } from './lay.ts';
import type { GlueBlock } from './params.ts';

/** A block glued across the grain is no longer than this, mm: common practice is a row of short ones. */
const SHORT = 75;
type Said = Pick<Warning, 'grade' | 'title' | 'why' | 'measured' | 'limit' | 'unit'>;
const rule = (id: string, words: string, say: (g: Ground) => Said | null, tells?: 'glue'): Rule<GlueBlock> => ({
  id,
  words,
  ...(tells ? { tells } : {}),
  run: (p) => {
    const g = ground(p.meeting);
    const said = g && say(g);
    // Size and grain of a block are the part's own: no setting of the joint cures them.
    return said ? [{ rule: id, source: HABIT, at: [0, 0, 0], roles: ['block', 'on', 'beside'], cures: [], ...said }] : [];
  },
});
/** Does a part swell along the corner, where the block does not? */
const crosses = (g: Ground): boolean => grainAlong(g) && [g.on, g.beside].some((s) => isWood(s.wood) && !alongGrain(s, axisVec(g.along)));

export const rules: readonly Rule<GlueBlock>[] = [
  rule(
    'glue block long',
    'a glue block across the grain of a part is at most about 75 mm long; several short ones let it move',
    (g) =>
      crosses(g) && g.long > SHORT + 0.05
        ? {
            grade: 'trouble',
            title: 'The glue block is long across the grain',
            why: `It is glued over {mm:${g.long}} across wood that moves under it: it comes loose, or the wood splits. Let several short blocks with gaps between them take its place.`,
            measured: g.long,
            limit: SHORT,
            unit: 'mm',
          }
        : null,
    'glue',
  ),
  rule('glue block grain', 'the grain of a glue block runs along the corner', (g) =>
    grainAlong(g)
      ? null
      : {
          grade: 'trouble',
          title: 'The grain of the glue block stands on the corner',
          why: 'One of its two faces is end grain, which glue hardly holds. Let its grain run along the corner.',
          measured: 90,
          limit: 0,
          unit: 'deg',
        },
  ),
  rule('glue block small', 'each leg of a glue block is at least about 12 mm', (g) => {
    const leg = Math.min(...g.legs);
    return leg >= 12 - 0.05
      ? null
      : {
          grade: 'note',
          title: 'The glue block is small',
          why: `Its smaller leg is {mm:${leg}}; there is little face for the glue.`,
          measured: leg,
          limit: 12,
          unit: 'mm',
        };
  }),
];
