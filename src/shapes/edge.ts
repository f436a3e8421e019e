/**
 * A cut along edges of a part, whole length or stopped: chamfer, round-over, cove, ogee, bead, groove, rabbet.
 *
 *            x (across the first face, into the wood)
 *      corner ──────────▶ w          z runs along the edge, low end to high
 *        │ ╲  what goes  ╱
 *      y │    ╲       ╱              a run-out at a stop: square (chopped), ramp (lifted out over `run`),
 *        ▼ d     ╲_╱                 round (as a cutter with its axis square to the first face leaves it)
 */
import { sizeOf } from '../geom/box.ts';
import type { Frame } from '../geom/frame.ts';
import { type Corner, type Loop, arcThrough } from '../geom/loop.ts';
import { type Axis, type Vec2, type Vec3, axisVec } from '../geom/vec3.ts';
import type { ShapeField } from '../model/catalog.ts';
import { type Face, faceSide } from '../model/ids.ts';
import type { FaceRef, Feature } from '../model/record.ts';
import { LEAVE, type Limits, limitsOf } from './limits.ts';
import { type Edge, type ShapeMade, type ShapePart, type ShapeRefusal, type ShapeSays, type ShapeSet, edgesIn, lengthIn } from './shape.ts';

const OVER = 5;
const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** How much of the two faces of an edge a cut may take, mm. */
export type Room = { readonly width: number; readonly depth: number };
/** A section of the cut: its curve from the first face (y = 0) round to the second (x = 0), or back to the first. */
export type Section = {
  readonly curve: readonly Corner[];
  readonly width: number;
  readonly depth: number;
  /** Which way a tool is lifted out of the wood at a ramp. */
  readonly lift: Vec2;
  /** Where a round cutter's axis stands when it cuts a groove; null where it runs along the edge on a guide. */
  readonly axis: number | null;
  readonly names: readonly string[];
  readonly says?: readonly ShapeSays[];
};
/** Of an edge cut only the section differs. `full`: two such cuts may meet without leaving a flat between them. */
export type EdgeCut = {
  readonly name: string;
  readonly full?: boolean;
  readonly round?: boolean;
  readonly section: (room: Room, limits: Limits) => Section;
};

export const EDGE_PARAMS = {
  edges: { kind: 'edges', words: 'edges, each named by its two faces or marks ("top front"); widths run across the first' },
  stop_low: { kind: 'length', words: 'left uncut at the left, front or bottom end' },
  stop_high: { kind: 'length', words: 'left uncut at the right, back or top end' },
  runout: {
    kind: 'choice',
    words: 'how the cut runs out where it stops',
    options: { square: 'square, chopped', ramp: 'lifted out in a slope', round: 'round, as the cutter leaves it' },
  },
  run: { kind: 'length', words: 'length of the run-out' },
} as const satisfies Readonly<Record<string, ShapeField>>;

/** The frame of an edge: its corner at 0 along the edge, x and y into the wood, z along the edge. It may be left-handed. */
function edgeFrame(part: ShapePart, [a, b]: Edge): { at: Frame; along: 0 | 1 | 2; from: number; to: number } {
  const [sa, sb] = [faceSide(a), faceSide(b)];
  const along = (3 - sa.axis - sb.axis) as 0 | 1 | 2;
  const o: [number, number, number] = [0, 0, 0];
  for (const s of [sa, sb]) o[s.axis] = (s.high ? part.stock.max : part.stock.min)[s.axis];
  const inward = (s: typeof sa): Vec3 => axisVec(s.quad.axis, s.high ? -1 : 1);
  return {
    at: { o, x: inward(sb), y: inward(sa), z: axisVec(AXES[along] ?? 'x') },
    along,
    from: part.stock.min[along],
    to: part.stock.max[along],
  };
}

