/** Where two parts touch as drawn: patches of facing surfaces, and what a motion does to them. World frame, mm. */
import { type Box, growBox } from '../geom/box.ts';
import { type Vec3, add, cross, dot, length, scale, sub } from '../geom/vec3.ts';
import { clipTriangles, clipped, measureClip } from './clip.ts';
import { basisAlong } from './shadow.ts';
import { CONTACT_REACH, FACING, PATCH_AREA, SLIDES } from './tolerance.ts';

/** One flat patch: the normal out of the first part, area in mm², corners. */
export type Patch = { readonly normal: Vec3; readonly off: number; readonly area: number; readonly corners: readonly Vec3[] };

/** All patches between two parts. Surfaces that bite by up to half the reach count too. */
export function contactPatches(a: readonly Flat[], aBox: Box, b: readonly Flat[], bBox: Box): Patch[] {
  const mine = facetsNear(a, bBox);
  const theirs = facetsNear(b, aBox);
  const out: Patch[] = [];
  for (const f of mine) {
    const facing = theirs.filter((g) => faces(f, g));
    if (facing.length > 0) patchesOn(f, facing, out);
  }
  return out;
}
/** How far a part must move along `d` until the patches that slide are past each other, mm; 0 where none slides. */
export function engagementAlong(patches: readonly Patch[], d: Vec3): number {
  const planes: { normal: Vec3; off: number; low: number; high: number }[] = [];
  for (const p of patches) {
    if (Math.abs(dot(p.normal, d)) >= SLIDES) continue;
    const along = p.corners.map((c) => dot(c, d));
    const same = planes.find((q) => dot(q.normal, p.normal) > FACING && Math.abs(q.off - p.off) < 0.5);
    const [low, high] = [Math.min(...along), Math.max(...along)];
    if (!same) planes.push({ normal: p.normal, off: p.off, low, high });
    else [same.low, same.high] = [Math.min(same.low, low), Math.max(same.high, high)];
  }
  return planes.reduce((far, p) => Math.max(far, p.high - p.low), 0);
}
/**
 * Above 0 when the first part is what enters: its sliding surfaces face away from their common middle, as a tenon's do; below 0
 * when the second enters.
 */
export function entering(patches: readonly Patch[], d: Vec3): number {
  const sliding = patches.filter((p) => Math.abs(dot(p.normal, d)) < SLIDES);
  const area = sliding.reduce((sum, p) => sum + p.area, 0);
  const middle = sliding.reduce<Vec3>((m, p) => add(m, scale(middleOf(p), p.area / area)), [0, 0, 0]);
  return sliding.reduce((sum, p) => sum + p.area * dot(p.normal, sub(middleOf(p), middle)), 0);
}
const middleOf = (p: Patch): Vec3 => scale(p.corners.reduce<Vec3>(add, [0, 0, 0]), 1 / p.corners.length);

/** A facet as a flat piece of surface. */
export type Flat = {
  readonly normal: Vec3;
  readonly off: number;
  readonly corners: readonly [Vec3, Vec3, Vec3];
  readonly low: Vec3;
  readonly high: Vec3;
};
/** The facets of a part given as triangles; those without area are left out. */
export function flatsOf(t: Float64Array): Flat[] {
  const out: Flat[] = [];
  for (let k = 0; k < t.length; k += 9) {
    const p: Vec3 = [t[k]!, t[k + 1]!, t[k + 2]!];
    const q: Vec3 = [t[k + 3]!, t[k + 4]!, t[k + 5]!];
    const r: Vec3 = [t[k + 6]!, t[k + 7]!, t[k + 8]!];
    const n = cross(sub(q, p), sub(r, p));
    const size = length(n);
    if (size < 1e-9) continue;
    const normal = scale(n, 1 / size);
    const low: Vec3 = [Math.min(p[0], q[0], r[0]), Math.min(p[1], q[1], r[1]), Math.min(p[2], q[2], r[2])];
    const high: Vec3 = [Math.max(p[0], q[0], r[0]), Math.max(p[1], q[1], r[1]), Math.max(p[2], q[2], r[2])];
    out.push({ normal, off: dot(normal, p), corners: [p, q, r], low, high });
  }
  return out;
}
function facetsNear(all: readonly Flat[], other: Box): Flat[] {
  const { min, max } = growBox(other, CONTACT_REACH);
  return all.filter(
    (f) =>
      f.low[0] <= max[0] && f.high[0] >= min[0] && f.low[1] <= max[1] && f.high[1] >= min[1] && f.low[2] <= max[2] && f.high[2] >= min[2],
  );
}
function faces(f: Flat, g: Flat): boolean {
  const [p, q] = [f.normal, g.normal];
  if (p[0] * q[0] + p[1] * q[1] + p[2] * q[2] > -FACING) return false;
  for (let i = 0; i < 3; i++) if (f.low[i]! > g.high[i]! + CONTACT_REACH || g.low[i]! > f.high[i]! + CONTACT_REACH) return false;
  const [a, b, c] = g.corners;
  const apart = (p[0] * (a[0] + b[0] + c[0]) + p[1] * (a[1] + b[1] + c[1]) + p[2] * (a[2] + b[2] + c[2])) / 3 - f.off;
  return apart > -CONTACT_REACH / 2 && apart < CONTACT_REACH;
}
const mine = new Float64Array(6);
const theirs = new Float64Array(6);
function flatten(g: Flat, u: Vec3, v: Vec3, turn: boolean, into: Float64Array): void {
  for (let k = 0; k < 3; k++) {
    const c = g.corners[turn ? (3 - k) % 3 : k]!;
    into[2 * k] = dot(c, u);
    into[2 * k + 1] = dot(c, v);
  }
}
function patchesOn(f: Flat, facing: readonly Flat[], out: Patch[]): void {
  const [u, v, n] = basisAlong(f.normal);
  flatten(f, u, v, false, mine);
  for (const g of facing) {
    flatten(g, u, v, true, theirs);
    const count = clipTriangles(mine, 0, 0, 0, theirs, 0);
    if (count === 0) continue;
    const { area } = measureClip(count);
    if (area < PATCH_AREA) continue;
    const p = clipped();
    const corners = Array.from({ length: count }, (_, k) => add(add(scale(u, p[2 * k]!), scale(v, p[2 * k + 1]!)), scale(n, f.off)));
    out.push({ normal: f.normal, off: f.off, area, corners });
  }
}
