/**
 * Screws: one part drawn onto another by a row of wood screws that can be taken out again.
 *
 *     countersunk      counterbored, plugged     in a slot
 *    ──╲██╱────────   ──┌░░░░┐─────────────    ─┌██████┐───────
 *       ██  first       │████│  first           │ ██   │ first
 *    ───██─────────   ───██──┴─────────────    ─┴─██───┴───────
 *       ▓▓  second       ▓▓  second               ▓▓  second
 *
 * Words: the *clearance hole* lets the shank through the first part, the *pilot hole* takes the thread in the second; a *countersink* lets
 * the head lie flush, a *counterbore* lets it lie deeper, under a *plug*. Where the wood of one part moves and that of the other does not,
 * the clearance holes are *slots*, as long as the *travel* needs. The thread cuts into the wood beyond its pilot hole: it is drawn by its core.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type Screw, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const g = m.touch === 'touch' ? ground(m) : null;
  if (!g || g.thick < 4 || g.thick > 100 || g.deep < 8) return null;
  return { rank: g.thick <= 40 ? 3 : 1, because: 'one part lies on another and can be screwed to it' };
}
export const screw: Family<Screw> = {
  id: 'screw',
  version: 1,
  title: 'Screws',
  words: 'Draws one part onto another and lets it be taken off again; in slots, lets it move.',
  roles: { through: { count: 'one', words: 'part under the heads' }, into: { count: 'one', words: 'part that holds' } },
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
