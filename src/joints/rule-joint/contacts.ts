import type { Vec3 } from '../../geom/vec3.ts';
import { type Looks, flatAt, flatContact } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { roundSide } from '../features.ts';
import { type Laid, type Span, SLACK, hingeSpan, pinAt, xAt } from './lay.ts';

/** The leaf's edge at the fillet, the cove about the round, and for each hinge its two flaps under the boards and its knuckle in its channel. */
export function contacts(l: Laid, at: readonly number[]): Contact[] {
  return [edge(l), swings(l), ...at.flatMap((a, i) => [...flaps(l, a, i), knuckle(l, a, i)])];
}
const ALONG: Vec3 = [0, 1, 0];
const edge = (l: Laid): Contact =>
  flatContact({
    name: 'edge of the leaf at the fillet',
    a: { role: 'leaf', feature: 'stock', face: l.g.leaf.end },
    b: { role: 'top', feature: 'stock', face: l.g.top.end },
    on: flatAt('z+', 0, ordered(l.surface, xAt(l, l.s.fillet - l.s.clearance)), l.g.run),
    apart: l.g.gap,
    fit: 'slip',
    hold: 'dry',
    glue: 'never',
  });
const ordered = (a: number, b: number): Span => [Math.min(a, b), Math.max(a, b)];
/** Judged by its two radii about one centre: the leaf swings with the clearance between them. */
function swings(l: Laid): Contact {
  const long = l.g.run[1] - l.g.run[0];
  return {
    name: 'cove swings about the round',
    between: [
      roundSide('top', 'round', 'round', pinAt(l, l.g.run[0]), ALONG, l.s.radius, long),
      roundSide('leaf', 'cove', 'cove', pinAt(l, l.g.run[0], 0), ALONG, l.cove, long),
    ],
    fit: 'loose',
    meant: l.s.clearance,
    hold: 'sliding',
    glue: 'never',
  };
}
function flaps(l: Laid, a: number, i: number): Contact[] {
  const flap = (role: 'top' | 'leaf', out: Span): Contact =>
    flatContact({
      name: `flap of hinge ${i + 1} under the ${role}`,
      a: { role: 'extra', index: i, feature: 'stock', face: 'top' },
      b: { role, feature: `hinge recess ${i + 1}`, face: 'ceiling' },
      on: flatAt((l.up > 0 ? 'x+' : 'x-') as Looks, xAt(l, l.flap[0]), hingeSpan(l, a), [l.g.gap - out[1], l.g.gap - out[0]]),
      fit: 'slip',
      hold: 'pinned',
      glue: 'never',
    });
  return [flap('top', [-l.s.flap_top, -l.s.knuckle / 2 - SLACK]), flap('leaf', [l.cove, l.s.flap_leaf])];
}
function knuckle(l: Laid, a: number, i: number): Contact {
  const at = pinAt(l, hingeSpan(l, a)[0]);
  const r = l.s.knuckle / 2;
  return {
    name: `knuckle of hinge ${i + 1} in its channel`,
    between: [
      roundSide('extra', 'knuckle', 'round', at, ALONG, r, l.s.hinge_long, i),
      roundSide('top', `knuckle channel ${i + 1}`, 'round', at, ALONG, r + SLACK, l.s.hinge_long),
    ],
    fit: 'loose',
    meant: SLACK,
    hold: 'sliding',
    glue: 'never',
  };
}
