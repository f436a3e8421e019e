import type { Operation, Place } from '../family.ts';
import { ground, lay } from './lay.ts';
import type { Breadboard } from './params.ts';

const CHISEL = 'Clamp the work; both hands behind the edge.';
const ROUTER = 'Unplug it to change the bit; clamp fence and work; eye and ear protection; follow the maker’s manual.';
const DRILL = 'Clamp the work to the table; no gloves; key out of the chuck.';

export function bench(p: Place<Breadboard>, s: Breadboard, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const slots = lay(g, s)
    .tenons.filter((t) => t.allow > 0)
    .map((t) => `peg ${t.n}: {mm:${s.peg + 2 * t.allow}}`);
  return [
    {
      role: 'end',
      words: `${hand ? 'Plough' : 'Rout'} a groove {mm:${s.thickness}} wide and {mm:${s.tongue + s.spare}} deep along the middle of the edge.`,
      tool: hand ? 'plough plane' : 'router',
      caution: hand ? CHISEL : ROUTER,
    },
    {
      role: 'end',
      words: `Mortise in the groove to {mm:${s.tenon_length + s.spare}}; make the outer mortises longer at both ends, as marked.`,
      tool: hand ? 'mortise chisel' : 'router or drill press and chisel',
      caution: hand ? CHISEL : ROUTER,
    },
    {
      role: 'top',
      words: `Work a tenon {mm:${s.tenon_length}} long across the whole end, then saw it down to the tongue of {mm:${s.tongue}} between the tenons.`,
      tool: hand ? 'rebate plane and saw' : 'router and straight edge',
      caution: hand ? CHISEL : ROUTER,
    },
    {
      role: 'end',
      words: `Put it together dry and bore the peg holes {mm:${s.peg}} wide, {mm:${s.peg_back}} from the shoulder, right through.`,
      tool: hand ? 'brace and bit' : 'drill press',
      ...(hand ? {} : { caution: DRILL }),
    },
    ...(slots.length
      ? [
          {
            role: 'top',
            words: `Take it apart and lengthen the holes in the tenons to slots across the top, in length ${slots.join(', ')}.`,
            tool: 'coping saw and round file',
          },
        ]
      : []),
    { role: 'top', words: 'Glue the fast tenon alone; drive all pegs dry or with a touch of glue at the show face.', tool: 'mallet' },
  ];
}
