import type { Operation, Place } from '../family.ts';
import { ground } from './lay.ts';
import type { GlueBlock } from './params.ts';

export function bench(p: Place<GlueBlock>, s: GlueBlock, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  return [
    {
      role: 'block',
      words: `Plane a long strip {mm:${g.legs[0]}} by {mm:${g.legs[1]}}, its two glue faces square to each other${s.bevel > 0 ? `, and take {mm:${s.bevel}} off the free corner` : ''}; then cut the blocks off it {mm:${g.long}} long.`,
      tool: hand ? 'jack plane and saw' : 'planer and bandsaw',
      caution: hand
        ? 'Clamp the strip; cut the blocks off it last.'
        : 'Short pieces do not go over a machine: plane the long strip, with push blocks, and crosscut last with a stop that lets the piece fall free.',
    },
    {
      role: 'block',
      words: 'Spread glue on both faces, rub the block to and fro in the corner until it grips, and leave it alone.',
      tool: 'glue brush',
    },
  ];
}
