/**
 * Growth rings on a sawn end, as numbers: the section lies with its lower left corner at the origin, x across the width, y through
 * the thickness, mm; the rings are circles round the pith. Movement and figure on long faces build on the same pith later.
 */
import type { Vec2 } from '../geom/vec3.ts';

/** An arc from angle `from` to angle `to` (radians, counter-clockwise from +x, from < to) round the pith. */
export type RingArc = { readonly r: number; readonly from: number; readonly to: number };
/** How a board was sawn out of the log: rings flat to the wide face, standing on it, or between. */
export type Sawn = 'flat' | 'rift' | 'quarter';

const TURN = 2 * Math.PI;

/**
 * The stretches of the circle of radius `r` round `pith` that lie inside the section `width` × `thickness`. Touching is not inside.
 */
export function arcsInside(width: number, thickness: number, pith: Vec2, r: number): RingArc[] {
  const [px, py] = pith;
  const inside = (a: number): boolean => {
    const x = px + r * Math.cos(a);
    const y = py + r * Math.sin(a);
    return x > 0 && x < width && y > 0 && y < thickness;
  };
  const crossings: number[] = [];
  for (const x of [0, width]) {
    const c = (x - px) / r;
    if (Math.abs(c) <= 1) crossings.push(Math.acos(c), TURN - Math.acos(c));
  }
  for (const y of [0, thickness]) {
    const s = (y - py) / r;
    if (Math.abs(s) <= 1) crossings.push((Math.asin(s) + TURN) % TURN, Math.PI - Math.asin(s));
  }
  if (crossings.length === 0) return inside(0) ? [{ r, from: 0, to: TURN }] : [];
  const angles = [...new Set(crossings)].sort((a, b) => a - b);
  const out: RingArc[] = [];
  angles.forEach((from, i) => {
    const to = angles[i + 1] ?? (angles[0] ?? 0) + TURN;
    const before = out.at(-1);
    if (to - from < 1e-12 || !inside((from + to) / 2)) return;
    // A circle that only touches a side leaves one arc there, not two.
    if (before && Math.abs(before.to - from) < 1e-12) out[out.length - 1] = { r, from: before.from, to };
    else out.push({ r, from, to });
  });
  return out;
}

/**
 * Arcs of every ring boundary on the section, rings `spacing` mm apart counted from the pith; at most `most` rings, the spacing
 * doubled until they fit, so that a drawing never fills with black.
 */
export function ringArcs(width: number, thickness: number, pith: Vec2, spacing: number, most = 60): RingArc[] {
  if (!(spacing > 0) || !(width > 0) || !(thickness > 0))
    throw new Error(`rings need sizes above 0, got ${width} × ${thickness}, ${spacing} apart`);
  const away = (v: number, size: number): number => Math.max(0, -v, v - size);
  const nearest = Math.hypot(away(pith[0], width), away(pith[1], thickness));
  const farthest = Math.hypot(
    Math.max(Math.abs(pith[0]), Math.abs(width - pith[0])),
    Math.max(Math.abs(pith[1]), Math.abs(thickness - pith[1])),
  );
  let step = spacing;
  while ((farthest - nearest) / step > most) step *= 2;
  const out: RingArc[] = [];
  for (let n = Math.floor(nearest / step) + 1; n * step < farthest; n++) out.push(...arcsInside(width, thickness, pith, n * step));
  return out;
}

/** Where the pith of a board probably lay when nothing is known: a guess for the drawing, and to be called so. */
export function guessedPith(width: number, thickness: number, sawn: Sawn = 'flat'): Vec2 {
  if (sawn === 'quarter') return [-60, thickness / 2];
  if (sawn === 'rift') return [-60, -60 - thickness / 2];
  return [width / 2, -60];
}
/** Angle between the rings and the wide face at the middle of the section: 0 flat-sawn … π/2 quarter-sawn. */
export function ringAngle(width: number, thickness: number, pith: Vec2): number {
  const x = Math.abs(width / 2 - pith[0]);
  const y = Math.abs(thickness / 2 - pith[1]);
  return x === 0 && y === 0 ? 0 : Math.atan2(x, y);
}
