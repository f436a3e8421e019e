import type { Operation, Place } from '../family.ts';
import { ground } from './lay.ts';
import type { ShelfPeg } from './params.ts';

export function bench(p: Place<ShelfPeg>, s: ShelfPeg, hand: boolean): readonly Operation[] {
  if (!ground(p.meeting)) return [];
  const per = s.above + s.below + 1;
  return [
    {
      role: 'side',
      words: `Make a strip of hard wood with ${per} ${per === 1 ? 'hole' : 'holes'} {mm:${s.diameter}} wide and {mm:${s.step}} apart, and mark its lower end and its front edge: all rows of both sides are bored through it from the same end.`,
      tool: hand ? 'gauge, awl and drill' : 'drill press',
      caution: 'Clamp the work; no gloves.',
    },
    {
      role: 'side',
      words: `Before the case goes together, bore both rows {mm:${s.depth}} deep, {mm:${s.inset}} in from the edges of the shelf; a stop on the bit.`,
      tool: 'drill with a depth stop',
      caution: 'Clamp side and strip; no gloves; eye protection.',
    },
    {
      role: 'shelf',
      words:
        s.peg === 'metal'
          ? 'Set the pegs and lay the shelf on them.'
          : `Cut the pegs from a rod, plane a flat of {mm:${s.flat}} for the shelf to lie on, round their ends a little, and try each by hand.`,
      tool: s.peg === 'metal' ? 'hands' : 'fine saw and block plane',
    },
  ];
}
