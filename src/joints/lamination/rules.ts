import { isWood } from '../../wood/woods.ts';
import { sideIn } from '../blocks.ts';
import type { Rule } from '../family.ts';
import { HABIT } from '../reasons.ts';
import type { Lamination } from './params.ts';

/** Solid layers glued across each other over more than this tear themselves apart, mm. */
const LIMIT = 100;

const crossed: Rule<Lamination> = {
  id: 'lamination crossed',
  tells: 'glue',
  words: 'layers are glued along one grain, or crossed over at most 100 mm',
  run: (p, s, made) => {
    const c = made.contacts[0];
    const solid = isWood(sideIn(p.meeting, 'enter').wood) && isWood(sideIn(p.meeting, 'into').wood);
    const wide = c?.gluedLength ?? 0;
    if (s.hold !== 'glued' || !solid || c?.glue !== 'never' || wide <= LIMIT) return [];
    return [
      {
        rule: 'lamination crossed',
        grade: 'trouble',
        title: 'Layers are glued across each other’s grain',
        why: `Over {mm:${wide}} each layer moves where the other does not: the glue line shears or the layers split.`,
        measured: wide,
        limit: LIMIT,
        unit: 'mm',
        source: HABIT,
        at: [0, 0, 0],
        roles: ['enter', 'into'],
        cures: [{ label: 'lay them together without glue', set: { hold: 'dry' } }],
      },
    ];
  },
};
export const rules: readonly Rule<Lamination>[] = [crossed];
