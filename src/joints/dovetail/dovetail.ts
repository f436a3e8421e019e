/**
 * Through dovetail: a corner where tails on one board hold between pins on the other.
 *
 *     end of the pin board              face of the tail board
 *    ┌──┬──────────┬───┬──────────┐      ────────────────┐
 *    │  \  tail   /pin \   tail  /│       base line ┊\    │
 *    │   \_______/      \_______/ │                 ┊ )tail
 *    └────────────────────────────┘                 ┊/    │
 *
 * Words: a *tail* is wider at the end of its board, so it cannot be drawn out lengthways; a *pin* stands between two tails, a
 * *half pin* at each edge; the *base line* is as far from the end as the other board is thick. Both boards are dimensioned to
 * their full length and share the corner; the joint divides it.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { alongGrain } from '../blocks.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { FLUSH, corner } from './lay.ts';
import { make } from './make.ts';
import { type Dovetail, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.kind !== 'corner' || m.touch !== 'share') return null;
  const c = corner(m);
  if (!c || c.proud > FLUSH || !alongGrain(c.tails, [0, 0, 1]) || !alongGrain(c.pins, [1, 0, 0])) return null;
  return { rank: 9, because: 'the ends of two boards share a corner' };
}
export const dovetail: Family<Dovetail> = {
  id: 'dovetail',
  version: 1,
  title: 'Through dovetail',
  words: 'A corner of a box or case that holds by its form as well as by glue.',
  roles: { tails: { count: 'one', words: 'tail board' }, pins: { count: 'one', words: 'pin board' } },
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
