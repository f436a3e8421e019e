import { type Vec3, add, scale } from '../../geom/vec3.ts';
import { type FlatPatch, faceToward, flatContact } from '../blocks.ts';
import type { Contact, ExtraPart } from '../family.ts';
import { roundSide } from '../features.ts';
import { FIXINGS, SCREWS, SPLINE } from './extras.ts';
import {
  BRACKETS,
  EASY,
  type Ground,
  type Role,
  type Span,
  behind,
  bite,
  fixingSpan,
  mitre,
  pieces,
  screwAlong,
  slotOf,
  splineAt,
  ways,
} from './lay.ts';
import type { BracketFoot } from './params.ts';

export function contacts(g: Ground, s: BracketFoot, extras: readonly ExtraPart[]): Contact[] {
  return [
    mitred(g),
    ...(s.spline === 'none' ? [] : BRACKETS.flatMap((role) => splined(g, s, role))),
    ...BRACKETS.map((role) => topEdge(g, s, role)),
    ...pieces(g, s).flatMap((span, i) => BRACKETS.map((role) => blockOn(g, s, role, i, span, extras[i]?.name ?? ''))),
    ...BRACKETS.flatMap((role) => [fixingOn(g, s, role), fixingUnder(g, s, role), ...screws(g, s, role)]),
  ];
}
const neg = (v: Vec3): Vec3 => scale(v, -1);
const UP = (g: Ground): Vec3 => [0, g.up, 0];
/** A rectangle from a corner along two ways, its normal given. */
const rect = (o: Vec3, x: Vec3, y: Vec3, z: Vec3, a: number, b: number): FlatPatch => ({
  frame: { o, x, y, z },
  patch: [
    [0, 0],
    [a, 0],
    [a, b],
    [0, b],
  ],
});
function mitred(g: Ground): Contact {
  const m = mitre(g);
  return flatContact({
    name: 'mitre',
    a: { role: 'front', feature: 'mitre', face: 'mitre' },
    b: { role: 'side', feature: 'mitre', face: 'mitre' },
    on: rect([g.outer[0], g.foot, g.outer[1]], m.along, UP(g), m.normal, m.long, g.high),
    fit: 'slip',
    hold: 'glued',
    glue: 'end',
    grain: g.front.grain,
  });
}
/** Both faces of the spline in one bracket's half of the slot. */
function splined(g: Ground, s: BracketFoot, role: Role): Contact[] {
  const m = mitre(g);
  const out = role === 'front' ? neg(m.normal) : m.normal;
  return (['outer', 'inner'] as const).map((word) => {
    const n = word === 'inner' ? m.along : neg(m.along);
    const o = add({ ...splineAt(g), 1: g.foot } as unknown as Vec3, scale(n, s.spline_thick / 2));
    return flatContact({
      name: `spline, ${word} face in the ${role} bracket`,
      a: { role: 'extra', index: SPLINE(s), feature: 'stock', face: word === 'inner' ? 'back' : 'front' },
      b: { role, feature: 'spline slot', face: `wall ${word}` },
      on: rect([o[0], g.foot, o[2]], out, UP(g), n, s.spline_wide / 2, g.high),
      fit: 'slip',
      hold: 'glued',
      glue: 'long',
    });
  });
}
/** The bracket's upper edge under the base: glued where their grain runs one way, else free to move along the base's movement. */
function topEdge(g: Ground, s: BracketFoot, role: Role): Contact {
  const { run, away } = ways(g, role);
  const thick = role === 'front' ? Math.abs(g.inner[0] - g.outer[0]) : Math.abs(g.inner[1] - g.outer[1]);
  const glued = !g.crossed[role] || s.across === 'glued';
  const room = slotOf(g, s, role);
  return flatContact({
    name: `${role} bracket under the base`,
    a: { role, feature: 'stock', face: faceToward(g[role], UP(g)) },
    b: { role: 'base', feature: 'stock', face: faceToward(g.base, neg(UP(g))) },
    on: rect(behind(g, role, 0, -thick, 0), run, away, UP(g), g.long[role], thick),
    apart: (g.under - g.top) * g.up,
    fit: 'slip',
    hold: glued ? 'glued' : 'sliding',
    glue: g.crossed[role] ? 'never' : 'long',
    grain: g.base.grain,
    ...(room > 0 && !glued ? { travel: { along: run, low: -room, high: room } } : {}),
  });
}
function blockOn(g: Ground, s: BracketFoot, role: Role, i: number, [high, low]: Span, name: string): Contact {
  const { run, away } = ways(g, role);
  return flatContact({
    name: `${name} against the ${role} bracket`,
    a: { role: 'extra', index: i, feature: 'stock', face: role === 'front' ? 'left' : 'front' },
    b: { role, feature: 'stock', face: faceToward(g[role], away) },
    on: rect(behind(g, role, 0, 0, low), run, UP(g), neg(away), s.block, low - high),
    fit: 'slip',
    hold: 'glued',
    glue: 'long',
    grain: g[role].grain,
  });
}
function fixingOn(g: Ground, s: BracketFoot, role: Role): Contact {
  const { run, away } = ways(g, role);
  return flatContact({
    name: `fixing block on the ${role} bracket`,
    a: { role: 'extra', index: FIXINGS(s) + BRACKETS.indexOf(role), feature: 'stock', face: 'front' },
    b: { role, feature: 'stock', face: faceToward(g[role], away) },
    on: rect(behind(g, role, fixingSpan(s)[0], 0, s.fixing), run, UP(g), neg(away), s.fixing_long, s.fixing),
    fit: 'slip',
    hold: 'glued',
    glue: 'long',
    grain: g[role].grain,
  });
}
function fixingUnder(g: Ground, s: BracketFoot, role: Role): Contact {
  const { run, away } = ways(g, role);
  return flatContact({
    name: `fixing block of the ${role} bracket under the base`,
    a: { role: 'extra', index: FIXINGS(s) + BRACKETS.indexOf(role), feature: 'stock', face: 'top' },
    b: { role: 'base', feature: 'stock', face: faceToward(g.base, neg(UP(g))) },
    on: rect(behind(g, role, fixingSpan(s)[0], 0, 0), run, away, UP(g), s.fixing_long, s.fixing),
    apart: (g.under - g.top) * g.up,
    fit: 'slip',
    hold: 'pinned',
    glue: g.crossed[role] ? 'never' : 'long',
  });
}
function screws(g: Ground, s: BracketFoot, role: Role): Contact[] {
  const i = BRACKETS.indexOf(role);
  const r = s.screw / 2;
  const at = (down: number): Vec3 => behind(g, role, screwAlong(s), s.fixing / 2, down);
  const [foot, up] = [at(s.fixing), UP(g)];
  const face: Vec3 = [foot[0], g.under, foot[2]];
  const shank = (p: Vec3, long: number) => roundSide('extra', 'turning', 'round', p, up, r, long, SCREWS(s) + i);
  const common = { hold: 'pinned', glue: 'never' } as const;
  const room = slotOf(g, s, role);
  return [
    {
      name: `screw through the ${role} fixing block`,
      between: [shank(foot, s.fixing), roundSide('extra', 'screw hole', 'hole', foot, up, r + EASY / 2, s.fixing, FIXINGS(s) + i)],
      fit: 'loose',
      meant: EASY / 2,
      ...common,
      ...(room > 0 ? { travel: { along: ways(g, role).run, low: -room, high: room } } : {}),
    },
    {
      name: `screw of the ${role} fixing block in the base`,
      between: [shank(face, bite(g, s)), roundSide('base', `screw hole ${role}`, 'hole', face, up, r, bite(g, s))],
      fit: 'tap',
      meant: 0,
      ...common,
    },
  ];
}
