/** Smooth curves through points as arcs that touch each other: what a compass draws, a template router follows and both readers of records cut. */
import { type Corner, arcThrough } from './loop.ts';
import type { Vec2 } from './vec3.ts';

/** A point on the way round; `by` says how the next one is reached: straight, through `via` in an arc, or in a smooth curve. */
export type WayPoint = { readonly at: Vec2; readonly via?: Vec2; readonly smooth?: boolean };

const sub = (a: Vec2, b: Vec2): Vec2 => [a[0] - b[0], a[1] - b[1]];
const dot = (a: Vec2, b: Vec2): number => a[0] * b[0] + a[1] * b[1];
const cross = (a: Vec2, b: Vec2): number => a[0] * b[1] - a[1] * b[0];
const unit = (a: Vec2): Vec2 => {
  const l = Math.hypot(a[0], a[1]);
  return l > 0 ? [a[0] / l, a[1] / l] : [1, 0];
};
const along = (p: Vec2, t: Vec2, d: number): Vec2 => [p[0] + t[0] * d, p[1] + t[1] * d];

/**
 * The corners of a way: smooth stretches become pairs of arcs with one tangent where they meet. Where two smooth stretches meet, the tangent
 * is that of the circle through the point and its two neighbours; at the end of a smooth stretch the curve takes what a single arc would.
 * `closed`: the last point leads back to the first; else it has no edge of its own.
 */
export function cornersOfWay(way: readonly WayPoint[], closed: boolean): Corner[] {
  const n = way.length;
  const at = (i: number): WayPoint => way[((i % n) + n) % n] as WayPoint;
  const smoothInto = (i: number): boolean => (closed || i > 0) && at(i - 1).smooth === true;
  const tangent = (i: number): Vec2 | null => (at(i).smooth && smoothInto(i) ? circleTangent(at(i - 1).at, at(i).at, at(i + 1).at) : null);
  return way.flatMap((p, i): Corner[] => {
    if (!closed && i === n - 1) return [{ at: p.at }];
    const next = at(i + 1).at;
    if (p.via) return [arcThrough(p.at, p.via, next) ? { at: p.at, via: p.via } : { at: p.at }];
    if (!p.smooth) return [{ at: p.at }];
    return biarc(p.at, tangent(i), next, closed || i + 1 < n - 1 ? tangent(i + 1) : null);
  });
}
/** The way that the circle through three points runs at the middle one. */
function circleTangent(a: Vec2, p: Vec2, b: Vec2): Vec2 {
  const [u, v] = [sub(p, a), sub(b, p)];
  const [lu, lv] = [Math.hypot(...u), Math.hypot(...v)];
  if (lu === 0 || lv === 0) return unit(sub(b, a));
  // Each chord's direction counts the more, the shorter the chord: on a circle that is its tangent exactly.
  return unit([u[0] / (lu * lu) + v[0] / (lv * lv), u[1] / (lu * lu) + v[1] / (lv * lv)]);
}
/** One or two arcs from p to q that leave along tp and arrive along tq; a tangent that is free (null) is what one arc needs. */
function biarc(p: Vec2, tp: Vec2 | null, q: Vec2, tq: Vec2 | null): Corner[] {
  if (!tp && !tq) return [{ at: p }];
  const v = sub(q, p);
  if (!tp || !tq) {
    const t = tp ?? mirroredAt(unit(v), tq as Vec2);
    return [arcFrom(p, t, q)];
  }
  const t: Vec2 = [tp[0] + tq[0], tp[1] + tq[1]];
  const a = 2 * (1 - dot(tp, tq));
  const b = dot(v, t);
  const d = a < 1e-9 ? (b > 1e-9 ? dot(v, v) / (2 * b) : 0) : (Math.sqrt(b * b + a * dot(v, v)) - b) / a;
  const [g, h] = [along(p, tp, d), along(q, tq, -d)];
  const j: Vec2 = [(g[0] + h[0]) / 2, (g[1] + h[1]) / 2];
  if (!(d > 1e-6) || Math.hypot(...sub(j, p)) < 1e-6 || Math.hypot(...sub(q, j)) < 1e-6) return [arcFrom(p, tp, q)];
  return [arcFrom(p, tp, j), arcFrom(j, unit(sub(h, g)), q)];
}
/** A direction mirrored at the chord: what the other end of a single arc has. */
const mirroredAt = (c: Vec2, t: Vec2): Vec2 => [2 * dot(c, t) * c[0] - t[0], 2 * dot(c, t) * c[1] - t[1]];
/** The arc from p along t to q, through its middle; a straight line where that is what it is. */
function arcFrom(p: Vec2, t: Vec2, q: Vec2): Corner {
  const c = sub(q, p);
  const half = Math.atan2(cross(c, t), dot(c, t));
  if (Math.abs(half) < 1e-9) return { at: p };
  const rise = Math.tan(half / 2) / 2;
  const via: Vec2 = [(p[0] + q[0]) / 2 - c[1] * rise, (p[1] + q[1]) / 2 + c[0] * rise];
  return { at: p, via };
}

/** The radius of an arch by its chord and its rise: (c² / 4 + r²) / (2 r). */
export const archRadius = (chord: number, rise: number): number => ((chord * chord) / 4 + rise * rise) / (2 * rise);
/** How far an arc of this radius rises over its chord; the arc is less than a half circle. */
export const archRise = (radius: number, chord: number): number => radius - Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
/** Length along an arc over a chord. */
export const archLength = (chord: number, rise: number): number => 2 * archRadius(chord, rise) * 2 * Math.atan2(rise, chord / 2);
