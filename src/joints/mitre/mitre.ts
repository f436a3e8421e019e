/**
 * Mitre: two parts meet at a corner, each cut on the plane that halves it, so that no end grain shows.
 *
 *    frame, flat              case, across the width      keyed: thin keys across the outer corner
 *    ┌─────────────               ╱▔▔▔▔▔▔▔                       ┌──────
 *    │╲                          ╱│                            ╱╱│
 *    │ ╲┌──────────             │ │                           │╱ │
 *
 * Words: the *long point* is the outer corner, to which both parts are drawn; the *heel* the inner one. A *spline* is a loose tongue in
 * grooves in both mitres, a *key* a thin slip let in across the outer corner after gluing; the grain of both runs across the joint.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { alongMitre, corner, reaches } from './lay.ts';
import { make } from './make.ts';
import { type Mitre, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const c = corner(m);
  if (!c || !reaches(c)) return null;
  return alongMitre(c)
    ? { rank: 7, because: 'the ends of two frame members share a corner' }
    : { rank: 6, because: 'the ends of two boards share a corner' };
}
export const mitre: Family<Mitre> = {
  id: 'mitre',
  version: 1,
  title: 'Mitre',
  words: 'A corner of a frame or case cut on the slant so that no end grain shows.',
  roles: { first: { count: 'one', words: 'first part' }, second: { count: 'one', words: 'second part' } },
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
