/**
 * Sliding dovetail: a tail along the end or edge of a board, slid into a socket across the face of another.
 *
 *     both sides slant          one side slants        seen from the face: tapered, stopped at the front
 *     |       |________         |       |________      ┌──────────────────┐
 *     |    /‾‾                  |    /‾‾               │      ╱      ╲     │ mouth, at the back
 *     |   |      board          |   |      board       │      ╲      ╱     │
 *     |    \__                  |    ‾‾‾‾‾‾‾‾‾‾‾‾      │       ╲____╱      │ stop, at the front
 *     |       |________         |       |              └──────────────────┘
 *
 * Words: the *tail* is narrow at its *neck*, where it leaves the board, and wide at its *tip*; its *flanks* slant, its *shoulders* close
 * on the face. The *socket* is open at the edge that the tail comes in by, and comes out at the other edge or stops short. *Tapered*,
 * the tail is narrower where it goes in first, and binds only at the last. It holds without glue; where it crosses the grain it is
 * glued at one end alone. The document dimensions the board from shoulder to shoulder; the tail is added here.
 */
import { alongGrain } from '../blocks.ts';
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type SlidingDovetail, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.touch !== 'touch' || !['end-to-face', 'edge-to-face', 'face-to-face'].includes(m.kind)) return null;
  const g = ground(m);
  if (!g || Math.abs(g.into.grain[2]) > 0.7) return null;
  const narrow = g.x[1] - g.x[0] <= (g.into.box.max[0] - g.into.box.min[0]) / 4;
  if (m.kind === 'face-to-face' && !narrow) return null;
  const across = !alongGrain(g.into, [0, 1, 0]);
  return across
    ? {
        rank: 7,
        because: g.crosses
          ? 'an edge lies across the grain of a wide board and may keep it flat'
          : 'the end of a board ties another across its grain',
      }
    : { rank: 3, because: 'a board stands on the face of another' };
}
export const slidingDovetail: Family<SlidingDovetail> = {
  id: 'sliding_dovetail',
  version: 1,
  title: 'Sliding dovetail',
  words: 'A board slid into the face of another on a tail: it cannot be pulled out, and lets the wood move.',
  roles: { enter: { count: 'one', words: 'board with the tail' }, into: { count: 'one', words: 'board with the socket' } },
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
