import { EDGE_PARAMS, cutEdges } from './edge.ts';
import { LEAST } from './limits.ts';
import { type ShapeKind, onePart } from './shape.ts';

const rail = { wood: 'oak', grain: 'x', left: '0', width: '400', front: '0', depth: '20', bottom: '0', height: '90' };

/** A half round along an edge, flush with the face, with a small groove (the quirk) that sets it off. */
export const bead: ShapeKind = {
  id: 'bead',
  version: 1,
  title: 'Bead',
  words: 'A half round along an edge, set off from the face by a small groove.',
  params: {
    ...EDGE_PARAMS,
    runout: { ...EDGE_PARAMS.runout, options: { square: EDGE_PARAMS.runout.options.square, ramp: EDGE_PARAMS.runout.options.ramp } },
    width: { kind: 'length', words: 'width of the bead' },
    quirk: { kind: 'length', words: 'width of the groove beside it' },
  },
  required: ['edges', 'width'],
  make: (part, set) =>
    cutEdges(part, set, {
      name: 'bead',
      round: false,
      section: (room, limits) => {
        const most = Math.min(room.width - LEAST, 2 * room.depth);
        const r = limits.length('width', 'the width of a bead', 2 * LEAST, most, 6) / 2;
        const q = limits.length('quirk', 'the groove beside a bead', LEAST, room.width - 2 * r, Math.min(1.5, room.width - 2 * r));
        const k = r * Math.SQRT1_2;
        return {
          curve: [
            { at: [2 * r + q, 0] },
            { at: [2 * r + q, r] },
            { at: [2 * r, r], via: [r + k, r - k] },
            { at: [r, 0], via: [r - k, r - k] },
            { at: [0, r] },
          ],
          width: 2 * r + q,
          depth: r,
          // A scratch stock is lifted straight out: sideways it would cut the bead away.
          lift: [0, -r],
          axis: null,
          names: ['quirk', 'quirk floor', 'bead inner', 'bead outer'],
        };
      },
    }),
  examples: [
    {
      name: 'beaded rail',
      words: 'A bead along the lower edge of a rail.',
      document: onePart('Bead', 'rail', { ...rail, shape: [{ as: 'bead@1', edges: ['front bottom'], width: '6', quirk: '2' }] }),
      // Two corners of 3 x 3 less a quarter circle, and a groove of 2 x 3.
      removed: { rail: (2 * 9 * (1 - Math.PI / 4) + 6) * 400 },
      planar: false,
    },
  ],
};
