/**
 * Fixing to a wall: screws through a rail of the piece into a wall, drawn as a part that is no wood.
 *
 *      ▒▒▒▒│══╤══ shelf
 *      ▒▒▓▓│▓▓█      screw through the rail into the wall
 *      ▒▒▒▒│──┘ rail
 *
 * The wall's own strength, and the rules of the place, decide what holds: this says where the screws go and how far, no more. A tall, shallow
 * piece tips; it is fixed before it is filled.
 */
import { isWood } from '../../wood/woods.ts';
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type WallFixing, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  const g = m.touch === 'touch' ? ground(m) : null;
  if (!g || isWood(g.bed.into.side.wood) || !isWood(g.bed.through.side.wood) || g.deep < 40 || g.thick < 8 || g.thick > 60) return null;
  return { rank: 8, because: 'a part lies on a wall that is no wood' };
}
export const wallFixing: Family<WallFixing> = {
  id: 'wall_fixing',
  version: 1,
  title: 'Fixing to a wall',
  words: 'Keeps a tall or hanging piece on its wall; what the wall can hold is for those who know it.',
  roles: { rail: { count: 'one', words: 'rail of the piece' }, wall: { count: 'one', words: 'wall' } },
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
