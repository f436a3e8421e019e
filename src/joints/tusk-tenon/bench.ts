import type { Operation, Place } from '../family.ts';
import { deepest, layOut } from './lay.ts';
import type { TuskTenon } from './params.ts';

const CHISEL = 'Clamp the work; both hands behind the edge.';
const ROUTER = 'Unplug it to change the bit; clamp work and fence; eye and ear protection; follow the maker’s manual.';
const SAW = 'Guard, riving knife where the cut allows one, and push sticks; never free-hand; follow the saw’s manual.';
const SMALL = 'Hold small pieces in a sled or vice, never in the fingers.';

export function bench(p: Place<TuskTenon>, s: TuskTenon, hand: boolean): readonly Operation[] {
  const l = layOut(p.meeting, s);
  const long = l.key[1] - l.key[0];
  const deep = deepest(s, l.k[1] - l.k[0]);
  return [
    {
      role: 'into',
      words: `Mark the mortise {mm:${s.thickness}} by {mm:${s.width}} on both faces with knife and gauge.`,
      tool: 'mortise gauge and knife',
    },
    hand
      ? {
          role: 'into',
          words: 'Chop it right through, half from each face.',
          tool: 'mortise chisel and mallet',
          caution: CHISEL,
        }
      : {
          role: 'into',
          words: 'Rout or bore it in several passes, half from each face, and square its corners.',
          tool: 'router or mortiser',
          caution: ROUTER,
        },
    {
      role: 'enter',
      words: `Cut shoulders and cheeks; the tenon is {mm:${l.tip}} long, {mm:${l.tip - l.face}} of it beyond the other part. Leave it easy: it must come out again.`,
      tool: hand ? 'tenon saw, shoulder plane' : 'table saw with a tenoning jig, or bandsaw',
      caution: hand ? CHISEL : SAW,
    },
    {
      role: 'enter',
      words: `Push the joint home, mark the far face on the tenon, and set the inner end of the key’s hole {mm:${s.pull}} inside that line.`,
      tool: 'knife and square',
    },
    {
      role: 'enter',
      words: `Cut the hole {mm:${s.key_thick}} wide; its outer end slopes, from {mm:${deep}} to {mm:${2 * s.key_deep - deep}} beyond the line.`,
      tool: 'drill and chisel',
      caution: CHISEL,
    },
    {
      role: 'enter',
      words: `Make the key {mm:${long}} long and {mm:${s.key_thick}} thick, its grain lengthways, one edge straight, the other sloping 1 in ${Math.round(1 / s.slope)}. Drive it by hand until the shoulder closes; no glue.`,
      tool: hand ? 'saw and block plane' : 'bandsaw and block plane',
      caution: SMALL,
    },
  ];
}
