import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { type Laid, ground, isRabbeted, layOut, tongue, zAt } from './lay.ts';
import type { GlazingBar } from './params.ts';
import { LEAST_LEDGE, LEAST_TONGUE } from './propose.ts';

/** Play in comparing with a limit, mm. */
const PLAY = 0.05;
const rule = (id: string, words: string, run: (l: Laid) => Omit<Warning, 'rule' | 'at' | 'unit' | 'source'> | null): Rule<GlazingBar> => ({
  id,
  words,
  run: (p, s) => {
    const g = ground(p.meeting);
    const l = g && layOut(g, s);
    const w = l && isRabbeted(s) ? run(l) : null;
    return l && w ? [{ ...w, rule: id, unit: 'mm', source: HABIT, at: [0, 0, zAt(l, l.lap)] }] : [];
  },
});
const thin = rule('tongue of a bar thin', 'between its rabbets a glazing bar keeps 3 mm', (l) => {
  const left = Math.min(...[l.g.over, l.g.under].map((b) => tongue(l, b)[1] - tongue(l, b)[0]));
  if (left >= LEAST_TONGUE - PLAY) return null;
  return {
    grade: 'trouble',
    title: 'The bar’s tongue is thin',
    why: `Between the rabbets {mm:${left}} are left, cut through once at each crossing: it breaks when the glass is sprigged.`,
    measured: left,
    limit: LEAST_TONGUE,
    roles: ['over', 'under'],
    cures: [{ label: 'let the rabbets follow the bar', set: { rabbet_wide: null } }],
  };
});
const ledge = rule('ledge for the glass narrow', 'glass lies on 3 mm of wood at least', (l) =>
  l.s.rabbet_wide >= LEAST_LEDGE - PLAY
    ? null
    : {
        grade: 'trouble',
        title: 'The glass hardly lies on the bar',
        why: `The ledge is {mm:${l.s.rabbet_wide}} wide; panes are cut a little small, and the glass may slip past it.`,
        measured: l.s.rabbet_wide,
        limit: LEAST_LEDGE,
        roles: ['over', 'under'],
        cures: [{ label: `make the rabbets ${typed(LEAST_LEDGE)} wide`, set: { rabbet_wide: typed(LEAST_LEDGE) } }],
      },
);
const weak = rule('crossing of bars weak', 'where bars cross each keeps a third of its depth', (l) => {
  const left = Math.min(l.lap, l.g.thick - l.lap);
  const limit = l.g.thick / 3;
  if (left >= limit - PLAY) return null;
  return {
    grade: 'trouble',
    title: 'The crossing is weak',
    why: `Of {mm:${l.g.thick}} the one bar keeps only {mm:${left}} where they cross.`,
    measured: left,
    limit,
    roles: [l.lap < l.g.thick / 2 ? 'over' : 'under'],
    cures: [{ label: 'let the rabbets be half as deep as the bar', set: { rabbet_deep: null } }],
  };
});
export const rules: readonly Rule<GlazingBar>[] = [thin, ledge, weak];
