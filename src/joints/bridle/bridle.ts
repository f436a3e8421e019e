/**
 * Bridle: an open mortise in the end of one part, astride a tongue that the other keeps between two notches.
 *
 *       corner               tee              fork, on edge
 *    ┌────┬───────       ──┬────┬──           │  cheek   │
 *    │    │                │    │             ├──┐    ┌──┤
 *    │    ├───────       ──┤    ├──           │  │slot│  │
 *    │    │                │    │             └──┘    └──┘
 *
 * Words: the *fork* has two *cheeks*, and the *root* of its slot stands on the other part's edge; that part's *tongue* is as thick
 * as the slot, its *shoulders* close on the fork's edges. At a corner both parts run to the outer edges; at a tee the fork ends in
 * the other part's far edge. They share the corner; the joint divides it. A peg through the cheeks is a joint of its own.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type Bridle, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const g = m.touch === 'share' ? ground(m) : null;
  if (!g) return null;
  return g.kind === 'corner'
    ? { rank: 7, because: 'the ends of two parts share a corner' }
    : { rank: 7, because: 'the end of one part stands astride the other' };
}
export const bridle: Family<Bridle> = {
  id: 'bridle',
  version: 1,
  title: 'Bridle',
  words: 'An open mortise astride a tongue: corners of frames, and posts under long rails.',
  roles: { fork: { count: 'one', words: 'part with the open mortise' }, tongue: { count: 'one', words: 'part with the tongue' } },
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
