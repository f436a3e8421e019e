import type { Operation, Place } from '../family.ts';
import { ground } from './lay.ts';
import type { WallFixing } from './params.ts';

const WALL =
  'Look for pipes and cables with a detector before anything is bored, and switch the circuit off. What the wall is made of decides what holds: fix to studs or masonry by the maker’s instructions for screw and plug; where a load or a rule of the place asks for it, ask someone licensed.';
const TIPPING =
  'A tall or shallow piece tips when drawers are open or a child climbs it: whatever it weighs, fix it before it is filled. In some places chests of drawers that are sold must pass a test of their own (ASTM F2057 in the United States); this fixing is no such proof.';
export function bench(p: Place<WallFixing>, s: WallFixing, hand: boolean): readonly Operation[] {
  if (!ground(p.meeting)) return [];
  return [
    {
      role: 'rail',
      words: `Mark ${s.count} ${s.count === 1 ? 'screw' : 'screws'}, the outermost {mm:${s.inset}} from the ends, moved to where studs or sound masonry stand; bore {mm:${s.clearance}} right through${s.sink > 0 ? `, counterbored {mm:${s.bore}} wide and {mm:${s.sink}} deep` : ''}.`,
      tool: hand ? 'hand drill' : 'drill',
      caution: 'Clamp the work; no gloves; eye protection.',
    },
    {
      role: 'wall',
      words: `Hold the piece level and plumb against the wall, mark through the holes, take it away and bore {mm:${s.pilot_depth}} deep; the bit as plug or screw ask for.`,
      tool: 'drill, masonry bit or wood bit',
      caution: WALL,
    },
    {
      role: 'rail',
      words: `Set the piece back, fill gaps behind the rail with thin slips of wood, and drive the screws {mm:${s.diameter}} x {mm:${s.length}} with washers.`,
      tool: 'screwdriver',
      caution: TIPPING,
    },
  ];
}
