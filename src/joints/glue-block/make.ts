import { type Vec2, type Vec3, axisIndex, axisVec } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import { faceToward, flatAt, flatContact, glueAcross, looking, sharedSpan } from '../blocks.ts';
import type { Contact, Made, Place } from '../family.ts';
import { CLEAR, swept } from '../features.ts';
import { type Ground, ground } from './lay.ts';
import type { GlueBlock } from './params.ts';

/** Nothing is cut but the free corner of the block. */
export function make(p: Place<GlueBlock>, s: GlueBlock): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a glue block lies in a square corner: propose refuses the others');
  return {
    features: { block: s.bevel > 0 ? [bevel(g, s)] : [], on: [], beside: [] },
    extras: [],
    contacts: [onFirst(g), onSecond(g)],
    frees: [
      { moves: ['block'], along: [0, 0, -1] },
      { moves: ['block'], along: axisVec(g.across, g.sign > 0 ? -1 : 1) },
    ],
    holds: 'glue',
  };
}
function bevel(g: Ground, s: GlueBlock): Feature {
  const i = axisIndex(g.across);
  const k = axisIndex(g.along);
  const free = g.sign > 0 ? g.block.box.min[i] : g.block.box.max[i];
  const low = g.block.box.min[2];
  const outline: Vec2[] = [
    [free + g.sign * s.bevel, low],
    [free, low + s.bevel],
    [free - g.sign * CLEAR, low + s.bevel],
    [free - g.sign * CLEAR, low - CLEAR],
    [free + g.sign * s.bevel, low - CLEAR],
  ];
  return swept('bevel', 'remove', g.across === 'x' ? 'xz' : 'yz', outline, g.block.box.min[k] - CLEAR, g.block.box.max[k] + CLEAR, [
    'bevel',
    null,
    null,
    null,
    null,
  ]);
}
const onFirst = (g: Ground): Contact =>
  flatContact({
    name: 'block on the first part',
    a: { role: 'block', feature: 'stock', face: g.block.end },
    b: { role: 'on', feature: 'stock', face: g.on.end },
    on: flatAt('z+', 0, sharedSpan(g.block.box, g.on.box, 'x'), sharedSpan(g.block.box, g.on.box, 'y')),
    apart: g.gap,
    fit: 'slip',
    hold: 'glued',
    glue: glueAcross([0, 0, 1], g.block.grain, g.on.grain),
    grain: g.on.grain,
  });
function onSecond(g: Ground): Contact {
  const i = axisIndex(g.across);
  const out: Vec3 = axisVec(g.across, g.sign);
  return flatContact({
    name: 'block on the second part',
    a: { role: 'block', feature: 'stock', face: faceToward(g.block, out) },
    b: { role: 'beside', feature: 'stock', face: faceToward(g.beside, axisVec(g.across, g.sign > 0 ? -1 : 1)) },
    on: flatAt(
      looking(g.across, g.sign),
      g.sign > 0 ? g.block.box.max[i] : g.block.box.min[i],
      sharedSpan(g.block.box, g.beside.box, g.along),
      sharedSpan(g.block.box, g.beside.box, 'z'),
    ),
    apart: g.besideGap,
    fit: 'slip',
    hold: 'glued',
    glue: glueAcross(out, g.block.grain, g.beside.grain),
    grain: g.beside.grain,
  });
}
