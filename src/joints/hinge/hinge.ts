/**
 * Butt hinges: a door hung on another part, each leaf let in flush.
 *
 *       door  │gap│ side           seen from above; the pin line stands in front of both faces,
 *      ───────┤   ├──────          so that the door swings clear of the side
 *       leaf ▐│   │▌ leaf
 *      ──────▐│   │▌─────  faces
 *              (o)  knuckle, pin
 *
 * Words: a *leaf* is screwed into its *recess*, which is open at the face where the *knuckle* stands; the *pin* is the line that the door
 * turns on. The parts are drawn with the gap that shows when the door is shut: an inset door its edge beside the case side, an overlaid
 * door its back before the edge of it.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type Hinge, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const g = m.touch === 'gap' ? ground(m, undefined) : null;
  if (!g || m.gap > 4 || g.y[1] - g.y[0] < 80) return null;
  return { rank: 6, because: 'a narrow gap between two parts along their length: a door beside what it hangs on' };
}
export const hinge: Family<Hinge> = {
  id: 'hinge',
  version: 1,
  title: 'Butt hinges',
  words: 'A door or lid hung on two or more hinges, their leaves let in flush.',
  roles: { enter: { count: 'one', words: 'door or lid' }, into: { count: 'one', words: 'part that it hangs on' } },
  touch: ['gap'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules,
  bench: (p, sizes, _made, hand) => bench(p, sizes, hand),
  examples,
};
