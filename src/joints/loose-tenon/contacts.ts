import { axisVec } from '../../geom/vec3.ts';
import { faceToward, flatAt, flatContact, glueAcross } from '../blocks.ts';
import type { Contact } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { shoulders } from '../tenon-contacts.ts';
import type { Span, Tenon } from '../tenons.ts';
import { type Laid, nameOf, reachIn } from './lay.ts';

const ROLES = ['enter', 'into'] as const;
type Role = (typeof ROLES)[number];
const WHERE: Readonly<Record<Role, string>> = { enter: 'in the end', into: 'in the other part' };

/** Each tenon in its two mortises: cheeks that are glued, edges that are easy, air at both bottoms; and the shoulder between the parts. */
export const contacts = (m: Meeting, l: Laid): Contact[] => [
  ...l.tenons.flatMap((t, i) => ROLES.flatMap((role) => [...cheeks(l, t, i, role), ...edges(l, t, i, role), bottom(l, t, i, role)])),
  ...shoulders(m, l.g, { x: l.x, y: l.y }),
];
const title = (l: Laid, i: number, role: Role): string => `of the ${nameOf('tenon', l, i)} ${WHERE[role]}`;
function cheeks(l: Laid, t: Tenon, i: number, role: Role): Contact[] {
  // Where its edges are round the flat of a cheek is narrower.
  const r = l.s.ends === 'round' ? l.s.thickness / 2 : 0;
  const flat: Span = [t.y[0] + r, t.y[1] - r];
  return ([-1, 1] as const).map((sign) => {
    const dir = axisVec('x', sign);
    const side = l.g[role];
    return flatContact({
      name: `cheek ${faceToward(l.g.enter, dir)} ${title(l, i, role)}`,
      a: { role: 'extra', index: i, feature: 'stock', face: sign < 0 ? 'left' : 'right' },
      b: { role, feature: nameOf('mortise', l, i), face: `cheek ${faceToward(side, dir)}` },
      on: flatAt(sign < 0 ? 'x-' : 'x+', sign < 0 ? t.x[0] : t.x[1], flat, reachIn(l, role)),
      fit: 'slip',
      hold: l.s.glue === 'yes' ? 'glued' : 'dry',
      glue: glueAcross(dir, [0, 0, 1], side.grain),
      grain: [0, 0, 1],
    });
  });
}
function edges(l: Laid, t: Tenon, i: number, role: Role): Contact[] {
  if (l.s.ends === 'round') return [];
  return ([-1, 1] as const).map((sign) => {
    const dir = axisVec('y', sign);
    const side = l.g[role];
    return flatContact({
      name: `edge ${faceToward(l.g.enter, dir)} ${title(l, i, role)}`,
      a: { role: 'extra', index: i, feature: 'stock', face: sign < 0 ? 'front' : 'back' },
      b: { role, feature: nameOf('mortise', l, i), face: `end ${faceToward(side, dir)}` },
      on: flatAt(sign < 0 ? 'y-' : 'y+', sign < 0 ? t.y[0] : t.y[1], t.x, reachIn(l, role)),
      fit: 'loose',
      hold: 'dry',
      glue: glueAcross(dir, [0, 0, 1], side.grain),
    });
  });
}
function bottom(l: Laid, t: Tenon, i: number, role: Role): Contact {
  const own = role === 'enter';
  return flatContact({
    name: `end ${title(l, i, role)}`,
    a: { role: 'extra', index: i, feature: 'stock', face: own ? 'bottom' : 'top' },
    b: { role, feature: nameOf('mortise', l, i), face: 'bottom' },
    on: flatAt(own ? 'z-' : 'z+', own ? l.tenon[0] : l.tenon[1], t.x, t.y),
    meant: l.s.spare,
    apart: own ? l.s.spare : l.floor - l.tenon[1],
    fit: 'gap',
    hold: 'dry',
    glue: 'never',
  });
}
