import { HOME } from '../../geom/frame.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { block, boxOf, faceToward } from '../blocks.ts';
import type { ExtraPart, Free, Made, Place } from '../family.ts';
import type { MeetSide } from '../meeting.ts';
import { contacts } from './contacts.ts';
import { type Ground, type Lay, ground, lay } from './lay.ts';
import type { LooseSpline } from './params.ts';

export function make(p: Place<LooseSpline>, s: LooseSpline): Made {
  const g = ground(p.meeting);
  const l = g && lay(g, s);
  if (!g || !l) throw new Error(`no spline can be laid for ${JSON.stringify(s)}: propose refuses this`);
  return {
    features: { enter: [groove(g.enter, l, -l.bottom, 0)], into: [groove(g.into, l, g.gap, g.gap + l.bottom)] },
    extras: [spline(g, l, s)],
    contacts: contacts(g, l, s),
    frees: [
      { moves: ['enter'], along: [0, 0, -1] },
      { moves: ['spline'], along: [0, 0, -1] },
      ...(l.stopped[1] ? [] : [1 as const]).flatMap(along),
      ...(l.stopped[0] ? [] : [-1 as const]).flatMap(along),
    ],
    holds: s.hold === 'glued' ? 'glue' : 'dry',
  };
}
/** Through grooves let the part and the spline slide out along the seam. */
const along = (sign: 1 | -1): Free[] => ['enter', 'spline'].map((who) => ({ moves: [who], along: [0, sign, 0] as const }));
function groove(side: MeetSide, l: Lay, from: number, to: number): Feature {
  return block('groove', 'remove', boxOf(l.x[0], l.x[1], l.y[0], l.y[1], from, to), {
    'x-': `wall ${faceToward(side, [-1, 0, 0])}`,
    'x+': `wall ${faceToward(side, [1, 0, 0])}`,
    'y-': `end ${faceToward(side, [0, -1, 0])}`,
    'y+': `end ${faceToward(side, [0, 1, 0])}`,
    [from < 0 ? 'z-' : 'z+']: 'bottom',
  });
}
/** A plain strip: its record lies as the meeting does, so that handed copies have equal ones. */
function spline(g: Ground, l: Lay, s: LooseSpline): ExtraPart {
  const size = [s.thickness, l.y[1] - l.y[0], s.width] as const;
  const wood = s.made === 'ply' ? 'plywood' : g.enter.wood;
  return {
    name: 'spline',
    words: 'spline',
    record: partRecord({ min: [0, 0, 0], max: size }, s.made === 'across' ? 'z' : 'y', wood, []),
    at: { ...HOME, o: [l.x[0], l.y[0], -l.half] },
    enters: [0, 0, 1],
  };
}
