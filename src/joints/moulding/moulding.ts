/**
 * Moulding run across the side of a case: glued at its front end only, held behind so that the side may move.
 *
 *      from above, screwed in slots             from behind, on keys
 *      │ side  ╔══╗slot     ╔══╗ │              side │   ┌──────┐
 *      │       ║▐▌║         ║▐▌║ │                   ├──┐│mould-│
 *      ├────┬──╨▐▌╨─────────╨▐▌╨─┤               key │   ╲ ing  │
 *     ╱glued│   ▐▌  moulding ▐▌  │                   │   ╱      │
 *    ╱──────┴────────────────────┘                   ├──┘│      │
 *    mitre                                               └──────┘
 *
 * Words: the side's grain runs up, the moulding's from front to back, so the side moves along the moulding. The *front* end is glued, where its
 * *mitre* must stay closed; behind, *screws* from inside stand in *slots*, or a dovetailed groove in the moulding's back slides on *keys* that are
 * screwed to the side. Along the grain, as at the front of a case, a moulding is glued all the way. Its profile is a shape of the part.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type Moulding, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const laid = m.touch === 'touch' && (m.kind === 'face-to-face' || m.kind === 'edge-to-face');
  const g = laid ? ground(m) : null;
  if (!g || g.high > 150 || g.run[1] - g.run[0] < 3 * g.high) return null;
  return g.crossed
    ? { rank: 7, because: 'a strip lies on the face of a board, across its grain' }
    : { rank: 3, because: 'a strip lies on the face of a board, along its grain' };
}
export const moulding: Family<Moulding> = {
  id: 'moulding',
  version: 1,
  title: 'Moulding on a case',
  words: 'A moulding or cornice across the side of a case, glued in front and free to let the side move behind.',
  roles: { moulding: { count: 'one', words: 'moulding' }, side: { count: 'one', words: 'side of the case' } },
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
