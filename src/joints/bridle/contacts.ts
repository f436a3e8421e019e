import { axisVec } from '../../geom/vec3.ts';
import { type FlatPatch, faceToward, flatAt, flatContact, glueAcross, looking } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { type Span, spanOf } from '../shared-box.ts';
import { type Ground, type Laid, LEAST, notchName, notchesOf, wallName } from './lay.ts';

/** Both cheeks take the glue; the slot's root on the other part's edge and the fork's edges in the notches only close. */
export const contacts = (l: Laid): Contact[] => [...cheeks(l), root(l), ...shoulders(l)];

const hasNotch = (l: Laid, sign: 1 | -1): boolean => notchesOf(l.g, l.t)[sign < 0 ? 0 : 1] >= LEAST;
/** A patch across the thickness or along the tongue's part, on its other axis and along z. */
const patchOn = (axis: 'x' | 'y', sign: 1 | -1, at: number, other: Span, z: Span): FlatPatch => flatAt(looking(axis, sign), at, other, z);

function cheeks(l: Laid): Contact[] {
  const { g, t, s } = l;
  return ([-1, 1] as const).map((sign) => {
    const dir = axisVec(g.c, sign);
    const word = `cheek ${faceToward(g.fork.side, dir)}`;
    const own = hasNotch(l, sign)
      ? { feature: notchName(g, sign), face: 'cheek' }
      : { feature: 'stock', face: faceToward(g.tongue.side, dir) };
    return flatContact({
      name: `${word} of the fork`,
      a: { role: 'tongue', ...own },
      b: { role: 'fork', feature: 'slot', face: word },
      on: patchOn(g.c, sign, sign < 0 ? t[0] : t[1], spanOf(g.s.box, g.run), spanOf(g.s.box, 'z')),
      fit: 'slip',
      hold: s.glue === 'yes' ? 'glued' : 'dry',
      glue: glueAcross(dir, g.fork.side.grain, g.tongue.side.grain),
      grain: g.tongue.side.grain,
    });
  });
}
function root({ g, t }: Laid): Contact {
  const run = spanOf(g.s.box, g.run);
  return flatContact({
    name: 'root of the slot',
    a: { role: 'fork', feature: 'slot', face: 'root' },
    b: { role: 'tongue', feature: 'stock', face: faceToward(g.tongue.side, [0, 0, -1]) },
    on: g.c === 'x' ? flatAt('z+', g.s.box.min[2], t, run) : flatAt('z+', g.s.box.min[2], run, t),
    fit: 'slip',
    hold: 'dry',
    glue: 'end',
  });
}
/** The fork's edges against the ends of the notches, where the other part goes on. */
function shoulders(l: Laid): Contact[] {
  const { g } = l;
  return ([-1, 1] as const).flatMap((way) =>
    g.tongue.on[g.run][way < 0 ? 0 : 1]
      ? ([-1, 1] as const).flatMap((sign) => (hasNotch(l, sign) ? [shoulder(g, l.t, way, sign)] : []))
      : [],
  );
}
function shoulder(g: Ground, t: Span, way: 1 | -1, sign: 1 | -1): Contact {
  const dir = axisVec(g.run, way);
  const span = spanOf(g.s.box, g.run);
  const shared = spanOf(g.s.box, g.c);
  const deep: Span = sign < 0 ? [shared[0], t[0]] : [t[1], shared[1]];
  return flatContact({
    name: `${wallName(g, way)} of the ${notchName(g, sign)}`,
    a: { role: 'fork', feature: 'stock', face: faceToward(g.fork.side, dir) },
    b: { role: 'tongue', feature: notchName(g, sign), face: wallName(g, way) },
    on: patchOn(g.run, way, way < 0 ? span[0] : span[1], deep, spanOf(g.s.box, 'z')),
    fit: 'slip',
    hold: 'dry',
    glue: 'end',
  });
}
