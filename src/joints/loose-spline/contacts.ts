import type { Vec3 } from '../../geom/vec3.ts';
import { type Looks, faceToward, flatAt, flatContact, glueAcross } from '../blocks.ts';
import type { Contact } from '../family.ts';
import type { MeetSide } from '../meeting.ts';
import type { Ground, Lay, Span } from './lay.ts';
import type { LooseSpline } from './params.ts';

/** The seam on both sides of the spline, its two faces in both grooves, and its edges over their bottoms. */
export function contacts(g: Ground, l: Lay, s: LooseSpline): Contact[] {
  return [
    ...seams(g, l, s),
    ...(['enter', 'into'] as const).flatMap((role) => [cheek(g, l, s, role, -1), cheek(g, l, s, role, 1), edge(g, l, s, role)]),
  ];
}
const partWords = { enter: 'the first part', into: 'the next part' } as const;
function seams(g: Ground, l: Lay, s: LooseSpline): Contact[] {
  const strips: readonly (readonly [Span, 1 | -1])[] = [
    [[g.x[0], l.x[0]], -1],
    [[l.x[1], g.x[1]], 1],
  ];
  return strips.map(([x, sign]) =>
    flatContact({
      name: `seam at the ${faceToward(g.enter, [sign, 0, 0])}`,
      a: { role: 'enter', feature: 'stock', face: g.enter.end },
      b: { role: 'into', feature: 'stock', face: g.into.end },
      on: flatAt('z+', 0, x, g.y),
      apart: g.gap,
      fit: 'slip',
      hold: s.hold,
      glue: glueAcross([0, 0, 1], g.enter.grain, g.into.grain),
      grain: g.enter.grain,
    }),
  );
}
const grainOf = (s: LooseSpline): Vec3 => (s.made === 'across' ? [0, 0, 1] : [0, 1, 0]);
function cheek(g: Ground, l: Lay, s: LooseSpline, role: 'enter' | 'into', sign: 1 | -1): Contact {
  const dir: Vec3 = [sign, 0, 0];
  const part: MeetSide = g[role];
  const z: Span = role === 'enter' ? [-l.half, 0] : [g.gap, l.half];
  const looks: Looks = sign < 0 ? 'x-' : 'x+';
  return flatContact({
    name: `${faceToward(g.enter, dir)} face of the spline in ${partWords[role]}`,
    a: { role: 'extra', index: 0, feature: 'stock', face: sign < 0 ? 'left' : 'right' },
    b: { role, feature: 'groove', face: `wall ${faceToward(part, dir)}` },
    on: flatAt(looks, sign < 0 ? l.x[0] : l.x[1], l.y, z),
    fit: 'slip',
    hold: s.hold,
    glue: glueAcross(dir, grainOf(s), part.grain),
    grain: grainOf(s),
  });
}
function edge(g: Ground, l: Lay, s: LooseSpline, role: 'enter' | 'into'): Contact {
  const low = role === 'enter';
  return flatContact({
    name: `edge of the spline over the groove in ${partWords[role]}`,
    a: { role: 'extra', index: 0, feature: 'stock', face: low ? 'bottom' : 'top' },
    b: { role, feature: 'groove', face: 'bottom' },
    on: flatAt(low ? 'z-' : 'z+', low ? -l.half : l.half, l.x, l.y),
    meant: s.spare,
    apart: s.spare + (low ? 0 : g.gap),
    fit: s.spare > 0 ? 'gap' : 'slip',
    hold: 'dry',
    glue: 'never',
  });
}
