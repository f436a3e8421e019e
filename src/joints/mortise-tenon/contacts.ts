import type { Vec3 } from '../../geom/vec3.ts';
import { faceToward, flatAt, flatContact, glueAcross } from '../blocks.ts';
import type { Contact, Hold, Place } from '../family.ts';
import { type WedgeSpec, roundSide, wedgeContacts } from '../features.ts';
import { shoulders } from '../tenon-contacts.ts';
import type { Span, Tenon } from '../tenons.ts';
import { type Laid, type PegAt, nameOf, spreadOf } from './laid.ts';
import type { MortiseTenon } from './params.ts';

/** Cheeks, edges, bottom and shoulders of every tenon; then pegs and wedges. */
export function contacts(p: Place<MortiseTenon>, l: Laid): Contact[] {
  const out = l.tenons.flatMap((t, i) => [...cheeks(l, t, i), ...edges(l, t, i), ...(l.s.through === 'yes' ? [] : [bottom(l, t, i)])]);
  return [
    ...out,
    ...shoulders(p.meeting, l.g, {
      x: l.x,
      y: l.y,
      twins: l.twins,
      ...(l.haunch ? { without: faceToward(l.g.enter, [0, l.haunch.side, 0]) } : {}),
    }),
    ...l.pegs.flatMap((peg, i) => pegContacts(l, peg, i)),
    ...l.wedges.flatMap((w, i) => [
      ...wedgeContacts(
        inTenon(l, w.spec),
        `wedge${i + 1}`,
        `kerf ${i + 1}`,
        l.pegs.length + i,
        'enter',
        l.s.glue === 'yes' ? 'glued' : 'pinned',
      ),
      ...(l.s.fox === 'yes' ? [driven(l, w, i)] : []),
    ]),
  ];
}
/** The length of a wedge that stands in its kerf: a fox wedge goes on to the bottom of the mortise. */
function inTenon(l: Laid, w: WedgeSpec): WedgeSpec {
  const rise = (w.thick - w.kerf) / (w.tip - w.root);
  return w.tip <= l.tip ? w : { ...w, tip: l.tip, thick: w.kerf + rise * (l.tip - w.root) };
}
/** The thick end of a fox wedge on the bottom of the mortise. */
function driven(l: Laid, { spec, tenon }: Laid['wedges'][number], i: number): Contact {
  const over: Span = [spec.at - spec.thick / 2, spec.at + spec.thick / 2];
  const [x, y] = spec.spread === 'x' ? [over, spec.span] : [spec.span, over];
  return flatContact({
    name: `wedge${i + 1} on the bottom`,
    a: { role: 'extra', index: l.pegs.length + i, feature: 'stock', face: 'top' },
    b: { role: 'into', feature: nameOf('mortise', l, tenon), face: 'bottom' },
    on: flatAt('z+', l.floor, x, y),
    fit: 'press',
    hold: 'pinned',
    glue: 'end',
  });
}
const held = (l: Laid): Hold => (l.s.glue === 'yes' ? 'glued' : l.pegs.length > 0 || l.wedges.length > 0 ? 'pinned' : 'dry');
/** How far cheeks and edges lie on the mortise: to where a mitre or, on the sides that wedges press, a flare begins. */
const reach = (l: Laid, way: 'x' | 'y'): Span => [
  0,
  l.flareFrom !== null && spreadOf(l) === way
    ? l.flareFrom
    : l.s.through === 'yes'
      ? l.floor
      : Math.min(l.tip, ...l.meets.map((c) => (l.mitres.length ? c.short : l.tip))),
];

/** The glued length is that over all tenons, across the entering part's grain: they hold each other apart. */
function cheeks(l: Laid, t: Tenon, i: number): Contact[] {
  return ([-1, 1] as const).map((sign) => {
    const dir: Vec3 = [sign, 0, 0];
    const own = `cheek ${faceToward(l.g.enter, dir)}`;
    const c = flatContact({
      name: `${own} of the ${nameOf('tenon', l, i)}`,
      a: { role: 'enter', feature: nameOf('tenon', l, i), face: own },
      b: { role: 'into', feature: nameOf('mortise', l, i), face: `cheek ${faceToward(l.g.into, dir)}` },
      on: flatAt(sign < 0 ? 'x-' : 'x+', sign < 0 ? t.x[0] : t.x[1], t.y, reach(l, 'x')),
      fit: spreadOf(l) === 'x' && l.flareFrom === null ? 'press' : 'slip',
      hold: held(l),
      glue: glueAcross(dir, l.g.enter.grain, l.g.into.grain),
      grain: l.g.enter.grain,
    });
    return c.gluedLength === undefined ? c : { ...c, gluedLength: l.y[1] - l.y[0] };
  });
}
function edges(l: Laid, t: Tenon, i: number): Contact[] {
  return ([-1, 1] as const).flatMap((sign) => {
    if (l.haunch && Math.abs((sign < 0 ? t.y[0] : t.y[1]) - l.haunch.span[sign < 0 ? 1 : 0]) < 1e-6) return [];
    const dir: Vec3 = [0, sign, 0];
    const own = `edge ${faceToward(l.g.enter, dir)}`;
    const wedged = spreadOf(l) === 'y';
    return [
      flatContact({
        name: `${own} of the ${nameOf('tenon', l, i)}`,
        a: { role: 'enter', feature: nameOf('tenon', l, i), face: own },
        b: { role: 'into', feature: nameOf('mortise', l, i), face: `end ${faceToward(l.g.into, dir)}` },
        on: flatAt(sign < 0 ? 'y-' : 'y+', sign < 0 ? t.y[0] : t.y[1], t.x, reach(l, 'y')),
        fit: wedged ? (l.flareFrom === null ? 'press' : 'slip') : 'loose',
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
/** The peg in the receiver's hole, and in the tenon's: with a drawbore that one lies off it on purpose, by the offset, tight. */
function pegContacts(l: Laid, peg: PegAt, i: number): Contact[] {
  const [r, along]: [number, Vec3] = [l.s.peg_diameter / 2, [peg.sign, 0, 0]];
  const name = `peg${i + 1}`;
  const tenonFrom = peg.sign > 0 ? l.x[0] : l.x[1];
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
        roundSide('extra', 'turning', 'round', [tenonFrom, peg.y, peg.z], along, r, l.x[1] - l.x[0], i),
        roundSide('enter', `${name} hole`, 'hole', [tenonFrom, peg.y, peg.z - l.g.gap - l.s.drawbore], along, r, l.x[1] - l.x[0]),
      ],
      fit: l.s.drawbore > 0 ? 'press' : 'tap',
      meant: -l.s.drawbore,
      hold: 'pinned',
      glue: 'long',
    },
  ];
}
