import { type Vec3, dot } from '../../geom/vec3.ts';
import { faceToward, flatAt, flatContact, glueAcross } from '../blocks.ts';
import type { Contact, Hold, Place } from '../family.ts';
import { frameAlong, roundSide, wedgeContacts } from '../features.ts';
import { type Laid, type PegAt, nameOf } from './laid.ts';
import { type Span, type Tenon, whole } from './lay.ts';
import type { MortiseTenon } from './params.ts';

/** Cheeks, edges, bottom and shoulders of every tenon; then pegs and wedges. */
export function contacts(p: Place<MortiseTenon>, l: Laid): Contact[] {
  const out = l.tenons.flatMap((t, i) => [...cheeks(l, t, i), ...edges(l, t, i), ...(l.s.through === 'yes' ? [] : [bottom(l, t, i)])]);
  return [
    ...out,
    ...shoulders(p, l),
    ...l.pegs.flatMap((peg, i) => pegContacts(l, peg, i)),
    ...l.wedges.flatMap((w, i) =>
      wedgeContacts(w.spec, `wedge${i + 1}`, `kerf ${i + 1}`, l.pegs.length + i, 'enter', l.s.glue === 'yes' ? 'glued' : 'pinned'),
    ),
  ];
}
const held = (l: Laid): Hold => (l.s.glue === 'yes' ? 'glued' : l.pegs.length > 0 || l.wedges.length > 0 ? 'pinned' : 'dry');
const reach = (l: Laid): Span => [
  0,
  l.s.through === 'yes' ? l.floor : Math.min(l.tip, ...l.meets.map((c) => (l.mitres.length ? c.short : l.tip))),
];

