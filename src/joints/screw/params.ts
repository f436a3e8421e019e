import type { Fields } from '../family.ts';
import type { Row, Sizes } from '../screw-rows.ts';

export type Screw = Sizes &
  Row & {
    /** How far the parts may move on each other each way, mm; above 0 the holes become slots. */
    readonly travel: number;
    /** Whole length of a slot, mm. */
    readonly slot: number;
    /** Which screw keeps a round hole: the middle one of an odd number, or none. */
    readonly fast: 'none' | 'middle';
  };
export const params: Fields<Screw> = {
  count: { kind: 'count', words: 'screws in the row' },
  inset: { kind: 'length', words: 'first screw from the end of what the parts share' },
  off: { kind: 'length', words: 'row off the middle' },
  diameter: { kind: 'length', words: 'diameter of the screws' },
  length: { kind: 'length', words: 'length of the screws' },
  head: {
    kind: 'choice',
    words: 'how the heads lie',
    options: {
      countersunk: 'countersunk, flush with the face',
      round: 'flat underneath, on the face or in a counterbore',
      plugged: 'in a counterbore under a plug of wood',
    },
  },
  sink: { kind: 'length', words: 'depth of the counterbore' },
  bore: { kind: 'length', words: 'diameter of the counterbore and its plug' },
  clearance: { kind: 'length', words: 'clearance hole in the first part' },
  pilot: { kind: 'length', words: 'pilot hole in the second part' },
  pilot_depth: { kind: 'length', words: 'depth of the pilot hole' },
  travel: { kind: 'length', words: 'movement that the slots allow each way' },
  slot: { kind: 'length', words: 'length of a slot' },
  fast: {
    kind: 'choice',
    words: 'screw in a round hole',
    options: { none: 'none: every hole alike', middle: 'the middle one: the wood moves from there' },
  },
};
