import type { Vec3 } from '../../geom/vec3.ts';
import { faceToward, flatAt, flatContact } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { roundSide } from '../features.ts';
import type { Ground, Lay, Span, Tenon } from './lay.ts';
import type { Breadboard } from './params.ts';

/** Glue at the fast tenon alone; everything else slides across the top's width by what is allowed there. */
export function contacts(g: Ground, l: Lay, s: Breadboard): Contact[] {
  return [
    ...shoulders(g, l),
    ...tongueCheeks(g, l, s),
    tip(g, l, s),
    ...l.tenons.flatMap((t) => [cheek(g, l, s, t, -1), cheek(g, l, s, t, 1), bottom(g, l, s, t), ...pegs(g, l, s, t)]),
  ];
}
const along: Vec3 = [0, 1, 0];
function shoulders(g: Ground, l: Lay): Contact[] {
  const sides: readonly (readonly [1 | -1, Span])[] = [
    [-1, [g.x[0], l.x[0]]],
    [1, [l.x[1], g.x[1]]],
  ];
  return sides.map(([sign, x]) =>
    flatContact({
      name: `shoulder ${faceToward(g.top, [sign, 0, 0])}`,
      a: { role: 'top', feature: 'stock', face: g.top.end },
      b: { role: 'end', feature: 'stock', face: g.end.end },
      on: flatAt('z+', 0, x, g.y),
      apart: g.gap,
      fit: 'slip',
      hold: 'sliding',
      glue: 'never',
    }),
  );
}
function tongueCheeks(g: Ground, l: Lay, s: Breadboard): Contact[] {
  return ([-1, 1] as const).map((sign) => {
    const dir: Vec3 = [sign, 0, 0];
    return flatContact({
      name: `${faceToward(g.top, dir)} cheek of the tongue`,
      a: { role: 'top', feature: 'tongue', face: `cheek ${faceToward(g.top, dir)}` },
      b: { role: 'end', feature: 'groove', face: `wall ${faceToward(g.end, dir)}` },
      on: flatAt(sign < 0 ? 'x-' : 'x+', sign < 0 ? l.x[0] : l.x[1], g.y, [0, s.tongue]),
      fit: 'loose',
      hold: 'sliding',
      glue: 'never',
      travel: { along, low: -s.allow, high: s.allow },
    });
  });
}
function tip(g: Ground, l: Lay, s: Breadboard): Contact {
  return flatContact({
    name: 'tip of the tongue over the bottom of the groove',
    a: { role: 'top', feature: 'tongue', face: 'tip' },
    b: { role: 'end', feature: 'groove', face: 'bottom' },
    on: flatAt('z+', s.tongue, l.x, g.y),
    meant: s.spare,
    apart: s.spare + g.gap,
    fit: 'gap',
    hold: 'sliding',
    glue: 'never',
  });
}
function cheek(g: Ground, l: Lay, s: Breadboard, t: Tenon, sign: 1 | -1): Contact {
  const dir: Vec3 = [sign, 0, 0];
  return flatContact({
    name: `${faceToward(g.top, dir)} cheek of tenon ${t.n}`,
    a: { role: 'top', feature: `tenon ${t.n}`, face: `cheek ${faceToward(g.top, dir)}` },
    b: { role: 'end', feature: `mortise ${t.n}`, face: `cheek ${faceToward(g.end, dir)}` },
    on: flatAt(
      sign < 0 ? 'x-' : 'x+',
      sign < 0 ? l.x[0] : l.x[1],
      [t.y - s.tenon_width / 2, t.y + s.tenon_width / 2],
      [s.tongue, s.tenon_length],
    ),
    fit: t.fast ? 'slip' : 'loose',
    hold: t.fast ? 'glued' : 'sliding',
    glue: t.fast ? 'long' : 'never',
    grain: g.top.grain,
    ...(t.fast ? {} : { travel: { along, low: -t.allow, high: t.allow } }),
  });
}
function bottom(g: Ground, l: Lay, s: Breadboard, t: Tenon): Contact {
  return flatContact({
    name: `end of tenon ${t.n} over the bottom`,
    a: { role: 'top', feature: `tenon ${t.n}`, face: 'end' },
    b: { role: 'end', feature: `mortise ${t.n}`, face: 'bottom' },
    on: flatAt('z+', s.tenon_length, l.x, [t.y - s.tenon_width / 2, t.y + s.tenon_width / 2]),
    meant: s.spare,
    apart: s.spare + g.gap,
    fit: 'gap',
    hold: t.fast ? 'dry' : 'sliding',
    glue: 'never',
  });
}
function pegs(g: Ground, l: Lay, s: Breadboard, t: Tenon): Contact[] {
  const r = s.peg / 2;
  const dir: Vec3 = [l.peg.sign, 0, 0];
  const start: Vec3 = [l.peg.start, t.y, g.gap + s.peg_back];
  const index = l.tenons.indexOf(t);
  const inTenon: Vec3 = [l.peg.sign > 0 ? l.x[0] : l.x[1], t.y, g.gap + s.peg_back];
  const feature = t.allow < 1e-6 ? { name: `peg${t.n} hole`, face: 'hole' } : { name: `peg${t.n} slot`, face: 'side low' };
  return [
    {
      name: `peg${t.n} in its hole`,
      between: [
        roundSide('extra', 'turning', 'round', start, dir, r, l.peg.length, index),
        roundSide('end', `peg${t.n} hole`, 'hole', start, dir, r, l.peg.length),
      ],
      fit: 'tap',
      meant: 0,
      hold: 'pinned',
      glue: 'end',
    },
    {
      name: `peg${t.n} through tenon ${t.n}`,
      between: [
        roundSide('extra', 'turning', 'round', inTenon, dir, r, s.thickness, index),
        roundSide('top', feature.name, feature.face, [inTenon[0], t.y, s.peg_back], dir, r, s.thickness),
      ],
      fit: t.fast ? 'tap' : 'loose',
      meant: 0,
      hold: t.allow < 1e-6 ? 'pinned' : 'sliding',
      glue: 'never',
      ...(t.allow < 1e-6 ? {} : { travel: { along, low: -t.allow, high: t.allow } }),
    },
  ];
}
