import type { Operation, Place } from '../family.ts';
import { ground } from './lay.ts';
import type { Hinge } from './params.ts';

export function bench(p: Place<Hinge>, s: Hinge, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting, s.side);
  if (!g) return [];
  const leaf = `{mm:${s.length}} long, {mm:${s.wide}} wide and {mm:${s.thick}} deep`;
  const cut = hand
    ? { tool: 'marking gauge, knife and chisel', caution: 'Clamp the work; both hands behind the edge.' }
    : {
        tool: 'router with a guide, corners by chisel',
        caution: 'Unplug it to change the bit; clamp work and guide; eye and ear protection; follow the maker’s manual.',
      };
  return [
    { role: 'enter', words: `Fit the door with its gap of {mm:${g.gap}} first; hinges come after.`, tool: 'plane and shims' },
    {
      role: 'enter',
      words: `Lay the hinges on the edge, knuckles clear of the face; cut ${s.count} recesses ${leaf}, no deeper than the leaf.`,
      ...cut,
    },
    { role: 'into', words: 'Shim the door in its place, mark the hinges from it, and cut their recesses alike.', ...cut },
    {
      role: 'into',
      words:
        'Bore pilot holes in the middle of the holes; drive one screw in each leaf, try the swing, then the others. Brass screws after a steel one has cut the thread.',
      tool: 'bradawl or drill, screwdriver',
      caution: 'Hold the door up with a block while it hangs on one screw.',
    },
  ];
}
