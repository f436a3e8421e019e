/** Points and directions in space as plain triples; mm for points, no unit for directions. */
export type Vec3 = readonly [number, number, number];
/** Points in a plane; mm. */
export type Vec2 = readonly [number, number];
export type Axis = 'x' | 'y' | 'z';
export const AXES: readonly Axis[] = ['x', 'y', 'z'];
/** Index of an axis in a triple. */
export const axisIndex = (a: Axis): 0 | 1 | 2 => (a === 'x' ? 0 : a === 'y' ? 1 : 2);

export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [a[0] * k, a[1] * k, a[2] * k];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec3, b: Vec3): Vec3 => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
/** Unit vector along `a`; throws on a zero vector, which is always a fault of ours. */
export function unit(a: Vec3): Vec3 {
  const l = length(a);
  if (!(l > 0)) throw new Error(`a direction needs a length above 0, got [${a.join(', ')}]`);
  return scale(a, 1 / l);
}
/** The unit vector of an axis, or its opposite. */
export function axisVec(a: Axis, sign: 1 | -1 = 1): Vec3 {
  return a === 'x' ? [sign, 0, 0] : a === 'y' ? [0, sign, 0] : [0, 0, sign];
}
/** Rounded to 1e-6 mm with minus zero made zero: every number that is hashed or reaches the kernel goes through here. */
export function quantise(n: number): number {
  const q = Math.round(n * 1e6) / 1e6;
  return q === 0 ? 0 : q;
}
export const quantise3 = (a: Vec3): Vec3 => [quantise(a[0]), quantise(a[1]), quantise(a[2])];
export const sameVec = (a: Vec3, b: Vec3): boolean => a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
/** Rounded (lengths to 1e-9 mm, directions to 1e-12), minus zero made zero: far finer than a record, and coarser than the noise of two roads to one number. */
export const tidy = (n: number, per = 1e9): number => {
  const q = Math.round(n * per) / per;
  return q === 0 ? 0 : q;
};
export const tidy3 = (v: Vec3, per = 1e9): Vec3 => [tidy(v[0], per), tidy(v[1], per), tidy(v[2], per)];
