import { type Vec2, quantise } from './vec3.ts';

/**
 * A closed outline in a plane, mm, counter-clockwise round its inside: corners in order; from a corner with `via` an arc runs
 * through that point to the next corner, else a straight line. A circle is two corners with two arcs.
 */
export type Corner = { readonly at: Vec2; readonly via?: Vec2 };
export type Loop = readonly Corner[];

export const polygon = (...points: Vec2[]): Loop => points.map((at) => ({ at }));
export const rectangle = (x0: number, y0: number, x1: number, y1: number): Loop => polygon([x0, y0], [x1, y0], [x1, y1], [x0, y1]);
export const circle = (x: number, y: number, r: number): Loop => [
  { at: [x + r, y], via: [x, y + r] },
  { at: [x - r, y], via: [x, y - r] },
];
/** A slot: two half circles of radius r joined by straight lines, its middle line from `a` to `b` (a ≠ b). */
export function slot(a: Vec2, b: Vec2, r: number): Loop {
  const l = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const u: Vec2 = [(b[0] - a[0]) / l, (b[1] - a[1]) / l];
  const n: Vec2 = [-u[1] * r, u[0] * r];
  return [
    { at: [a[0] - n[0], a[1] - n[1]] },
    { at: [b[0] - n[0], b[1] - n[1]], via: [b[0] + u[0] * r, b[1] + u[1] * r] },
    { at: [b[0] + n[0], b[1] + n[1]] },
    { at: [a[0] + n[0], a[1] + n[1]], via: [a[0] - u[0] * r, a[1] - u[1] * r] },
  ];
}
export type Arc = { readonly centre: Vec2; readonly r: number; readonly from: number; readonly sweep: number };
/** The arc from `a` through `via` to `b`; null when the three lie on one line. Angles in radians, sweep signed. */
export function arcThrough(a: Vec2, via: Vec2, b: Vec2): Arc | null {
  const d = 2 * (a[0] * (via[1] - b[1]) + via[0] * (b[1] - a[1]) + b[0] * (a[1] - via[1]));
  if (Math.abs(d) < 1e-9) return null;
  const sq = (p: Vec2): number => p[0] * p[0] + p[1] * p[1];
  const cx = (sq(a) * (via[1] - b[1]) + sq(via) * (b[1] - a[1]) + sq(b) * (a[1] - via[1])) / d;
  const cy = (sq(a) * (b[0] - via[0]) + sq(via) * (a[0] - b[0]) + sq(b) * (via[0] - a[0])) / d;
  const angle = (p: Vec2): number => Math.atan2(p[1] - cy, p[0] - cx);
  const turn = (x: number): number => ((x % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  const from = angle(a);
  const toVia = turn(angle(via) - from);
  const toEnd = turn(angle(b) - from);
  const sweep = toVia <= toEnd ? toEnd : toEnd - 2 * Math.PI;
  return { centre: [cx, cy], r: Math.hypot(a[0] - cx, a[1] - cy), from, sweep };
}
/** The most that a chord of an arc less than a half circle stands off it, mm: the flat arch of an apron takes a small part of a large circle. */
const OFF_ARC = 0.05;
/** Arcs that differ by the rounding of their points alone take as many chords: this share of a chord more is none. */
const SAME_ARC = 1e-4;
/** Chords of an arc that sweeps `sweep` radians when a whole circle takes `perCircle`: at least 2, the same for equal arcs wherever they lie. */
function chordsOf({ sweep, r }: Arc, perCircle: number): number {
  const turn = Math.abs(sweep);
  const plain = Math.max(2, Math.ceil((turn / (2 * Math.PI)) * perCircle - SAME_ARC));
  if (turn > Math.PI - 1e-6 || r <= OFF_ARC) return plain;
  return Math.min(4 * perCircle, Math.max(plain, Math.ceil(turn / (2 * Math.acos(1 - OFF_ARC / r)) - SAME_ARC)));
}

/** The loop as points, arcs as chords (`perCircle` to a whole turn); with, for each point, the corner whose edge starts there. */
export function loopPoints(loop: Loop, perCircle: number): { points: Vec2[]; edge: number[] } {
  const points: Vec2[] = [];
  const edge: number[] = [];
  loop.forEach((c, i) => {
    const next = loop[(i + 1) % loop.length];
    if (!next) return;
    points.push([quantise(c.at[0]), quantise(c.at[1])]);
    edge.push(i);
    const arc = c.via ? arcThrough(c.at, c.via, next.at) : null;
    if (!arc) return;
    const n = chordsOf(arc, perCircle);
    for (let k = 1; k < n; k++) {
      const t = arc.from + (arc.sweep * k) / n;
      points.push([quantise(arc.centre[0] + arc.r * Math.cos(t)), quantise(arc.centre[1] + arc.r * Math.sin(t))]);
      edge.push(i);
    }
  });
  return { points, edge };
}
/** Area of a plain polygon, mm², positive when counter-clockwise. */
export function polygonArea(points: readonly Vec2[]): number {
  let a = 0;
  points.forEach((p, i) => {
    const q = points[(i + 1) % points.length] ?? p;
    a += (p[0] * q[1] - q[0] * p[1]) / 2;
  });
  return a;
}
