import { cornersOfWay } from '../geom/curve.ts';
import { crossingOf } from '../geom/crossing.ts';
import { type Corner, type Loop, circle, loopPoints } from '../geom/loop.ts';
import type { Vec2 } from '../geom/vec3.ts';
import { OVER } from './flat.ts';
import { LEAST, limitsOf } from './limits.ts';
import { outside, sectionFrame } from './section.ts';
import { type ShapeKind, type ShapeMade, type ShapePart, type ShapeRefusal, type ShapeSet, type Spot, onePart, spotsIn } from './shape.ts';

const leg = { wood: 'ash', grain: 'z', left: '0', width: '40', front: '0', depth: '40', bottom: '0', height: '400' };

/**
 * A part turned round along its grain: to one diameter, or to a list of diameters along it. Where the list does not reach, the stock stays
 * square (a pommel). Between two entries runs a straight line, an arc "via" a spot, a smooth "curve", a "bead" or a "cove".
 */
export const turnedRound: ShapeKind = {
  id: 'turned',
  version: 1,
  title: 'Turned',
  words: 'Turns a part round along its grain: to one diameter, or with tapers, beads and coves between square ends.',
  params: {
    diameter: { kind: 'length', words: 'diameter' },
    profile: {
      kind: 'points',
      on: 'turned',
      words: 'places along the grain with their diameters, low end first; "by" leads on to the next: "bead", "cove" or "curve"',
    },
  },
  required: [],
  make: (part, set) => {
    const profile = spotsIn(set, 'profile');
    if (profile.length === 0) return plain(part, set);
    if (set['diameter'] !== undefined) return { ok: false, problem: 'a turning has one diameter or a list of them, not both.' };
    return along(part, profile);
  },
  examples: [
    {
      name: 'turned spindle',
      words: 'A square stick turned round, as thick as it allows.',
      document: onePart('Spindle', 'leg', { ...leg, shape: [{ as: 'turned@1' }] }),
      removed: { leg: (1600 - Math.PI * 400) * 400 },
      planar: false,
    },
    {
      name: 'turned leg',
      words: 'A leg that stays square above; below it a bead, a cove and a taper to the foot.',
      document: onePart('Turned leg', 'leg', {
        ...leg,
        shape: [
          {
            as: 'turned@1',
            profile: [
              ['leg.bottom', '24'],
              { at: ['240', '32'] },
              { at: ['260', '32'], by: 'cove' },
              { at: ['276', '32'] },
              { at: ['280', '32'], by: 'bead' },
              { at: ['288', '32'] },
              ['300', '32'],
            ],
          },
        ],
      }),
      // Square stock over 300; what stays: a frustum of 12 and 16 over 240, rounds of 16, a half-round hollow of 8 and a half-round bead of 4,
      // which take and give (Pappus: area pi r² / 2 at 16 - 4 r / 3 pi and 16 + 4 r / 3 pi from the axis, once round).
      removed: {
        leg:
          1600 * 300 -
          ((Math.PI * 240) / 3) * (144 + 256 + 192) -
          Math.PI * 256 * 60 +
          2 * Math.PI * (16 - 32 / (3 * Math.PI)) * ((Math.PI * 64) / 2) -
          2 * Math.PI * (16 + 16 / (3 * Math.PI)) * ((Math.PI * 16) / 2),
      },
      planar: false,
    },
  ],
};

function plain({ stock, grain }: ShapePart, set: ShapeSet): ShapeMade | ShapeRefusal {
  const { half } = sectionFrame(stock, grain);
  const most = 2 * Math.min(half[0], half[1]);
  const limits = limitsOf(set);
  const d = limits.length('diameter', `what is turned out of stock ${most.toFixed(2)} mm thick`, 2 * LEAST, most, most);
  return limits.refusal() ?? { ok: true, features: [outside('turning', stock, grain, circle(0, 0, d / 2))] };
}

const WAYS = ['curve', 'bead', 'cove'];
function along(part: ShapePart, given: readonly Spot[]): ShapeMade | ShapeRefusal {
  const s = sectionFrame(part.stock, part.grain);
  const most = 2 * Math.min(s.half[0], s.half[1]);
  const limits = limitsOf({});
  const strange = given.find((p) => p.by !== undefined && !WAYS.includes(p.by));
  if (strange) return { ok: false, problem: `a turning goes on straight, by "bead", "cove" or "curve", not by "${strange.by}".` };
  if (given.length < 2) return { ok: false, problem: 'a turned profile needs at least two diameters.' };
  const held = given.map((p): Spot => ({ ...p, at: [clamp(p.at[0], s.from, s.to), clamp(p.at[1], 2 * LEAST, most)] }));
  // In order along the grain; two at one place make a shoulder.
  const ordered = held.map((p, i): Spot => ({ ...p, at: [Math.max(p.at[0], ...held.slice(0, i).map((q) => q.at[0])), p.at[1]] }));
  if ((ordered.at(-1)?.at[0] ?? 0) - (ordered[0]?.at[0] ?? 0) < LEAST)
    return { ok: false, problem: 'the profile has no length along the grain.' };
  const far = (k: 0 | 1, to: readonly Spot[]): number =>
    given.findIndex((p, i) => Math.abs(p.at[k] - (to[i]?.at[k] ?? 0)) > 1e-6 || !Number.isFinite(p.at[k]));
  const [thick, off, back] = [far(1, held), far(0, held), far(0, ordered)];
  const nearest = thick + off + back > -3 && along(part, ordered).ok ? { profile: ordered } : undefined;
  if (thick >= 0)
    limits.wrong(
      `a diameter of ${given[thick]?.at[1].toFixed(2)} mm does not come out of stock ${most.toFixed(2)} mm thick; it must lie between ${2 * LEAST} and ${most.toFixed(2)} mm.`,
      nearest,
    );
  else if (off >= 0)
    limits.wrong(`the profile leaves the part: it runs from ${s.from.toFixed(1)} to ${s.to.toFixed(1)} mm from the datum corner.`, nearest);
  else if (back >= 0) limits.wrong('the places of a turned profile must follow each other from the low end up.', nearest);
  const refused = limits.refusal();
  if (refused) return refused;
  const curve = curveOf(given);
  const bad = curveFlaw(curve, s, most / 2);
  if (bad) return { ok: false, problem: bad };
  return {
    ok: true,
    features: [
      {
        name: 'turning',
        op: 'shape',
        why: 'shape',
        solid: { kind: 'turned', profile: ring(curve, s, Math.hypot(...s.half) + OVER) },
        at: s.at,
        faces: Object.fromEntries(curve.slice(0, -1).map((_, i) => [`turning ${i + 1}`, { of: 'side', corner: i }])),
      },
    ],
  };
}
const clamp = (v: number, low: number, high: number): number => (Number.isFinite(v) ? Math.min(high, Math.max(low, v)) : high);

