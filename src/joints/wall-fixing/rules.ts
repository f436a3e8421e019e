import type { Rule, Warning } from '../family.ts';
import { HABIT } from '../reasons.ts';
import { screwRules } from '../screw-rules.ts';
import { specOf } from '../screw-rows.ts';
import { biteOf } from '../screws.ts';
import { ground, needOf, pitchOf, spotsOf } from './lay.ts';
import type { WallFixing } from './params.ts';

const PLAY = 0.05;
const of = (
  id: string,
  words: string,
  say: (g: NonNullable<ReturnType<typeof ground>>, s: WallFixing) => Omit<Warning, 'rule' | 'source' | 'at' | 'roles'> | null,
): Rule<WallFixing> => ({
  id,
  words,
  run: (p, s) => {
    const g = ground(p.meeting);
    const said = g && say(g, s);
    return said ? [{ rule: id, source: HABIT, at: [0, 0, 0], roles: ['rail', 'wall'], ...said }] : [];
  },
});
const ofScrews = screwRules<WallFixing>((p, s) => {
  const g = ground(p.meeting);
  const moves = g && { need: needOf(g, s), has: (s.clearance - s.diameter) / 2 };
  return g && moves ? { g, s, spots: spotsOf(g, s), moves, slotKeys: ['clearance', 'count', 'inset'] } : null;
});
export const rules: readonly Rule<WallFixing>[] = [
  ...ofScrews,
  of('wall screw short', 'a screw goes at least 40 mm into what holds it, plaster not counted', (g, s) => {
    const bite = biteOf(g.bed, specOf(s));
    if (bite >= 40 - PLAY) return null;
    return {
      grade: 'trouble',
      title: 'The screws go hardly into the wall',
      why: `{mm:${bite}} are in the wall, and plaster holds nothing: a loaded or tall piece pulls them out.`,
      measured: bite,
      limit: 40,
      unit: 'mm',
      cures: [{ label: 'let the screws follow rail and wall', set: { length: null, pilot_depth: null, sink: null } }],
    };
  }),
  of('one screw in the wall', 'a piece is held to a wall by two screws at least', (_g, s) =>
    s.count >= 2
      ? null
      : {
          grade: 'trouble',
          title: 'One screw alone holds it to the wall',
          why: 'It turns about a single screw, and nothing holds it when that one fails.',
          measured: s.count,
          limit: 2,
          unit: 'count',
          cures: [{ label: 'let their number follow the rail', set: { count: null, inset: null } }],
        },
  ),
  of('wall screws far apart', 'screws in a wall stand at most about 600 mm apart, as studs do', (g, s) => {
    const apart = pitchOf(g, s);
    if (apart <= 610 + PLAY) return null;
    return {
      grade: 'note',
      title: 'The screws in the wall stand far apart',
      why: `{mm:${apart}} between two of them; studs stand about {mm:400} to {mm:610} apart, and each may carry one.`,
      measured: apart,
      limit: 610,
      unit: 'mm',
      cures: [{ label: 'let their number follow the rail', set: { count: null, inset: null } }],
    };
  }),
];
