import { AXES } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import { type Looks, ROOT, block, faceToward, looking } from '../blocks.ts';
import type { Free, Made, Place } from '../family.ts';
import type { MeetSide } from '../meeting.ts';
import { contacts } from './contacts.ts';
import { type Ground, type Lay, type Span, boxBy, faceAt, ground, lay, spanIn, spans, vecOf } from './lay.ts';
import type { Rabbet } from './params.ts';

export function make(p: Place<Rabbet>, s: Rabbet): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a rabbet needs a board square at the edge of the other: propose refuses the others');
  const l = lay(g, s);
  return {
    features: { enter: g.shared ? shoulders(g, l, s) : [tongue(g, l)], into: [block('rabbet', 'remove', l.cut, around(g.into, 'wall'))] },
    extras: [],
    contacts: contacts(g, l, s),
    frees: frees(g, l, s),
    holds: s.hold === 'glued' ? 'glue' : 'dry',
  };
}
/** All six sides, each named by the face of the part itself that looks the same way. */
function around(side: MeetSide, word: string): Record<Looks, string> {
  const ways = AXES.flatMap((axis) => ([-1, 1] as const).map((sign) => ({ axis, sign })));
  return Object.fromEntries(ways.map((w) => [looking(w.axis, w.sign), `${word} ${faceToward(side, vecOf(w))}`])) as Record<Looks, string>;
}
/** The length that the board grows by, rooted in it; thinner than the board where that is rabbeted too. */
function tongue(g: Ground, l: Lay): Feature {
  const tip = spanIn(l.board, g.tip.axis);
  const box = boxBy(spans(g, [tip[0] - ROOT, tip[1]] as Span, spanIn(l.board, g.bed.axis), spanIn(l.board, g.run)));
  return block('let-in edge', 'add', box, around(g.enter, 'side'));
}
/** Drawn one in the other, a rabbeted board loses what stands beside its tongue. */
function shoulders(g: Ground, l: Lay, s: Rabbet): Feature[] {
  const own = spanIn(g.enter.box, g.bed.axis);
  const one = (word: string, size: number, sign: 1 | -1): Feature[] => {
    const face = faceAt(own, sign);
    const slab: Span = sign > 0 ? [face - size, face] : [face, face + size];
    const box = boxBy(spans(g, spanIn(l.board, g.tip.axis), slab, spanIn(g.enter.box, g.run)));
    return size > 1e-6 ? [block(`${word} shoulder`, 'remove', box, around(g.enter, 'side'))] : [];
  };
  return [...one('inside', s.inner, g.bed.sign), ...one('outside', s.outer, g.bed.sign > 0 ? -1 : 1)];
}
/** Back out of the mouth; off the bed unless a lip covers the edge; along the rabbet where it does not stop. */
function frees(g: Ground, l: Lay, s: Rabbet): Free[] {
  const off = (w: { axis: 'x' | 'y' | 'z'; sign: 1 | -1 }): Free => ({
    moves: ['enter'],
    along: vecOf({ axis: w.axis, sign: w.sign > 0 ? -1 : 1 }),
  });
  return [
    off(g.tip),
    ...(s.outer > 0 ? [] : [off(g.bed)]),
    ...(l.stopped[0] ? [] : [off({ axis: g.run, sign: 1 })]),
    ...(l.stopped[1] ? [] : [off({ axis: g.run, sign: -1 })]),
  ];
}
