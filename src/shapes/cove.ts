import { EDGE_PARAMS, cutEdges } from './edge.ts';
import { LEAST } from './limits.ts';
import { type ShapeKind, onePart } from './shape.ts';

const top = { wood: 'cherry', grain: 'x', left: '0', width: '400', front: '0', depth: '200', bottom: '0', height: '24' };

/** A quarter hollow along an edge. */
export const cove: ShapeKind = {
  id: 'cove',
  version: 1,
  title: 'Cove',
  words: 'Hollows an edge out in a quarter circle; under a top it makes the edge look lighter.',
  params: { ...EDGE_PARAMS, radius: { kind: 'length', words: 'radius' } },
  required: ['edges', 'radius'],
  make: (part, set) =>
    cutEdges(part, set, {
      name: 'cove',
      section: (room, limits) => {
        const r = limits.length('radius', 'the radius of a cove', LEAST, Math.min(room.width, room.depth), 6);
        return {
          curve: [{ at: [r, 0], via: [r * Math.SQRT1_2, r * Math.SQRT1_2] }, { at: [0, r] }],
          width: r,
          depth: r,
          lift: [-r, -r],
          axis: null,
          names: ['cove'],
        };
      },
    }),
  examples: [
    {
      name: 'cove under an edge',
      words: 'The front edge of a top, hollowed from below.',
      document: onePart('Cove', 'top', { ...top, shape: [{ as: 'cove@1', edges: ['bottom front'], radius: '12' }] }),
      removed: { top: (Math.PI / 4) * 144 * 400 },
      planar: false,
    },
  ],
};
