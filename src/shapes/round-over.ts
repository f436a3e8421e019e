import { EDGE_PARAMS, cutEdges } from './edge.ts';
import { LEAST } from './limits.ts';
import { type ShapeKind, onePart } from './shape.ts';

const top = { wood: 'cherry', grain: 'x', left: '0', width: '400', front: '0', depth: '200', bottom: '0', height: '20' };

/** A quarter round on an edge; two of half the thickness make a bull-nose. */
export const roundOver: ShapeKind = {
  id: 'round_over',
  version: 1,
  title: 'Round-over',
  words: 'Rounds an edge to a quarter circle, so that a hand likes it.',
  params: { ...EDGE_PARAMS, radius: { kind: 'length', words: 'radius' } },
  required: ['edges', 'radius'],
  make: (part, set) =>
    cutEdges(part, set, {
      name: 'round-over',
      full: true,
      section: (room, limits) => {
        const r = limits.length('radius', 'the radius of a round-over', LEAST, Math.min(room.width, room.depth), 3);
        const k = r * (1 - Math.SQRT1_2);
        return {
          curve: [{ at: [r, 0], via: [k, k] }, { at: [0, r] }],
          width: r,
          depth: r,
          lift: [-r, -r],
          axis: null,
          names: ['round-over'],
        };
      },
    }),
  examples: [
    {
      name: 'rounded edges',
      words: 'The long edges of a top, rounded above.',
      document: onePart('Round-over', 'top', { ...top, shape: [{ as: 'round_over@1', edges: ['top front', 'top back'], radius: '8' }] }),
      // A square of 8 less a quarter circle, twice.
      removed: { top: 2 * 64 * (1 - Math.PI / 4) * 400 },
      planar: false,
    },
    {
      name: 'bull-nose',
      words: 'Both edges of a front rounded by half the thickness: a full half round.',
      document: onePart('Bull-nose', 'top', {
        ...top,
        shape: [{ as: 'round_over@1', edges: ['top front', 'bottom front'], radius: '10' }],
      }),
      removed: { top: 2 * 100 * (1 - Math.PI / 4) * 400 },
      planar: false,
    },
  ],
};
