import { slot } from '../../geom/loop.ts';
import type { Vec3 } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import { type Looks, ROOT, block, boxOf, faceToward } from '../blocks.ts';
import type { Made, Place } from '../family.ts';
import { CLEAR, cylinder, frameAlong, pin } from '../features.ts';
import type { MeetSide } from '../meeting.ts';
import { contacts } from './contacts.ts';
import { type Ground, type Lay, type Tenon, ground, lay } from './lay.ts';
import type { Breadboard } from './params.ts';

export function make(p: Place<Breadboard>, s: Breadboard): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a breadboard end needs an end board square along the top’s end: propose refuses the others');
  const l = lay(g, s);
  const extras = l.tenons.map((t) =>
    pin(`peg${t.n}`, 'peg', g.end.wood, s.peg, l.peg.length, [l.peg.start, t.y, g.gap + s.peg_back], [l.peg.sign, 0, 0]),
  );
  return {
    features: {
      top: [tongue(g, l, s), ...l.tenons.flatMap((t) => [tenon(g, l, s, t), slotIn(g, l, s, t)])],
      end: [groove(g, l, s), ...l.tenons.flatMap((t) => [mortise(g, l, s, t), hole(g, l, s, t)])],
    },
    extras,
    contacts: contacts(g, l, s),
    frees: [...extras.map((e) => ({ moves: [e.name], along: [-l.peg.sign, 0, 0] as Vec3 })), { moves: ['end'], along: [0, 0, 1] }],
    holds: 'glue',
  };
}
const around = (side: MeetSide, x: string, y: string): Partial<Record<Looks, string>> => ({
  'x-': `${x} ${faceToward(side, [-1, 0, 0])}`,
  'x+': `${x} ${faceToward(side, [1, 0, 0])}`,
  'y-': `${y} ${faceToward(side, [0, -1, 0])}`,
  'y+': `${y} ${faceToward(side, [0, 1, 0])}`,
});
const tongue = (g: Ground, l: Lay, s: Breadboard): Feature =>
  block('tongue', 'add', boxOf(l.x[0], l.x[1], g.y[0], g.y[1], -ROOT, s.tongue), { ...around(g.top, 'cheek', 'edge'), 'z+': 'tip' });
const tenon = (g: Ground, l: Lay, s: Breadboard, t: Tenon): Feature =>
  block(`tenon ${t.n}`, 'add', boxOf(l.x[0], l.x[1], t.y - s.tenon_width / 2, t.y + s.tenon_width / 2, -ROOT, s.tenon_length), {
    ...around(g.top, 'cheek', 'edge'),
    'z+': 'end',
  });
/** A groove from end to end: the tongue may slide in it. */
const groove = (g: Ground, l: Lay, s: Breadboard): Feature =>
  block('groove', 'remove', boxOf(l.x[0], l.x[1], g.end.box.min[1], g.end.box.max[1], g.gap, g.gap + s.tongue + s.spare), {
    ...around(g.end, 'wall', 'end'),
    'z+': 'bottom',
  });
/** As much longer than the tenon at both ends as the tenon must travel. */
const mortise = (g: Ground, l: Lay, s: Breadboard, t: Tenon): Feature => {
  const half = s.tenon_width / 2 + t.allow;
  return block(`mortise ${t.n}`, 'remove', boxOf(l.x[0], l.x[1], t.y - half, t.y + half, g.gap, g.gap + s.tenon_length + s.spare), {
    ...around(g.end, 'cheek', 'end'),
    'z+': 'bottom',
  });
};
/** In the end board every hole is round; a tenon that travels has a slot across the top's width. */
const hole = (g: Ground, l: Lay, s: Breadboard, t: Tenon): Feature =>
  cylinder(
    `peg${t.n} hole`,
    'remove',
    frameAlong([l.peg.start, t.y, g.gap + s.peg_back], [l.peg.sign, 0, 0], [0, 1, 0]),
    s.peg,
    -CLEAR,
    l.peg.length + CLEAR,
    { round: 'hole' },
  );
function slotIn(g: Ground, l: Lay, s: Breadboard, t: Tenon): Feature {
  const at = frameAlong([l.x[0], t.y, s.peg_back], [1, 0, 0], [0, 1, 0]);
  const long = l.x[1] - l.x[0] + CLEAR;
  if (t.allow < 1e-6) return cylinder(`peg${t.n} hole`, 'remove', at, s.peg, -CLEAR, long, { round: 'hole' });
  return {
    name: `peg${t.n} slot`,
    op: 'remove',
    at,
    why: 'joint',
    solid: { kind: 'prism', profile: [slot([-t.allow, 0], [t.allow, 0], s.peg / 2)], from: -CLEAR, to: long },
    faces: {
      'side low': { of: 'side', corner: 0 },
      [`end ${faceToward(g.top, [0, 1, 0])}`]: { of: 'side', corner: 1 },
      'side high': { of: 'side', corner: 2 },
      [`end ${faceToward(g.top, [0, -1, 0])}`]: { of: 'side', corner: 3 },
    },
  };
}
