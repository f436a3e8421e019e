import type { Vec2 } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import type { Made, Place } from '../family.ts';
import { ROOT, block, boxOf, faceToward } from '../blocks.ts';
import { swept } from '../features.ts';
import { contacts } from './contacts.ts';
import { type Ground, type Lay, ground, lay } from './lay.ts';
import type { GrooveTongue } from './params.ts';

export function make(p: Place<GrooveTongue>, s: GrooveTongue): Made {
  const g = ground(p.meeting);
  const l = g && lay(g, s);
  if (!g || !l) throw new Error(`no groove can be laid for ${JSON.stringify(s)}: propose refuses this`);
  return {
    features: { enter: [tongue(g, l, s), ...reliefs(g, l, s)], into: [groove(g, l, s)] },
    extras: [],
    contacts: contacts(g, l, s),
    frees: [
      { moves: ['enter'], along: [0, 0, -1] },
      ...(l.open[1] ? [{ moves: ['enter'], along: [0, 1, 0] as const }] : []),
      ...(l.open[0] ? [{ moves: ['enter'], along: [0, -1, 0] as const }] : []),
    ],
    holds: s.hold === 'glued' ? 'glue' : 'loose',
  };
}
/** Rooted in the panel; round a corner it runs on beside the panel without a root of its own. */
function tongue(g: Ground, l: Lay, s: GrooveTongue): Feature {
  const root = -(s.clear + ROOT);
  const [a, b] = l.tongue;
  const [ra, rb] = l.root;
  const foot: Vec2[] = [
    [ra, root],
    [rb, root],
  ];
  const up: Vec2[] =
    b > rb + 1e-9
      ? [
          [rb, 0],
          [b, 0],
          [b, l.long],
        ]
      : [[b, l.long]];
  const down: Vec2[] =
    a < ra - 1e-9
      ? [
          [a, l.long],
          [a, 0],
          [ra, 0],
        ]
      : [[a, l.long]];
  const high = `edge ${faceToward(g.enter, [0, 1, 0])}`;
  const low = `edge ${faceToward(g.enter, [0, -1, 0])}`;
  const sides = [null, ...(up.length > 1 ? [null, null, high] : [high]), 'tip', ...(down.length > 1 ? [low, null, null] : [low])];
  return swept('tongue', 'add', 'yz', [...foot, ...up, ...down], l.x[0], l.x[1], sides, [
    `cheek ${faceToward(g.enter, [-1, 0, 0])}`,
    `cheek ${faceToward(g.enter, [1, 0, 0])}`,
  ]);
}
/** The shoulders of a floating panel are planed back so that it has room to grow. */
function reliefs(g: Ground, l: Lay, s: GrooveTongue): Feature[] {
  if (!(s.clear > 0)) return [];
  const [y0, y1] = [g.enter.box.min[1], g.enter.box.max[1]];
  const one = (x0: number, x1: number, sign: 1 | -1): Feature[] =>
    x1 - x0 < 1e-6
      ? []
      : [block(`shoulder room ${faceToward(g.enter, [sign, 0, 0])}`, 'remove', boxOf(x0, x1, y0, y1, -s.clear, 0), { 'z-': 'shoulder' })];
  return [...one(g.x[0], l.x[0], -1), ...one(l.x[1], g.x[1], 1)];
}
function groove(g: Ground, l: Lay, s: GrooveTongue): Feature {
  const wall = (dir: readonly [number, number, number]): string => `wall ${faceToward(g.into, dir)}`;
  return block('groove', 'remove', boxOf(l.x[0], l.x[1], l.groove[0], l.groove[1], g.gap, g.gap + s.depth), {
    'x-': wall([-1, 0, 0]),
    'x+': wall([1, 0, 0]),
    'y-': `end ${faceToward(g.into, [0, -1, 0])}`,
    'y+': `end ${faceToward(g.into, [0, 1, 0])}`,
    'z+': 'bottom',
  });
}
