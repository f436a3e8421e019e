/**
 * Lamination: boards glued face to face to make a thicker piece.
 *
 *     ┌──────────────────────────┐
 *     │ layer            grain → │
 *     ├──────────────────────────┤  glue line
 *     │ layer            grain → │
 *     └──────────────────────────┘
 *
 * Words: *layers* and the *glue line* between them. Nothing is cut. Layers of one grain move as one piece; crossed layers of solid
 * wood tear at each other. Layers of one part are written under its own `made`; this joint is for parts that stand by themselves.
 */
import { alongGrain, sideIn } from '../blocks.ts';
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { laidOn, make } from './make.ts';
import { type Lamination, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.kind !== 'face-to-face' || m.touch !== 'touch' || !laidOn(m)) return null;
  return alongGrain(sideIn(m, 'enter'), sideIn(m, 'into').grain)
    ? { rank: 7, because: 'two faces lie on each other along one grain' }
    : null;
}
export const lamination: Family<Lamination> = {
  id: 'lamination',
  version: 1,
  title: 'Lamination',
  words: 'Boards glued face to face to make a thicker piece; nothing is cut.',
  roles: { enter: { count: 'one', words: 'one layer' }, into: { count: 'one', words: 'the next layer' } },
  touch: ['touch'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules,
  bench: (_p, sizes, _made, hand) => bench(sizes, hand),
  examples,
};
