import { alongGrain } from '../blocks.ts';
import type { Rule, Warning } from '../family.ts';
import { HABIT } from '../reasons.ts';
import { type Laid, ground, layOut, pinAt, xAt } from './lay.ts';
import type { RuleJoint } from './params.ts';
import { HINGES, LEAST_FILLET, LEAST_HOLD } from './propose.ts';

const BOOK = { name: HINGES, basis: 'read' } as const;
/** Play in comparing with a limit, mm: a fillet of 3 mm passes for 1/8 in. */
const PLAY = 0.2;
const rule = (id: string, words: string, run: (l: Laid) => Omit<Warning, 'rule'> | null): Rule<RuleJoint> => ({
  id,
  words,
  run: (p, s) => {
    const g = ground(p.meeting);
    const w = g && run(layOut(g, s));
    return w ? [{ ...w, rule: id }] : [];
  },
});
const middle = (l: Laid): number => (l.g.run[0] + l.g.run[1]) / 2;

const lip = rule('leaf’s lip thin', 'a rule joint’s fillet is 1/8 in at least', (l) =>
  l.s.fillet >= LEAST_FILLET - PLAY
    ? null
    : {
        grade: 'trouble',
        title: 'The leaf’s lip is thin',
        why: `Over the round only {mm:${l.s.fillet - l.s.clearance}} of the leaf is left; it breaks off when the leaf is leant on.`,
        measured: l.s.fillet,
        limit: LEAST_FILLET,
        unit: 'mm',
        source: BOOK,
        at: [xAt(l, l.s.fillet), middle(l), 0],
        roles: ['leaf'],
        cures: [{ label: 'let fillet and round follow the hinge', set: { fillet: null, radius: null } }],
      },
);
const binds = rule('rule joint binds', 'cove and round clear each other by 0.3 mm at least', (l) =>
  l.s.clearance >= 0.3 - 1e-6
    ? null
    : {
        grade: 'trouble',
        title: 'The rule joint will bind',
        why: `The cove clears the round by {mm:${l.s.clearance}}: finish and a little cup of the leaf take that up, and it scrapes as it swings.`,
        measured: l.s.clearance,
        limit: 0.3,
        unit: 'mm',
        source: HABIT,
        at: pinAt(l, middle(l)),
        roles: ['leaf', 'top'],
        cures: [{ label: 'let the clearance follow the rule', set: { clearance: null } }],
      },
);
const wide = rule('rule joint gapes', 'cove and round clear each other by about 1.2 mm at most', (l) =>
  l.s.clearance <= 1.2
    ? null
    : {
        grade: 'note',
        title: 'The rule joint shows a gap',
        why: `{mm:${l.s.clearance}} stand open between cove and round when the leaf hangs.`,
        measured: l.s.clearance,
        limit: 1.2,
        unit: 'mm',
        source: HABIT,
        at: pinAt(l, middle(l)),
        roles: ['leaf', 'top'],
        cures: [{ label: 'let the clearance follow the rule', set: { clearance: null } }],
      },
);
const flap = rule('hinge’s hold on the leaf', 'the longer flap lies 12 mm at least under the leaf, beyond the cove', (l) => {
  const holds = l.s.flap_leaf - l.cove;
  if (holds >= LEAST_HOLD - 1e-6) return null;
  return {
    grade: 'trouble',
    title: 'The hinges hardly hold the leaf',
    why: `Beyond the cove {mm:${holds}} of flap lie under the leaf: no room for its screws. A hinge made for rule joints has one longer flap.`,
    measured: holds,
    limit: LEAST_HOLD,
    unit: 'mm',
    source: HABIT,
    at: [xAt(l, l.flap[0]), middle(l), -l.cove],
    roles: ['leaf'],
    cures: [{ label: 'let the flap follow the cove', set: { flap_leaf: null } }],
  };
});
const grain = rule('rule joint across the grain', 'a rule joint runs along the grain of leaf and top', (l) => {
  const across = (['leaf', 'top'] as const).filter((role) => !alongGrain(l.g[role], [0, 1, 0]));
  if (across.length === 0) return null;
  return {
    grade: 'trouble',
    title: 'The rule joint runs across the grain',
    why: 'Lip and round are then short grain and break off; and along the joint one board moves where its neighbour may not.',
    measured: 90,
    limit: 0,
    unit: 'deg',
    source: HABIT,
    at: [xAt(l, l.s.fillet), middle(l), 0],
    roles: across,
    cures: [],
  };
});
export const rules: readonly Rule<RuleJoint>[] = [lip, binds, wide, flap, grain];
