import { HOME } from '../../geom/frame.ts';
import { type Loop, slot } from '../../geom/loop.ts';
import type { Vec3 } from '../../geom/vec3.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { outside } from '../../shapes/section.ts';
import { block, boxOf, faceToward } from '../blocks.ts';
import type { ExtraPart, Made, Place } from '../family.ts';
import { CLEAR } from '../features.ts';
import type { MeetSide } from '../meeting.ts';
import type { Tenon } from '../tenons.ts';
import { contacts } from './contacts.ts';
import { type Laid, layOut, nameOf } from './lay.ts';
import type { LooseTenon } from './params.ts';

export function make(p: Place<LooseTenon>, sizes: LooseTenon): Made {
  const l = layOut(p.meeting, p.siblings, sizes);
  const extras = l.tenons.map((t, i) => looseTenon(l, t, `tenon${i + 1}`));
  const out: Vec3 = [0, 0, -1];
  return {
    features: {
      enter: l.tenons.map((t, i) => mortise(l, l.g.enter, t, nameOf('mortise', l, i), l.own, CLEAR, 'z-')),
      into: l.tenons.map((t, i) => mortise(l, l.g.into, t, nameOf('mortise', l, i), Math.min(l.g.gap, 0) - CLEAR, l.floor, 'z+')),
    },
    extras,
    contacts: contacts(p.meeting, l),
    // Apart at the shoulders, the tenons staying in either part; then they leave the end that they were glued into.
    frees: [
      { moves: ['enter', ...extras.map((e) => e.name)], along: out },
      ...extras.map((e) => ({ moves: [e.name], along: [0, 0, 1] as Vec3 })),
    ],
    holds: sizes.glue === 'yes' ? 'glue' : 'dry',
  };
}
/** Cheeks and ends by the part's own faces, and the bottom; the same slot from either side. */
function mortise(l: Laid, side: MeetSide, t: Tenon, name: string, from: number, to: number, bottom: 'z-' | 'z+'): Feature {
  const word = (dir: Vec3, kind: string): string => `${kind} ${faceToward(side, dir)}`;
  const cheeks = [word([-1, 0, 0], 'cheek'), word([1, 0, 0], 'cheek')] as const;
  const ends = [word([0, -1, 0], 'end'), word([0, 1, 0], 'end')] as const;
  if (l.s.ends === 'square')
    return block(name, 'remove', boxOf(t.x[0], t.x[1], t.y[0], t.y[1], from, to), {
      'x-': cheeks[0],
      'x+': cheeks[1],
      'y-': ends[0],
      'y+': ends[1],
      [bottom]: 'bottom',
    });
  // Corners of the slot in order: along its high cheek, round its high end, back along its low cheek, round its low end.
  return {
    name,
    op: 'remove',
    at: HOME,
    why: 'joint',
    solid: { kind: 'prism', profile: [slotOf(t)], from, to },
    faces: {
      [cheeks[1]]: { of: 'side', corner: 0 },
      [ends[1]]: { of: 'side', corner: 1 },
      [cheeks[0]]: { of: 'side', corner: 2 },
      [ends[0]]: { of: 'side', corner: 3 },
      bottom: { of: bottom === 'z-' ? 'from' : 'to' },
    },
  };
}
function slotOf(t: Tenon): Loop {
  const r = (t.x[1] - t.x[0]) / 2;
  const x = t.x[0] + r;
  return slot([x, t.y[0] + r], [x, t.y[1] - r], r);
}
/** Its grain runs from part to part; its record lies as the meeting does. */
function looseTenon(l: Laid, t: Tenon, name: string): ExtraPart {
  const { thickness, width, ends } = l.s;
  const stock = boxOf(0, thickness, 0, width, 0, l.tenon[1] - l.tenon[0]);
  const rounded = outside('rounded edges', stock, 'z', slotOf({ x: [-thickness / 2, thickness / 2], y: [-width / 2, width / 2] }));
  return {
    name,
    words: 'loose tenon',
    record: partRecord(stock, 'z', l.g.enter.wood, ends === 'round' ? [{ ...rounded, faces: {} }] : []),
    at: { ...HOME, o: [t.x[0], t.y[0], l.tenon[0]] },
    enters: [0, 0, -1],
  };
}
