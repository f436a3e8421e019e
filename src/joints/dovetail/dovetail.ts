/**
 * Dovetail: a corner where tails on one board hold between pins on the other.
 *
 *     end of the pin board              face of the tail board
 *    ┌──┬──────────┬───┬──────────┐      ────────────────┐
 *    │  \  tail   /pin \   tail  /│       base line ┊\    │
 *    │   \_______/      \_______/ │                 ┊ )tail
 *    └────────────────────────────┘                 ┊/    │
 *
 *     lapped, from above                mitred at one edge
 *    ┌──────────────────┐ front         ┌───────────────┐
 *    │lap ┌──────┐      │               │╲ mitre        │
 *    └────┤ tail ├──────┘               │ ╲_____________│
 *         │ side │                      │  │ half pin, tails …
 *
 * Words: a *tail* is wider at the end of its board, so it cannot be drawn out lengthways; a *pin* stands between two tails, a
 * *half pin* at each edge; the *base line* is as far from the end as the tails are long. *Through*, both boards are dimensioned to
 * their full length; *lapped*, the tail board stops short of the face of the pin board by the *lap*. A *mitred shoulder* at an edge takes the
 * place of the half pin's corner, so that a rabbet or moulding can go round. The boards share the corner; the joint divides it.
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
  const because =
    c.short > FLUSH ? 'the end of one board stands in the end of another, short of its face' : 'the ends of two boards share a corner';
  return { rank: 9, because };
}
export const dovetail: Family<Dovetail> = {
  id: 'dovetail',
  version: 1,
  title: 'Dovetail',
  words: 'A corner of a box or case that holds by its form as well as by glue: through, lapped, or mitred at an edge.',
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
