/** A solid cut through, to be drawn. */
import { type Frame, inverse } from '../geom/frame.ts';
import { polygonArea } from '../geom/loop.ts';
import type { Vec2 } from '../geom/vec3.ts';
import { slice } from './kernel.ts';
import { withSolids } from './scope.ts';
import { placed } from './shape.ts';
import type { Solid } from './solid.ts';

/**
 * The cut face in the xy-plane of `plane` (given in the solid's record frame), mm, as polygons: outlines run counter-clockwise,
 * holes clockwise, seen against the plane's z. A plane that only touches a face may or may not find it: cut beside it.
 */
export function sectionOf(solid: Solid, plane: Frame): Vec2[][] {
  return withSolids(() =>
    slice(placed(solid.body, inverse(plane)), 0)
      .map(withoutMidpoints)
      .filter((p) => p.length > 2 && Math.abs(polygonArea(p)) > 1e-6),
  );
}
/** The same polygon without the corners where it goes straight on, which come from edges of triangles. */
function withoutMidpoints(points: readonly Vec2[]): Vec2[] {
  return points.filter((p, i) => {
    const a = points.at(i - 1) ?? p;
    const b = points[(i + 1) % points.length] ?? p;
    const area = (p[0] - a[0]) * (b[1] - a[1]) - (p[1] - a[1]) * (b[0] - a[0]);
    return Math.abs(area) > 1e-7 * Math.hypot(b[0] - a[0], b[1] - a[1]);
  });
}
