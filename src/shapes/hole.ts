import { sizeOf } from '../geom/box.ts';
import type { Frame } from '../geom/frame.ts';
import { circle } from '../geom/loop.ts';
import { type Axis, type Vec2, type Vec3, AXES, axisIndex, axisVec, cross, unit } from '../geom/vec3.ts';
import { type Face, faceSide } from '../model/ids.ts';
import type { Feature } from '../model/record.ts';
import { LEAST, LEAVE, type Limits, limitsOf } from './limits.ts';
import { type ShapeKind, type ShapePart, type ShapeSet, type Spot, facesIn, lengthIn, onePart, spotsIn } from './shape.ts';

const OVER = 5;
const DEG = Math.PI / 180;
/** A bit is not started flatter than this to a face. */
const STEEPEST = 75 * DEG;
const seat = { wood: 'ash', grain: 'x', left: '0', width: '300', front: '0', depth: '200', bottom: '0', height: '40' };

/** Round holes in one face, square to it or leaning: `tilt` from square, towards `turn` (0 along the first axis of the face, 90° along the second). */
export const hole: ShapeKind = {
  id: 'hole',
  version: 1,
  title: 'Hole',
  words: 'Bores round holes into a face, square or at an angle, through or to a depth.',
  params: {
    face: { kind: 'faces', words: 'the face that it is bored from (a face or mark)' },
    at: { kind: 'points', on: 'face', words: 'the middle of each hole on that face' },
    diameter: { kind: 'length', words: 'diameter' },
    depth: { kind: 'length', words: 'depth along the bit; through, unless said' },
    tilt: { kind: 'angle', words: 'angle from square' },
    turn: { kind: 'angle', words: 'which way it leans: 0 along the first axis of the face, 90 deg along the second' },
  },
  required: ['face', 'at', 'diameter'],
  make: (part, set) => {
    const face = facesIn(set, 'face')[0];
    const spots = spotsIn(set, 'at');
    if (!face || spots.length === 0) return { ok: false, problem: 'a hole needs a face and at least one place on it.' };
    const limits = limitsOf(set);
    const b = boring(part, face, set, limits);
    const at = placesOf(spots, b, limits);
    const refused = limits.refusal();
    if (refused) return refused;
    return {
      ok: true,
      features: at.map((p, i) => bored(face, b, p, at.length > 1 ? `hole ${i + 1}` : 'hole')),
      ...(b.tilt > 0 ? { says: [{ words: 'angle between the bit and the face', value: 90 - b.tilt / DEG, unit: 'deg' as const }] } : {}),
    };
  },
  examples: [
    {
      name: 'holes to a depth',
      words: 'Two holes 12 wide and 25 deep in the face of a board.',
      document: onePart('Holes', 'seat', {
        ...seat,
        shape: [
          {
            as: 'hole@1',
            face: ['top'],
            at: [
              ['seat.left + 50', 'seat.middepth'],
              ['seat.right - 50', 'seat.middepth'],
            ],
            diameter: '12',
            depth: '25',
          },
        ],
      }),
      removed: { seat: 2 * Math.PI * 36 * 25 },
      planar: false,
    },
    {
      name: 'leaning hole',
      words: 'A hole through a seat for a leg that leans outward by 15° to the left and the front.',
      document: onePart('Leaning hole', 'seat', {
        ...seat,
        shape: [
          { as: 'hole@1', face: ['bottom'], at: [['seat.left + 70', 'seat.front + 60']], diameter: '25', tilt: '15 deg', turn: '45 deg' },
        ],
      }),
      // A slanting cylinder holds what a square one of the same opening does: pi r² / cos 15° over 40.
      removed: { seat: ((Math.PI * 12.5 * 12.5) / Math.cos(15 * DEG)) * 40 },
      planar: false,
    },
  ],
};

