import type { Operation, Place } from '../family.ts';
import { ground, lay } from './lay.ts';
import type { GrooveTongue } from './params.ts';

const TABLE =
  'Feed against the turn of the cutter, push blocks, guard in place; a stopped groove is no job for the saw bench. Follow the machine’s manual.';

export function bench(p: Place<GrooveTongue>, s: GrooveTongue, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  const l = g && lay(g, s);
  if (!g || !l) return [];
  const stopped = !l.open[0] || !l.open[1];
  const wide = `{mm:${s.tongue}} wide and {mm:${s.depth}} deep`;
  const plain = s.tongue >= g.x[1] - g.x[0] - 1e-6;
  return [
    hand
      ? {
          role: 'into',
          words: stopped
            ? `Chop the stopped ends of the groove, then plough it ${wide} from the face side.`
            : `Plough the groove ${wide}, fence on the face side.`,
          tool: stopped ? 'chisel and plough plane' : 'plough plane',
          caution: 'Clamp the board; both hands behind the edge.',
        }
      : {
          role: 'into',
          words: `Cut the groove ${wide}, face side to the fence${stopped ? ', between stops' : ''}.`,
          tool: 'router table',
          caution: TABLE,
        },
    plain
      ? { role: 'enter', words: 'Plane the edge of the panel until it slides in the groove without force.', tool: 'smoothing plane' }
      : {
          role: 'enter',
          words: `Work the tongue {mm:${s.tongue}} thick and {mm:${l.long}} long, trying it in an off-cut of the groove.`,
          tool: hand ? 'rebate plane' : 'router table',
          ...(hand ? {} : { caution: TABLE }),
        },
    s.hold === 'loose'
      ? { role: 'enter', words: 'Finish the panel before it goes in; wax its corners; no glue in the groove.', tool: 'brush and wax' }
      : { role: 'enter', words: 'Glue the tongue sparingly.', tool: 'glue brush' },
  ];
}
