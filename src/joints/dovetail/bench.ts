import type { Operation, Place } from '../family.ts';
import { drawn } from './make.ts';
import type { Dovetail } from './params.ts';

const CHISEL = 'Clamp the board; both hands behind the edge, never towards the body.';
const ROUTER =
  'Unplug it to change the bit; keep both hands on it until it stands still; eye and ear protection; follow the makers’ manuals of jig and router.';

export function bench(p: Place<Dovetail>, s: Dovetail, hand: boolean): readonly Operation[] {
  const { c, l } = drawn(p, s);
  const first = l.tails[0];
  const gauge: Operation[] = [
    {
      role: 'tails',
      words: `Gauge the base line all round at {mm:${c.z[1] - c.z[0]}}, the thickness of the pin board.`,
      tool: 'cutting gauge',
    },
    {
      role: 'pins',
      words: `Gauge the base line on both faces at {mm:${c.x[1] - c.x[0]}}, the thickness of the tail board.`,
      tool: 'cutting gauge',
    },
  ];
  const lay = `Lay out ${s.tails} ${s.tails === 1 ? 'tail' : 'tails'}, sloping 1 in ${Math.round(10 / s.slope) / 10}; the first begins {mm:${first?.low ?? 0}} from the edge on the end.`;
  if (!hand)
    return [
      ...gauge,
      { role: 'tails', words: `${lay} Set the jig to it and rout the tails.`, tool: 'router, dovetail bit and jig', caution: ROUTER },
      {
        role: 'pins',
        words: 'Rout the pins in the same jig; try the fit on scrap of the same thickness first.',
        tool: 'router and jig',
        caution: ROUTER,
      },
    ];
  return [
    ...gauge,
    { role: 'tails', words: lay, tool: 'dividers, bevel and knife' },
    { role: 'tails', words: 'Saw the tails just outside the lines, square across the end.', tool: 'dovetail saw' },
    {
      role: 'tails',
      words: 'Chop the waste half way from each face, staying off the base line until last.',
      tool: 'chisel and mallet',
      caution: CHISEL,
    },
    { role: 'pins', words: 'Mark the pins from the tails themselves, face marks outward.', tool: 'knife' },
    {
      role: 'pins',
      words: 'Saw the pins leaving the line, chop the waste, and pare until the joint taps home once.',
      tool: 'dovetail saw and chisel',
      caution: CHISEL,
    },
  ];
}
