/** Where pegs run: across the part that is let into the other, at a distance behind the face on which the two meet. */
import { type Vec3, add, axisVec, dot, scale, sub } from '../../geom/vec3.ts';
import { middleOf, sizeOf } from '../../geom/box.ts';
import { outPoint } from '../../geom/frame.ts';
import { ownSense } from '../blocks.ts';
import { bodyOf, lineThrough } from '../convex.ts';
import type { MeetSide, Meeting } from '../meeting.ts';
import type { Peg } from './params.ts';

export type Ground = {
  /** All parts; the one with the mortise, the one let into it (the first of several), and their places in the list. */
  readonly parts: readonly MeetSide[];
  readonly outer: MeetSide;
  readonly inner: MeetSide;
  /** z of the joint face, and which way along z it goes into the mortised part. */
  readonly face: number;
  readonly inward: 1 | -1;
  /** Thickness of the mortised part along z. */
  readonly deep: number;
};
export function ground(m: Meeting): Ground | null {
  const parts = m.sides['through'] ?? [];
  const [first, second] = parts;
  if (!first || !second) return null;
  // A part that brings its grain end is the one that is let in.
  const firstEnters = Math.abs(first.grain[2]) > 0.7;
  const [inner, outer] = firstEnters ? [first, second] : [second, first];
  const ray = lineThrough(bodyOf(outer.stock, outer.shapes, outer.frame), middleOfPatch(m), [0, 0, 1]);
  if (!ray) return null;
  return { parts, outer, inner, inward: firstEnters ? 1 : -1, face: firstEnters ? m.gap : 0, deep: ray.high - ray.low };
}
function middleOfPatch(m: Meeting): Vec3 {
  const mid = (i: 0 | 1): number =>
    m.patch.length ? (Math.min(...m.patch.map((p) => p[i])) + Math.max(...m.patch.map((p) => p[i]))) / 2 : 0;
  return [mid(0), mid(1), 0];
}
/** The meeting's axis (x or y) along which the pegged part is thinner, and the other. */
export function axesOf(g: Ground, way: Peg['way']): { run: 'x' | 'y'; row: 'x' | 'y' } {
  const size = sizeOf(g.inner.box);
  const thin = size[0] <= size[1] + 1e-6 ? 'x' : 'y';
  const run = way === 'thickness' ? thin : thin === 'x' ? 'y' : 'x';
  return { run, row: run === 'x' ? 'y' : 'x' };
}
export type PegLine = { readonly start: Vec3; readonly along: Vec3 };
export function pegLines(g: Ground, s: Peg): PegLine[] {
  const { run, row } = axesOf(g, s.way);
  const [i, k] = [run === 'x' ? 0 : 1, row === 'x' ? 0 : 1] as const;
  const body = bodyOf(g.outer.stock, g.outer.shapes, g.outer.frame);
  const mid = middleOf(g.inner.box);
  const sense = ownSense(g.inner, row);
  return Array.from({ length: s.count }, (_, n) => {
    const at = mid[k] + sense * (s.up + (n - (s.count - 1) / 2) * s.apart);
    const spot: [number, number, number] = [0, 0, g.face + g.inward * s.back];
    spot[k] = at;
    const through = lineThrough(body, spot, axisVec(run));
    const [low, high] = through ? [through.low, through.high] : [g.outer.box.min[i], g.outer.box.max[i]];
    const lead = g.inner.box.min[i] - low - (high - g.inner.box.max[i]);
    const near: 1 | -1 = Math.abs(lead) < 1e-6 ? ownSense(g.inner, run) : lead < 0 ? 1 : -1;
    const sign = s.from === 'near' ? near : near > 0 ? -1 : 1;
    const start: [number, number, number] = [...spot];
    start[i] = sign > 0 ? low : high;
    return { start, along: axisVec(run, sign) };
  });
}
/** How far the hole in this part is moved for the drawbore: towards its own shoulder, that is away from the mortised part; none for that one. */
export function drawn(g: Ground, side: MeetSide, line: PegLine, s: Peg): Vec3 {
  if (side === g.outer || s.drawbore === 0) return [0, 0, 0];
  const centre = (p: MeetSide): Vec3 => outPoint(p.frame, middleOf(p.stock));
  const away = dot(side.grain, sub(centre(side), centre(g.outer))) >= 0 ? side.grain : scale(side.grain, -1);
  const across = sub(away, scale(line.along, dot(away, line.along)));
  const l = Math.hypot(...across);
  return l < 0.1 ? [0, 0, 0] : scale(across, s.drawbore / l);
}
export const shifted = (line: PegLine, by: Vec3): Vec3 => add(line.start, by);
