import type { Operation, Place } from '../family.ts';
import { ground, lay } from './lay.ts';
import type { SlidingDovetail } from './params.ts';

const CHISEL = 'Clamp the board; both hands behind the edge.';
const ROUTER =
  'Unplug it to change the bit; a dovetail bit cuts at its full depth and is never lifted out of the cut; clamp fence and board; eye and ear protection; follow the maker’s manual.';

/** Figures are in braces so that they print in the maker's units. */
export function bench(p: Place<SlidingDovetail>, s: SlidingDovetail, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  const l = g && lay(g, s);
  if (!g || !l) return [];
  const [last, first] = [l.neck(l.last), l.neck(l.first)];
  const neck = `{mm:${last[1] - last[0]}} at the neck${s.taper > 0 ? `, tapering to {mm:${first[1] - first[0]}} at the end that goes in first` : ''}`;
  const stop = l.through ? '' : `, stopped {mm:${s.stop}} short of the edge`;
  return [
    {
      role: 'into',
      words: `Mark the socket ${neck}, {mm:${s.depth}} deep${stop}, open at the edge that the tail comes in by.`,
      tool: 'knife, gauge and sliding bevel',
    },
    ...(hand ? sawSocket(!l.through) : routSocket(s)),
    hand
      ? {
          role: 'enter',
          words: `Saw the ${s.slanted === 'both' ? 'shoulders' : 'shoulder'}, then pare or plane the slope against a bevelled block until the tail starts by hand.`,
          tool: 'tenon saw, chisel and bevelled block',
          caution: CHISEL,
        }
      : {
          role: 'enter',
          words: `Stand the board against a tall fence and cut ${s.slanted === 'both' ? 'both faces' : `the ${s.slanted} face`} with the same bit; creep up on the fit in off-cuts.`,
          tool: 'router table and tall fence',
          caution: ROUTER,
        },
    { role: 'enter', words: ASSEMBLE[s.hold], tool: s.hold === 'dry' ? 'mallet' : 'glue brush and mallet' },
  ];
}
const ASSEMBLE: Readonly<Record<SlidingDovetail['hold'], string>> = {
  glued: 'Brush glue thinly on both flanks and drive it in without a halt: it swells and seizes.',
  end: 'Slide it nearly home dry, put glue only where the last stretch comes to lie at its leading end, and drive it in.',
  dry: 'Wax the tail and drive it in.',
};
const sawSocket = (stopped: boolean): Operation[] => [
  ...(stopped ? [{ role: 'into', words: 'Chop the stopped end first, so that the saw has room.', tool: 'chisel', caution: CHISEL }] : []),
  {
    role: 'into',
    words: 'Saw both walls along a block planed to the slope, take out the waste and level the bottom.',
    tool: 'stair saw, chisel and router plane',
    caution: CHISEL,
  },
];
const routSocket = (s: SlidingDovetail): Operation[] => [
  {
    role: 'into',
    words: 'Rout most of the waste with a straight bit, just short of the depth.',
    tool: 'router and straight bit',
    caution: ROUTER,
  },
  {
    role: 'into',
    words:
      s.taper > 0
        ? 'Cut one wall along the fence, set the fence over by the taper with a shim at one end, and cut the other.'
        : 'Cut the socket along a clamped fence in one pass for each wall.',
    tool: 'router and dovetail bit',
    caution: ROUTER,
  },
];
