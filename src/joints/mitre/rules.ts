import type { Vec3 } from '../../geom/vec3.ts';
import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { alongMitre, deepest, onMitre } from './lay.ts';
import { drawn } from './make.ts';
import type { Mitre } from './params.ts';
import { stockOf } from './propose.ts';

const both = { source: HABIT, roles: ['first', 'second'] } as const;
const weak: Rule<Mitre> = {
  id: 'mitre end grain',
  words: 'a plain mitre is held by end grain alone',
  run: (p, s, made) => {
    const c = drawn(p);
    const face = made.contacts.find((x) => x.name === 'mitre');
    if (s.form !== 'plain' || face?.glue !== 'end' || s.hold !== 'glued') return [];
    const forms = c.flat
      ? ([
          ['splined', 'let in a spline'],
          ['keyed', 'let in keys'],
        ] as const)
      : [];
    return [
      {
        ...both,
        rule: 'mitre end grain',
        grade: 'note',
        title: 'A plain mitre is weak',
        why: 'End grain soaks up the glue and hardly holds. Size it with thin glue first; where the corner carries anything, let in a spline or keys whose grain runs across the joint.',
        measured: 0,
        limit: 1,
        unit: 'count',
        at: onMitre(c, c.long, c.span[1], 0),
        cures: forms.map(([form, label]) => ({ label, set: { form } })),
      },
    ];
  },
};
const thickSpline: Rule<Mitre> = {
  id: 'mitre spline thick',
  words: 'spline and keys take at most a third of a frame’s thickness; a case’s spline a third of the board',
  run: (p, s) => {
    const c = drawn(p);
    const stock = stockOf(c);
    const taken = s.form === 'keyed' && alongMitre(c) ? s.thick * s.count : s.thick;
    if (s.form === 'plain' || (s.form === 'keyed' && !alongMitre(c)) || taken <= stock / 3 + 0.05) return [];
    // A spline of the nearest size owned may be a little above a third.
    if (s.form === 'splined' && taken <= stock / 2 + 0.05 && p.set.thick === undefined) return [];
    return [
      {
        ...both,
        rule: 'mitre spline thick',
        grade: 'trouble',
        title: s.form === 'keyed' ? 'The keys leave little of the corner' : 'The spline leaves thin walls',
        why: `Together {mm:${taken}} of {mm:${stock}} is cut out; the walls beside it split when it is driven in.`,
        measured: taken,
        limit: stock / 3,
        unit: 'mm',
        at: onMitre(c, c.long / 2, c.span[0], 0) satisfies Vec3,
        cures: [{ label: 'let the thickness follow the parts', set: { thick: null, count: null } }],
      },
    ];
  },
};
const shallow: Rule<Mitre> = {
  id: 'mitre key shallow',
  words: 'a spline stands at least as deep as it is thick; a key reaches a third of the way in, not past two thirds',
  run: (p, s): Warning[] => {
    const c = drawn(p);
    if (s.form === 'plain') return [];
    const limit = s.form === 'keyed' ? c.long / 3 : Math.min(s.thick, deepest(c, s.thick));
    const deep = s.form === 'keyed' && s.depth > (2 * c.long) / 3 + 0.1;
    if (s.depth >= limit - 0.1 && !deep) return [];
    return [
      {
        ...both,
        rule: 'mitre key shallow',
        grade: deep ? 'trouble' : 'note',
        title: deep ? 'The keys nearly cut through the corner' : 'Spline or keys are let in too little to hold',
        why: deep
          ? `They reach {mm:${s.depth}} in of {mm:${c.long}}; the little that is left at the inner corner breaks while they are cut.`
          : `They are let in {mm:${s.depth}}; less than {mm:${limit}} adds hardly anything to the glue.`,
        measured: s.depth,
        limit: deep ? (2 * c.long) / 3 : limit,
        unit: 'mm',
        at: onMitre(c, c.long - (s.form === 'keyed' ? s.depth : 0), c.span[0], 0),
        cures: [
          { label: 'let the depth follow the parts', set: { depth: null } },
          ...(deep ? [{ label: `let them in ${typed(c.long / 2)}`, set: { depth: typed(c.long / 2) } }] : []),
        ],
      },
    ];
  },
};
export const rules: readonly Rule<Mitre>[] = [weak, thickSpline, shallow];
