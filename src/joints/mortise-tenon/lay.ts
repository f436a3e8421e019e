/** Where the haunch lies, and the outline of a tenon whose end is mitred. */
import type { Vec2 } from '../../geom/vec3.ts';
import { ownSense } from '../blocks.ts';
import type { Plane } from '../meeting.ts';
import { type Ground, MITRE_SPACE, type Span, endSide, whole } from '../tenons.ts';
import type { MortiseTenon } from './params.ts';

/** From the tenon's edge to the entering part's edge, on the side of the receiver's end; null where no shoulder is left there. */
export function haunchSpan(g: Ground, s: MortiseTenon): { span: Span; side: 1 | -1 } | null {
  if (s.haunch === 'none') return null;
  const [low, high] = whole(g, s);
  const rooms: readonly [number, number] = [low - g.y[0], g.y[1] - high];
  const near = endSide(g);
  const side =
    Math.abs(near.room) < g.y[1] - g.y[0]
      ? near.side
      : rooms[1] > rooms[0] + 1e-6 || (rooms[1] > rooms[0] - 1e-6 && ownSense(g.enter, 'y') > 0)
        ? 1
        : -1;
  if ((side > 0 ? rooms[1] : rooms[0]) < 0.5) return null;
  return { side, span: side > 0 ? [high, g.y[1]] : [g.y[0], low] };
}

/** The outline of the tenon seen square to `plane`, from `back` to its long end, cut by the mitres: counter-clockwise [x or y, z]. */
export function tenonOutline(low: number, high: number, back: number, length: number, mitres: readonly Plane[], axis: 0 | 1): Vec2[] {
  let out: Vec2[] = [
    [low, back],
    [high, back],
    [high, length],
    [low, length],
  ];
  for (const m of mitres) {
    const height = (p: Vec2): number => m.normal[axis] * p[0] + m.normal[2] * p[1] - (m.off - MITRE_SPACE / 2);
    out = out.flatMap((p, i) => {
      const q = out[(i + 1) % out.length] ?? p;
      const [a, b] = [height(p), height(q)];
      const keep: Vec2[] = a <= 1e-9 ? [p] : [];
      if ((a > 1e-9 && b < -1e-9) || (a < -1e-9 && b > 1e-9))
        keep.push([p[0] + ((q[0] - p[0]) * a) / (a - b), p[1] + ((q[1] - p[1]) * a) / (a - b)]);
      return keep;
    });
  }
  return out;
}
