import type { Operation, Place } from '../family.ts';
import { mitres } from './lay.ts';
import { drawn } from './make.ts';
import type { Dovetail } from './params.ts';

const CHISEL = 'Clamp the board; both hands behind the edge, never towards the body.';
const ROUTER =
  'Unplug it to change the bit; keep both hands on it until it stands still; eye and ear protection; follow the makers’ manuals of jig and router.';

export function bench(p: Place<Dovetail>, s: Dovetail, hand: boolean): readonly Operation[] {
  const { c, l } = drawn(p, s);
  const first = l.tails[0];
  const lapped = c.lap > 0;
  const gauge: Operation[] = [
    {
      role: 'tails',
      words: `Gauge the base line all round at {mm:${c.z[1] - c.z[0]}}, ${lapped ? `the thickness of the pin board less its lap of {mm:${c.lap}}` : 'the thickness of the pin board'}.`,
      tool: 'cutting gauge',
    },
    {
      role: 'pins',
      words: `Gauge the base line on ${lapped ? 'the inner face' : 'both faces'} at {mm:${c.x[1] - c.x[0]}}, the thickness of the tail board${lapped ? `, and the lap on the end at {mm:${c.z[1] - c.z[0]}} from the inner face` : ''}.`,
      tool: 'cutting gauge',
    },
    ...mitres({ c, l }).map((m): Operation => ({
      role: 'tails',
      words: `Mark off {mm:${m.span[1] - m.span[0]}} at the ${m.name.replace('mitre ', '')} edge of both boards for the mitre; saw no tail or pin there.`,
      tool: 'gauge and knife',
    })),
  ];
  const lay = `Lay out ${s.tails} ${s.tails === 1 ? 'tail' : 'tails'}, sloping 1 in ${Math.round(10 / s.slope) / 10}; the first begins {mm:${first?.low ?? 0}} from the edge on the end.`;
  const mitred: Operation[] = mitres({ c, l }).map((m) => ({
    role: 'pins',
    words: `Saw the mitre at the ${m.name.replace('mitre ', '')} on both boards a little full and pare it with the joint dry together.`,
    tool: 'fine saw and chisel',
    caution: CHISEL,
  }));
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
      ...mitred,
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
      words: lapped
        ? 'Saw the pins as far as the slanting cut reaches, chop the sockets out to the lap, and pare until the joint taps home once.'
        : 'Saw the pins leaving the line, chop the waste, and pare until the joint taps home once.',
      tool: 'dovetail saw and chisel',
      caution: CHISEL,
    },
    ...mitred,
  ];
}
