/**
 * Groove and tongue: an edge let into a groove along another part.
 *
 *      framed part                    plain tongue       bare-faced
 *     ┌─────────┐                     ┌──────┐           ┌──────┐
 *     │    ┌────┤____                 │   ┌──┤           │   ┌──┤____
 *     │ room│ tongue│ panel           │   │  panel       │   │      panel
 *     │    └────┤‾‾‾‾                 │   └──┤           │   └──┤ ____
 *     └─────────┘                     └──────┘           └──────┘
 *
 * Words: the *tongue* stands on the edge of the panel, its *cheeks* run in the *walls* of the groove, its *shoulders* are the
 * edges beside it. A panel of solid wood *floats*: no glue, and room behind the tongue for its movement. The panel is
 * dimensioned to touch the frame's inside edges; the tongue is added here, one place for each edge. *Boards* edge to edge, as in the
 * back of a case, lie dry with a gap between them, in which each takes half of its movement; they are drawn with their faces touching
 * and the shoulders planed back by the gap.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { alongGrain } from '../blocks.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type GrooveTongue, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.touch !== 'touch' || !['end-to-edge', 'edge-to-edge', 'edge-to-face', 'end-to-face'].includes(m.kind)) return null;
  const g = ground(m);
  if (!g || g.x[1] - g.x[0] > g.across + 1e-6) return null;
  const thin = g.x[1] - g.x[0] <= g.across * 0.6;
  if (!alongGrain(g.into, [0, 1, 0])) return null;
  return thin ? { rank: 8, because: 'a thin edge lies along a thicker part' } : { rank: 5, because: 'two edges lie along each other' };
}
export const grooveTongue: Family<GrooveTongue> = {
  id: 'groove_tongue',
  version: 1,
  title: 'Groove and tongue',
  words: 'A panel in its frame, a bottom in a drawer, boards edge to edge: held in a groove, free to move.',
  roles: { enter: { count: 'one', words: 'panel with the tongue' }, into: { count: 'one', words: 'part with the groove' } },
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
