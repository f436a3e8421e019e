/** What a carpenter would measure of a solid. */
import { type Box } from '../geom/box.ts';
import { type Vec3, cross, dot, sub } from '../geom/vec3.ts';
import type { Body } from './kernel.ts';
import { type Reading, readSolid } from './read.ts';
import type { Solid } from './solid.ts';

/** All in the record frame: mm, mm², mm³. */
export type Measures = {
  readonly volume: number;
  readonly area: number;
  /** Centre of its mass; of the origin when there is nothing left. */
  readonly centre: Vec3;
  /** The smallest box round it; null when there is nothing left. */
  readonly box: Box | null;
  /** Volumes of the pieces it has fallen into (hollows inside them counted as wood), largest first: one for a part that holds together. */
  readonly pieces: readonly number[];
  /** Holes right through it, counted as handles: 0 for a board, 1 for a board with a through mortise. */
  readonly genus: number;
};
/** A piece of less is rounding, not wood; mm³. */
export const LEAST_VOLUME = 1e-3;

const known = new WeakMap<Body, Measures>();
/** Measured once. */
export function measure(solid: Solid): Measures {
  const before = known.get(solid.body);
  if (before) return before;
  const measures = measured(solid);
  known.set(solid.body, measures);
  return measures;
}
function measured(solid: Solid): Measures {
  const reading = readSolid(solid);
  const volume = solid.body.volume();
  const shells = shellsOf(reading);
  return {
    volume,
    area: solid.body.surfaceArea(),
    centre: centreOf(reading),
    box: boxOf(solid),
    pieces: shells
      .map((s) => s.volume)
      .filter((v) => v > LEAST_VOLUME)
      .toSorted((a, b) => b - a),
    genus: solid.body.genus() + shells.length - 1,
  };
}
/** The smallest box round a solid, record frame; null when there is nothing left. */
export function boxOf(solid: Solid): Box | null {
  const b = solid.body.boundingBox();
  return b.min[0] <= b.max[0] ? { min: [...b.min], max: [...b.max] } : null;
}
/** Fit to be built with: the kernel is content, there is wood, and in one piece. */
export function isSound(solid: Solid): boolean {
  return solid.body.status() === 'NoError' && solid.body.volume() > LEAST_VOLUME && measure(solid).pieces.length === 1;
}

/** One closed surface: of a piece, or, with a volume below zero, of a hollow inside one. */
export type Shell = { readonly triangles: readonly number[]; readonly volume: number };
/** The closed surfaces of a reading, in the order of their first triangles. */
export function shellsOf({ positions, triangles }: Reading): Shell[] {
  const parent = Array.from({ length: positions.length / 3 }, (_, i) => i);
  const root = (i: number): number => {
    let r = i;
    while (parent[r] !== r) r = parent[r] = parent[parent[r] ?? r] ?? r;
    return r;
  };
  for (let i = 0; i < triangles.length; i += 3) {
    const a = root(triangles[i] ?? 0);
    parent[root(triangles[i + 1] ?? 0)] = a;
    parent[root(triangles[i + 2] ?? 0)] = a;
  }
  const found = new Map<number, { triangles: number[]; volume: number }>();
  for (let t = 0; t < triangles.length / 3; t++) {
    const r = root(triangles[3 * t] ?? 0);
    const shell = found.get(r) ?? { triangles: [], volume: 0 };
    shell.triangles.push(t);
    shell.volume += wedge(cornersAt({ positions, triangles }, t));
    found.set(r, shell);
  }
  return [...found.values()];
}
type Corners = readonly [Vec3, Vec3, Vec3];
/** The three corners of a triangle. */
export function cornersAt({ positions: p, triangles }: Pick<Reading, 'positions' | 'triangles'>, t: number): Corners {
  const at = (k: number): Vec3 => {
    const i = 3 * (triangles[3 * t + k] ?? 0);
    return [p[i] ?? 0, p[i + 1] ?? 0, p[i + 2] ?? 0];
  };
  return [at(0), at(1), at(2)];
}
/** Signed volume of the tetrahedron from the origin to a triangle. */
const wedge = ([a, b, c]: Corners): number => dot(a, cross(b, c)) / 6;

/** Sum of tetrahedra from the first corner, which keeps the numbers small. */
function centreOf(reading: Reading): Vec3 {
  const n = reading.triangles.length / 3;
  if (n === 0) return [0, 0, 0];
  const from = cornersAt(reading, 0)[0];
  let [volume, x, y, z] = [0, 0, 0, 0];
  for (let t = 0; t < n; t++) {
    const [p, q, r] = cornersAt(reading, t);
    const [a, b, c] = [sub(p, from), sub(q, from), sub(r, from)];
    const v = wedge([a, b, c]);
    volume += v;
    x += (a[0] + b[0] + c[0]) * (v / 4);
    y += (a[1] + b[1] + c[1]) * (v / 4);
    z += (a[2] + b[2] + c[2]) * (v / 4);
  }
  return volume > 0 ? [from[0] + x / volume, from[1] + y / volume, from[2] + z / volume] : from;
}
