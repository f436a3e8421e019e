import { polygon } from '../geom/loop.ts';
import { outside, sectionFrame } from './section.ts';
import { type ShapeKind, onePart } from './shape.ts';

const leg = { wood: 'ash', grain: 'z', left: '0', width: '40', front: '0', depth: '40', bottom: '0', height: '400' };

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
    return {
      ok: true,
      features: [{ ...outside('octagon', stock, grain, keep), faces: {} }],
      says: [{ words: 'each of the four corners loses', value: c, unit: 'mm' }],
    };
  },
  examples: [
    {
      name: 'eight-sided leg',
      words: 'A square leg taken to eight equal sides.',
      document: onePart('Octagon', 'leg', { ...leg, shape: [{ as: 'octagon@1' }] }),
      // Four corners of c² / 2 with c = 40 / (2 + √2).
      removed: { leg: 2 * (40 / (2 + Math.SQRT2)) ** 2 * 400 },
      planar: true,
    },
  ],
};
