import { type Vec3, axisVec, unit } from '../../geom/vec3.ts';
import { faceToward, flatAt, flatContact, glueAcross } from '../blocks.ts';
import type { Contact } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { shoulders } from '../tenon-contacts.ts';
import type { Span } from '../tenons.ts';
import { type Laid, pointOf } from './lay.ts';

/** The tenon in its mortise, dry; the key on the mortised part and in its hole; the shoulders that it draws up. */
export function contacts(m: Meeting, l: Laid): Contact[] {
  return [...sides(l), ...keyOnFace(l), keyInHole(l), ...keySides(l), keyClear(l), ...shoulders(m, l.g, { x: l.x, y: l.y })];
}
function sides(l: Laid): Contact[] {
  return (['x', 'y'] as const).flatMap((axis) =>
    ([-1, 1] as const).map((sign) => {
      const dir = axisVec(axis, sign);
      const [own, other] = axis === 'x' ? ['cheek', 'cheek'] : ['edge', 'end'];
      const span = axis === 'x' ? l.x : l.y;
      const word = `${own} ${faceToward(l.g.enter, dir)}`;
      return flatContact({
        name: `${word} of the tenon`,
        a: { role: 'enter', feature: 'tenon', face: word },
        b: { role: 'into', feature: 'mortise', face: `${other} ${faceToward(l.g.into, dir)}` },
        on: flatAt(`${axis}${sign < 0 ? '-' : '+'}`, sign < 0 ? span[0] : span[1], axis === 'x' ? l.y : l.x, [0, l.face]),
        fit: 'slip',
        hold: 'dry',
        glue: glueAcross(dir, l.g.enter.grain, l.g.into.grain),
      });
    }),
  );
}
/** The key's straight face on both sides of the mortise, as far as the mortised part reaches. */
function keyOnFace(l: Laid): Contact[] {
  const i = l.along === 'x' ? 0 : 1;
  const box = l.g.into.box;
  const ends: [1 | -1, Span][] = [
    [-1, [Math.max(l.key[0], box.min[i]), l.k[0]]],
    [1, [l.k[1], Math.min(l.key[1], box.max[i])]],
  ];
  return ends
    .filter(([, span]) => span[1] - span[0] > 0.01)
    .map(([sign, span]) =>
      flatContact({
        name: `key on the face, ${faceToward(l.g.enter, axisVec(l.along, sign))}`,
        a: { role: 'extra', index: 0, feature: 'stock', face: 'bottom' },
        b: { role: 'into', feature: 'stock', face: faceToward(l.g.into, [0, 0, 1]) },
        on: l.along === 'x' ? flatAt('z-', l.face, span, l.c) : flatAt('z-', l.face, l.c, span),
        fit: 'press',
        hold: 'pinned',
        glue: 'never',
      }),
    );
}
/** The slopes of key and hole, over the width of the tenon. */
function keyInHole(l: Laid): Contact {
  const [from, to] = l.k;
  const rise = (l.slopeAt(to) - l.slopeAt(from)) / (to - from);
  const o = pointOf(l, from, l.c[0], l.slopeAt(from)) as Vec3;
  const up = unit(pointOf(l, 1, 0, rise) as Vec3);
  const long = (to - from) * Math.hypot(1, rise);
  const wide = l.c[1] - l.c[0];
  return flatContact({
    name: 'key on its slope',
    a: { role: 'extra', index: 0, feature: 'taper', face: 'slope' },
    b: { role: 'enter', feature: 'key hole', face: 'bearing' },
    on: {
      frame: { o, x: axisVec(l.across), y: up, z: unit(pointOf(l, -rise, 0, 1) as Vec3) },
      patch: [
        [0, 0],
        [wide, 0],
        [wide, long],
        [0, long],
      ],
    },
    fit: 'press',
    hold: 'pinned',
    glue: 'never',
  });
}
function keySides(l: Laid): Contact[] {
  const names = l.across === 'x' ? (['left', 'right'] as const) : (['front', 'back'] as const);
  // As deep as the key is at the thin side of the tenon, all along.
  const deep: Span = [l.face, Math.min(l.slopeAt(l.k[0]), l.slopeAt(l.k[1]))];
  return ([-1, 1] as const).map((sign) => {
    const dir = axisVec(l.across, sign);
    const word = `side ${faceToward(l.g.enter, dir)}`;
    return flatContact({
      name: `${word} of the key`,
      a: { role: 'extra', index: 0, feature: 'stock', face: names[sign < 0 ? 0 : 1] },
      b: { role: 'enter', feature: 'key hole', face: word },
      on: flatAt(`${l.across}${sign < 0 ? '-' : '+'}`, sign < 0 ? l.c[0] : l.c[1], l.k, deep),
      fit: 'slip',
      hold: 'dry',
      glue: 'never',
    });
  });
}
/** Air behind the key, inside the mortise: as long as there is some, driving the key draws the shoulders up. */
function keyClear(l: Laid): Contact {
  return flatContact({
    name: 'key clear of the hole’s inner wall',
    a: { role: 'extra', index: 0, feature: 'stock', face: 'bottom' },
    b: { role: 'enter', feature: 'key hole', face: 'inner' },
    on: l.along === 'x' ? flatAt('z-', l.face, l.k, l.c) : flatAt('z-', l.face, l.c, l.k),
    meant: l.s.pull,
    fit: 'gap',
    hold: 'dry',
    glue: 'never',
  });
}
