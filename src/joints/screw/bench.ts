import type { Operation, Place } from '../family.ts';
import { specOf } from '../screw-rows.ts';
import { biteOf } from '../screws.ts';
import { ground } from './lay.ts';
import type { Screw } from './params.ts';

const DRILL = 'Clamp the work; no gloves; eye protection; take the key out of the chuck.';
const ROUTER = 'Unplug it to change the bit; clamp the work; eye and ear protection; follow the maker’s manual.';

export function bench(p: Place<Screw>, s: Screw, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const many = s.count === 1 ? 'one' : String(s.count);
  const out: Operation[] = [
    {
      role: 'through',
      words: `Mark ${many} on the outer face, the first {mm:${s.inset}} from the end${s.off === 0 ? ', in the middle' : ''}.`,
      tool: 'square and gauge',
    },
  ];
  if (s.sink > 0)
    out.push({
      role: 'through',
      words: `First the counterbores, {mm:${s.bore}} wide and {mm:${s.sink}} deep${s.travel > 0 ? ', lengthened with the slots' : ''}.`,
      tool: hand ? 'brace and centre bit' : 'drill press and flat-bottomed bit',
      caution: DRILL,
    });
  out.push(
    s.travel > 0
      ? {
          role: 'through',
          words: `Cut the slots {mm:${s.slot}} long and {mm:${s.clearance}} wide${s.fast === 'middle' ? '; the middle screw has a round hole' : ''}.`,
          tool: hand ? 'drill, saw and rasp' : 'router table and stops',
          caution: hand ? DRILL : ROUTER,
        }
      : { role: 'through', words: `Bore the clearance holes {mm:${s.clearance}} right through.`, tool: 'drill', caution: DRILL },
  );
  if (s.head === 'countersunk')
    out.push({ role: 'through', words: 'Countersink until a head lies flush.', tool: 'countersink', caution: DRILL });
  out.push(
    {
      role: 'into',
      words: `With the parts held together, mark through the holes; bore pilot holes {mm:${s.pilot}} wide, {mm:${s.pilot_depth}} deep and no deeper.`,
      tool: 'drill with a depth stop',
      caution: DRILL,
    },
    {
      role: 'through',
      words: `Drive the screws {mm:${s.diameter}} x {mm:${s.length}} ({mm:${biteOf(g.bed, specOf(s))}} in the second part)${s.travel > 0 ? ', not so tight that the wood cannot slide' : ''}; wax the threads in hard wood, brass after a steel screw of the same size.`,
      tool: 'screwdriver',
    },
  );
  if (s.head === 'plugged')
    out.push({
      role: 'through',
      words: `Glue in plugs of the same wood, grain with grain, and pare them flush when dry.`,
      tool: 'plug cutter, chisel',
      caution: 'Cut plugs from clamped stock at the drill press; both hands behind the chisel.',
    });
  return out;
}