/** The glued length is that over all tenons, across the entering part's grain: they hold each other apart. */
function cheeks(l: Laid, t: Tenon, i: number): Contact[] {
  const all = whole(l.g, l.s);
  return ([-1, 1] as const).map((sign) => {
    const dir: Vec3 = [sign, 0, 0];
    const own = `cheek ${faceToward(l.g.enter, dir)}`;
    const c = flatContact({
      name: `${own} of the ${nameOf('tenon', l, i)}`,
      a: { role: 'enter', feature: nameOf('tenon', l, i), face: own },
      b: { role: 'into', feature: nameOf('mortise', l, i), face: `cheek ${faceToward(l.g.into, dir)}` },
      on: flatAt(sign < 0 ? 'x-' : 'x+', sign < 0 ? t.x[0] : t.x[1], t.y, reach(l)),
      fit: l.wedges.length && l.wedges[0]?.spec.spread === 'x' ? 'press' : 'slip',
      hold: held(l),
      glue: glueAcross(dir, l.g.enter.grain, l.g.into.grain),
      grain: l.g.enter.grain,
    });
    return c.gluedLength === undefined ? c : { ...c, gluedLength: all[1] - all[0] };
  });
}
function edges(l: Laid, t: Tenon, i: number): Contact[] {
  return ([-1, 1] as const).flatMap((sign) => {
    if (l.haunch && Math.abs((sign < 0 ? t.y[0] : t.y[1]) - l.haunch.span[sign < 0 ? 1 : 0]) < 1e-6) return [];
    const dir: Vec3 = [0, sign, 0];
    const own = `edge ${faceToward(l.g.enter, dir)}`;
    const wedged = l.wedges.length > 0 && l.wedges[0]?.spec.spread === 'y';
    return [
      flatContact({
        name: `${own} of the ${nameOf('tenon', l, i)}`,
        a: { role: 'enter', feature: nameOf('tenon', l, i), face: own },
        b: { role: 'into', feature: nameOf('mortise', l, i), face: `end ${faceToward(l.g.into, dir)}` },
        on: flatAt(sign < 0 ? 'y-' : 'y+', sign < 0 ? t.y[0] : t.y[1], t.x, reach(l)),
        fit: wedged ? 'press' : 'loose',
        hold: wedged ? 'pinned' : 'dry',
        glue: glueAcross(dir, l.g.enter.grain, l.g.into.grain),
      }),
    ];
  });
}
function bottom(l: Laid, t: Tenon, i: number): Contact {
  const c = flatContact({
    name: `end of the ${nameOf('tenon', l, i)} over the bottom`,
    a: { role: 'enter', feature: nameOf('tenon', l, i), face: 'end' },
    b: { role: 'into', feature: nameOf('mortise', l, i), face: 'bottom' },
    on: flatAt('z+', l.tip, t.x, t.y),
    meant: l.s.spare,
    apart: l.floor - l.tip,
    fit: 'gap',
    hold: 'dry',
    glue: 'never',
  });
  return c;
}
/** One contact for each strip of shoulder round the tenons where the faces are square, one for the whole where they are slanted. */
function shoulders(p: Place<MortiseTenon>, l: Laid): Contact[] {
  const m = p.meeting;
  const span = (i: 0 | 1): Span => [Math.min(...m.patch.map((q) => q[i])), Math.max(...m.patch.map((q) => q[i]))];
  if (m.patch.length < 3) return [];
  const trim = l.g.enter.shapes.find((f) => f.why === 'trim');
  const a = {
    role: 'enter',
    ...(trim ? { feature: trim.name, face: Object.keys(trim.faces)[0] ?? 'plane' } : { feature: 'stock', face: l.g.enter.end }),
  };
  const b = { role: 'into', feature: 'stock', face: l.g.into.end };
  const base = { fit: 'slip', hold: 'dry', glue: 'end' } as const;
  if (!l.g.square) {
    if (Math.abs(dot(m.shoulder.normal, m.face.normal) + 1) > 1e-9) return [];
    const at = frameAlong([0, 0, 0], m.shoulder.normal);
    const far = { ...at, o: [0, 0, m.gap] as Vec3 };
    const patch = m.patch.map((q) => [q[0] * at.x[0] + q[1] * at.x[1], q[0] * at.y[0] + q[1] * at.y[1]] as const);
    return [
      {
        name: 'shoulder',
        between: [
          { ...a, surface: { plane: m.shoulder, patch, patchFrame: at } },
          { ...b, surface: { plane: m.face, patch, patchFrame: far } },
        ],
        meant: 0,
        ...base,
      },
    ];
  }
  const [x, y] = [span(0), span(1)];
  const t = l.tenons[0]?.x ?? x;
  const all = whole(l.g, l.s);
  const strips: [string, Span, Span][] = [
    [faceToward(l.g.enter, [-1, 0, 0]), [x[0], Math.min(t[0], x[1])], y],
    [faceToward(l.g.enter, [1, 0, 0]), [Math.max(t[1], x[0]), x[1]], y],
    [faceToward(l.g.enter, [0, -1, 0]), t, [y[0], Math.min(all[0], y[1])]],
    [faceToward(l.g.enter, [0, 1, 0]), t, [Math.max(all[1], y[0]), y[1]]],
  ];
  const side = l.haunch ? faceToward(l.g.enter, [0, l.haunch.side, 0]) : '';
  return strips
    .filter(([word, u, v]) => u[1] - u[0] > 0.01 && v[1] - v[0] > 0.01 && word !== side)
    .map(([word, u, v]) => flatContact({ name: `shoulder ${word}`, a, b, on: flatAt('z+', 0, u, v), apart: l.g.gap, ...base }));
}
/** The peg in the receiver's hole, and in the tenon's: with a drawbore that one lies off it on purpose, by the offset, tight. */
function pegContacts(l: Laid, peg: PegAt, i: number): Contact[] {
  const [r, along]: [number, Vec3] = [l.s.peg_diameter / 2, [peg.sign, 0, 0]];
  const name = `peg${i + 1}`;
  const tenonFrom = peg.sign > 0 ? (l.tenons[0]?.x[0] ?? 0) : (l.tenons[0]?.x[1] ?? 0);
  const shank = roundSide('extra', 'turning', 'round', [peg.start, peg.y, peg.z], along, r, peg.length, i);
  return [
    {
      name: `${name} in its hole`,
      between: [shank, roundSide('into', `${name} hole`, 'hole', [peg.start, peg.y, peg.z], along, r, peg.length)],
      fit: 'tap',
      meant: 0,
      hold: 'pinned',
      glue: 'end',
    },
    {
      name: `${name} through the tenon`,
      between: [
        roundSide('extra', 'turning', 'round', [tenonFrom, peg.y, peg.z], along, r, l.s.thickness, i),
        roundSide('enter', `${name} hole`, 'hole', [tenonFrom, peg.y, peg.z - l.g.gap - l.s.drawbore], along, r, l.s.thickness),
      ],
      fit: l.s.drawbore > 0 ? 'press' : 'tap',
      meant: -l.s.drawbore,
      hold: 'pinned',
      glue: 'long',
    },
  ];
}
