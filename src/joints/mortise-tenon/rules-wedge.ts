/** Wedges: the way they press, and the room that the mortise leaves them. */
import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { NOYES, read } from '../sources.ts';
import { type Laid, spreadOf } from './laid.ts';
import { layOut } from './make.ts';
import type { MortiseTenon } from './params.ts';

type R = Rule<MortiseTenon>;
const wedgeGrain: R = {
  id: 'wedge along the grain',
  words: 'wedges press along the grain of the mortised part',
  run: (p, s) => {
    const l = layOut(p, s);
    if (s.wedge !== 'along') return [];
    return [
      {
        rule: 'wedge along the grain',
        grade: 'trouble',
        title: 'The wedges split the mortised part',
        why: 'They press across its grain. Turned by a quarter they press against its end grain, which holds.',
        measured: 90,
        limit: 0,
        unit: 'deg',
        source: HABIT,
        at: tipOf(l),
        roles: ['into'],
        cures: [{ label: 'turn the wedges across the grain', set: { wedge: 'across' } }],
      },
    ];
  },
};
const tipOf = (l: Laid): Warning['at'] => [(l.x[0] + l.x[1]) / 2, ((l.tenons[0]?.y[0] ?? 0) + (l.tenons[0]?.y[1] ?? 0)) / 2, l.tip];
/** Play of a fox-wedged tenon at the bottom, mm: what glue still fills, and wood still gives. */
const GIVES = 0.5;
/** The bottom of the mortise drives the wedges home just as the shoulder closes only where it is as wide as the tenon then is. */
const foxRoom: R = {
  id: 'fox mortise',
  words: 'a fox-wedged mortise is wider at its bottom by as much as the wedges spread the tenon',
  run: (p, s): readonly Warning[] => {
    const l = layOut(p, s);
    const first = l.wedges[0]?.spec;
    if (s.fox !== 'yes' || !first) return [];
    const wanted = (s.wedges * (first.thick - first.kerf)) / 2;
    const off = s.flare - wanted;
    if (Math.abs(off) <= GIVES + 1e-6) return [];
    return [
      {
        rule: 'fox mortise',
        grade: 'trouble',
        title: off < 0 ? 'The mortise is narrow for the fox wedges' : 'The mortise is wide for the fox wedges',
        why:
          off < 0
            ? `The wedges spread the tenon by {mm:${wanted}} on each side, the mortise gives {mm:${s.flare}}: they jam before the shoulders close, and it cannot be drawn out again.`
            : `The wedges spread the tenon by {mm:${wanted}} on each side, the mortise gives {mm:${s.flare}}: they are home before they press.`,
        measured: s.flare,
        limit: wanted,
        unit: 'mm',
        source: read(NOYES),
        at: tipOf(l),
        roles: ['into'],
        cures: [
          { label: 'let the mortise follow the wedges', set: { flare: null } },
          { label: 'let wedges and mortise follow the tenon', set: { flare: null, wedges: null, wedge_thick: null } },
        ],
      },
    ];
  },
};
const hold: R = {
  id: 'wedge slope',
  words: 'a wedge in a tenon is not blunter than 1 in 5, so that it stays in',
  run: (p, s) => {
    const l = layOut(p, s);
    const w = l.wedges[0]?.spec;
    if (!w || !spreadOf(l)) return [];
    // Both flanks together.
    const run = w.tip - w.root;
    const slope = (w.thick - w.kerf) / run;
    if (slope <= BLUNTEST + 1e-6) return [];
    const slim = typed(w.kerf + BLUNTEST * run * 0.95);
    return [
      {
        rule: 'wedge slope',
        grade: 'note',
        title: 'The wedges are blunt',
        why: 'They thicken by more than 1 in 5; so blunt they work loose again.',
        measured: Math.atan(slope) * DEG,
        limit: Math.atan(BLUNTEST) * DEG,
        unit: 'deg',
        source: HABIT,
        at: tipOf(l),
        roles: ['enter'],
        cures: [
          { label: 'let the wedges follow the tenon', set: { wedge_thick: null } },
          { label: `make their thick end ${slim}`, set: { wedge_thick: slim } },
        ],
      },
    ];
  },
};
const DEG = 180 / Math.PI;
const BLUNTEST = 0.2;
export const wedgeRules: readonly R[] = [wedgeGrain, foxRoom, hold];
