/**
 * Breadboard end: a board across the end of a solid top, that keeps it flat and lets it move.
 *
 *      top ║ end          seen from above, the end board lifted off
 *     ─────║────┐         ─────┐tongue
 *          ║ o  │              ├──┐ tenon with a slot: this peg lets it slide
 *          ║    │              ├──┘
 *     grain║ o  │              ├──┐ fast tenon, round hole, glued
 *     →    ║    │grain         ├──┘
 *          ║ o  │ ↕            ├──┐ slot
 *     ─────║────┘         ─────┴──┘
 *
 * Words: the *tongue* runs along the whole end of the top in a groove of the end board; *tenons* reach deeper; the *fast* peg
 * stands in a round hole, the others in *slots* in their tenons that run across the top's width. The holes in the end board are
 * all round. Ends are flush with the top's edges at one moisture content only.
 */
import { alongGrain } from '../blocks.ts';
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type Breadboard, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.touch !== 'touch' || (m.kind !== 'end-to-edge' && m.kind !== 'end-to-face')) return null;
  const g = ground(m);
  if (!g || !alongGrain(g.end, [0, 1, 0])) return null;
  const wide = g.y[1] - g.y[0] >= 4 * (g.x[1] - g.x[0]);
  const flush = Math.abs(g.end.box.max[0] - g.end.box.min[0] - (g.x[1] - g.x[0])) < 1;
  return wide && flush ? { rank: 7, because: 'a board lies across the end of a wide top' } : null;
}
export const breadboard: Family<Breadboard> = {
  id: 'breadboard',
  version: 1,
  title: 'Breadboard end',
  words: 'A board across the end of a solid top: keeps it flat, hides its end grain, lets it move.',
  roles: { top: { count: 'one', words: 'top' }, end: { count: 'one', words: 'end board' } },
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
