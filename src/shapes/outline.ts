import { sizeOf } from '../geom/box.ts';
import { crossingOf } from '../geom/crossing.ts';
import { cornersOfWay } from '../geom/curve.ts';
import { type Corner, type Loop, circle, loopPoints, polygonArea, rectangle } from '../geom/loop.ts';
import { type Axis, AXES, type Vec2 } from '../geom/vec3.ts';
import type { Feature } from '../model/record.ts';
import { OVER, flatFrame, flatStock, seenAxis } from './flat.ts';
import { runOutAlong } from './grain.ts';
import { LEAST, limitsOf } from './limits.ts';
import { outside, sectionFrame } from './section.ts';
import {
  type ShapeKind,
  type ShapeMade,
  type ShapePart,
  type ShapeRefusal,
  type ShapeSays,
  type ShapeSet,
  type Spot,
  lengthIn,
  onePart,
  spotsIn,
} from './shape.ts';

const seat = { wood: 'ash', grain: 'x', left: '0', width: '300', front: '0', depth: '300', bottom: '0', height: '30' };
const bracket = { wood: 'oak', grain: 'z', left: '0', width: '22', front: '0', depth: '200', bottom: '0', height: '260' };

/** The outline of a seat, a top or a bracket: round, with rounded corners, or a free one of lines, arcs and smooth curves. */
export const outline: ShapeKind = {
  id: 'outline',
  version: 1,
  title: 'Outline',
  words: 'Cuts a part to a round or free outline, or rounds its corners.',
  params: {
    round: { kind: 'length', words: 'diameter of the round' },
    corners: { kind: 'length', words: 'radius of the corners' },
    points: {
      kind: 'points',
      on: 'seen',
      words: 'the corners in order; from one with "via" an arc runs through it, from one with "by": "curve" a smooth curve',
    },
    seen: { kind: 'choice', words: 'the axis that it is seen along (the thinnest way, unless said)', options: { x: 'x', y: 'y', z: 'z' } },
  },
  required: [],
  make: (part, set) => {
    const points = spotsIn(set, 'points');
    const given = ['round', 'corners'].filter((k) => lengthIn(set, k) !== undefined).length + (points.length ? 1 : 0);
    if (given === 0) return { ok: false, problem: 'an outline needs "round" or "corners", or "points".' };
    if (given > 1) return { ok: false, problem: 'an outline is either round or has rounded corners, or is drawn by its points.' };
    return points.length ? free(part, set, points) : plain(part, set);
  },
  examples: [
    {
      name: 'round seat',
      words: 'The seat of a stool, sawn round.',
      document: onePart('Round seat', 'seat', { ...seat, shape: [{ as: 'outline@1', round: '300' }] }),
      removed: { seat: (300 * 300 - Math.PI * 150 * 150) * 30 },
      planar: false,
    },
    {
      name: 'rounded corners',
      words: 'A top with its four corners rounded.',
      document: onePart('Rounded corners', 'seat', { ...seat, shape: [{ as: 'outline@1', corners: '40' }] }),
      removed: { seat: (4 - Math.PI) * 1600 * 30 },
      planar: false,
    },
    {
      name: 'bracket with an arc',
      words: 'A shelf bracket: two straight sides and a hollow arc between two flats.',
      document: onePart('Bracket', 'bracket', {
        ...bracket,
        shape: [
          {
            as: 'outline@1',
            points: [
              ['bracket.front', 'bracket.bottom'],
              ['bracket.front + 40', 'bracket.bottom'],
              // A quarter circle about (200, 60) of radius 160; its middle is 160 / √2 from both.
              { at: ['bracket.front + 40', 'bracket.bottom + 60'], via: ['200 - 160 * 0.70710678118', '60 + 160 * 0.70710678118'] },
              ['bracket.back', 'bracket.bottom + 220'],
              ['bracket.back', 'bracket.top'],
              ['bracket.front', 'bracket.top'],
            ],
          },
        ],
      }),
      // 160 x 60 below, and a quarter circle of 160.
      removed: { bracket: (160 * 60 + (Math.PI / 4) * 160 * 160) * 22 },
      planar: false,
    },
    {
      name: 'smooth outline',
      words: 'The curve of a bench end, drawn through a few points.',
      document: onePart('Smooth outline', 'bracket', {
        ...bracket,
        shape: [
          {
            as: 'outline@1',
            points: [
              ['bracket.front', 'bracket.bottom'],
              // Points on a circle of radius 200 about the front bottom corner: the smooth curve through them is that circle.
              { at: ['200', 'bracket.bottom'], by: 'curve' },
              { at: ['160', '120'], by: 'curve' },
              { at: ['120', '160'], by: 'curve' },
              ['bracket.front', '200'],
            ],
          },
        ],
      }),
      removed: { bracket: (200 * 260 - (Math.PI / 4) * 200 * 200) * 22 },
      planar: false,
    },
  ],
};

