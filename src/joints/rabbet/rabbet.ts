/**
 * Rabbet: the edge or end of a board let into a step along the edge of another part.
 *
 *     other part              back of a case           with a lip: the board is rabbeted too
 *    ┌──────────┐            │ side │                  ┌──────────┐
 *    │   ┌──────┤            │   ┌──┴───────           │lip┌──────┤___
 *    │lip│ wall │bed         │   │  back               │   │tongue│ board
 *    └───┤ board│            └───┴──────────           └───┴──────┤___
 *        └──────                                       (outer, inner: what the board loses on each face)
 *
 * Words: the *rabbet* (rebate) is the step; the board's face lies on its *bed*, its edge against its *wall*; what the step leaves of
 * the part is the *lip*. Parts may be drawn one in the other, then the shared wood is the rabbet; or face to face, then the board grows
 * by the depth. A board without a lip over its edge may be laid in from outside as the last one: a back, a bottom.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { NEAR, ground } from './lay.ts';
import { make } from './make.ts';
import { type Rabbet, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const g = ground(m);
  if (!g || Math.abs(g.short) > NEAR) return null;
  if (g.shared) return { rank: 6, because: 'a board is drawn inside another along its edge' };
  return m.kind === 'end-to-face' || m.kind === 'corner' || m.kind === 'edge-to-face' || m.kind === 'end-to-edge'
    ? { rank: 6, because: 'a board stands flush at the edge of another' }
    : null;
}
export const rabbet: Family<Rabbet> = {
  id: 'rabbet',
  version: 1,
  title: 'Rabbet',
  words: 'A board let into a step along the edge of another: a back, a bottom, a plain corner.',
  roles: { enter: { count: 'one', words: 'board' }, into: { count: 'one', words: 'part with the rabbet' } },
  touch: ['touch', 'share'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules,
  bench: (p, sizes, _made, hand) => bench(p, sizes, hand),
  examples,
};
