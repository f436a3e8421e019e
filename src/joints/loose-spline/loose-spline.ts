/**
 * Loose spline: two edges or ends tied by a separate strip in two grooves.
 *
 *     ┌────────────┬────────────┐
 *     │        ┌───┼───┐        │   cheek
 *     │        │ spline│        │   a third of the thickness, half of its width in each part
 *     │        └───┼───┘        │   cheek
 *     └────────────┴────────────┘
 *                 seam
 *
 * Words: the *spline* (loose tongue) is a part of its own, the *grooves* are a little deeper than it, the *cheeks* beside them hold
 * it. Along long edges it keeps the boards level; at end grain it is what holds, and its grain must then cross the seam.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type LooseSpline, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const g = ground(m);
  if (!g || !['edge-to-edge', 'corner', 'end-to-edge'].includes(m.kind)) return null;
  return g.edges
    ? { rank: 5, because: 'two edges lie together along one grain and may be kept level' }
    : { rank: 6, because: 'end grain meets and needs something long-grained to hold it' };
}
export const looseSpline: Family<LooseSpline> = {
  id: 'loose_spline',
  version: 1,
  title: 'Loose spline',
  words: 'A separate strip in two grooves that ties or levels two edges.',
  roles: { enter: { count: 'one', words: 'one part' }, into: { count: 'one', words: 'the next part' } },
  touch: ['touch'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules,
  bench: (p, sizes, _made, hand) => bench(p, sizes, hand),
  examples,
};