type Boring = {
  readonly r: number;
  readonly depth: number | null;
  readonly tilt: number;
  readonly turn: number;
  readonly thick: number;
  /** The face's own axes, its plane along the third, and where its outline runs on them. */
  readonly axes: readonly [Axis, Axis];
  readonly plane: number;
  readonly low: Vec2;
  readonly high: Vec2;
};
function boring(part: ShapePart, face: Face, set: ShapeSet, limits: Limits): Boring {
  const side = faceSide(face);
  const size = sizeOf(part.stock);
  const [a, b] = AXES.filter((_, i) => i !== side.axis) as [Axis, Axis];
  const [i, j] = [axisIndex(a), axisIndex(b)];
  const thick = size[side.axis];
  const blind = lengthIn(set, 'depth') !== undefined;
  const most = Math.min(size[i], size[j]) - 2 * LEAVE;
  const r = limits.length('diameter', 'the diameter of a hole', 2 * LEAST, most, 10) / 2;
  const turn = lengthIn(set, 'turn') ?? 0;
  const base = {
    r,
    turn: Number.isFinite(turn) ? turn : 0,
    thick,
    axes: [a, b] as const,
    plane: (side.high ? part.stock.max : part.stock.min)[side.axis],
    low: [part.stock.min[i], part.stock.min[j]] as Vec2,
    high: [part.stock.max[i], part.stock.max[j]] as Vec2,
  };
  const asked = lengthIn(set, 'depth') ?? Infinity;
  const fits = (tilt: number): boolean => {
    const deepest = (thick - LEAVE - r * Math.sin(tilt)) / Math.cos(tilt);
    const [p, q] = roomFor({ ...base, tilt, depth: blind ? Math.min(Math.max(LEAST, asked), deepest) : null });
    return p[0] <= p[1] && q[0] <= q[1] && (!blind || deepest >= LEAST);
  };
  const tilt = limits.angle('tilt', 'the tilt of a hole', 0, steepestOf(fits), 0);
  const deepest = (thick - LEAVE - r * Math.sin(tilt)) / Math.cos(tilt);
  return { ...base, tilt, depth: blind ? limits.length('depth', 'the depth of a hole', LEAST, deepest, LEAST) : null };
}
/** The steepest tilt that still fits, to a thousandth of a degree. */
function steepestOf(fits: (tilt: number) => boolean): number {
  if (fits(STEEPEST)) return STEEPEST;
  let [good, bad] = [0, STEEPEST];
  while (bad - good > 1e-6) {
    const mid = (good + bad) / 2;
    if (fits(mid)) good = mid;
    else bad = mid;
  }
  return good;
}
/** Between which coordinates the middle of the hole may stand on either axis, so that it comes in, and out or to its end, within the wood. */
function roomFor(b: Boring): readonly [Vec2, Vec2] {
  const way: Vec2 = [Math.cos(b.turn), Math.sin(b.turn)];
  const shift = b.depth === null ? b.thick * Math.tan(b.tilt) : b.depth * Math.sin(b.tilt);
  return ([0, 1] as const).map((k): Vec2 => {
    // Half the width of the opening along this axis: an ellipse, long by 1 / cos tilt the way that it leans.
    const half = Math.hypot((b.r / Math.cos(b.tilt)) * way[k], b.r * way[1 - k]!) + LEAVE;
    const s = shift * way[k];
    return [b.low[k] + half - Math.min(0, s), b.high[k] - half - Math.max(0, s)];
  }) as unknown as readonly [Vec2, Vec2];
}
function placesOf(spots: readonly Spot[], b: Boring, limits: Limits): readonly Vec2[] {
  const [p, q] = roomFor(b);
  const held = spots.map(({ at }): Vec2 => [clamp(at[0], p), clamp(at[1], q)]);
  const apart = (2 * b.r) / Math.cos(b.tilt) + LEAVE;
  const kept = held.filter((h, i) => held.slice(0, i).every((o) => Math.hypot(h[0] - o[0], h[1] - o[1]) >= apart - 1e-9));
  const nearest = { at: kept.map((at): Spot => ({ at })) };
  const out = spots.find(({ at }, i) => Math.hypot(at[0] - (held[i]?.[0] ?? 0), at[1] - (held[i]?.[1] ?? 0)) > 1e-6);
  if (out)
    limits.wrong(
      `a hole would break out of the wood: from the datum corner its middle must stand ${range(p)} along ${b.axes[0]} and ${range(q)} along ${b.axes[1]}.`,
      nearest,
    );
  else if (kept.length < held.length)
    limits.wrong(`two holes run into each other: their middles must be at least ${apart.toFixed(1)} mm apart.`, nearest);
  return kept;
}
const clamp = (v: number, [low, high]: Vec2): number => (Number.isFinite(v) ? Math.min(high, Math.max(low, v)) : (low + high) / 2);
const range = ([low, high]: Vec2): string => `from ${low.toFixed(1)} to ${high.toFixed(1)} mm`;

function bored(face: Face, b: Boring, [u, v]: Vec2, name: string): Feature {
  const side = faceSide(face);
  const [ea, eb] = [axisVec(b.axes[0]), axisVec(b.axes[1])];
  const into: Vec3 = axisVec(side.quad.axis, side.high ? -1 : 1);
  const way = [0, 1, 2].map((i) => Math.cos(b.turn) * (ea[i] ?? 0) + Math.sin(b.turn) * (eb[i] ?? 0)) as unknown as Vec3;
  const along = unit([0, 1, 2].map((i) => Math.cos(b.tilt) * (into[i] ?? 0) + Math.sin(b.tilt) * (way[i] ?? 0)) as unknown as Vec3);
  const o: [number, number, number] = [0, 0, 0];
  o[axisIndex(b.axes[0])] = u;
  o[axisIndex(b.axes[1])] = v;
  o[side.axis] = b.plane;
  // x square to the plane in which it leans: the same for a hole and its mirror image.
  const x: Vec3 = b.tilt > 1e-9 ? unit(cross(into, along)) : ea;
  const at: Frame = { o, x, y: b.tilt > 1e-9 ? cross(along, x) : eb, z: along };
  const rim = b.r * Math.tan(b.tilt) + OVER;
  return {
    name,
    op: 'shape',
    why: 'shape',
    solid: { kind: 'prism', profile: [circle(0, 0, b.r)], from: -rim, to: b.depth ?? b.thick / Math.cos(b.tilt) + rim },
    at,
    faces: { wall: { of: 'side', corner: 0 }, ...(b.depth === null ? {} : { bottom: { of: 'to' } }) },
  };
}
