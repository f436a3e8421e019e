/**
 * Tusk tenon: a tenon right through and beyond, drawn up by a wedge-shaped key that goes through it; it comes apart again.
 *
 *            post        key, from its thick end down
 *    rail   ┌────┐ ┌──┐
 *   ────────┤    ├─┤  ├───┐
 *   shoulder│    │ │▒▒│   │ relish
 *   ────────┤    ├─┤ ▒├───┘
 *           └────┘ └─┘
 *
 * Words: the *key* bears with its straight face on the post and with its slope in the hole. The hole begins a little inside the
 * post's face, so that nothing but the post stops the key and the *shoulder* is pulled up. What stands beyond the key is the
 * *relish*: it must not shear out. No glue: the key is knocked out again.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { ground } from '../tenons.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { make } from './make.ts';
import { type TuskTenon, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if ((m.kind !== 'end-to-face' && m.kind !== 'end-to-edge') || m.touch === 'share') return null;
  const g = ground(m);
  if (!g || !g.square || Math.abs(g.enter.grain[2]) < 0.9 || g.deep > 120) return null;
  return { rank: 2, because: 'the end of a part could go through and be keyed behind, to come apart again' };
}
export const tuskTenon: Family<TuskTenon> = {
  id: 'tusk_tenon',
  version: 1,
  title: 'Tusk tenon',
  words: 'A through tenon drawn up by a loose key, for trestles and shelves that come apart.',
  roles: { enter: { count: 'one', words: 'rail with the tenon and its key' }, into: { count: 'one', words: 'part with the mortise' } },
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
