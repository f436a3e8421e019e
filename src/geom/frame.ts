import { type Axis, type Vec3, add, cross, dot, quantise3, sameVec, sub, tidy3 } from './vec3.ts';

/**
 * An orthonormal frame seen from an outer one: origin in mm and three unit axes.
 * It may be left-handed: a mirrored copy of a part keeps its numbers and gets a left-handed frame.
 */
export type Frame = { readonly o: Vec3; readonly x: Vec3; readonly y: Vec3; readonly z: Vec3 };

export const HOME: Frame = { o: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/** A direction given in the frame, seen from outside. */
export const outDir = ({ x, y, z }: Frame, v: Vec3): Vec3 => [
  x[0] * v[0] + y[0] * v[1] + z[0] * v[2],
  x[1] * v[0] + y[1] * v[1] + z[1] * v[2],
  x[2] * v[0] + y[2] * v[1] + z[2] * v[2],
];
/** A point given in the frame, seen from outside. */
export const outPoint = ({ o, x, y, z }: Frame, p: Vec3): Vec3 => [
  o[0] + (x[0] * p[0] + y[0] * p[1] + z[0] * p[2]),
  o[1] + (x[1] * p[0] + y[1] * p[1] + z[1] * p[2]),
  o[2] + (x[2] * p[0] + y[2] * p[1] + z[2] * p[2]),
];
/** A direction given outside, seen in the frame. */
export const inDir = (f: Frame, v: Vec3): Vec3 => [dot(f.x, v), dot(f.y, v), dot(f.z, v)];
/** A point given outside, seen in the frame. */
export const inPoint = (f: Frame, p: Vec3): Vec3 => inDir(f, sub(p, f.o));
/** `inner`, given in `outer`, seen from outside `outer`. */
export const compose = (outer: Frame, inner: Frame): Frame => ({
  o: outPoint(outer, inner.o),
  x: outDir(outer, inner.x),
  y: outDir(outer, inner.y),
  z: outDir(outer, inner.z),
});
/** Frame `f` (given outside) seen in frame `seer` (given outside). */
export const seenFrom = (seer: Frame, f: Frame): Frame => ({
  o: inPoint(seer, f.o),
  x: inDir(seer, f.x),
  y: inDir(seer, f.y),
  z: inDir(seer, f.z),
});
/** The outside seen from within `f`: compose(f, inverse(f)) is HOME. */
export const inverse = (f: Frame): Frame => seenFrom(f, HOME);
/** +1 right-handed, -1 left-handed (mirrored). */
export const handed = (f: Frame): 1 | -1 => (dot(cross(f.x, f.y), f.z) < 0 ? -1 : 1);
export const sameFrame = (a: Frame, b: Frame): boolean => sameVec(a.o, b.o) && sameVec(a.x, b.x) && sameVec(a.y, b.y) && sameVec(a.z, b.z);
export const moved = (f: Frame, by: Vec3): Frame => ({ ...f, o: add(f.o, by) });
/** All twelve numbers rounded to 1e-6, for hashing and for the kernel. */
export const quantiseFrame = (f: Frame): Frame => ({
  o: quantise3(f.o),
  x: quantise3(f.x),
  y: quantise3(f.y),
  z: quantise3(f.z),
});
/** The same far finer: lengths to 1e-9 mm, directions to 1e-12. */
export const tidyFrame = (f: Frame): Frame => ({ o: tidy3(f.o), x: tidy3(f.x, 1e12), y: tidy3(f.y, 1e12), z: tidy3(f.z, 1e12) });

/** Turn about an axis through the origin, right-handed, radians. Quarter turns come out exact. */
export function turned(axis: Axis, angle: number): Frame {
  const [c, s] = exactTurn(angle);
  if (axis === 'x') return { o: [0, 0, 0], x: [1, 0, 0], y: [0, c, s], z: [0, -s, c] };
  if (axis === 'y') return { o: [0, 0, 0], x: [c, 0, -s], y: [0, 1, 0], z: [s, 0, c] };
  return { o: [0, 0, 0], x: [c, s, 0], y: [-s, c, 0], z: [0, 0, 1] };
}
/** Mirror through the plane `axis` = at. */
export function mirrored(axis: Axis, at: number): Frame {
  const pick = (i: number, v: Vec3): Vec3 => (i === 0 ? [-v[0], v[1], v[2]] : i === 1 ? [v[0], -v[1], v[2]] : [v[0], v[1], -v[2]]);
  const i = axis === 'x' ? 0 : axis === 'y' ? 1 : 2;
  const o: Vec3 = i === 0 ? [2 * at, 0, 0] : i === 1 ? [0, 2 * at, 0] : [0, 0, 2 * at];
  return { o, x: pick(i, [1, 0, 0]), y: pick(i, [0, 1, 0]), z: pick(i, [0, 0, 1]) };
}
function exactTurn(angle: number): readonly [number, number] {
  const quarters = angle / (Math.PI / 2);
  const q = Math.round(quarters);
  if (Math.abs(quarters - q) < 1e-12) {
    const c = [1, 0, -1, 0] as const;
    const k = ((q % 4) + 4) % 4;
    return [c[k] ?? 1, c[(k + 3) % 4] ?? 0];
  }
  return [Math.cos(angle), Math.sin(angle)];
}

/**
 * How the axes of `f` run along the outer axes when it is a quarter turn (mirrored or not): for each outer axis, which own
 * axis lies along it and with which sign; null when the frame leans.
 */
export function quarterTurn(f: Frame): readonly [SignedAxis, SignedAxis, SignedAxis] | null {
  const rows = [0, 1, 2].map((i) => [f.x[i] ?? 0, f.y[i] ?? 0, f.z[i] ?? 0]);
  const out: SignedAxis[] = [];
  for (const row of rows) {
    const own = row.findIndex((n) => Math.abs(Math.abs(n) - 1) < 1e-9);
    if (own < 0) return null;
    out.push({ own: own as 0 | 1 | 2, sign: (row[own] ?? 0) > 0 ? 1 : -1 });
  }
  const [a, b, c] = out;
  return a && b && c ? [a, b, c] : null;
}
export type SignedAxis = { readonly own: 0 | 1 | 2; readonly sign: 1 | -1 };
