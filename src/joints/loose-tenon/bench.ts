import type { Operation, Place } from '../family.ts';
import { layOut } from './lay.ts';
import type { LooseTenon } from './params.ts';

const CHISEL = 'Clamp the work; both hands behind the edge.';
const ROUTER =
  'Unplug it to change the bit; clamp work and fence, and stand the end up in a jig; eye and ear protection; follow the maker’s manual.';
const SAW = 'Guard, riving knife and push sticks; rip the strip long and cut it to length last; follow the saw’s manual.';

export function bench(p: Place<LooseTenon>, s: LooseTenon, hand: boolean): readonly Operation[] {
  const l = layOut(p.meeting, p.siblings, s);
  const many = l.tenons.length > 1;
  const these = many ? `the ${l.tenons.length} mortises` : 'the mortise';
  const cut = (role: 'enter' | 'into', depth: number): Operation => ({
    role,
    words: `${hand ? 'Chop' : 'Rout'} ${these} {mm:${s.thickness}} by {mm:${s.width}}, {mm:${depth}} deep${hand ? '' : ', in several passes'}${!hand && s.ends === 'square' ? ', and square the ends' : ''}.`,
    tool: hand ? 'mortise chisel and mallet' : 'router with a spiral bit and a fence',
    caution: hand ? CHISEL : ROUTER,
  });
  return [
    {
      role: 'enter',
      words: 'Mark face sides on both parts; set out every mortise from them, and lay the two parts together to check.',
      tool: 'mortise gauge and knife',
    },
    cut('enter', s.deep_own + s.spare),
    cut('into', s.deep_in + s.spare),
    {
      role: 'enter',
      words: `Plane a strip {mm:${s.thickness}} by {mm:${s.width}}${s.ends === 'round' ? ', round its edges to the bit' : ''}, grain lengthways, and cut ${many ? `${l.tenons.length} tenons` : 'the tenon'} {mm:${s.deep_own + s.deep_in}} long.`,
      tool: hand ? 'saw and plane' : 'table saw, planer and round-over bit',
      caution: hand ? CHISEL : SAW,
    },
    {
      role: 'enter',
      words: `Try it dry: the tenon slides in under hand pressure and the shoulders close${s.glue === 'yes' ? '. Glue the tenon into the end first, then the joint' : ''}.`,
      tool: 'clamps',
    },
  ];
}
