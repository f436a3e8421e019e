import type { Box } from '../../geom/box.ts';
import type { Frame } from '../../geom/frame.ts';
import { circle, slot } from '../../geom/loop.ts';
import type { Axis } from '../../geom/vec3.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import type { ExtraPart } from '../family.ts';
import { CLEAR, frameAlong, pinRecord } from '../features.ts';
import {
  BRACKETS,
  EASY,
  type Ground,
  type Role,
  behind,
  bite,
  fixingSpan,
  mitre,
  pieces,
  screwAlong,
  slotOf,
  splineAt,
  spot,
  ways,
} from './lay.ts';
import type { BracketFoot } from './params.ts';

/** In order: the glue block's pieces, both fixing blocks, their screws, and the spline last. */
export function extrasOf(g: Ground, s: BracketFoot): ExtraPart[] {
  return [
    ...pieces(g, s).map((_, i) => block(g, s, i)),
    ...BRACKETS.map((role) => fixing(g, s, role)),
    ...BRACKETS.map((role) => screw(g, s, role)),
    ...(s.spline === 'none' ? [] : [spline(g, s)]),
  ];
}
/** Where each sort begins in that list. */
export const FIXINGS = (s: BracketFoot): number => s.pieces;
export const SCREWS = (s: BracketFoot): number => s.pieces + 2;
export const SPLINE = (s: BracketFoot): number => s.pieces + 4;
const boxed = (x: number, y: number, z: number): Box => ({ min: [0, 0, 0], max: [x, y, z] });
/** x along the side bracket, y along the front bracket, z up. */
function block(g: Ground, s: BracketFoot, i: number): ExtraPart {
  const [high, low] = pieces(g, s)[i] ?? [0, 0];
  const grain: Axis = s.block_grain === 'upright' ? 'z' : i % 2 === 0 ? 'x' : 'y';
  return {
    name: `glue block${s.pieces > 1 ? ` ${i + 1}` : ''}`,
    words: 'glue block',
    record: partRecord(boxed(s.block, s.block, low - high), grain, g.front.wood, []),
    at: { o: spot(g, 0, 0, low), x: [g.inward, 0, 0], y: [0, 0, -1], z: [0, g.up, 0] },
    enters: [0, g.up, 0],
  };
}
/** x along its bracket from the corner, y away from it, z up. */
function fixing(g: Ground, s: BracketFoot, role: Role): ExtraPart {
  const { run, away } = ways(g, role);
  const at: Frame = { o: behind(g, role, fixingSpan(s)[0], 0, s.fixing), x: run, y: away, z: [0, g.up, 0] };
  return {
    name: `fixing block ${role}`,
    words: 'fixing block',
    record: partRecord(boxed(s.fixing_long, s.fixing, s.fixing), 'x', g[role].wood, [screwHole(g, s, role)]),
    at,
    enters: [0, g.up, 0],
  };
}
function screwHole(g: Ground, s: BracketFoot, role: Role): Feature {
  const [mid, room, r] = [s.fixing_long / 2, slotOf(g, s, role), (s.screw + EASY) / 2];
  return {
    name: 'screw hole',
    op: 'remove',
    at: { o: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] },
    why: 'joint',
    solid: {
      kind: 'prism',
      profile: [room > 0 ? slot([mid - room, s.fixing / 2], [mid + room, s.fixing / 2], r) : circle(mid, s.fixing / 2, r)],
      from: -CLEAR,
      to: s.fixing + CLEAR,
    },
    faces: { hole: { of: 'side', corner: room > 0 ? 1 : 0 } },
  };
}
function screw(g: Ground, s: BracketFoot, role: Role): ExtraPart {
  const axis = frameAlong(behind(g, role, screwAlong(s), s.fixing / 2, s.fixing), [0, g.up, 0]);
  const r = s.screw / 2;
  const o = [0, 1, 2].map((k) => (axis.o[k] ?? 0) - ((axis.x[k] ?? 0) + (axis.y[k] ?? 0)) * r) as unknown as Frame['o'];
  return {
    name: `screw ${role}`,
    words: 'screw',
    record: pinRecord('steel', s.screw, s.fixing + bite(g, s) + (g.under - g.top) * g.up),
    at: { ...axis, o },
    hardware: true,
    enters: [0, g.up, 0],
  };
}
/** Its grain runs across the mitre: along it, it would split in the middle. */
function spline(g: Ground, s: BracketFoot): ExtraPart {
  const m = mitre(g);
  const c = splineAt(g);
  const [w, t] = [s.spline_wide / 2, s.spline_thick / 2];
  const o = [0, 1, 2].map((k) =>
    k === 1 ? g.foot : (c[k] ?? 0) - (m.normal[k] ?? 0) * w - (m.along[k] ?? 0) * t,
  ) as unknown as Frame['o'];
  return {
    name: 'spline',
    words: 'spline',
    record: partRecord(boxed(s.spline_wide, s.spline_thick, g.high), 'x', g.front.wood, []),
    at: { o, x: m.normal, y: m.along, z: [0, g.up, 0] },
    enters: [0, g.up, 0],
  };
}
