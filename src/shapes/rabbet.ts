import { EDGE_PARAMS, cutEdges } from './edge.ts';
import { LEAST } from './limits.ts';
import { type ShapeKind, onePart } from './shape.ts';

const side = { wood: 'oak', grain: 'z', left: '0', width: '19', front: '0', depth: '250', bottom: '0', height: '600' };

/** A step along an edge: for a back, for glass, or for the edge of the next board. */
export const rabbet: ShapeKind = {
  id: 'rabbet',
  version: 1,
  title: 'Rabbet',
  words: 'Cuts a step along an edge, for a back, a pane of glass or the next board.',
  params: {
    ...EDGE_PARAMS,
    width: { kind: 'length', words: 'width across the first face' },
    depth: { kind: 'length', words: 'depth from the first face' },
  },
  required: ['edges', 'width', 'depth'],
  make: (part, set) =>
    cutEdges(part, set, {
      name: 'rabbet',
      section: (room, limits) => {
        const width = limits.length('width', 'the width of a rabbet', LEAST, room.width, 10);
        const depth = limits.length('depth', 'the depth of a rabbet', LEAST, room.depth, 6);
        return {
          curve: [{ at: [width, 0] }, { at: [width, depth] }, { at: [0, depth] }],
          width,
          depth,
          lift: [0, -depth],
          axis: null,
          names: ['wall', 'floor'],
        };
      },
    }),
  examples: [
    {
      name: 'rabbet for a back',
      words: 'The side of a case, stepped along its back edge to take the back.',
      document: onePart('Rabbet', 'side', { ...side, shape: [{ as: 'rabbet@1', edges: ['right back'], width: '9', depth: '12' }] }),
      removed: { side: 9 * 12 * 600 },
      planar: true,
    },
    {
      name: 'stopped rabbet',
      words: 'The same, stopped above the floor and left as the cutter leaves it.',
      document: onePart('Stopped rabbet', 'side', {
        ...side,
        shape: [{ as: 'rabbet@1', edges: ['right back'], width: '10', depth: '12', stop_low: '80', runout: 'round', run: '10' }],
      }),
      // 120 mm² over 600 - 90, and a quarter circle of radius 10, 12 deep.
      removed: { side: 120 * 510 + (Math.PI / 4) * 100 * 12 },
      planar: false,
    },
  ],
};
