import type { Face } from '../../model/ids.ts';
import type { Fields } from '../family.ts';
import type { Row, Sizes } from '../screw-rows.ts';

export type SlottedCleat = Omit<Sizes, 'head'> &
  Row & {
    /** Which screw is fast: the middle one, or the one nearest to an edge of the board, by the board's own face. */
    readonly fixed: 'middle' | Face;
    /** Movement each way at the screw farthest from the fast one, mm; the others in proportion. */
    readonly allow: number;
    /** Whole length of the slot of that farthest screw, mm. */
    readonly slot: number;
  };
export const params: Fields<SlottedCleat> = {
  count: { kind: 'count', words: 'screws along the batten' },
  inset: { kind: 'length', words: 'first screw from the edge of the board' },
  off: { kind: 'length', words: 'row off the middle of the batten' },
  fixed: {
    kind: 'choice',
    words: 'screw that is fast',
    options: {
      middle: 'the middle one: the board moves both ways',
      front: 'the one at the front edge: it stays in line',
      back: 'the one at the back edge',
      left: 'the one at the left edge',
      right: 'the one at the right edge',
      bottom: 'the one at the bottom edge',
      top: 'the one at the top edge',
    },
  },
  allow: { kind: 'length', words: 'movement allowed each way at the farthest screw' },
  slot: { kind: 'length', words: 'length of the longest slot' },
  diameter: { kind: 'length', words: 'diameter of the screws' },
  length: { kind: 'length', words: 'length of the screws' },
  sink: { kind: 'length', words: 'depth of the counterbore in the batten' },
  bore: { kind: 'length', words: 'width of the counterbore' },
  clearance: { kind: 'length', words: 'width of the slots and of the round hole' },
  pilot: { kind: 'length', words: 'pilot hole in the board' },
  pilot_depth: { kind: 'length', words: 'depth of the pilot hole' },
};
