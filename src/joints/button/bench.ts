import type { Operation, Place } from '../family.ts';
import { SLACK, bite, ground, height, slotDepth } from './lay.ts';
import type { Button } from './params.ts';

const ROUTER = 'Unplug it to change the bit; clamp the work; eye and ear protection; follow the maker’s manual.';

export function bench(p: Place<Button>, s: Button, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const deep = `{mm:${slotDepth(s) - s.room}} deep, {mm:${s.lip}} below the top edge, {mm:${s.tongue + SLACK}} high`;
  return [
    {
      role: 'rail',
      words:
        s.slot === 'groove'
          ? `Groove the inner face ${deep}${s.stop > 0 ? `, stopped {mm:${s.stop}} from each end so that it stays clear of the tenons` : ''}.`
          : `Mortise ${s.count} slots {mm:${s.width + 2 * s.allow}} long in the inner face, ${deep}.`,
      tool: hand ? (s.slot === 'groove' && s.stop === 0 ? 'plough plane' : 'mortise chisel') : 'router and fence',
      caution: hand ? 'Clamp the rail; both hands behind the edge.' : ROUTER,
    },
    {
      role: 'rail',
      words: `Plane a strip {mm:${height(s)}} thick for the buttons, rebate its end grain to a tongue of {mm:${s.tongue}} by {mm:${s.reach}}, and only then saw the buttons off it.`,
      tool: 'saw and rebate plane',
      caution: 'Small pieces are not held by hand at a machine: work the long strip, crosscut last.',
    },
    {
      role: 'under',
      words: `With buttons and top in place, mark the screws; bore {mm:${Math.round(s.screw * 7) / 10}} pilot holes no deeper than {mm:${bite(g, s)}}, with a stop on the bit.`,
      tool: 'drill with a depth stop',
      caution: 'Clamp the work; no gloves.',
    },
    {
      role: 'under',
      words: `Screw the buttons on, ${s.room > 0 ? `each {mm:${s.room}} off the rail` : 'each home against the rail'}.`,
      tool: 'screwdriver',
    },
  ];
}
