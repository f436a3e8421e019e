/** Hidden lines: what of a straight line is hidden by which triangles, worked out exactly, one pair at a time. */
import type { Vec3 } from '../geom/vec3.ts';
import { type Scene, type Triple, cornersOf } from './space.ts';

/** A line this much behind a face is hidden, mm: well above the noise of the meshes, well below what is drawn. */
const BEHIND = 0.02;
/** Faces reach this much over their rims, mm, so that nothing shines through where two triangles meet. */
const RIM = 0.002;
/** Stretches shorter than this are not drawn, mm. */
const SHORT = 0.05;

export type Stretch = readonly [from: number, to: number];
type Blocker = {
  readonly at: Triple;
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
  /** As near to the eye as any of it comes. */
  readonly near: number;
};
/** What hides: the triangles that look towards the eye, found by the place on the paper. */
export type Blockers = { readonly around: (x0: number, y0: number, x1: number, y1: number) => readonly Blocker[] };
/** Cells along the longer side of the paper. */
const CELLS = 48;

export function blockersOf(s: Scene): Blockers {
  const all = s.front.map((t): Blocker => {
    const at = cornersOf(s, t);
    const [xs, ys, zs] = [0, 1, 2].map((k) => at.map((p) => p[k as 0 | 1 | 2])) as [number[], number[], number[]];
    return { at, low: [Math.min(...xs), Math.min(...ys)], high: [Math.max(...xs), Math.max(...ys)], near: Math.max(...zs) };
  });
  const ends = (k: 0 | 1): [number, number] => [Math.min(0, ...all.map((b) => b.low[k])), Math.max(0, ...all.map((b) => b.high[k]))];
  const [[x, right], [y, top]] = [ends(0), ends(1)];
  const cell = Math.max(right - x, top - y, 1) / CELLS;
  const cells = new Map<number, Blocker[]>();
  const each = (x0: number, y0: number, x1: number, y1: number, act: (cell: number) => void): void => {
    for (let i = Math.floor((x0 - RIM - x) / cell); i <= Math.floor((x1 + RIM - x) / cell); i++)
      for (let j = Math.floor((y0 - RIM - y) / cell); j <= Math.floor((y1 + RIM - y) / cell); j++) act(i * 1000 + j);
  };
  for (const b of all)
    each(b.low[0], b.low[1], b.high[0], b.high[1], (c) => {
      const here = cells.get(c);
      if (here) here.push(b);
      else cells.set(c, [b]);
    });
  return {
    around: (x0, y0, x1, y1) => {
      let one: readonly Blocker[] = [];
      let many: Set<Blocker> | null = null;
      each(x0, y0, x1, y1, (c) => {
        const here = cells.get(c);
        if (!here) return;
        if (one.length === 0 && !many) one = here;
        else {
          many ??= new Set(one);
          for (const b of here) many.add(b);
        }
      });
      return many ? [...many] : one;
    },
  };
}

/** The stretches of the line from a to b that the eye sees, as shares of its length, in order. */
export function seenOf(a: Vec3, b: Vec3, blockers: Blockers): Stretch[] {
  const far = Math.min(a[2], b[2]);
  const [x0, x1] = a[0] < b[0] ? [a[0], b[0]] : [b[0], a[0]];
  const [y0, y1] = a[1] < b[1] ? [a[1], b[1]] : [b[1], a[1]];
  const hidden: Stretch[] = [];
  for (const t of blockers.around(x0, y0, x1, y1)) {
    if (t.near <= far + BEHIND || t.low[0] >= x1 + RIM || t.high[0] <= x0 - RIM || t.low[1] >= y1 + RIM || t.high[1] <= y0 - RIM) continue;
    const h = hiddenBy(a, b, t.at);
    if (h) hidden.push(h);
  }
  const long = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return without(hidden).filter(([from, to]) => (to - from) * long > SHORT);
}
/** The stretch behind one triangle; null when there is none. */
function hiddenBy(a: Vec3, b: Vec3, [p, q, r]: Triple): Stretch | null {
  let [from, to] = [0, 1];
  // Inside each side of the triangle (corners counter-clockwise as the eye has them), and behind its plane: four lines in one number.
  const keep = (atStart: number, atEnd: number): boolean => {
    if (atStart <= 0 && atEnd <= 0) return false;
    if (atStart < 0) from = Math.max(from, atStart / (atStart - atEnd));
    else if (atEnd < 0) to = Math.min(to, atStart / (atStart - atEnd));
    return from < to;
  };
  for (const [c, d] of [
    [p, q],
    [q, r],
    [r, p],
  ] as const) {
    const [dx, dy] = [d[0] - c[0], d[1] - c[1]];
    const long = Math.hypot(dx, dy);
    if (long < 1e-9) return null;
    const side = (v: Vec3): number => (dx * (v[1] - c[1]) - dy * (v[0] - c[0])) / long + RIM;
    if (!keep(side(a), side(b))) return null;
  }
  const depth = planeDepth(p, q, r);
  return depth && keep(depth(a) - a[2] - BEHIND, depth(b) - b[2] - BEHIND) ? [from, to] : null;
}
/** Whether a place is behind any face. */
export const isHidden = (p: Vec3, blockers: Blockers): boolean =>
  blockers
    .around(p[0], p[1], p[0], p[1])
    .some((t) => t.near > p[2] + BEHIND && t.low[0] < p[0] && t.high[0] > p[0] && t.low[1] < p[1] && t.high[1] > p[1] && covers(t.at, p));
function covers([p, q, r]: Triple, v: Vec3): boolean {
  const left = (c: Vec3, d: Vec3): boolean => (d[0] - c[0]) * (v[1] - c[1]) - (d[1] - c[1]) * (v[0] - c[0]) >= 0;
  return left(p, q) && left(q, r) && left(r, p) && (planeDepth(p, q, r)?.(v) ?? -Infinity) > v[2] + BEHIND;
}
/** Places spread evenly over a triangle, as many as `steps` times the half of one more. */
export function samplesOf([a, b, c]: Triple, steps: number): Vec3[] {
  const out: Vec3[] = [];
  for (let i = 0; i < steps; i++)
    for (let j = 0; j < steps - i; j++) {
      const [u, v] = [(i + 1 / 3) / steps, (j + 1 / 3) / steps];
      const at = (k: 0 | 1 | 2): number => a[k] + u * (b[k] - a[k]) + v * (c[k] - a[k]);
      out.push([at(0), at(1), at(2)]);
    }
  return out;
}
/** How near the plane of a triangle is to the eye over a place on the paper. */
export function planeDepth(p: Vec3, q: Vec3, r: Vec3): ((v: readonly [number, number, ...number[]]) => number) | null {
  const [ux, uy, uz] = [q[0] - p[0], q[1] - p[1], q[2] - p[2]];
  const [vx, vy, vz] = [r[0] - p[0], r[1] - p[1], r[2] - p[2]];
  const area = ux * vy - uy * vx;
  if (Math.abs(area) < 1e-9) return null;
  const [kx, ky] = [(uz * vy - uy * vz) / area, (ux * vz - uz * vx) / area];
  return (v) => p[2] + kx * (v[0] - p[0]) + ky * (v[1] - p[1]);
}
/** What is left of 0…1 without these stretches. */
function without(hidden: readonly Stretch[]): Stretch[] {
  const out: Stretch[] = [];
  let at = 0;
  for (const [from, to] of [...hidden].sort((a, b) => a[0] - b[0])) {
    if (from > at) out.push([at, from]);
    at = Math.max(at, to);
  }
  if (at < 1) out.push([at, 1]);
  return out;
}
