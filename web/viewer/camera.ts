/** Where the piece is looked at from: numbers only. The paper's frame: x right, y back, z up. */
import { type Vec3, add, cross, dot, scale, sub } from '../../src/geom/vec3.ts';
import type { Seen } from '../look/view.ts';

/** Angles in radians: `round` 0 from the front, positive from the right; `up` above the ground. */
export type Turn = { readonly round: number; readonly up: number };
/** A rectangle of the sheet in px, from its upper left corner. */
export type Room = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
export type Size = { readonly width: number; readonly height: number };
/** How far the eye stands, or how many mm high an orthographic sheet is, and the shift of the picture (in half sheets). */
export type Fit = { readonly reach: number; readonly shift: readonly [number, number] };

const DEG = Math.PI / 180;
export const FIELD = 24 * DEG;
export const TURNS: Readonly<Record<Seen, Turn>> = {
  freely: { round: 30 * DEG, up: 18 * DEG },
  front: { round: 0, up: 0 },
  side: { round: 90 * DEG, up: 0 },
  above: { round: 0, up: 90 * DEG },
};
export const LOWEST = 5 * DEG;
export const HIGHEST = 88 * DEG;

export type Axes = { readonly right: Vec3; readonly up: Vec3; readonly toEye: Vec3 };
/** Right, up and the direction towards the eye. */
export function axesOf(t: Turn): Axes {
  const toEye: Vec3 = [Math.sin(t.round) * Math.cos(t.up), -Math.cos(t.round) * Math.cos(t.up), Math.sin(t.up)];
  const right: Vec3 = [Math.cos(t.round), Math.sin(t.round), 0];
  return { right, up: cross(toEye, right), toEye };
}
/** A point seen from `axes` round `target`: right, up, towards the eye, mm. */
export const seenAt = (p: Vec3, target: Vec3, a: Axes): Vec3 => {
  const q = sub(p, target);
  return [dot(q, a.right), dot(q, a.up), dot(q, a.toEye)];
};
/** Where a point falls on the sheet, −1…1 each way (y up), without the shift; `reach` as in Fit. */
export function onSheet(p: Vec3, reach: number, aspect: number, flat: boolean): readonly [number, number] {
  const h = flat ? reach / 2 : Math.max(1e-3, reach - p[2]) * Math.tan(FIELD / 2);
  return [p[0] / (h * aspect), p[1] / h];
}
/** The nearest stand from which all `points` (seen coordinates) lie within `room`, and the shift that centres them in it. */
export function fitTo(points: readonly Vec3[], room: Room, size: Size, flat: boolean): Fit {
  const aspect = size.width / Math.max(1, size.height);
  const bounds = (reach: number): readonly [number, number, number, number] => {
    let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity];
    for (const p of points) {
      const [x, y] = onSheet(p, reach, aspect, flat);
      [x0, y0, x1, y1] = [Math.min(x0, x), Math.min(y0, y), Math.max(x1, x), Math.max(y1, y)];
    }
    return [x0, y0, x1, y1];
  };
  const fits = (reach: number): boolean => {
    const [x0, y0, x1, y1] = bounds(reach);
    return x1 - x0 <= (2 * room.width) / size.width && y1 - y0 <= (2 * room.height) / size.height;
  };
  const near = flat ? 1 : Math.max(...points.map((p) => p[2]), 0) + 10;
  let [low, high] = [near, near + 100];
  while (!fits(high) && high < 1e7) high = near + (high - near) * 2;
  for (let i = 0; i < 40; i++) {
    const mid = (low + high) / 2;
    if (fits(mid)) high = mid;
    else low = mid;
  }
  const [x0, y0, x1, y1] = bounds(high);
  const wantX = ((room.x + room.width / 2) / size.width) * 2 - 1;
  const wantY = 1 - ((room.y + room.height / 2) / size.height) * 2;
  return { reach: high, shift: [wantX - (x0 + x1) / 2, wantY - (y0 + y1) / 2] };
}
export const eyeAt = (target: Vec3, a: Axes, reach: number): Vec3 => add(target, scale(a.toEye, reach));
/** The shortest way from one turn to another. */
export function between(a: Turn, b: Turn, t: number): Turn {
  let by = (b.round - a.round) % (2 * Math.PI);
  if (by > Math.PI) by -= 2 * Math.PI;
  if (by < -Math.PI) by += 2 * Math.PI;
  return { round: a.round + by * t, up: a.up + (b.up - a.up) * t };
}
/** cubic-bezier(.3,0,.1,1), near enough: slow start, long landing. */
export const ease = (t: number): number => 1 - (1 - t) ** 3 * (1 - 0.4 * t * (1 - t));
