import { axisVec } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import { type Looks, block, boxOf, faceToward, looking } from '../blocks.ts';
import type { Free, Made, Place } from '../family.ts';
import { CLEAR } from '../features.ts';
import { type Span, reachAlong, spanOf } from '../shared-box.ts';
import { contacts } from './contacts.ts';
import { type Ground, type Laid, LEAST, layOut, notchName, notchesOf, wallName } from './lay.ts';
import type { Bridle } from './params.ts';

export function make(p: Place<Bridle>, sizes: Bridle): Made {
  const l = layOut(p, sizes);
  return {
    features: { fork: [slot(l)], tongue: notches(l) },
    extras: [],
    contacts: contacts(l),
    frees: frees(l.g),
    holds: sizes.glue === 'yes' ? 'glue' : 'dry',
  };
}
/** A corner also slides off lengthways, over the end of the tongue. */
function frees(g: Ground): Free[] {
  const lift: Free = { moves: ['fork'], along: [0, 0, -1] };
  return g.on === 0 ? [lift] : [lift, { moves: ['fork'], along: axisVec(g.run, g.on > 0 ? -1 : 1) }];
}
/** A block of the meeting by its spans on the two axes across the fork, and along it. */
const blockOn = (g: Ground, name: string, c: Span, run: Span, z: Span, faces: Partial<Record<Looks, string>>): Feature =>
  block(name, 'remove', g.c === 'x' ? boxOf(c[0], c[1], run[0], run[1], z[0], z[1]) : boxOf(run[0], run[1], c[0], c[1], z[0], z[1]), faces);
const wider = ([low, high]: Span): Span => [low - CLEAR, high + CLEAR];

/** Through the whole width of the fork and out at its end. */
function slot({ g, t }: Laid): Feature {
  const word = (sign: 1 | -1): string => `cheek ${faceToward(g.fork.side, axisVec(g.c, sign))}`;
  const z: Span = [spanOf(g.s.box, 'z')[0], g.fork.side.box.max[2] + CLEAR];
  return blockOn(g, 'slot', t, wider(reachAlong(g.fork, g.s.box, g.run)), z, {
    [looking(g.c, -1)]: word(-1),
    [looking(g.c, 1)]: word(1),
    'z-': 'root',
  });
}
/** On both sides of the tongue, as wide as the fork, out at both edges and, at a corner, at the end. */
function notches({ g, t }: Laid): Feature[] {
  const own = reachAlong(g.tongue, g.s.box, g.c);
  const shared = spanOf(g.s.box, g.run);
  const out = reachAlong(g.tongue, g.s.box, g.run);
  // Where the part ends, the notch runs out past its end.
  const run: Span = [g.tongue.on[g.run][0] ? shared[0] : out[0] - CLEAR, g.tongue.on[g.run][1] ? shared[1] : out[1] + CLEAR];
  const z = wider(reachAlong(g.tongue, g.s.box, 'z'));
  return ([-1, 1] as const).flatMap((sign) => {
    if (notchesOf(g, t)[sign < 0 ? 0 : 1] < LEAST) return [];
    const c: Span = sign < 0 ? [own[0] - CLEAR, t[0]] : [t[1], own[1] + CLEAR];

    return [
      blockOn(g, notchName(g, sign), c, run, z, {
        [looking(g.c, sign < 0 ? 1 : -1)]: 'cheek',
        [looking(g.run, -1)]: wallName(g, -1),
        [looking(g.run, 1)]: wallName(g, 1),
      }),
    ];
  });
}
