/**
 * Wooden button: holds a solid top down on its rail and lets it move.
 *
 *     ═══════════════════════  top
 *     │ rail │lip ┌────────┐ ┊ the screw draws up
 *     │   ┌──┴────┤ button │
 *     │   │ tongue        │
 *     │   └──┬────────────┘
 *     │      │room
 *
 * Words: the *tongue* reaches under the rail's *lip* in a *slot* in its inner face; the *shoulder* stands off by the *room* that a
 * top moving across the rail needs; a slot longer than the button lets a top move along the rail. The tongue lies a little low, so the
 * screw *draws* the top down. The button's grain runs from the screw to the tongue.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type Button, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.touch !== 'touch' || (m.kind !== 'edge-to-face' && m.kind !== 'face-to-face')) return null;
  const g = ground(m);
  if (!g || g.railHigh < 30 || g.railThick < 12) return null;
  // The first part must be the wide one that is held down.
  const broad = Math.min(g.under.box.max[0] - g.under.box.min[0], g.under.box.max[1] - g.under.box.min[1]);
  return broad >= 4 * g.topThick ? { rank: m.kind === 'edge-to-face' ? 8 : 4, because: 'a wide top lies on the edge of a rail' } : null;
}
export const button: Family<Button> = {
  id: 'button',
  version: 1,
  title: 'Wooden button',
  words: 'Holds a solid top down on its rails and lets it move with the seasons.',
  roles: { under: { count: 'one', words: 'top held down' }, rail: { count: 'one', words: 'rail' } },
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
