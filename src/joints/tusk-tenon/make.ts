import { HOME } from '../../geom/frame.ts';
import type { Frame } from '../../geom/frame.ts';
import { type Vec2, type Vec3, axisVec, unit } from '../../geom/vec3.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { ROOT, block, boxOf, faceToward } from '../blocks.ts';
import type { ExtraPart, Made, Place } from '../family.ts';
import { CLEAR, beyond, swept } from '../features.ts';
import { contacts } from './contacts.ts';
import { type Laid, layOut, pointOf } from './lay.ts';
import type { TuskTenon } from './params.ts';

export function make(p: Place<TuskTenon>, sizes: TuskTenon): Made {
  const l = layOut(p.meeting, sizes);
  const { enter, into } = l.g;
  const sides = (side: typeof enter, broad: string, narrow: string) => ({
    'x-': `${broad} ${faceToward(side, [-1, 0, 0])}`,
    'x+': `${broad} ${faceToward(side, [1, 0, 0])}`,
    'y-': `${narrow} ${faceToward(side, [0, -1, 0])}`,
    'y+': `${narrow} ${faceToward(side, [0, 1, 0])}`,
  });
  const [x, y] = [l.x, l.y];
  const key = keyOf(l);
  return {
    features: {
      enter: [
        block('tenon', 'add', boxOf(x[0], x[1], y[0], y[1], -ROOT, l.tip), { ...sides(enter, 'cheek', 'edge'), 'z+': 'end' }),
        keyHole(l),
      ],
      into: [
        block(
          'mortise',
          'remove',
          boxOf(x[0], x[1], y[0], y[1], Math.min(l.g.gap, 0) - CLEAR, l.face + CLEAR),
          sides(into, 'cheek', 'end'),
        ),
      ],
    },
    extras: [key],
    contacts: contacts(p.meeting, l),
    frees: [
      { moves: [key.name], along: axisVec(l.along, l.sense) },
      { moves: ['enter'], along: [0, 0, -1] },
    ],
    holds: 'dry',
  };
}
/** Its inner wall stands inside the far face, so that the key bears on the mortised part alone; its outer wall slopes as the key does. */
function keyHole(l: Laid): Feature {
  const [low, high] = [l.k[0] - CLEAR, l.k[1] + CLEAR];
  const inner = l.face - l.s.pull;
  const outline: Vec2[] = [
    [low, inner],
    [high, inner],
    [high, l.slopeAt(high)],
    [low, l.slopeAt(low)],
  ];
  const side = (sign: 1 | -1): string => `side ${faceToward(l.g.enter, axisVec(l.across, sign))}`;
  return swept(
    'key hole',
    'remove',
    l.along === 'y' ? 'yz' : 'xz',
    outline,
    l.c[0],
    l.c[1],
    ['inner', null, 'bearing', null],
    [side(-1), side(1)],
  );
}
/** A wedge: its straight face lies on the mortised part, its sloped face in the hole. The record's long axis runs towards its thick end. */
function keyOf(l: Laid): ExtraPart {
  const thin = l.sense > 0 ? l.key[0] : l.key[1];
  const thick = l.sense > 0 ? l.key[1] : l.key[0];
  const long = l.key[1] - l.key[0];
  const at: Frame = { ...HOME, o: pointOf(l, thin, l.c[0], l.face), [l.along]: axisVec(l.along, l.sense) };
  const size = pointOf(l, long, l.s.key_thick, l.slopeAt(thick) - l.face);
  const normal: Vec3 = unit([...pointOf(l, -l.s.slope, 0, 1)]);
  const taper = beyond('taper', 'shape', { normal, off: normal[2] * (l.slopeAt(thin) - l.face) }, 'slope');
  return {
    name: 'key',
    words: 'key',
    record: partRecord({ min: [0, 0, 0], max: size }, l.along, l.g.enter.wood, [{ ...taper, why: 'shape' }]),
    at,
    enters: axisVec(l.along, l.sense > 0 ? -1 : 1),
  };
}
