/**
 * Housing: the end of a board let into the face of another, as a shelf into the side of a case.
 *
 *        side                      side, from the front, stopped
 *      |     |_________          |     |
 *      |   [ |   shelf           |  ┌──┴────────   the shelf is notched
 *      |   [_|_________          |  │  shelf       round the stop
 *      |     |                   |  └──┬────────
 *
 *      |     |_________          |     |_________
 *      |   ┌─┤   shelf           |   ┌─┤   shelf
 *      |   └─┼─────────          |   └─┤_________    shouldered: one face (bare-faced tongue) or both cut back,
 *      |     |                   |     |             so that the shelf may be planed later and the shoulder hides the line
 *
 * Words: the *housing* is the flat channel across the side, its *walls* grip the faces of the shelf, its *bottom* takes the
 * end. *Through* it runs from edge to edge; *stopped* it ends short of an edge and the end of the shelf is notched there.
 * *Shouldered* only a *tongue* of the shelf's thickness goes in.
 * The document dimensions the shelf from shoulder to shoulder; the length let in is added here.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { alongGrain } from '../blocks.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type Housing, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.kind !== 'end-to-face' || m.touch !== 'touch') return null;
  const g = ground(m);
  if (!g) return null;
  const across = !alongGrain(g.into, [0, 1, 0]);
  return across
    ? { rank: 8, because: 'the end of a board stands on the face of another, across its grain' }
    : { rank: 4, because: 'the end of a board stands on the face of another' };
}
export const housing: Family<Housing> = {
  id: 'housing',
  version: 1,
  title: 'Housing',
  words: 'The end of a shelf or divider let into the face of the board that carries it.',
  roles: { enter: { count: 'one', words: 'shelf' }, into: { count: 'one', words: 'side' } },
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
