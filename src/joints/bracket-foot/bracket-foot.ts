/**
 * Bracket foot: two brackets mitred at the corner of a case, a glue block behind the mitre and blocks under the case.
 *
 *            from below                        behind one bracket
 *     ╲═══════════════════ front              ══════════════ base of the case
 *     ║ ╲ spline                              ┌────┐┌──┬──┐
 *     ║  ┌─────┐┌─────────┐                   │    ││fixing block, screwed up
 *     ║  │glue │└─────────┘ fixing block      │glue│└──┴──┘
 *     ║  │block│                              │block     bracket behind
 *     ║  └─────┘                              └────┘
 *    side
 *
 * Words: the *brackets* share the corner and meet in a *mitre*, with a *spline* across it near the inner corner, where shaping the outside does
 * not bare it. The upright *glue block* carries the weight; *fixing blocks* hold each bracket to the *base*. A bracket whose grain runs across the
 * base's is not glued to it: its fixing block's screw stands in a slot. The outline of a bracket is a shape of the part, not of this joint.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type BracketFoot, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const whole = m.kind === 'corner' && m.touch === 'share' && m.sides['base']?.[0] !== undefined;
  return whole && ground(m) ? { rank: 9, because: 'two boards share a corner under a base' } : null;
}
export const bracketFoot: Family<BracketFoot> = {
  id: 'bracket_foot',
  version: 1,
  title: 'Bracket foot',
  words: 'Two brackets mitred at the corner of a case, with blocks behind that carry it and hold the brackets to its base.',
  roles: {
    front: { count: 'one', words: 'front bracket' },
    side: { count: 'one', words: 'side bracket' },
    base: { count: 'one', words: 'base of the case' },
  },
  touch: ['share'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules,
  bench: (p, sizes, _made, hand) => bench(p, sizes, hand),
  examples,
};
