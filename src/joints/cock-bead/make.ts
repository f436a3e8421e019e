import { axisVec, scale, add, type Vec2, type Vec3 } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import { block, faceToward, looking } from '../blocks.ts';
import type { Made, Place } from '../family.ts';
import { CLEAR, beyond } from '../features.ts';
import { sweptProfile } from '../profile.ts';
import { contacts } from './contacts.ts';
import { type Ground, type Sign, boxFrom, end, ground, mitres, ordered } from './lay.ts';
import type { CockBead } from './params.ts';

export function make(p: Place<CockBead>, s: CockBead): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a cock bead needs a strip that lies in the edge of the front: propose refuses the others');
  return {
    features: { bead: [...rounds(g, s), ...mitreCuts(g, s)], front: [rabbet(g)] },
    extras: [],
    contacts: contacts(g, s),
    frees: [
      { moves: ['bead'], along: axisVec(g.edge, g.out) },
      { moves: ['bead'], along: axisVec(g.deep, g.face) },
    ],
    holds: s.hold === 'glued' ? 'glue' : 'dry',
  };
}
/** What both share, and on past the front's face, its edge and each end that the bead reaches. */
function rabbet(g: Ground): Feature {
  const past = (axis: Ground['along'], sign: Sign): number => {
    const [mine, other] = [end(g.bead.box, axis, sign), end(g.front.box, axis, sign)];
    return (mine - other) * sign >= -1e-3 ? other + sign * CLEAR : mine;
  };
  const span = (axis: Ground['along']): readonly [number, number] => ordered(past(axis, -1), past(axis, 1));
  const box = boxFrom({ x: span('x'), y: span('y'), z: span('z') });
  return block('rabbet', 'remove', box, {
    [looking(g.edge, -g.out as Sign)]: 'bed',
    ...(g.behind > 0 ? { [looking(g.deep, -g.face as Sign)]: 'back' } : {}),
  });
}
/** Both arrises of the proud edge, each named by the bead's own face beside it. */
function rounds(g: Ground, s: CockBead): Feature[] {
  const face = end(g.bead.box, g.deep, g.face);
  const r = s.radius;
  const c = r * Math.SQRT1_2;
  return ([1, -1] as const).map((sign) => {
    const side = end(g.bead.box, g.edge, sign);
    const at = (across: number, back: number): Vec2 => [side - sign * across, face - g.face * back];
    const profile = [
      { at: at(0, r), via: at(r - c, r - c) },
      { at: at(r, 0) },
      { at: at(r, -CLEAR) },
      { at: at(-CLEAR, -CLEAR) },
      { at: at(-CLEAR, r) },
    ];
    const run = ordered(end(g.bead.box, g.along, -1) - CLEAR, end(g.bead.box, g.along, 1) + CLEAR);
    const name = `rounded edge ${faceToward(g.bead, axisVec(g.edge, sign))}`;
    return sweptProfile(name, 'remove', { u: g.edge, v: g.deep }, profile, run, ['round', null, null, null, null]);
  });
}
/** At 45 degrees, the long side at the edge of the front. */
function mitreCuts(g: Ground, s: CockBead): Feature[] {
  const ends = mitres(g, s) ?? [false, false];
  return ([-1, 1] as const).flatMap((sign, i) => {
    if (!ends[i]) return [];
    const normal: Vec3 = scale(add(axisVec(g.along, sign), axisVec(g.edge, -g.out as Sign)), Math.SQRT1_2);
    const off = Math.SQRT1_2 * (sign * end(g.bead.box, g.along, sign) - g.out * end(g.bead.box, g.edge, g.out));
    return [beyond(`mitre ${faceToward(g.bead, axisVec(g.along, sign))}`, 'remove', { normal, off }, 'mitre')];
  });
}
