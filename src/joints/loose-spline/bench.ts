import type { Operation, Place } from '../family.ts';
import { ground, lay } from './lay.ts';
import type { LooseSpline } from './params.ts';

const ROUTER =
  'Unplug it to change the cutter; feed against its turn, push blocks, guard in place; a stopped groove is let down and lifted between stops; eye and ear protection; follow the maker’s manual.';
const HAND = 'Clamp the board; both hands behind the edge.';

export function bench(p: Place<LooseSpline>, s: LooseSpline, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  const l = g && lay(g, s);
  if (!g || !l) return [];
  const stopped = l.stopped[0] || l.stopped[1];
  const size = `{mm:${s.thickness}} wide and {mm:${l.bottom}} deep`;
  const cut = (role: 'enter' | 'into'): Operation =>
    hand
      ? {
          role,
          words: `${stopped ? 'Chop the stopped ends, then plough' : 'Plough'} the groove ${size}, fence on the face side.`,
          tool: stopped ? 'chisel and plough plane' : 'plough plane',
          caution: HAND,
        }
      : {
          role,
          words: `Cut the groove ${size}, face side to the fence${stopped ? ', between stops' : ''}.`,
          tool: 'router table and slotting cutter',
          caution: ROUTER,
        };
  const stuff = { ply: 'plywood', across: 'an off-cut, its grain across', along: 'an off-cut, its grain along' }[s.made];
  return [
    cut('enter'),
    cut('into'),
    {
      role: 'into',
      words: `Make the spline of ${stuff}: {mm:${s.thickness}} thick, {mm:${s.width}} wide, {mm:${l.y[1] - l.y[0]}} long; it slides in by hand.`,
      tool: hand ? 'smoothing plane' : 'planer and saw',
    },
    s.hold === 'glued'
      ? {
          role: 'enter',
          words: 'Glue grooves and seam, lay the spline in and clamp across.',
          tool: 'clamps',
          caution: 'Keep to the glue maker’s sheet for pressure, warmth and time.',
        }
      : { role: 'enter', words: 'Lay the spline in dry and push the parts together.', tool: 'none' },
  ];
}
