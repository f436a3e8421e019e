/** Replays an order without the planner's own means: parts as their blocks, standing where the slider puts them. */
import { expect } from 'vitest';
import type { Order, PlanPart } from '../../src/assembly/part.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import { volumeInside } from './wood.ts';

/** Where the slider at `s` puts a part, by the words of the record. */
export function offsetAt(order: Order, path: string, s: number): Vec3 {
  const out: [number, number, number] = [0, 0, 0];
  for (const { step, offset } of order.apart[path] ?? []) {
    const left = Math.min(1, Math.max(0, step + 1 - s));
    for (const i of [0, 1, 2] as const) out[i] += offset[i] * left;
  }
  return out;
}
/** A part's wood as boxes that fill it: cells of the grid of its own corners whose middle is inside. Exact for parts made of blocks. */
function cellsOf(part: PlanPart): { low: Vec3; high: Vec3 }[] {
  const t = part.triangles;
  const planes = [0, 1, 2].map((axis) =>
    [...new Set(Array.from({ length: t.length / 3 }, (_, k) => t[3 * k + axis]!))].sort((a, b) => a - b),
  ) as [number[], number[], number[]];
  const out: { low: Vec3; high: Vec3 }[] = [];
  const [xs, ys, zs] = planes;
  for (let i = 0; i + 1 < xs.length; i++)
    for (let j = 0; j + 1 < ys.length; j++)
      for (let k = 0; k + 1 < zs.length; k++) {
        const low: Vec3 = [xs[i]!, ys[j]!, zs[k]!];
        const high: Vec3 = [xs[i + 1]!, ys[j + 1]!, zs[k + 1]!];
        if (inside(t, [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2])) out.push({ low, high });
      }
  return out;
}
/** Counts the facets square to x that a line towards +x meets. */
function inside(t: Float64Array, p: Vec3): boolean {
  let winding = 0;
  for (let k = 0; k < t.length; k += 9) {
    if (t[k] !== t[k + 3] || t[k] !== t[k + 6] || t[k]! < p[0]) continue;
    const y = [t[k + 1]!, t[k + 4]!, t[k + 7]!] as const;
    const z = [t[k + 2]!, t[k + 5]!, t[k + 8]!] as const;
    const area = (y[1] - y[0]) * (z[2] - z[0]) - (y[2] - y[0]) * (z[1] - z[0]);
    const sides = [0, 1, 2].map((i) => {
      const n = (i + 1) % 3;
      return Math.sign(((y[n]! - y[i]!) * (p[2] - z[i]!) - (p[1] - y[i]!) * (z[n]! - z[i]!)) * area);
    });
    // A middle may lie on the diagonal of a face: half of each triangle's share.
    if (sides.every((v) => v > 0)) winding += Math.sign(area);
    else if (sides.every((v) => v >= 0)) winding += Math.sign(area) / 2;
  }
  return winding > 0.25;
}
/** Volume that two parts share when they stand off their places, mm³. */
function shared(a: ReturnType<typeof cellsOf>, oa: Vec3, b: ReturnType<typeof cellsOf>, ob: Vec3): number {
  let sum = 0;
  for (const p of a)
    for (const q of b) {
      let v = 1;
      for (let i = 0; i < 3 && v > 0; i++)
        v *= Math.max(0, Math.min(p.high[i]! + oa[i]!, q.high[i]! + ob[i]!) - Math.max(p.low[i]! + oa[i]!, q.low[i]! + ob[i]!));
      sum += v;
    }
  return sum;
}
/** No two parts share wood at any of `samples` places of each step, nor at full spread; together, all are home. */
export function expectClear(parts: readonly PlanPart[], order: Order, samples = 5): void {
  const cells = parts.map(cellsOf);
  cells.forEach((all, i) => {
    const volume = all.reduce((sum, c) => sum + (c.high[0] - c.low[0]) * (c.high[1] - c.low[1]) * (c.high[2] - c.low[2]), 0);
    expect(volume, `cells of ${parts[i]!.path}`).toBeCloseTo(volumeInside(parts[i]!.triangles), 3);
  });
  for (let n = 0; n <= samples * order.steps.length; n++) {
    const s = n / samples;
    const at = parts.map((p) => offsetAt(order, p.path, s));
    for (let i = 0; i < parts.length; i++)
      for (let j = 0; j < i; j++)
        expect(
          shared(cells[i]!, at[i]!, cells[j]!, at[j]!),
          `${parts[i]!.path} and ${parts[j]!.path} at ${s} of ${order.steps.length}`,
        ).toBeLessThan(1e-6);
    if (s === order.steps.length) expect(at.flat().every((v) => v === 0)).toBe(true);
  }
}
