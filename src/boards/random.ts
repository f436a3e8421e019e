/** Seeded whole numbers, the same on every machine: 32-bit arithmetic only. */
export type Random = { state: number };
export const newRandom = (seed: number): Random => ({ state: (seed ^ 0x9e3779b9) | 0 });
/** A whole number from 0 to 2³² − 1. */
function next(r: Random): number {
  r.state = (r.state + 0x6d2b79f5) | 0;
  let t = r.state;
  t = Math.imul(t ^ (t >>> 15), t | 1);
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
  return (t ^ (t >>> 14)) >>> 0;
}
/** A whole number from 0 to n − 1. */
export const below = (r: Random, n: number): number => Math.floor((next(r) / 4294967296) * n);
