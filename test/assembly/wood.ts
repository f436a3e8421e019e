/** Small pieces written by hand from blocks, as facets: no kernel, no document. Blocks are x0 x1 y0 y1 z0 z1, mm. */
import type { PlanLink, PlanPart } from '../../src/assembly/part.ts';
import { type Box, boxAround } from '../../src/geom/box.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';

export type Block = readonly [number, number, number, number, number, number];
export type Piece = { readonly parts: readonly PlanPart[]; readonly links: readonly PlanLink[] };

/** Blocks put together, less others: the outer faces of the filled cells of the grid that all their planes make. */
export function facetsOfBlocks(adds: readonly Block[], cuts: readonly Block[] = []): Float64Array {
  const cuts3 = [0, 2, 4].map((k) => [...new Set([...adds, ...cuts].flatMap((b) => [b[k]!, b[k + 1]!]))].sort((a, b) => a - b));
  const [xs, ys, zs] = cuts3 as [number[], number[], number[]];
  const inside = (b: Block, x: number, y: number, z: number): boolean =>
    b[0] < x && x < b[1] && b[2] < y && y < b[3] && b[4] < z && z < b[5];
  const mid = (v: number[], i: number): number => (v[i]! + v[i + 1]!) / 2;
  const full = (i: number, j: number, k: number): boolean => {
    if (i < 0 || j < 0 || k < 0 || i > xs.length - 2 || j > ys.length - 2 || k > zs.length - 2) return false;
    const [x, y, z] = [mid(xs, i), mid(ys, j), mid(zs, k)];
    return adds.some((b) => inside(b, x, y, z)) && !cuts.some((b) => inside(b, x, y, z));
  };
  const out: number[] = [];
  const quad = (a: Vec3, b: Vec3, c: Vec3, d: Vec3): void => void out.push(...a, ...b, ...c, ...a, ...c, ...d);
  for (let i = 0; i < xs.length - 1; i++)
    for (let j = 0; j < ys.length - 1; j++)
      for (let k = 0; k < zs.length - 1; k++) {
        if (!full(i, j, k)) continue;
        const [x0, x1, y0, y1, z0, z1] = [xs[i]!, xs[i + 1]!, ys[j]!, ys[j + 1]!, zs[k]!, zs[k + 1]!];
        if (!full(i - 1, j, k)) quad([x0, y0, z0], [x0, y0, z1], [x0, y1, z1], [x0, y1, z0]);
        if (!full(i + 1, j, k)) quad([x1, y0, z0], [x1, y1, z0], [x1, y1, z1], [x1, y0, z1]);
        if (!full(i, j - 1, k)) quad([x0, y0, z0], [x1, y0, z0], [x1, y0, z1], [x0, y0, z1]);
        if (!full(i, j + 1, k)) quad([x0, y1, z0], [x0, y1, z1], [x1, y1, z1], [x1, y1, z0]);
        if (!full(i, j, k - 1)) quad([x0, y0, z0], [x0, y1, z0], [x1, y1, z0], [x1, y0, z0]);
        if (!full(i, j, k + 1)) quad([x0, y0, z1], [x1, y0, z1], [x1, y1, z1], [x0, y1, z1]);
      }
  return new Float64Array(out);
}
/** Six times the volume inside closed facets, divided out: mm³. */
export function volumeInside(t: Float64Array): number {
  let six = 0;
  for (let k = 0; k < t.length; k += 9) {
    const [a, b, c, d, e, f, g, h, i] = t.subarray(k, k + 9) as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    six += a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  }
  return six / 6;
}
function boxOfFacets(t: Float64Array): Box {
  const points = Array.from({ length: t.length / 3 }, (_, k): Vec3 => [t[3 * k]!, t[3 * k + 1]!, t[3 * k + 2]!]);
  return boxAround(points)!;
}
export const partOf = (path: string, triangles: Float64Array, more: Partial<PlanPart> = {}): PlanPart => ({
  path,
  label: path.replaceAll(':', ' '),
  triangles,
  box: boxOfFacets(triangles),
  weight: volumeInside(triangles),
  group: null,
  kind: 'wood',
  ...more,
});
export const wood = (path: string, adds: readonly Block[], cuts: readonly Block[] = [], more: Partial<PlanPart> = {}): PlanPart =>
  partOf(path, facetsOfBlocks(adds, cuts), more);
/** A joint of two parts: the first leaves the second along each of these. */
export const link = (a: string, b: string, ...along: Vec3[]): PlanLink => ({
  joint: `${a}-${b}`,
  parts: [a, b],
  frees: along.map((d) => ({ moves: [a], along: d })),
});
export const X: Vec3 = [1, 0, 0];
export const Y: Vec3 = [0, 1, 0];
export const Z: Vec3 = [0, 0, 1];
export const back = (v: Vec3): Vec3 => [-v[0] || 0, -v[1] || 0, -v[2] || 0];
