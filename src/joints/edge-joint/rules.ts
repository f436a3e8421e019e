import type { Rule } from '../family.ts';
import type { EdgeJoint } from './params.ts';

const BOOK = { name: 'Wood Handbook FPL-GTR-190 ch. 10', basis: 'read' } as const;

/** Edges glue well only where both fibres run along the seam. */
const grain: Rule<EdgeJoint> = {
  id: 'edge joint grain',
  tells: 'glue',
  words: 'boards are glued edge to edge along one grain',
  run: (p, s, made) => {
    const glue = made.contacts[0]?.glue;
    if (s.hold !== 'glued' || glue === 'long' || glue === undefined) return [];
    const end = glue === 'end';
    return [
      {
        rule: 'edge joint grain',
        grade: 'trouble',
        title: end ? 'End grain is glued to an edge' : 'Boards are glued edge to edge across each other’s grain',
        why: end
          ? 'A plain glue line on end grain reaches a quarter of the wood’s strength at best.'
          : 'The boards move against each other across the seam and tear it open.',
        measured: end ? 25 : 90,
        limit: end ? 100 : 0,
        unit: end ? 'percent' : 'deg',
        source: BOOK,
        at: [p.meeting.patch[0]?.[0] ?? 0, p.meeting.patch[0]?.[1] ?? 0, 0],
        roles: ['enter', 'into'],
        cures: [{ label: 'lay them together without glue', set: { hold: 'dry' } }],
      },
    ];
  },
};
export const rules: readonly Rule<EdgeJoint>[] = [grain];
