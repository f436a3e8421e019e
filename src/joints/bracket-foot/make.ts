import type { Frame } from '../../geom/frame.ts';
import { rectangle } from '../../geom/loop.ts';
import type { Vec3 } from '../../geom/vec3.ts';
import type { FaceRef, Feature } from '../../model/record.ts';
import type { Made, Place } from '../family.ts';
import { CLEAR, beyond, cylinder, frameAlong } from '../features.ts';
import { contacts } from './contacts.ts';
import { extrasOf } from './extras.ts';
import { BRACKETS, type Ground, type Role, behind, bite, ground, mitre, screwAlong, splineAt } from './lay.ts';
import type { BracketFoot } from './params.ts';

export function make(p: Place<BracketFoot>, s: BracketFoot): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a bracket foot needs two brackets that share a corner under the base: propose refuses the others');
  const extras = extrasOf(g, s);
  const down: Vec3 = [0, -g.up, 0];
  return {
    features: {
      front: cuts(g, s, 'front'),
      side: cuts(g, s, 'side'),
      base: BRACKETS.map((role) => pilot(g, s, role)),
    },
    extras,
    contacts: contacts(g, s, extras),
    frees: [
      ...extras.map((e) => ({ moves: [e.name], along: down })),
      { moves: ['front'], along: [0, 0, -1] },
      { moves: ['front'], along: down },
      { moves: ['side'], along: [g.inward, 0, 0] },
      { moves: ['side'], along: down },
    ],
    holds: 'glue',
  };
}
function cuts(g: Ground, s: BracketFoot, role: Role): Feature[] {
  const m = mitre(g);
  const plane = role === 'front' ? { normal: m.normal, off: m.off } : { normal: [-m.normal[0], 0, -m.normal[2]] as const, off: -m.off };
  const cut = beyond('mitre', 'remove', plane, 'mitre');
  return s.spline === 'none' ? [cut] : [cut, splineSlot(g, s, role)];
}
/** Half of it falls in each bracket; it runs out above and below. */
function splineSlot(g: Ground, s: BracketFoot, role: Role): Feature {
  const m = mitre(g);
  const at: Frame = { o: splineAt(g), x: m.normal, y: m.along, z: [0, 1, 0] };
  const [w, t] = [s.spline_wide / 2, s.spline_thick / 2];
  const ends: Record<string, FaceRef> = { end: { of: 'side', corner: role === 'front' ? 3 : 1 } };
  return {
    name: 'spline slot',
    op: 'remove',
    at,
    why: 'joint',
    solid: {
      kind: 'prism',
      profile: [rectangle(-w, -t, w, t)],
      from: Math.min(g.top, g.foot) - CLEAR,
      to: Math.max(g.top, g.foot) + CLEAR,
    },
    faces: { 'wall outer': { of: 'side', corner: 0 }, 'wall inner': { of: 'side', corner: 2 }, ...ends },
  };
}
/** In the base, for the screw of one fixing block. */
function pilot(g: Ground, s: BracketFoot, role: Role): Feature {
  const p = behind(g, role, screwAlong(s), s.fixing / 2, 0);
  const at = frameAlong([p[0], g.under, p[2]], [0, g.up, 0]);
  return cylinder(`screw hole ${role}`, 'remove', at, s.screw, -CLEAR, bite(g, s), { round: 'hole', to: 'end' });
}
