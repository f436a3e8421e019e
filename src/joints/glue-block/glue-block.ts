/**
 * Glue block: a short block rubbed with glue into the inside corner between two parts.
 *
 *    ═══════════════ first part
 *      ║│      ╱      second part ║
 *      ║│    ╱  bevel
 *      ║│__╱
 *
 * Words: its two *legs* lie on the two parts, the grain of the block along the corner; the free corner is *bevelled*, since it holds nothing.
 * Rubbed in, it needs no clamp. Across the grain of a wide part blocks are short, with gaps between them.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type GlueBlock, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

/** Offered only where the meeting already has a second part beside the block. */
function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.touch !== 'touch' || !m.sides['block'] || !m.sides['on'] || !m.sides['beside']) return null;
  return ground(m) ? { rank: 5, because: 'a block lies in the corner between two parts' } : null;
}
export const glueBlock: Family<GlueBlock> = {
  id: 'glue_block',
  version: 1,
  title: 'Glue block',
  words: 'Stiffens the inside corner between two parts.',
  roles: {
    block: { count: 'one', words: 'block' },
    on: { count: 'one', words: 'part that it lies on' },
    beside: { count: 'one', words: 'part beside it' },
  },
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