/** Cuts every edge alike; refuses what would leave nothing, with what would do. */
export function cutEdges(part: ShapePart, set: ShapeSet, cut: EdgeCut): ShapeMade | ShapeRefusal {
  const limits = limitsOf(set);
  const edges = soundEdges(edgesIn(set, 'edges'), limits);
  const first = edges[0];
  if (!first) return limits.refusal() ?? { ok: false, problem: `${cut.name}: at least one edge is needed.` };
  const section = cut.section(roomOf(part, edges, cut.full ?? false), limits);
  const stops = stopsOf(part, edges, set, section, cut, limits);
  const refused = limits.refusal();
  if (refused) return refused;
  return {
    ok: true,
    features: edges.flatMap((e) => alongEdge(part, e, cut.name, section, stops)),
    ...(section.says ? { says: section.says } : {}),
  };
}
function soundEdges(given: readonly Edge[], limits: Limits): readonly Edge[] {
  const seen = new Set<string>();
  const good = given.filter(([a, b]) => {
    const key = [a, b].sort().join(' ');
    return faceSide(a).axis !== faceSide(b).axis && !seen.has(key) && seen.add(key);
  });
  const bad = given.find(([a, b]) => faceSide(a).axis === faceSide(b).axis);
  if (bad) limits.wrong(`"${bad[0]}" and "${bad[1]}" do not meet in an edge.`, good.length ? { edges: good } : undefined);
  if (given.length === 0) limits.wrong('at least one edge is needed, such as "top front".');
  return good;
}
/** How much may go from each face: half of it where another edge along the same way is cut too, else all but a little. */
function roomOf(part: ShapePart, edges: readonly Edge[], full: boolean): Room {
  const size = sizeOf(part.stock);
  const way = (e: Edge): number => 3 - faceSide(e[0]).axis - faceSide(e[1]).axis;
  const of = (e: Edge, face: Face): number => {
    const whole = size[faceSide(face).axis];
    const paired = edges.some((o) => o !== e && way(o) === way(e));
    return paired ? (full ? whole / 2 : (whole - LEAVE) / 2) : whole - LEAVE;
  };
  return { width: Math.min(...edges.map((e) => of(e, e[1]))), depth: Math.min(...edges.map((e) => of(e, e[0]))) };
}

type Stops = { readonly low: number; readonly high: number; readonly runout: string; readonly run: number };
function stopsOf(part: ShapePart, edges: readonly Edge[], set: ShapeSet, s: Section, cut: EdgeCut, limits: Limits): Stops {
  const size = sizeOf(part.stock);
  const long = Math.min(...edges.map((e) => size[(3 - faceSide(e[0]).axis - faceSide(e[1]).axis) as 0]));
  const options = cut.round === false ? ['square', 'ramp'] : ['square', 'ramp', 'round'];
  const ends = [lengthIn(set, 'stop_low') ?? 0, lengthIn(set, 'stop_high') ?? 0].filter((n) => n > 0).length;
  const runout = limits.choice('runout', 'the run-out', options);
  // A groove's cutter leaves half its own width; a guided one at least the width of the cut.
  const own = s.axis === null ? s.width : s.width / 2;
  const least = runout === 'round' ? own : LEAVE;
  const most = (long - LEAVE) / Math.max(1, ends);
  const fixed = runout === 'square' || ends === 0;
  const run = fixed
    ? 0
    : runout === 'round' && s.axis !== null
      ? own
      : limits.length('run', 'the run-out', least, most, Math.min(most, Math.max(least, 2 * s.width)));
  const spare = long - LEAVE - run * ends;
  const low = limits.length('stop_low', 'the length left uncut', 0, Math.max(0, spare), 0);
  const high = limits.length('stop_high', 'the length left uncut', 0, Math.max(0, spare - low), 0);
  // Cuts that stop short of a corner where others run past it would leave a crumb standing there by itself.
  const clear = Math.max(s.width, s.depth) + LEAVE;
  const meet = new Set(edges.map((e) => 3 - faceSide(e[0]).axis - faceSide(e[1]).axis)).size > 1;
  const near = [low, high].some((n) => n > 0 && n < clear);
  if (meet && near)
    limits.wrong(
      `where cut edges meet in a corner, a cut goes through or stops at least ${clear.toFixed(1)} mm before it.`,
      Object.fromEntries(Object.entries({ stop_low: low, stop_high: high }).map(([k, n]) => [k, n < clear ? 0 : n])),
    );
  return { low, high, runout, run };
}

