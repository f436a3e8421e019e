/**
 * Edge joint: two boards glued edge to edge to make a wider one.
 *
 *     ┌───────────────┬──────────────┐
 *     │  ←  grain  →  │ ←  grain  →  │    the seam runs along the grain of both
 *     └───────────────┴──────────────┘
 *
 * Words: the *seam* or glue line; boards in a glued-up top are *staves*. Nothing is cut; the glued area is the patch that both
 * edges touch by. Long grain to long grain holds as well as the wood itself.
 */
import { alongGrain, sideIn } from '../blocks.ts';
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { laidTogether, make } from './make.ts';
import { type EdgeJoint, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.kind !== 'edge-to-edge' || m.touch !== 'touch' || !laidTogether(m)) return null;
  const along = alongGrain(sideIn(m, 'enter'), sideIn(m, 'into').grain);
  return along ? { rank: 7, because: 'two edges lie together along one grain' } : null;
}
export const edgeJoint: Family<EdgeJoint> = {
  id: 'edge_joint',
  version: 1,
  title: 'Edge joint',
  words: 'Boards glued edge to edge to make a wider one; nothing is cut.',
  roles: { enter: { count: 'one', words: 'one board' }, into: { count: 'one', words: 'the next board' } },
  touch: ['touch'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules,
  bench: (_p, sizes, _made, hand) => bench(sizes, hand),
  examples,
};