/** The profile as corners of radius and height. Beads and coves are two arcs each, so that their thickest and thinnest spot is a corner. */
function curveOf(given: readonly Spot[]): Corner[] {
  const way = given.flatMap((p, i) => {
    const at: Vec2 = [p.at[1] / 2, p.at[0]];
    const next = given[i + 1];
    const to: Vec2 | null = next ? [next.at[1] / 2, next.at[0]] : null;
    if (to && (p.by === 'bead' || p.by === 'cove')) return swollen(at, to, p.by === 'bead' ? 1 : -1);
    if (p.via && to) return [{ at, via: [p.via[1] / 2, p.via[0]] as Vec2 }];
    return [p.by === 'curve' ? { at, smooth: true } : { at }];
  });
  return cornersOfWay(way, false);
}
/**
 * A bead (+1) or cove (-1) over a chord: half a circle between equal diameters, a quarter between unequal ones as far apart as they are
 * long, never so much that it hangs over: a gouge would not get in.
 */
function swollen(a: Vec2, b: Vec2, way: 1 | -1): { at: Vec2; via?: Vec2 }[] {
  const c: Vec2 = [b[0] - a[0], b[1] - a[1]];
  const half = Math.PI / 2 - Math.atan2(Math.abs(c[0]), c[1]);
  if (half < 1e-6) return [{ at: a }];
  const chord = Math.hypot(c[0], c[1]);
  // Out of the wood from the chord, low end to high.
  const out: Vec2 = [(way * c[1]) / chord, (-way * c[0]) / chord];
  const r = chord / 2 / Math.sin(half);
  const centre: Vec2 = [(a[0] + b[0]) / 2 - out[0] * r * Math.cos(half), (a[1] + b[1]) / 2 - out[1] * r * Math.cos(half)];
  const on = (turn: number): Vec2 => {
    const [s, t] = [Math.sin(turn) / chord, Math.cos(turn)];
    return [centre[0] + r * (out[0] * t + c[0] * s), centre[1] + r * (out[1] * t + c[1] * s)];
  };
  return [
    { at: a, via: on(-half / 2) },
    { at: on(0), via: on(half / 2) },
  ];
}
type Section = ReturnType<typeof sectionFrame>;
/** What goes: all outside the curve, and past the ends of the part where the curve reaches them. */
function ring(curve: readonly Corner[], s: Section, far: number): Loop {
  const [first, last] = [curve[0]?.at ?? [0, 0], curve.at(-1)?.at ?? [0, 0]];
  const low = first[1] <= s.from + 1e-6;
  const high = last[1] >= s.to - 1e-6;
  return [
    ...curve,
    ...(high ? [{ at: [last[0], s.to + OVER] as Vec2 }] : []),
    { at: [far, high ? s.to + OVER : last[1]] },
    { at: [far, low ? s.from - OVER : first[1]] },
    ...(low ? [{ at: [first[0], s.from - OVER] as Vec2 }] : []),
  ];
}
/** The curve alone, its arcs as chords: closed for the reading by a line that adds no point. */
const curvePoints = (curve: readonly Corner[]): readonly Vec2[] => loopPoints(curve, 64).points;
function curveFlaw(curve: readonly Corner[], s: Section, most: number): string | null {
  const { points } = loopPoints(ring(curve, s, 2 * most + 2 * OVER + s.half[0] + s.half[1]), 64);
  if (points.some((p, i) => p.join() === points[(i + 1) % points.length]?.join())) return 'two entries of the turned profile are one.';
  const inner = points.filter((p) => p[1] >= s.from && p[1] <= s.to);
  const thin = Math.min(...inner.map((p) => p[0]));
  const thick = Math.max(...curvePoints(curve).map((p) => p[0]));
  if (thick > most + 1e-4) return `the profile swells to ${(2 * thick).toFixed(2)} mm, but the stock is ${(2 * most).toFixed(2)} mm thick.`;
  if (thin < LEAST) return `a hollow goes through the middle: the thinnest spot must be at least ${2 * LEAST} mm thick.`;
  const crossing = crossingOf(points);
  return crossing ? `the profile crosses or touches itself near ${crossing[1].toFixed(1)} mm from the datum corner.` : null;
}
