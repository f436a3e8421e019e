/**
 * Lap: two parts cross or meet in one plane, each notched so that both stay flush.
 *
 *      corner          tee            cross          on edge (dividers)
 *    ┌──────┐      ┌──────┐          │    │           │  │ notch of the one
 *    │  ┌───┤   ───┤      ├───    ───┤    ├───      ──┤  ├──  from below, of
 *    │  │       ───┤  ┌┐  ├───    ───┤    ├───        └──┘    the other from above
 *
 * Words: the *cheeks* lie on each other and take the glue; the *shoulders* are the walls of the notches. *Mitred*, a corner shows a
 * mitre on its face; *dovetailed*, the tongue of a tee is wider at its tip. Where the first part stays whole (share 1) the second takes
 * it in for its whole thickness. Both parts are drawn to their full size and share the crossing; the joint divides it.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { othersOf, sizeAlong } from '../shared-box.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type Lap, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.touch !== 'share') return null;
  const g = ground(m, {});
  if (!g) return null;
  const flat = othersOf(g.c).every((k) => sizeAlong(g.s.box, k) >= g.thick - 1e-6);
  if (g.kind === 'cross') return { rank: 9, because: 'two parts cross' };
  if (g.kind === 'tee') return { rank: flat ? 9 : 5, because: 'the end of one part stands in another' };
  if (g.kind === 'lengthways') return { rank: flat ? 4 : 2, because: 'two parts overlap end to end' };
  return { rank: flat ? 8 : 2, because: 'the ends of two parts share a corner' };
}
export const lap: Family<Lap> = {
  id: 'lap',
  version: 1,
  title: 'Lap',
  words: 'Two parts that cross or meet flush, each notched for the other.',
  roles: { over: { count: 'one', words: 'part that lies over' }, under: { count: 'one', words: 'part that lies under' } },
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
