import { polygon } from '../geom/loop.ts';
import { outside, sectionFrame } from './section.ts';
import type { ShapeKind } from './shape.ts';

/** A square leg with its four long edges taken off until eight equal sides are left. */
export const octagon: ShapeKind = {
  id: 'octagon',
  version: 1,
  title: 'Octagon',
  words: 'Takes the four long edges off a leg until it has eight sides.',
  params: {},
  required: [],
  make: ({ stock, grain }) => {
    const { half } = sectionFrame(stock, grain);
    // From a side 2h of the narrower way, each corner loses 2h / (2 + √2): then all eight sides are equal on a square leg.
    const c = (2 * Math.min(half[0], half[1])) / (2 + Math.SQRT2);
    const [x, y] = half;
    const keep = polygon([x, y - c], [x - c, y], [-x + c, y], [-x, y - c], [-x, -y + c], [-x + c, -y], [x - c, -y], [x, -y + c]);
    return { ok: true, features: [{ ...outside('octagon', stock, grain, keep), faces: {} }] };
  },
};
