import { axisVec, scale } from '../../geom/vec3.ts';
import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { type Ground, ground } from './lay.ts';
import type { CockBead } from './params.ts';
import { BEADS } from './propose.ts';

const BOOK = { name: BEADS, basis: 'read' } as const;
/** Play in comparing with a limit, mm. */
const PLAY = 0.25;
const rule = (id: string, words: string, run: (g: Ground, s: CockBead) => Omit<Warning, 'rule' | 'at'> | null): Rule<CockBead> => ({
  id,
  words,
  run: (p, s) => {
    const g = ground(p.meeting);
    const w = g && run(g, s);
    return w ? [{ ...w, rule: id, at: scale(axisVec(g.deep, g.face), g.proud) }] : [];
  },
});
const buried = rule('bead buried', 'a cock bead stands proud by at least what is round of it', (g, s) =>
  g.proud >= s.radius - PLAY
    ? null
    : {
        grade: 'note',
        title: 'The bead’s round is half buried',
        why: `It stands {mm:${g.proud}} proud and is round over {mm:${s.radius}}: dirt and polish gather in the quirk below.`,
        measured: g.proud,
        limit: s.radius,
        unit: 'mm',
        source: BOOK,
        roles: ['bead', 'front'],
        cures: [{ label: `round it over ${typed(g.proud)}`, set: { radius: typed(g.proud) } }],
      },
);
const farOut = rule('bead far out', 'a cock bead stands proud by at most its thickness', (g) =>
  g.proud <= g.thick + PLAY
    ? null
    : {
        grade: 'note',
        title: 'The bead stands far out',
        why: `It is {mm:${g.thick}} thick and stands {mm:${g.proud}} proud; so thin an edge is knocked off.`,
        measured: g.proud,
        limit: g.thick,
        unit: 'mm',
        source: BOOK,
        roles: ['bead'],
        cures: [],
      },
);
/** 3/16 in. */
const HEAVY = (25.4 * 3) / 16;
const heavy = rule('bead heavy', 'a cock bead is 1/8 to 3/16 in thick', (g) =>
  g.thick <= HEAVY + PLAY
    ? null
    : {
        grade: 'note',
        title: 'The bead is heavy',
        why: `{mm:${g.thick}} is more than the 3/16 in that beads round a drawer have at most.`,
        measured: g.thick,
        limit: HEAVY,
        unit: 'mm',
        source: BOOK,
        roles: ['bead'],
        cures: [],
      },
);
const thin = rule('wood behind a bead', 'behind a bead’s rabbet 3 mm of the front stay, unless it runs through', (g) =>
  g.behind === 0 || g.behind >= 3 - 1e-6
    ? null
    : {
        grade: 'trouble',
        title: 'Thin wood behind the bead',
        why: `Only {mm:${g.behind}} of the front is left behind the rabbet; it breaks away. Let the bead run through, or make it narrower.`,
        measured: g.behind,
        limit: 3,
        unit: 'mm',
        source: HABIT,
        roles: ['front'],
        cures: [],
      },
);
export const rules: readonly Rule<CockBead>[] = [buried, farOut, heavy, thin];
