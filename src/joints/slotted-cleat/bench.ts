import type { Operation, Place } from '../family.ts';
import { ground, spotsOf } from './lay.ts';
import type { SlottedCleat } from './params.ts';

const DRILL = 'Clamp the work; no gloves; eye protection.';
const ROUTER = 'Unplug it to change the bit; clamp the work; eye and ear protection; follow the maker’s manual.';

export function bench(p: Place<SlottedCleat>, s: SlottedCleat, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const slots = spotsOf(g, s)
    .filter((x) => x.slot > s.clearance + 1e-6)
    .map((x) => `{mm:${Math.round(x.slot * 10) / 10}}`);
  const sunk = s.sink > 0 ? ` Counterbore {mm:${s.sink}} deep and {mm:${s.bore}} wide first, as long as the slots.` : '';
  return [
    {
      role: 'cleat',
      words: `Mark ${s.count} screws, the outermost {mm:${s.inset}} from the edges of the board.`,
      tool: 'square and gauge',
    },
    {
      role: 'cleat',
      words: `Bore one round hole {mm:${s.clearance}} for the fast screw (${s.fixed === 'middle' ? 'the middle' : `at the ${s.fixed} edge`}); slots along the batten for the others: ${slots.join(', ')} long.${sunk}`,
      tool: hand ? 'drill, chisel and rasp' : 'router table and stops',
      caution: hand ? DRILL : ROUTER,
    },
    {
      role: 'board',
      words: `With the batten clamped in place, without glue, mark the middle of each slot; bore pilot holes {mm:${s.pilot}} wide and {mm:${s.pilot_depth}} deep.`,
      tool: 'drill with a depth stop',
      caution: `${DRILL} A stop on the bit keeps it from coming through the face.`,
    },
    { role: 'cleat', words: 'Drive the screws with washers until they just hold; the outer ones must still slide.', tool: 'screwdriver' },
  ];
}
