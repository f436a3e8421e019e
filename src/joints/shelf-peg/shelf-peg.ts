/**
 * Shelf pegs: a loose shelf that lies on pegs in rows of holes, and can be set higher or lower.
 *
 *      side │  o  o │  spare holes above
 *           │───────┴───────
 *           │      shelf
 *           │═══╤═══────────   the peg's flat, under the shelf
 *           │═══╛
 *           │  o  o    spare holes below
 *
 * Words: the *rows* of holes stand in from the edges of the shelf; a peg is round in its hole and has a *flat* where the shelf lies on it. The
 * shelf is a little shorter than its opening. One place for each side.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { endsOn, ground } from './lay.ts';
import { make } from './make.ts';
import { type ShelfPeg, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.kind !== 'end-to-face' || m.touch === 'share' || m.gap > 3) return null;
  const g = ground(m);
  if (!g || !endsOn(g) || g.thick < 10) return null;
  return { rank: m.gap > 0.2 ? 7 : 3, because: 'a shelf lies level between sides and may be moved' };
}
export const shelfPeg: Family<ShelfPeg> = {
  id: 'shelf_peg',
  version: 1,
  title: 'Shelf pegs',
  words: 'Carries a loose shelf that can be set higher or lower.',
  roles: { shelf: { count: 'one', words: 'shelf' }, side: { count: 'one', words: 'side' } },
  touch: ['touch', 'gap'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules,
  bench: (p, sizes, _made, hand) => bench(p, sizes, hand),
  examples,
};
