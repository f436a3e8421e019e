/** What a carpenter would measure of a solid. */
import { type Box } from '../geom/box.ts';
import type { Vec3 } from '../geom/vec3.ts';
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
export function boxOf({ body }: Solid): Box | null {
  const before = boxes.get(body);
  if (before !== undefined) return before;
  const { min, max } = body.boundingBox();
  const box: Box | null = min[0] <= max[0] ? { min: [...min], max: [...max] } : null;
  boxes.set(body, box);
  return box;
}
/** Every pair that a part is in asks for it. */
const boxes = new WeakMap<Body, Box | null>();
/** Fit to be built with: the kernel is content, there is wood, and in one piece. */
export function isSound(solid: Solid): boolean {
  return solid.body.status() === 'NoError' && solid.body.volume() > LEAST_VOLUME && measure(solid).pieces.length === 1;
}

/** One closed surface: of a piece, or, with a volume below zero, of a hollow inside one. */
export type Shell = { readonly triangles: readonly number[]; readonly volume: number };
/** The closed surfaces of a reading, in the order of their first triangles. */
export function shellsOf({ positions, triangles }: Reading): Shell[] {
  const parent = Uint32Array.from({ length: positions.length / 3 }, (_, i) => i);
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
    shell.volume += wedge(positions, triangles, t, [0, 0, 0]);
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
/** Signed volume of the tetrahedron from a point to a triangle. In plain numbers: it is asked of every triangle of every part. */
function wedge(p: Float64Array, triangles: Uint32Array, t: number, [x, y, z]: Vec3): number {
  const [i, j, k] = [3 * (triangles[3 * t] ?? 0), 3 * (triangles[3 * t + 1] ?? 0), 3 * (triangles[3 * t + 2] ?? 0)];
  const [ax, ay, az] = [(p[i] ?? 0) - x, (p[i + 1] ?? 0) - y, (p[i + 2] ?? 0) - z];
  const [bx, by, bz] = [(p[j] ?? 0) - x, (p[j + 1] ?? 0) - y, (p[j + 2] ?? 0) - z];
  const [cx, cy, cz] = [(p[k] ?? 0) - x, (p[k + 1] ?? 0) - y, (p[k + 2] ?? 0) - z];
  return (ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx)) / 6;
}

/** Sum of tetrahedra from the first corner, which keeps the numbers small. */
function centreOf({ positions: p, triangles }: Reading): Vec3 {
  if (triangles.length === 0) return [0, 0, 0];
  const first = 3 * (triangles[0] ?? 0);
  const from: Vec3 = [p[first] ?? 0, p[first + 1] ?? 0, p[first + 2] ?? 0];
  let volume = 0;
  const moment: [number, number, number] = [0, 0, 0];
  for (let t = 0; t < triangles.length / 3; t++) {
    const v = wedge(p, triangles, t, from);
    volume += v;
    for (let c = 0; c < 3; c++) {
      const i = 3 * (triangles[3 * t + c] ?? 0);
      moment[0] += ((p[i] ?? 0) - from[0]) * (v / 4);
      moment[1] += ((p[i + 1] ?? 0) - from[1]) * (v / 4);
      moment[2] += ((p[i + 2] ?? 0) - from[2]) * (v / 4);
    }
  }
  return volume > 0 ? [from[0] + moment[0] / volume, from[1] + moment[1] / volume, from[2] + moment[2] / volume] : from;
}
