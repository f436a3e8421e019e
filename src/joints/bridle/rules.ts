import { axisVec } from '../../geom/vec3.ts';
import type { Rule, Warning } from '../family.ts';
import { faceToward } from '../blocks.ts';
import { PLAY } from '../mortise-walls.ts';
import { HABIT, typed } from '../reasons.ts';
import { PTSW, RIV, read } from '../sources.ts';
import { cheeksOf, thicknessOf } from './lay.ts';
import { type Laid, layOut } from './lay.ts';
import type { Bridle } from './params.ts';

type R = Rule<Bridle>;
const rule = (id: string, words: string, run: (l: Laid) => readonly Warning[]): R => ({ id, words, run: (p, s) => run(layOut(p, s)) });
/** The middle of the joint, at this coordinate across the thickness. */
function at({ g }: Laid, c: number): Warning['at'] {
  const mid = (i: 0 | 1 | 2): number => (g.s.box.min[i] + g.s.box.max[i]) / 2;
  return g.c === 'x' ? [c, mid(1), mid(2)] : [mid(0), c, mid(2)];
}
const follow = { label: 'let the tongue follow the parts', set: { thickness: null, offset: null } };

const cheek = rule('bridle cheek thin', 'each cheek of the fork is at least a quarter of its thickness', (l): readonly Warning[] => {
  const limit = thicknessOf(l.g.fork, l.g.c) / 4;
  const cheeks = cheeksOf(l.g, l.t);
  const side = cheeks[1] < cheeks[0] - 1e-9 ? 1 : 0;
  const thin = cheeks[side];
  if (thin >= limit - PLAY) return [];
  const word = faceToward(l.g.fork.side, axisVec(l.g.c, side === 0 ? -1 : 1));
  return [
    {
      rule: 'bridle cheek thin',
      grade: 'trouble',
      title: 'A cheek of the fork is thin',
      why: `Only {mm:${thin}} is left of the fork at the ${word}; it breaks along its grain when the frame is racked.`,
      measured: thin,
      limit,
      unit: 'mm',
      source: HABIT,
      at: at(l, l.t[side]),
      roles: ['fork'],
      cures: [
        { label: 'set the tongue in the middle', set: { offset: null } },
        {
          label: `make the tongue ${typed(thicknessOf(l.g.fork, l.g.c) / 3)} thick`,
          set: { thickness: typed(thicknessOf(l.g.fork, l.g.c) / 3) },
        },
        follow,
      ],
    },
  ];
});
const thin = rule('bridle tongue thin', 'the tongue is at least a quarter of the part that carries it', (l): readonly Warning[] => {
  const own = thicknessOf(l.g.tongue, l.g.c);
  if (l.s.thickness >= own / 4 - PLAY) return [];
  return [
    {
      rule: 'bridle tongue thin',
      grade: 'trouble',
      title: 'The tongue is thin',
      why: `{mm:${l.s.thickness}} of {mm:${own}} is less than a quarter: the tongue breaks before anything else.`,
      measured: l.s.thickness,
      limit: own / 4,
      unit: 'mm',
      source: read(`${RIV}; ${PTSW}`),
      at: at(l, (l.t[0] + l.t[1]) / 2),
      roles: ['tongue'],
      cures: [{ label: `make the tongue ${typed(own / 3)} thick`, set: { thickness: typed(own / 3) } }, follow],
    },
  ];
});
const dry = rule('bridle dry', 'an open mortise is glued: nothing else keeps it from slipping apart', (l): readonly Warning[] => {
  if (l.s.glue === 'yes' || l.g.kind === 'tee') return [];
  return [
    {
      rule: 'bridle dry',
      grade: 'note',
      title: 'Nothing but a peg would hold this corner',
      why: 'Not glued, an open mortise slides apart both ways; a peg through the cheeks holds it.',
      measured: 0,
      limit: 1,
      unit: 'count',
      source: HABIT,
      at: at(l, (l.t[0] + l.t[1]) / 2),
      roles: ['fork', 'tongue'],
      cures: [{ label: 'glue it', set: { glue: 'yes' } }],
    },
  ];
});
export const rules: readonly R[] = [cheek, thin, dry];
