import { type Box } from '../../geom/box.ts';
import type { Frame } from '../../geom/frame.ts';
import { type Corner, rectangle } from '../../geom/loop.ts';
import type { Vec2, Vec3 } from '../../geom/vec3.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { type Looks, block, boxOf, faceToward, looking } from '../blocks.ts';
import type { ExtraPart, Made, Place } from '../family.ts';
import { contacts } from './contacts.ts';
import { type Ground, ground, leafSpan, starts } from './lay.ts';
import type { Hinge } from './params.ts';

export function make(p: Place<Hinge>, s: Hinge): Made {
  const g = ground(p.meeting, s.side);
  if (!g) throw new Error(`hinges need a side for their knuckles, got ${s.side}: propose refuses the others`);
  const at = starts(g, s);
  const hinges = at.map((y, i) => hardware(g, s, y, i));
  const out: Vec3 = [-g.inward, 0, 0];
  return {
    features: {
      enter: at.map((y, i) => recess(g, s, y, i, 'enter')),
      into: at.map((y, i) => recess(g, s, y, i, 'into')),
    },
    extras: hinges,
    contacts: contacts(g, s, at),
    frees: [
      ...hinges.map((h) => ({ moves: [h.name], along: out })),
      { moves: ['enter'], along: out },
      { moves: ['enter'], along: [0, 0, -1] },
    ],
    holds: 'dry',
  };
}
/** As deep as the leaf is thick, open at the face with the knuckle. */
function recess(g: Ground, s: Hinge, y: number, i: number, role: 'enter' | 'into'): Feature {
  const door = role === 'enter';
  const side = door ? g.enter : g.into;
  const [x0, x1] = leafSpan(g, s, door ? g.face : g.other);
  const [z0, z1] = door ? [-s.thick, 0] : [g.gap, g.gap + s.thick];
  const faces: Partial<Record<Looks, string>> = {
    [looking('z', door ? -1 : 1)]: 'bed',
    [looking('x', g.inward)]: 'wall',
    'y-': `end ${faceToward(side, [0, -1, 0])}`,
    'y+': `end ${faceToward(side, [0, 1, 0])}`,
  };
  return block(`leaf recess ${i + 1}`, 'remove', boxOf(x0, x1, y, y + s.length, z0, z1), faces);
}
/**
 * Knuckle and two leaves as one piece of metal. Its own x runs from the front of the knuckle in to the ends of the leaves, y along the
 * pin, z from the door to the part that it hangs on.
 */
function hardware(g: Ground, s: Hinge, y: number, i: number): ExtraPart {
  const r = s.knuckle / 2;
  const long = r + s.proud + s.wide;
  const stock: Box = { min: [0, 0, 0], max: [long, s.length, s.knuckle] };
  const at: Frame = { o: [g.face - g.inward * (r + s.proud), y, g.gap / 2 - r], x: [g.inward, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
  return {
    name: `hinge${i + 1}`,
    words: 'butt hinge',
    record: partRecord(stock, 'y', 'brass', [outline(stock, g.gap, s.thick, r)]),
    at,
    hardware: true,
    enters: [g.inward, 0, 0],
  };
}
/** All outside of knuckle and leaves taken from the block: u is the record's z, v its x, both from the middle of the knuckle's and the block's section. */
function outline(stock: Box, gap: number, thick: number, r: number): Feature {
  const end = stock.max[0];
  const [inner, outer] = [gap / 2, gap / 2 + thick];
  const meets = (u: number): number => r + Math.sqrt(Math.max(0, r * r - u * u));
  const point = (u: number, v: number): Vec2 => [u, v];
  const corners: Corner[] = [
    { at: point(outer, meets(outer)) },
    { at: point(outer, end) },
    { at: point(inner, end) },
    { at: point(inner, meets(inner)) },
    { at: point(-inner, meets(inner)) },
    { at: point(-inner, end) },
    { at: point(-outer, end) },
    { at: point(-outer, meets(outer)), via: point(0, 0) },
  ];
  return {
    name: 'outline',
    op: 'shape',
    solid: { kind: 'prism', profile: [rectangle(-r - 5, -5, r + 5, end + 5), corners], from: -5, to: stock.max[1] + 5 },
    at: { o: [0, 0, r], x: [0, 0, 1], y: [1, 0, 0], z: [0, 1, 0] },
    faces: { 'leaf of the case': { of: 'side', loop: 1, corner: 0 }, 'leaf of the door': { of: 'side', loop: 1, corner: 6 } },
    why: 'shape',
  };
}
