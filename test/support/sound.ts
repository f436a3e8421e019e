/** What every solid must be before anything else is asked of it. */
import { expect } from 'vitest';
import { isSound, measure } from '../../src/solids/measure.ts';
import { readSolid } from '../../src/solids/read.ts';
import type { Solid } from '../../src/solids/solid.ts';

/** The kernel is content, there is wood, in as many pieces as said, and each edge of the surface lies between two triangles. */
export function expectSound(solid: Solid, { pieces = 1 }: { readonly pieces?: number } = {}): void {
  expect(solid.body.status(), `${solid.who}: what the kernel says`).toBe('NoError');
  if (pieces === 1) expect(isSound(solid), `${solid.who}: sound`).toBe(true);
  const m = measure(solid);
  expect(m.volume, `${solid.who}: volume`).toBeGreaterThan(0);
  expect(m.pieces.length, `${solid.who}: pieces of ${m.pieces.join(', ')} mm³`).toBe(pieces);
  expect(openEdges(solid), `${solid.who}: edges that are not shared by two triangles`).toBe(0);
}
/** Edges run through once each way when the surface is closed; how many are not. */
export function openEdges(solid: Solid): number {
  const { triangles } = readSolid(solid);
  const way = new Map<string, number>();
  for (let i = 0; i < triangles.length; i++) {
    const [a, b] = [triangles[i] ?? 0, triangles[i % 3 === 2 ? i - 2 : i + 1] ?? 0];
    const key = a < b ? `${a},${b}` : `${b},${a}`;
    way.set(key, (way.get(key) ?? 0) + (a < b ? 1 : 1001));
  }
  return [...way.values()].filter((n) => n !== 1002).length;
}
export { cutOf } from './records.ts';
