import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { ground, lay } from './lay.ts';
import type { LooseSpline } from './params.ts';

const PLAY = 0.05;
const NAVED = { name: 'NAVEDTRA 14119, wood joinery', basis: 'read' } as const;
/** Solid wood glued across other wood's grain over more than this, mm, works loose or splits it. */
const CROSS = 100;

const tooThick: Rule<LooseSpline> = {
  id: 'spline too thick',
  words: 'a spline is a third of the thickness, half at most',
  run: (p, s) => {
    const g = ground(p.meeting);
    const thick = g ? g.x[1] - g.x[0] : 0;
    if (!g || s.thickness <= thick / 2 + PLAY) return [];
    const w: Warning = {
      rule: 'spline too thick',
      grade: 'trouble',
      title: 'The spline is thick for the boards',
      why: `A spline of {mm:${s.thickness}} leaves cheeks of {mm:${(thick - s.thickness) / 2}} on boards {mm:${thick}} thick; they split off. A third is the rule.`,
      measured: s.thickness,
      limit: thick / 2,
      unit: 'mm',
      source: NAVED,
      at: [0, 0, 0],
      roles: ['enter', 'into'],
      cures: [
        { label: `make the spline ${typed(thick / 3)} thick`, set: { thickness: typed(thick / 3) } },
        { label: 'let the spline follow the boards', set: { thickness: null } },
      ],
    };
    return [w];
  },
};
/** A spline with its grain along the seam splits along it where it ties end grain. */
const weakGrain: Rule<LooseSpline> = {
  id: 'spline grain along the seam',
  words: 'a spline at end grain has its grain across the seam, or is plywood',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || g.edges || s.made !== 'along') return [];
    return [
      {
        rule: 'spline grain along the seam',
        grade: 'trouble',
        title: 'The spline’s grain runs along the seam',
        why: 'Where end grain meets, the spline alone holds the joint; with its grain along the seam it splits there.',
        measured: 90,
        limit: 0,
        unit: 'deg',
        source: HABIT,
        at: [0, 0, 0],
        roles: ['enter', 'into'],
        cures: [
          { label: 'make the spline with its grain across', set: { made: 'across' } },
          { label: 'make the spline of plywood', set: { made: 'ply' } },
        ],
      },
    ];
  },
};
const crosses: Rule<LooseSpline> = {
  id: 'spline crosses the grain',
  tells: 'glue',
  words: 'a solid spline across the grain of long edges is glued over 100 mm at most',
  run: (p, s) => {
    const g = ground(p.meeting);
    const l = g && lay(g, s);
    if (!g || !l || !g.edges || s.made !== 'across' || s.hold !== 'glued') return [];
    const over = l.y[1] - l.y[0];
    if (over <= CROSS + PLAY) return [];
    return [
      {
        rule: 'spline crosses the grain',
        grade: 'trouble',
        title: 'A solid spline is glued across the grain',
        why: `Over {mm:${over}} the spline swells along the seam where the boards do not: it works loose, or breaks the cheeks.`,
        measured: over,
        limit: CROSS,
        unit: 'mm',
        source: HABIT,
        at: [0, (l.y[0] + l.y[1]) / 2, 0],
        roles: ['enter', 'into'],
        cures: [
          { label: 'make the spline of plywood', set: { made: 'ply' } },
          { label: 'make it with its grain along the seam', set: { made: 'along' } },
        ],
      },
    ];
  },
};
export const rules: readonly Rule<LooseSpline>[] = [tooThick, weakGrain, crosses];
