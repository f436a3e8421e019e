/**
 * Loose tenon: a separate tenon in two mortises, one in the end of the part and one in the part that it meets.
 *
 *       rail            post
 *   ─────────────┐┌──────────┐
 *      ┌─────────┼┼───────┐  │
 *      │ ▒▒▒▒▒▒▒▒││▒▒▒▒▒▒ │  │ mortise, a little deeper
 *      └─────────┼┼───────┘  │
 *   ─────────────┘└──────────┘
 *
 * Words: both parts keep their drawn length and close on each other at the *shoulder*; the *tenon* is a strip with its grain running
 * from part to part. Routed mortises have round ends, and the tenon then rounded edges.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { ground, runsAlongGrain } from '../tenons.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { make } from './make.ts';
import { type LooseTenon, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if ((m.kind !== 'end-to-face' && m.kind !== 'end-to-edge') || m.touch === 'share') return null;
  const g = ground(m);
  if (!g || !g.square || Math.abs(g.enter.grain[2]) < 0.9 || g.deep < 8) return null;
  return { rank: runsAlongGrain(g) ? 6 : 2, because: 'the end of a part is butted on another thick enough for a mortise' };
}
export const looseTenon: Family<LooseTenon> = {
  id: 'loose_tenon',
  version: 1,
  title: 'Loose tenon',
  words: 'A separate tenon in two mortises: the strength of a tenon on parts cut to their shoulders.',
  roles: { enter: { count: 'one', words: 'part whose end is mortised' }, into: { count: 'one', words: 'part that it meets' } },
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
