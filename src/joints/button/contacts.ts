import { type Vec3, axisVec, dot, scale } from '../../geom/vec3.ts';
import { type FlatPatch, flatContact } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { roundSide } from '../features.ts';
import { type Ground, type Span, bite, height, point, slides } from './lay.ts';
import type { Button } from './params.ts';

/** The top on the rail, and for each button: its tongue under the slot's upper wall, its shoulder, its upper face, its screw. */
export function contacts(g: Ground, s: Button, at: readonly number[]): Contact[] {
  return [
    rests(g, s),
    ...at.flatMap((a, i) => [tongue(g, s, a, i), shoulder(g, s, a, i), upper(g, s, a, i), ...screws(g, s, a, i, at.length)]),
  ];
}
/** The top moves along the axis that crosses its own grain, and takes the buttons with it. */
function travel(g: Ground, s: Button): NonNullable<Contact['travel']> {
  const across = g.movesAcross > 0;
  const by = across ? s.room : slides(g, s);
  return { along: axisVec(across ? g.across : g.along), low: -by, high: by };
}
/** A level rectangle, along the rail and inward from its face, at `down`; its normal looks up or down. */
function level(g: Ground, along: Span, inward: Span, down: number, sign: 1 | -1): FlatPatch {
  const [x, y] = [scale(axisVec(g.along), 1), scale(axisVec(g.across), g.inner)];
  return {
    frame: { o: point(g, 0, 0, down), x, y, z: [0, 0, sign] },
    patch: [
      [along[0], inward[0]],
      [along[1], inward[0]],
      [along[1], inward[1]],
      [along[0], inward[1]],
    ],
  };
}
const rests = (g: Ground, s: Button): Contact =>
  flatContact({
    name: 'top on the rail',
    a: { role: 'under', feature: 'stock', face: g.under.end },
    b: { role: 'rail', feature: 'stock', face: g.rail.end },
    on: level(g, g.run, [-g.railThick, 0], 0, 1),
    apart: g.gap,
    fit: 'slip',
    hold: 'sliding',
    glue: 'never',
    travel: travel(g, s),
  });
const wide = (s: Button, a: number): Span => [a - s.width / 2, a + s.width / 2];
const tongue = (g: Ground, s: Button, a: number, i: number): Contact =>
  flatContact({
    name: `tongue of button ${i + 1} under the rail`,
    a: { role: 'extra', index: i, feature: 'rebate', face: 'tongue' },
    b: { role: 'rail', feature: s.slot === 'groove' ? 'groove' : `slot ${i + 1}`, face: 'upper wall' },
    on: level(g, wide(s, a), [s.room - s.reach, 0], g.gap + s.lip, -1),
    fit: 'slip',
    hold: 'sliding',
    glue: 'never',
    travel: travel(g, s),
  });
function shoulder(g: Ground, s: Button, a: number, i: number): Contact {
  const out: Vec3 = scale(axisVec(g.across), -g.inner);
  const o = point(g, 0, s.room, 0);
  const patch: FlatPatch['patch'] = [
    [wide(s, a)[0], g.gap + s.draw],
    [wide(s, a)[1], g.gap + s.draw],
    [wide(s, a)[1], g.gap + s.lip],
    [wide(s, a)[0], g.gap + s.lip],
  ];
  return flatContact({
    name: `shoulder of button ${i + 1}`,
    a: { role: 'extra', index: i, feature: 'rebate', face: 'shoulder' },
    b: { role: 'rail', feature: 'stock', face: innerFace(g) },
    on: { frame: { o, x: axisVec(g.along), y: [0, 0, 1], z: out }, patch },
    meant: s.room,
    fit: s.room > 0 ? 'gap' : 'slip',
    hold: 'sliding',
    glue: 'never',
  });
}
function innerFace(g: Ground): string {
  const dir = scale(axisVec(g.across), g.inner);
  const f = g.rail.frame;
  const [x, y, z] = [dot(f.x, dir), dot(f.y, dir), dot(f.z, dir)];
  return Math.abs(x) > 0.7 ? (x > 0 ? 'right' : 'left') : Math.abs(y) > 0.7 ? (y > 0 ? 'back' : 'front') : z > 0 ? 'top' : 'bottom';
}
/** The upper face stands off the top until the screw draws it up. */
const upper = (g: Ground, s: Button, a: number, i: number): Contact =>
  flatContact({
    name: `button ${i + 1} under the top`,
    a: { role: 'extra', index: i, feature: 'stock', face: 'top' },
    b: { role: 'under', feature: 'stock', face: g.under.end },
    on: level(g, wide(s, a), [s.room, s.room + s.length], g.gap + s.draw, -1),
    meant: s.draw,
    apart: s.draw + g.gap,
    fit: 'gap',
    hold: 'pinned',
    glue: 'never',
  });
function screws(g: Ground, s: Button, a: number, i: number, count: number): Contact[] {
  const up: Vec3 = [0, 0, -1];
  const r = s.screw / 2;
  const middle = s.room + s.length / 2;
  const foot = point(g, a, middle, g.gap + s.lip + s.tongue);
  const face = point(g, a, middle, 0);
  const shank = (at: Vec3, long: number) => roundSide('extra', 'turning', 'round', at, up, r, long, count + i);
  const round = { fit: 'tap', meant: 0, hold: 'pinned', glue: 'never' } as const;
  return [
    {
      name: `screw ${i + 1} in the button`,
      between: [shank(foot, height(s)), roundSide('extra', 'screw hole', 'hole', foot, up, r, height(s), i)],
      ...round,
    },
    {
      name: `screw ${i + 1} in the top`,
      between: [shank(face, bite(g, s)), roundSide('under', `screw hole ${i + 1}`, 'hole', face, up, r, bite(g, s))],
      ...round,
    },
  ];
}
