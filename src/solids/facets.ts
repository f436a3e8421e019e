/** A solid as plain triangles, for those who plan with shapes and know no kernel. */
import { type Frame, handed, outPoint } from '../geom/frame.ts';
import { cornersAt } from './measure.ts';
import { readSolid } from './read.ts';
import type { Solid } from './solid.ts';

/** Nine numbers a triangle (three corners xyz, mm, float64, counter-clockwise from outside), record frame. */
export type Facets = Float64Array;

export function facetsOf(solid: Solid): Facets {
  const reading = readSolid(solid);
  const n = reading.triangles.length / 3;
  const out = new Float64Array(9 * n);
  for (let t = 0; t < n; t++) cornersAt(reading, t).forEach((p, k) => out.set(p, 9 * t + 3 * k));
  return out;
}
/** Facets of a record frame seen from outside `frame`; a left-handed frame turns the triangles over, so that they still face out. */
export function placedFacets(facets: Facets, frame: Frame): Facets {
  const out = new Float64Array(facets.length);
  const order = handed(frame) === 1 ? [0, 1, 2] : [0, 2, 1];
  for (let t = 0; t < facets.length; t += 9)
    order.forEach((from, to) => {
      const i = t + 3 * from;
      out.set(outPoint(frame, [facets[i] ?? 0, facets[i + 1] ?? 0, facets[i + 2] ?? 0]), t + 3 * to);
    });
  return out;
}
