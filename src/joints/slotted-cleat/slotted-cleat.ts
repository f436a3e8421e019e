/**
 * Slotted batten: a batten screwed across a wide board, which keeps it flat and lets it move.
 *
 *     board, its grain towards you
 *    ═══════════════════════════════════════
 *    │  (══╪══)        ( ╪ )        (══╪══)│  batten
 *    └───────────────────────────────────────
 *        slot          fast           slot
 *
 * Words: the *fast* screw has a round hole, the others stand in *slots* along the batten that are the longer the farther they are from it:
 * the board takes the screws along as it swells and shrinks. No glue.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { movesAlong } from '../screw-rows.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type SlottedCleat, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const g = m.touch === 'touch' ? ground(m) : null;
  if (!g || g.thick < 8 || g.deep < 8 || !movesAlong(g, g.row) || g.run[1] - g.run[0] < 150) return null;
  // A batten is narrow; the board reaches well beyond it.
  const slim = g.run[1] - g.run[0] >= 3 * (g.wide[1] - g.wide[0]);
  return slim ? { rank: 6, because: 'a batten lies across the grain of a wide board' } : null;
}
export const slottedCleat: Family<SlottedCleat> = {
  id: 'slotted_cleat',
  version: 1,
  title: 'Slotted batten',
  words: 'Keeps a wide board flat across its grain and lets it move with the seasons.',
  roles: { cleat: { count: 'one', words: 'batten' }, board: { count: 'one', words: 'wide board' } },
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
