import type { Operation, Place } from '../family.ts';
import { sizeAlong } from '../shared-box.ts';
import { leftIn } from './lay.ts';
import { drawn } from './make.ts';
import type { Lap } from './params.ts';

const CHISEL = 'Clamp the work; both hands behind the edge.';
const ROUTER = 'Unplug it to change the bit; clamp fence and work; eye and ear protection; follow the maker’s manual.';

export function bench(p: Place<Lap>, s: Lap, hand: boolean): readonly Operation[] {
  const { g, cut } = drawn(p, s);
  const parts = g.full ? [g.under] : [g.over, g.under];
  const lost = (part: (typeof parts)[number]): number => sizeAlong(part.side.box, g.c) - leftIn(g, part, cut);
  return [
    ...parts.flatMap((part): Operation[] => [
      {
        role: part.role,
        words: 'Mark the width of the notch from the other part itself, laid in its place.',
        tool: 'marking knife and square',
      },
      {
        role: part.role,
        words: `Gauge the depth, {mm:${lost(part)}}, from the same face side on both parts.`,
        tool: 'marking gauge',
      },
      ...(hand
        ? [
            {
              role: part.role,
              words: 'Saw the shoulders on the waste side of the lines, and a few kerfs between them.',
              tool: 'tenon saw',
            },
            {
              role: part.role,
              words: 'Chop out the waste from both sides to the middle and level the cheek.',
              tool: 'chisel and router plane',
              caution: CHISEL,
            },
          ]
        : [
            {
              role: part.role,
              words: 'Rout the notch along a clamped fence in shallow passes, with a scrap behind the far edge.',
              tool: 'router and straight bit',
              caution: ROUTER,
            },
          ]),
    ]),
    ...formWork(s),
    {
      role: 'over',
      words:
        s.hold === 'glued'
          ? 'Try it dry; glue the cheeks and clamp across them, pads under the jaws.'
          : 'Ease the walls until it goes together by hand.',
      tool: s.hold === 'glued' ? 'clamps' : 'fine plane',
    },
  ];
}
function formWork(s: Lap): Operation[] {
  if (s.form === 'mitred')
    return [
      {
        role: 'over',
        words: 'Saw the mitre on the face of both parts from corner to corner, down to the cheek.',
        tool: 'tenon saw and mitre square',
      },
    ];
  if (s.form === 'dovetailed')
    return [
      {
        role: 'over',
        words: `Saw the sides of the tongue sloping 1 in ${Math.round(10 / s.slope) / 10} first; mark the socket from it.`,
        tool: 'dovetail saw and bevel',
      },
    ];
  return [];
}