/** The section as a closed loop: its curve, and then out past the faces. */
function loopOf(s: Section, by: Vec2 = [0, 0]): Loop {
  const first = s.curve[0]?.at ?? [0, 0];
  const last = s.curve.at(-1)?.at ?? [0, 0];
  const back: readonly Vec2[] =
    last[0] === 0
      ? [
          [-OVER, last[1]],
          [-OVER, -OVER],
          [first[0], -OVER],
        ]
      : [
          [last[0], -OVER],
          [first[0], -OVER],
        ];
  const shift = ([x, y]: Vec2): Vec2 => [x + by[0], y + by[1]];
  return [...s.curve, ...back.map((at): Corner => ({ at }))].map((c) =>
    c.via ? { at: shift(c.at), via: shift(c.via) } : { at: shift(c.at) },
  );
}
/** How far the section must be lifted until it is clear of the wood: points of its curve with x and y above 0 count. */
function clearBy(s: Section): number {
  const over = ([x, y]: Vec2): readonly [number, number] => [
    s.lift[0] < 0 ? x / -s.lift[0] : Infinity,
    s.lift[1] < 0 ? y / -s.lift[1] : Infinity,
  ];
  const points = curvePoints(s.curve).map(over);
  let most = Math.max(...points.map((p) => Math.min(...p)));
  // Between two points the least of both is greatest where they are equal.
  points.forEach(([x, y], i) => {
    const [u, v] = points[i + 1] ?? [x, y];
    const k = (y - x) / (u - x - (v - y));
    if (k > 0 && k < 1) most = Math.max(most, x + k * (u - x));
  });
  return most;
}
function curvePoints(curve: readonly Corner[]): Vec2[] {
  return curve.flatMap((c, i): Vec2[] => {
    const next = curve[i + 1];
    const arc = c.via && next ? arcThrough(c.at, c.via, next.at) : null;
    if (!arc) return [c.at];
    return Array.from({ length: 65 }, (_, k): Vec2 => {
      const t = arc.from + (arc.sweep * k) / 64;
      return [arc.centre[0] + arc.r * Math.cos(t), arc.centre[1] + arc.r * Math.sin(t)];
    });
  });
}

function alongEdge(part: ShapePart, edge: Edge, word: string, s: Section, stops: Stops): Feature[] {
  const { at, from, to } = edgeFrame(part, edge);
  const name = `${word} ${edge.join(' ')}`;
  const faces: Record<string, FaceRef> = {};
  s.names.forEach((n, corner) => (faces[n] = { of: 'side', corner }));
  const [a, b] = [stops.low > 0 ? from + stops.low : from - OVER, stops.high > 0 ? to - stops.high : to + OVER];
  const run = stops.runout === 'square' ? 0 : stops.run;
  const [low, high] = [stops.low > 0 ? a + run : a, stops.high > 0 ? b - run : b];
  const feature = (more: string, solid: Feature['solid'], frame: Frame = at): Feature => ({
    name: more ? `${name} ${more}` : name,
    op: 'shape',
    why: 'shape',
    solid,
    at: frame,
    faces,
  });
  const out = [feature('', { kind: 'prism', profile: [loopOf(s)], from: low, to: high })];
  if (run === 0) return out;
  for (const end of ['low', 'high'] as const) {
    if (stops[end] <= 0) continue;
    const more = `run-out ${end}`;
    if (stops.runout === 'round') out.push(feature(more, turnedSection(s, run), cutterFrame(at, s, run, end === 'low' ? low : high)));
    else {
      const t = clearBy(s);
      const [full, clear] = [[loopOf(s)], [loopOf(s, [s.lift[0] * t, s.lift[1] * t])]];
      const [near, far] = end === 'low' ? [clear, full] : [full, clear];
      const span = end === 'low' ? { from: a, to: low } : { from: high, to: b };
      out.push(feature(more, { kind: 'prism', profile: near, profileTo: far, ...span }));
    }
  }
  return out;
}
/** How far the axis of a guided cutter stands outside the second face, so that its run-out is `run` long: its guide's radius. */
const guideOf = (s: Section, run: number): number => (s.axis === null ? Math.max(0, (run * run - s.width * s.width) / (2 * s.width)) : 0);
function cutterFrame(at: Frame, s: Section, run: number, z: number): Frame {
  const x = s.axis ?? -guideOf(s, run);
  const o = [0, 1, 2].map((i) => (at.o[i] ?? 0) + x * (at.x[i] ?? 0) + z * (at.z[i] ?? 0)) as unknown as Vec3;
  return { o, x: at.x, y: at.z, z: at.y };
}
/** The section turned round the cutter's axis: the half of it that lies outward. */
function turnedSection(s: Section, run: number): Feature['solid'] {
  const axis = s.axis ?? -guideOf(s, run);
  const outer = s.curve.filter((c) => c.at[0] >= axis - 1e-9);
  const curve = outer.map((c, i): Corner => {
    const at: Vec2 = [Math.max(0, c.at[0] - axis), c.at[1]];
    return c.via && i + 1 < outer.length ? { at, via: [c.via[0] - axis, c.via[1]] } : { at };
  });
  const [first, last] = [curve[0]?.at ?? [0, 0], curve.at(-1)?.at ?? [0, 0]];
  const tail: Vec2[] = last[0] > 0 ? [[0, last[1]]] : [];
  return { kind: 'turned', profile: [...curve, ...tail.map((at) => ({ at })), { at: [0, -OVER] }, { at: [first[0], -OVER] }] };
}
