/**
 * The exact pair test on extended motion. On every line along the direction, what is last of the mover is a facet that looks
 * ahead and what is first of the obstacle one that looks back; the two lap in the projection and the obstacle's lies ahead if
 * and only if the mover runs into it. Facets along the direction take no part: sliding is free, and so is a tight tenon.
 */
import type { Vec3 } from '../geom/vec3.ts';
import { clipTriangles, clipped, measureClip } from './clip.ts';
import { type Facets, type Shadow, cellsUnder, gridOf } from './shadow.ts';
import { LAP_AREA, SLIP } from './tolerance.ts';

/** Where the mover stands off the place it was drawn in, in the basis of the shadows (u, v, w). */
export type Shift = Vec3;
const HERE: Shift = [0, 0, 0];
/** From this many pairs of facets on, a grid pays. */
const GRID_FROM = 1500;

/** Does `mover`, going ahead up to `travel`, run into `other`? */
export function runsInto(mover: Shadow, other: Shadow, shift: Shift = HERE, travel = Infinity): boolean {
  const a = mover.ahead;
  const b = other.behind;
  if (!mayLap(a, b, shift)) return false;
  if (b.hull[5]! < a.hull[4]! + shift[2] - SLIP || b.hull[4]! > a.hull[5]! + shift[2] + travel) return false;
  let area = 0;
  eachLap(a, b, shift, (i, j) => {
    if (b.box[6 * j + 5]! - a.box[6 * i + 4]! - shift[2] < -SLIP || b.box[6 * j + 4]! - a.box[6 * i + 5]! - shift[2] > travel - SLIP)
      return false;
    const lap = lapOf(a, i, b, j, shift);
    if (lap && lap.middle >= -SLIP && lap.low < travel - SLIP) area += lap.area;
    return area > LAP_AREA;
  });
  return area > LAP_AREA;
}
/** How far `mover` can go ahead until it touches `other`, mm; Infinity when it never does. */
export function freeTravel(mover: Shadow, other: Shadow, shift: Shift = HERE): number {
  const a = mover.ahead;
  const b = other.behind;
  if (!mayLap(a, b, shift)) return Infinity;
  let area = 0;
  let free = Infinity;
  eachLap(a, b, shift, (i, j) => {
    const lap = lapOf(a, i, b, j, shift);
    if (!lap || lap.middle < -SLIP) return false;
    area += lap.area;
    free = Math.min(free, Math.max(0, lap.low));
    return false;
  });
  return area > LAP_AREA ? free : Infinity;
}
/**
 * How far `mover` must go ahead until, on every line along the direction, all of it lies ahead of all of `other`, mm.
 * -Infinity where no line meets both; 0 or less where it is clear already.
 */
export function exitTravel(mover: Shadow, other: Shadow, shift: Shift = HERE): number {
  const a = mover.behind;
  const b = other.ahead;
  if (!mayLap(a, b, shift)) return -Infinity;
  let far = -Infinity;
  eachLap(a, b, shift, (i, j) => {
    if (b.box[6 * j + 5]! - a.box[6 * i + 4]! - shift[2] <= far) return false;
    const lap = lapOf(a, i, b, j, shift);
    if (lap) far = Math.max(far, lap.high);
    return false;
  });
  return far;
}

function mayLap(a: Facets, b: Facets, s: Shift): boolean {
  const p = a.hull;
  const q = b.hull;
  return p[0]! + s[0] < q[2]! - SLIP && q[0]! < p[2]! + s[0] - SLIP && p[1]! + s[1] < q[3]! - SLIP && q[1]! < p[3]! + s[1] - SLIP;
}
/** Visits pairs of facets whose rectangles lap, until `visit` says enough. */
function eachLap(a: Facets, b: Facets, s: Shift, visit: (i: number, j: number) => boolean): void {
  const grid = a.count * b.count > GRID_FROM ? gridOf(b) : null;
  for (let i = 0; i < a.count; i++) {
    const u0 = a.box[6 * i]! + s[0];
    const v0 = a.box[6 * i + 1]! + s[1];
    const u1 = a.box[6 * i + 2]! + s[0];
    const v1 = a.box[6 * i + 3]! + s[1];
    const h = b.hull;
    if (u0 >= h[2]! || h[0]! >= u1 || v0 >= h[3]! || h[1]! >= v1) continue;
    const laps = (j: number): boolean => u0 < b.box[6 * j + 2]! && b.box[6 * j]! < u1 && v0 < b.box[6 * j + 3]! && b.box[6 * j + 1]! < v1;
    if (!grid) {
      for (let j = 0; j < b.count; j++) if (laps(j) && visit(i, j)) return;
      continue;
    }
    const stamp = ++grid.stamp;
    const [c0, r0, c1, r1] = cellsUnder(h, grid, u0, v0, u1, v1);
    for (let r = r0; r <= r1; r++)
      for (let c = c0; c <= c1; c++)
        for (let k: number = grid.start[r * grid.cols + c]!; k < grid.start[r * grid.cols + c + 1]!; k++) {
          const j = grid.items[k]!;
          if (grid.seen[j] === stamp) continue;
          grid.seen[j] = stamp;
          if (laps(j) && visit(i, j)) return;
        }
  }
}
/** The lap of two facets: its area, and how far facet j lies ahead of facet i at its middle, at least and at most. */
function lapOf(a: Facets, i: number, b: Facets, j: number, s: Shift): { area: number; middle: number; low: number; high: number } | null {
  const n = clipTriangles(a.at, 6 * i, s[0], s[1], b.at, 6 * j);
  if (n === 0) return null;
  const { area, width } = measureClip(n);
  if (width <= SLIP) return null;
  const p = clipped();
  const ku = b.plane[3 * j]! - a.plane[3 * i]!;
  const kv = b.plane[3 * j + 1]! - a.plane[3 * i + 1]!;
  const base = b.plane[3 * j + 2]! - a.plane[3 * i + 2]! - s[2] + a.plane[3 * i]! * s[0] + a.plane[3 * i + 1]! * s[1];
  let sum = 0;
  let low = Infinity;
  let high = -Infinity;
  for (let c = 0; c < n; c++) {
    const ahead = ku * p[2 * c]! + kv * p[2 * c + 1]! + base;
    sum += ahead;
    low = Math.min(low, ahead);
    high = Math.max(high, ahead);
  }
  return { area, middle: sum / n, low, high };
}
