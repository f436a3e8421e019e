import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { ground, run } from './lay.ts';
import type { Housing } from './params.ts';

const BOOK = { name: 'Port Townsend School of Woodworking, rules of thumb', basis: 'read' } as const;
/** Shares of the side are compared with this much play, mm, so that 1/3 typed as a decimal passes. */
const PLAY = 0.05;

const tooDeep: Rule<Housing> = {
  id: 'housing too deep',
  words: 'a housing takes at most a third of the side',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || s.depth <= g.thick / 3 + PLAY) return [];
    const warning: Warning = {
      rule: 'housing too deep',
      grade: 'trouble',
      title: 'The housing is deep for the side',
      why: `It takes {mm:${s.depth}} of a side {mm:${g.thick}} thick; beyond a third the side is weak there.`,
      measured: s.depth,
      limit: g.thick / 3,
      unit: 'mm',
      source: BOOK,
      at: [0, 0, s.depth],
      roles: ['into', 'enter'],
      cures: [
        { label: `make the housing ${typed(g.thick / 3)} deep`, set: { depth: typed(g.thick / 3) } },
        { label: 'let the depth follow the side', set: { depth: null } },
      ],
    };
    return [warning];
  },
};
const shallow: Rule<Housing> = {
  id: 'housing shallow',
  words: 'a housing shallower than 3 mm holds little',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || s.depth >= 3 || g.thick / 4 < 3) return [];
    return [
      {
        rule: 'housing shallow',
        grade: 'note',
        title: 'The housing is shallow',
        why: `A housing {mm:${s.depth}} deep holds the shelf up but hardly keeps it from tilting.`,
        measured: s.depth,
        limit: 3,
        unit: 'mm',
        source: HABIT,
        at: [0, 0, s.depth],
        roles: ['into'],
        cures: [{ label: 'let the depth follow the side', set: { depth: null } }],
      },
    ];
  },
};
const thinStop: Rule<Housing> = {
  id: 'housing stop thin',
  words: 'wood left in front of a stopped housing should be at least 3 mm',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || s.stopped === 'none' || s.stop >= 3) return [];
    const r = run(g, s);
    const y = r.cut[0] > 0 ? r.span[0] : r.span[1];
    return [
      {
        rule: 'housing stop thin',
        grade: 'trouble',
        title: 'Thin wood in front of the stopped housing',
        why: `Only {mm:${s.stop}} of the side is left at the edge; it breaks out when the end of the housing is chopped.`,
        measured: s.stop,
        limit: 3,
        unit: 'mm',
        source: HABIT,
        at: [0, y, 0],
        roles: ['into'],
        cures: [{ label: 'let the stop follow the shelf', set: { stop: null } }],
      },
    ];
  },
};
const thinTongue: Rule<Housing> = {
  id: 'housing tongue thin',
  words: 'a shouldered shelf hangs on its tongue: at least a third of its thickness',
  run: (p, s): readonly Warning[] => {
    const g = ground(p.meeting);
    const shelf = g ? g.x[1] - g.x[0] : 0;
    if (!g || s.shoulders === 'none' || s.tongue >= shelf / 3 - PLAY) return [];
    return [
      {
        rule: 'housing tongue thin',
        grade: 'trouble',
        title: 'The tongue of the shelf is thin',
        why: `Only {mm:${s.tongue}} of a shelf {mm:${shelf}} thick goes into the side and carries all that stands on it.`,
        measured: s.tongue,
        limit: shelf / 3,
        unit: 'mm',
        source: HABIT,
        at: [0, 0, 0],
        roles: ['enter'],
        cures: [
          { label: `make the tongue ${typed(shelf / 2)} thick`, set: { tongue: typed(shelf / 2) } },
          { label: 'let the whole thickness in', set: { shoulders: null, tongue: null } },
        ],
      },
    ];
  },
};
export const rules: readonly Rule<Housing>[] = [tooDeep, shallow, thinStop, thinTongue];
