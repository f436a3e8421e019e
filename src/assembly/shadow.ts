/** A part seen along a direction: its facets that look ahead and those that look back, projected square to it. */
import { type Vec3, cross, dot, unit } from '../geom/vec3.ts';
import { ALONG } from './tolerance.ts';

/** Projected facets, counter-clockwise in the (u, v) plane; w runs along the direction and is a·u + b·v + c over a facet. */
export type Facets = {
  readonly count: number;
  /** u v of three corners a facet. */
  readonly at: Float64Array;
  /** a b c a facet. */
  readonly plane: Float64Array;
  /** u low, v low, u high, v high, w low, w high a facet. */
  readonly box: Float64Array;
  /** The same six over all facets. */
  readonly hull: Float64Array;
  grid: Grid | null;
};
export type Shadow = { readonly ahead: Facets; readonly behind: Facets };
/** Facets by cell of a plain grid over the hull. */
export type Grid = {
  readonly cols: number;
  readonly rows: number;
  readonly start: Int32Array;
  readonly items: Int32Array;
  readonly seen: Int32Array;
  stamp: number;
};
export type Basis = readonly [Vec3, Vec3, Vec3];

/** A right-handed basis whose third axis is the unit direction; exact for the axes of the piece. */
export function basisAlong(d: Vec3): Basis {
  const axis = [0, 1, 2].find((i) => Math.abs(Math.abs(d[i] ?? 0) - 1) < 1e-12);
  if (axis !== undefined && (d[axis] ?? 0) > 0) {
    const e = (i: number): Vec3 => [i % 3 === 0 ? 1 : 0, i % 3 === 1 ? 1 : 0, i % 3 === 2 ? 1 : 0];
    return [e(axis + 1), e(axis + 2), e(axis)];
  }
  const low = Math.abs(d[0]) <= Math.abs(d[1]) && Math.abs(d[0]) <= Math.abs(d[2]) ? 0 : Math.abs(d[1]) <= Math.abs(d[2]) ? 1 : 2;
  const u = unit(cross(d, [low === 0 ? 1 : 0, low === 1 ? 1 : 0, low === 2 ? 1 : 0]));
  return [u, cross(d, u), d];
}
/** Splits the facets (nine numbers each) into those ahead and behind; those along the direction are left out. */
export function shadowOf(triangles: Float64Array, basis: Basis): Shadow {
  const seen = new Float64Array(triangles.length);
  for (let k = 0; k < triangles.length; k += 3) {
    const p: Vec3 = [triangles[k]!, triangles[k + 1]!, triangles[k + 2]!];
    for (let i = 0; i < 3; i++) seen[k + i] = dot(p, basis[i]!);
  }
  const ahead: number[] = [];
  const behind: number[] = [];
  for (let k = 0; k < seen.length; k += 9) {
    const lean = leanOf(seen, k);
    if (lean > ALONG) ahead.push(k);
    else if (lean < -ALONG) behind.push(k);
  }
  return { ahead: facetsOf(seen, ahead, false), behind: facetsOf(seen, behind, true) };
}
/** Cosine between the facet's normal and w; 0 for a facet without area. */
function leanOf(p: Float64Array, k: number): number {
  const [ax, ay, az] = [p[k + 3]! - p[k]!, p[k + 4]! - p[k + 1]!, p[k + 5]! - p[k + 2]!];
  const [bx, by, bz] = [p[k + 6]! - p[k]!, p[k + 7]! - p[k + 1]!, p[k + 8]! - p[k + 2]!];
  const nz = ax * by - ay * bx;
  const size = Math.hypot(ay * bz - az * by, az * bx - ax * bz, nz);
  return size > 1e-12 ? nz / size : 0;
}
function facetsOf(p: Float64Array, which: readonly number[], turn: boolean): Facets {
  const count = which.length;
  const out: Facets = {
    count,
    at: new Float64Array(6 * count),
    plane: new Float64Array(3 * count),
    box: new Float64Array(6 * count),
    hull: new Float64Array([Infinity, Infinity, -Infinity, -Infinity, Infinity, -Infinity]),
    grid: null,
  };
  which.forEach((k, n) => {
    const [q, r] = turn ? [k + 6, k + 3] : [k + 3, k + 6];
    out.at.set([p[k]!, p[k + 1]!, p[q]!, p[q + 1]!, p[r]!, p[r + 1]!], 6 * n);
    const [bx, by, bz] = [p[q]! - p[k]!, p[q + 1]! - p[k + 1]!, p[q + 2]! - p[k + 2]!];
    const [cx, cy, cz] = [p[r]! - p[k]!, p[r + 1]! - p[k + 1]!, p[r + 2]! - p[k + 2]!];
    const nz = bx * cy - by * cx;
    const a = (bz * cy - by * cz) / nz;
    const b = (bx * cz - bz * cx) / nz;
    out.plane.set([a, b, p[k + 2]! - a * p[k]! - b * p[k + 1]!], 3 * n);
    const low = (i: number): number => Math.min(p[k + i]!, p[q + i]!, p[r + i]!);
    const high = (i: number): number => Math.max(p[k + i]!, p[q + i]!, p[r + i]!);
    const box = [low(0), low(1), high(0), high(1), low(2), high(2)];
    out.box.set(box, 6 * n);
    [Math.min, Math.min, Math.max, Math.max, Math.min, Math.max].forEach((f, i) => (out.hull[i] = f(out.hull[i]!, box[i]!)));
  });
  return out;
}
/** The grid over the facets, made on first use. */
export function gridOf(f: Facets): Grid {
  f.grid ??= makeGrid(f);
  return f.grid;
}
function makeGrid(f: Facets): Grid {
  const side = Math.max(1, Math.min(64, Math.floor(Math.sqrt(f.count))));
  const grid = { cols: side, rows: side };
  const count = new Int32Array(side * side + 1);
  const each = (visit: (cell: number, n: number) => void): void => {
    for (let n = 0; n < f.count; n++) {
      const [c0, r0, c1, r1] = cellsUnder(f.hull, grid, f.box[6 * n]!, f.box[6 * n + 1]!, f.box[6 * n + 2]!, f.box[6 * n + 3]!);
      for (let r = r0; r <= r1; r++) for (let c = c0; c <= c1; c++) visit(r * side + c, n);
    }
  };
  each((cell) => count[cell + 1]!++);
  for (let k = 0; k < side * side; k++) count[k + 1] = count[k + 1]! + count[k]!;
  const next = count.slice();
  const items = new Int32Array(count[side * side]!);
  each((cell, n) => (items[next[cell]!++] = n));
  return { ...grid, start: count, items, seen: new Int32Array(f.count), stamp: 0 };
}
/** First and last column and row under a rectangle, kept inside the grid. */
export function cellsUnder(
  hull: Float64Array,
  grid: { readonly cols: number; readonly rows: number },
  u0: number,
  v0: number,
  u1: number,
  v1: number,
): readonly [number, number, number, number] {
  const col = (u: number): number =>
    Math.max(0, Math.min(grid.cols - 1, Math.floor(((u - hull[0]!) / (hull[2]! - hull[0]! || 1)) * grid.cols)));
  const row = (v: number): number =>
    Math.max(0, Math.min(grid.rows - 1, Math.floor(((v - hull[1]!) / (hull[3]! - hull[1]! || 1)) * grid.rows)));
  return [col(u0), row(v0), col(u1), row(v1)];
}
