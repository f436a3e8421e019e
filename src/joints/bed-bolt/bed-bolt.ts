/**
 * Bed bolt: a rail drawn up to a post by a bolt and a nut, which comes apart again.
 *
 *        post          rail, from above
 *     ┌────────┬──────────────────────────
 *     │┌──┐    │           ┌──┐  mortise of the nut
 *     ││██│════╪═══════════│▓▓│══   the bolt
 *     │└──┘    │           │▓▓│
 *     └────────┴───────────┴──┴───────────
 *
 * Words: the *bolt* goes through the post into the end of the rail, its head in a *counterbore*; the *nut*, square in a mortise or a round
 * *barrel* in a hole, lies in the rail and bears on the wood before it. *Stub tenons* carry the weight and keep the rail from turning.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type BedBolt, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const g = m.touch === 'touch' && m.kind.startsWith('end-to') ? ground(m) : null;
  if (!g || g.thick < 18 || g.wide < 70 || g.deep < 35 || g.deep > 140) return null;
  return { rank: g.wide >= 100 ? 4 : 2, because: 'the end of a strong rail stands on a post, and may be made to come apart' };
}
export const bedBolt: Family<BedBolt> = {
  id: 'bed_bolt',
  version: 1,
  title: 'Bed bolt',
  words: 'Draws a rail up to a post and lets the two come apart again.',
  roles: { rail: { count: 'one', words: 'rail' }, post: { count: 'one', words: 'post' } },
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
