import { EDGE_PARAMS, cutEdges } from './edge.ts';
import { LEAST } from './limits.ts';
import { type ShapeKind, onePart } from './shape.ts';

const DEG = 180 / Math.PI;
const shelf = { wood: 'oak', grain: 'x', left: '0', width: '300', front: '0', depth: '120', bottom: '0', height: '20' };

/** A flat taken off an edge; at 45° unless its depth is given. */
export const chamfer: ShapeKind = {
  id: 'chamfer',
  version: 1,
  title: 'Chamfer',
  words: 'Takes a sharp edge off in a flat, along its whole length or stopped.',
  params: {
    ...EDGE_PARAMS,
    width: { kind: 'length', words: 'width across the first face' },
    depth: { kind: 'length', words: 'depth down the second face (as the width, unless said)' },
  },
  required: ['edges', 'width'],
  make: (part, set) =>
    cutEdges(part, set, {
      name: 'chamfer',
      full: true,
      section: (room, limits) => {
        const width = limits.length('width', 'the width of a chamfer', LEAST, room.width, 3);
        const depth = limits.length('depth', 'the depth of a chamfer', LEAST, room.depth, width);
        return {
          curve: [{ at: [width, 0] }, { at: [0, depth] }],
          width,
          depth,
          lift: [-width, -depth],
          axis: null,
          names: ['chamfer'],
          says: [{ words: 'angle of the chamfer to the first face', value: Math.atan2(depth, width) * DEG, unit: 'deg' }],
        };
      },
    }),
  examples: [
    {
      name: 'chamfered along',
      words: 'The front edge of a shelf, taken off along its whole length.',
      document: onePart('Chamfer', 'shelf', { ...shelf, shape: [{ as: 'chamfer@1', edges: ['top front'], width: '6' }] }),
      // A triangle of 6 x 6 / 2 over 300.
      removed: { shelf: 18 * 300 },
      planar: true,
    },
    {
      name: 'stopped chamfer',
      words: 'A chamfer that stops short of both ends and runs out in a slope.',
      document: onePart('Stopped chamfer', 'shelf', {
        ...shelf,
        shape: [
          { as: 'chamfer@1', edges: ['top front'], width: '8', depth: '6', stop_low: '40', stop_high: '40', runout: 'ramp', run: '30' },
        ],
      }),
      // 24 mm² over 300 - 2 x 70; each slope is a third of the prism that it stands in, 24 x 30 / 3.
      removed: { shelf: 24 * 160 + 2 * 240 },
      planar: true,
    },
  ],
};
