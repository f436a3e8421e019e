import { type Operation, type Place } from '../family.ts';
import { ground, run } from './lay.ts';
import type { Housing } from './params.ts';

const CHISEL = 'Clamp the board; both hands behind the edge.';
const ROUTER = 'Unplug it to change the bit; clamp fence and board; eye and ear protection; follow the maker’s manual.';

/** Figures are in braces so that they print in the maker's units. */
export function bench(p: Place<Housing>, s: Housing, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const r = run(g, s);
  const stopped = r.cut[0] > 0 || r.cut[1] > 0;
  const mark: Operation = {
    role: 'into',
    words: `Mark both walls of the housing from the ${s.shoulders === 'none' ? 'shelf itself' : 'tongue'}, {mm:${s.depth}} deep${stopped ? `, stopped {mm:${s.stop}} short` : ''}.`,
    tool: 'marking knife and gauge',
  };
  const cut: Operation[] = hand
    ? [
        ...(stopped
          ? [{ role: 'into', words: 'Chop the stopped end first, so that the saw has room.', tool: 'chisel', caution: CHISEL }]
          : []),
        { role: 'into', words: 'Saw both walls just inside the lines, down to the depth.', tool: 'tenon saw' },
        { role: 'into', words: 'Take out the waste and level the bottom.', tool: 'chisel and router plane', caution: CHISEL },
      ]
    : [
        {
          role: 'into',
          words: `Rout the housing along a clamped fence in two passes${stopped ? ', and square its stopped end with a chisel' : ''}.`,
          tool: 'router and straight bit',
          caution: ROUTER,
        },
      ];
  const notch: Operation[] = stopped
    ? [
        {
          role: 'enter',
          words: `Notch the end {mm:${s.depth}} by {mm:${s.stop}} at the stop; the shoulder must close.`,
          tool: 'tenon saw and chisel',
          caution: CHISEL,
        },
      ]
    : [];
  return s.shoulders === 'none'
    ? [mark, ...cut, ...notch, { role: 'enter', words: 'Plane the shelf until it slides in under hand pressure.', tool: 'smoothing plane' }]
    : [tongue(s, hand), mark, ...cut, ...notch];
}
/** The tongue comes first: the housing is marked from it. */
function tongue(s: Housing, hand: boolean): Operation {
  const where = s.shoulders === 'both' ? 'both faces' : `the ${s.shoulders} face`;
  return {
    role: 'enter',
    words: `Cut the end back on ${where} to a tongue {mm:${s.tongue}} thick and {mm:${s.depth}} long, square at the shoulder.`,
    tool: hand ? 'tenon saw and rebate plane' : 'router table',
    caution: hand ? CHISEL : ROUTER,
  };
}
