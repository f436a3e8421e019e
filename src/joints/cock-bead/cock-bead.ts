/**
 * Cock bead: a small round strip let in round a drawer front, or along the edge of an opening.
 *
 *      bead ┌───────────────┐             the bead from its end
 *          (│///////////////│            ╭──────────────
 *           └───────────────┤           (   bead        │ bed
 *             drawer front  │            ╰──────────────┘
 *                           │             proud ┊ rabbet
 *
 * Words: the *bead* lies in a *rabbet* cut in the edge of the front: its inner face on the *bed*, its edge against the *back* of the rabbet,
 * unless that runs through the whole thickness. It stands *proud* of the face by what is round of it. At the corners beads are *mitred*.
 * The bead is dimensioned as it lies, so it shares the rabbet's wood with the front; the joint takes that from the front.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type CockBead, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const g = m.touch === 'share' ? ground(m) : null;
  return g && g.thick <= 8 ? { rank: 8, because: 'a thin strip lies in the edge of a board and stands a little proud of its face' } : null;
}
export const cockBead: Family<CockBead> = {
  id: 'cock_bead',
  version: 1,
  title: 'Cock bead',
  words: 'A small round strip let into the edge of a drawer front, standing proud of its face.',
  roles: { bead: { count: 'one', words: 'bead' }, front: { count: 'one', words: 'drawer front' } },
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
