import type { Operation, Place } from '../family.ts';
import { ground, layOut } from './lay.ts';
import type { RuleJoint } from './params.ts';

const ROUTER =
  'Unplug it to change the bit; take the cut in several passes, clamp the work; eye and ear protection; follow the maker’s manual.';
const CHISEL = 'Clamp the board; both hands behind the edge.';

export function bench(p: Place<RuleJoint>, s: RuleJoint, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const l = layOut(g, s);
  return [
    {
      role: 'top',
      words: `Have the hinges in hand first. On both ends mark the pin’s centre {mm:${l.pin}} below the surface, in line with the edge that shows, and strike the round of {mm:${s.radius}} from it.`,
      tool: 'gauge and dividers',
    },
    {
      role: 'top',
      words: `Cut the fillet {mm:${s.fillet}} deep, then round the edge to the line, on past the pin to the underside.`,
      tool: hand ? 'rebate plane and hollow plane' : 'router and round-over bit',
      caution: hand ? 'Clamp the board; keep the fingers off the arris.' : ROUTER,
    },
    {
      role: 'leaf',
      words: `Cut the cove to {mm:${l.cove}} from the same centre, so that it clears the round by {mm:${s.clearance}}; leave the lip {mm:${s.fillet - s.clearance}} thick.`,
      tool: hand ? 'round plane and shoulder plane' : 'router and cove bit',
      caution: hand ? 'Clamp the board; keep the fingers off the lip.' : ROUTER,
    },
    {
      role: 'top',
      words: `Lay both boards face down, closed. Let each hinge in so that its flaps lie {mm:${l.flap[0]}} below the surface, its longer flap under the leaf, and cut a channel {mm:${s.knuckle + 1}} wide for the knuckle.`,
      tool: 'knife, chisel and router plane',
      caution: CHISEL,
    },
    {
      role: 'leaf',
      words:
        'Screw each hinge with one screw a flap and let the leaf swing down through a quarter turn; ease the cove where it rubs, then set the rest.',
      tool: 'screwdriver',
    },
  ];
}
