import type { Fields } from '../family.ts';
import type { Row, Sizes } from '../screw-rows.ts';

export type WallFixing = Sizes & Row;
export const params: Fields<WallFixing> = {
  count: { kind: 'count', words: 'screws along the rail' },
  inset: { kind: 'length', words: 'first screw from the end of the rail' },
  off: { kind: 'length', words: 'row off the middle of the rail' },
  diameter: { kind: 'length', words: 'diameter of the screws' },
  length: { kind: 'length', words: 'length of the screws' },
  head: {
    kind: 'choice',
    words: 'how the heads lie',
    options: {
      round: 'flat underneath, with a washer',
      countersunk: 'countersunk, flush with the rail',
      plugged: 'in a counterbore under a plug of wood',
    },
  },
  sink: { kind: 'length', words: 'depth of the counterbore' },
  bore: { kind: 'length', words: 'diameter of the counterbore and its plug' },
  clearance: { kind: 'length', words: 'clearance hole in the rail' },
  pilot: { kind: 'length', words: 'core of the screw in the wall or its plug' },
  pilot_depth: { kind: 'length', words: 'depth of the hole in the wall' },
};