function plain(part: ShapePart, set: ShapeSet): ShapeMade | ShapeRefusal {
  const { stock } = part;
  const size = sizeOf(stock);
  const along = AXES[size.indexOf(Math.min(...size))] as Axis;
  const { half } = sectionFrame(stock, along);
  const limits = limitsOf(set);
  const round = lengthIn(set, 'round') !== undefined;
  const most = Math.min(half[0], half[1]);
  // A round larger than its stock has flats where the wood ends, up to the size at which nothing is cut.
  const value = round
    ? limits.length('round', 'the diameter of an outline', 2 * LEAST, 2 * Math.hypot(half[0], half[1]) - LEAST, 2 * most)
    : limits.length('corners', 'the radius of the corners', LEAST, most - LEAST, LEAST);
  const refused = limits.refusal();
  if (refused) return refused;
  return { ok: true, features: [outside('outline', stock, along, round ? circle(0, 0, value / 2) : rounded(half[0], half[1], value))] };
}
function rounded(x: number, y: number, r: number): Loop {
  const k = r * (1 - Math.SQRT1_2);
  const corner = (sx: number, sy: number): Corner[] => {
    const a: Corner['at'] = sx * sy > 0 ? [sx * x, sy * (y - r)] : [sx * (x - r), sy * y];
    const b: Corner['at'] = sx * sy > 0 ? [sx * (x - r), sy * y] : [sx * x, sy * (y - r)];
    return [{ at: a, via: [sx * (x - k), sy * (y - k)] }, { at: b }];
  };
  return [...corner(1, 1), ...corner(-1, 1), ...corner(-1, -1), ...corner(1, -1)];
}

/** How far a curve may swing out of its stock, mm: no more than a pencil line. */
const OUT = 0.05;
function free(part: ShapePart, set: ShapeSet, points: readonly Spot[]): ShapeMade | ShapeRefusal {
  const seen = seenAxis(part, set);
  const { low, high, from, to } = flatStock(part, seen);
  const held = ([x, y]: Vec2): Vec2 => [Math.min(high[0], Math.max(low[0], x)), Math.min(high[1], Math.max(low[1], y))];
  const far = (p: Vec2): number => Math.hypot(p[0] - held(p)[0], p[1] - held(p)[1]);
  if (points.length < 2 || (points.length < 3 && !points.every((p) => p.via)))
    return { ok: false, problem: 'an outline needs at least three points, or two with arcs.' };
  const strange = points.find((p) => p.by !== undefined && p.by !== 'curve');
  if (strange)
    return { ok: false, problem: `from a point of an outline one gets on straight, "via" a point or by "curve", not by "${strange.by}".` };
  const out = points.find((p) => far(p.at) > OUT || (p.via && far(p.via) > OUT));
  if (out) {
    const nearest = points.map((p): Spot => (p.via ? { ...p, at: held(p.at), via: held(p.via) } : { ...p, at: held(p.at) }));
    const problem = `a point of the outline lies ${far(far(out.at) > OUT ? out.at : (out.via ?? out.at)).toFixed(1)} mm outside the wood.`;
    return free(part, set, nearest).ok ? { ok: false, problem, nearest: { points: nearest } } : { ok: false, problem };
  }
  const loop = cornersOfWay(
    points.map((p) => ({ at: p.at, ...(p.via ? { via: p.via } : {}), ...(p.by === 'curve' ? { smooth: true } : {}) })),
    true,
  );
  const chords = loopPoints(loop, 64).points;
  const swings = chords.reduce((w, p) => (far(p) > far(w) ? p : w), chords[0] as Vec2);
  if (far(swings) > OUT)
    return {
      ok: false,
      problem: `the curve swings ${far(swings).toFixed(1)} mm out of the wood near ${spot(swings)}: give it a point more there, at the edge or inside.`,
    };
  if (chords.some((p, i) => same(p, chords[(i + 1) % chords.length] as Vec2)))
    return { ok: false, problem: 'two points of the outline are one.' };
  const crossing = crossingOf(chords);
  if (crossing) return { ok: false, problem: `the outline crosses or touches itself near ${spot(crossing)}.` };
  if (Math.abs(polygonArea(chords)) < 1) return { ok: false, problem: 'the outline encloses no wood.' };
  const feature: Feature = {
    name: 'outline',
    op: 'shape',
    why: 'shape',
    solid: {
      kind: 'prism',
      profile: [rectangle(low[0] - OVER, low[1] - OVER, high[0] + OVER, high[1] + OVER), loop],
      from: from - OVER,
      to: to + OVER,
    },
    at: flatFrame(seen),
    faces: Object.fromEntries(loop.map((_, i) => [`outline ${i + 1}`, { of: 'side', loop: 1, corner: i }])),
  };
  return { ok: true, features: [feature], says: says(part, seen, chords) };
}
const same = (a: Vec2, b: Vec2): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 2e-6;
const spot = (p: Vec2): string => `(${p[0].toFixed(1)}, ${p[1].toFixed(1)}) mm from the datum corner`;

/** The shortest fibre that a side of the outline cuts off; nothing where the grain runs the way that it is seen along. */
function says(part: ShapePart, seen: Axis, chords: readonly Vec2[]): ShapeSays[] {
  if (part.grain === seen) return [];
  const first = AXES.filter((k) => k !== seen)[0] === part.grain;
  const all = runOutAlong(chords, first ? [1, 0] : [0, 1]).filter((r) => r.angle < (80 * Math.PI) / 180);
  const steepest = Math.max(0, ...all.map((r) => r.angle));
  return [{ words: 'steepest run-out of the grain, ends left aside', value: (steepest * 180) / Math.PI, unit: 'deg' }];
}
