import type { Source } from '../../model/finding.ts';
import type { Vec3 } from '../../geom/vec3.ts';
import type { Rule, Warning } from '../family.ts';
import { HABIT } from '../reasons.ts';
import { sizeAlong } from '../shared-box.ts';
import { leftIn, shortGrained } from './lay.ts';
import { drawn } from './make.ts';
import type { Lap } from './params.ts';

const SURVEY: Source = { name: 'slopes surveyed at blog.lostartpress.com 2008 and 2023', basis: 'read' };
/** Shares of a part are compared with this much play, mm, so that 1/3 typed as a decimal passes. */
const PLAY = 0.05;
const DEG = 180 / Math.PI;
const HOME: Vec3 = [0, 0, 0];

const thinCheek: Rule<Lap> = {
  id: 'lap cheek thin',
  words: 'each part keeps at least a third of its own thickness beside its notch',
  run: (p, s) => {
    const { g, cut } = drawn(p, s);
    return [g.over, g.under].flatMap((part): Warning[] => {
      const [left, own] = [leftIn(g, part, cut), sizeAlong(part.side.box, g.c)];
      if (left >= own / 3 - PLAY) return [];
      return [
        {
          rule: 'lap cheek thin',
          grade: 'trouble',
          title: 'The lap leaves too thin a cheek',
          why: `Of {mm:${own}} the notch leaves {mm:${left}}; with less than a third the part breaks there.`,
          measured: left,
          limit: own / 3,
          unit: 'mm',
          source: HABIT,
          at: HOME,
          roles: [part.role],
          cures: [{ label: 'halve the thickness between the two', set: { share: null } }],
        },
      ];
    });
  },
};
const shortGrain: Rule<Lap> = {
  id: 'lap short grain',
  words: 'a notch should lie across the grain of its part, not in its way',
  run: (p, s) => {
    const { g } = drawn(p, s);
    return [g.over, g.under].flatMap((part): Warning[] =>
      shortGrained(g, part)
        ? [
            {
              rule: 'lap short grain',
              grade: 'trouble',
              title: 'The notch runs along the grain',
              why: 'The grain of this part runs the same way as the notch is deep; what is left of it there hangs together across the grain only and snaps. Turn the grain of the part.',
              measured: leftIn(g, part, drawn(p, s).cut),
              limit: sizeAlong(part.side.box, g.c),
              unit: 'mm',
              source: HABIT,
              at: HOME,
              roles: [part.role],
              cures: [],
            },
          ]
        : [],
    );
  },
};
const mitredLap: Rule<Lap> = {
  id: 'mitred lap small',
  words: 'a mitred lap has half the glue of a plain one',
  run: (p, s) => {
    const { g, mitre } = drawn(p, s);
    if (!mitre) return [];
    const [a, b] = [Math.abs(mitre.inner[0] - mitre.outer[0]), Math.abs(mitre.inner[1] - mitre.outer[1])];
    return [
      {
        rule: 'mitred lap small',
        grade: 'note',
        title: 'The mitred lap holds half as much as a plain one',
        why: 'The cheeks touch in a triangle only, and the mitre itself is end grain, which hardly glues.',
        measured: (a * b) / 2,
        limit: a * b,
        unit: 'mm2',
        source: { name: 'half of the rectangle of a plain corner lap', basis: 'derived' },
        at: HOME,
        roles: [g.over.role, g.under.role],
        cures: [{ label: 'make it a plain lap', set: { form: null } }],
      },
    ];
  },
};
const steepTongue: Rule<Lap> = {
  id: 'lap dovetail slope',
  words: 'the tongue of a dovetailed lap slopes between 1:4 and 1:10 and keeps half of its width at the neck',
  run: (p, s) => {
    const { tongue } = drawn(p, s);
    if (!tongue) return [];
    const wide = tongue.width[1] - tongue.width[0];
    const neck = wide - 2 * tongue.inset;
    const cures = [{ label: 'let the slope follow the wood', set: { slope: null } }];
    const common = { rule: 'lap dovetail slope', at: HOME, roles: ['over'], cures } as const;
    if (s.slope > 1 / 4 + 1e-4 || s.slope < 1 / 10 - 1e-4)
      return [
        {
          ...common,
          grade: s.slope > 1 / 4 ? 'trouble' : 'note',
          title:
            s.slope > 1 / 4 ? 'The dovetailed tongue flares so much that its corners break off' : 'The dovetailed tongue hardly flares',
          why: 'Slopes between 1:4 and 1:10 hold alike; steeper the corners are short-grained, flatter the tongue draws out.',
          measured: Math.atan(s.slope) * DEG,
          limit: Math.atan(s.slope > 1 / 4 ? 1 / 4 : 1 / 10) * DEG,
          unit: 'deg',
          source: s.slope > 1 / 4 ? SURVEY : HABIT,
        },
      ];
    if (neck >= wide / 2 - PLAY) return [];
    return [
      {
        ...common,
        grade: 'trouble',
        title: 'The neck of the dovetailed tongue is thin',
        why: `At its shoulder the tongue is {mm:${neck}} wide of {mm:${wide}}; it breaks off before it draws out.`,
        measured: neck,
        limit: wide / 2,
        unit: 'mm',
        source: HABIT,
        cures: [...cures, { label: 'make it a plain lap', set: { form: null } }],
      },
    ];
  },
};
export const rules: readonly Rule<Lap>[] = [thinCheek, shortGrain, mitredLap, steepTongue];
