import type { Face } from '../../model/ids.ts';
import type { Fields } from '../family.ts';

export type Breadboard = {
  /** Thickness of tongue and tenons, mm. */
  readonly thickness: number;
  /** Length of the tongue that runs along the whole end, mm. */
  readonly tongue: number;
  readonly tenons: number;
  readonly tenon_width: number;
  readonly tenon_length: number;
  /** How much deeper than tongue and tenons the groove and the mortises are, mm. */
  readonly spare: number;
  /** Which peg is fast: the middle one, or the one nearest to an edge of the top, by the top's own face. */
  readonly fixed: 'middle' | Face;
  /** Movement to allow each way at the tenon farthest from the fast peg, mm; the others in proportion. */
  readonly allow: number;
  readonly peg: number;
  /** Middle of the pegs from the shoulder, mm. */
  readonly peg_back: number;
};
export const params: Fields<Breadboard> = {
  thickness: { kind: 'length', words: 'thickness of tongue and tenons' },
  tongue: { kind: 'length', words: 'length of the tongue' },
  tenons: { kind: 'count', words: 'number of tenons, one peg in each' },
  tenon_width: { kind: 'length', words: 'width of a tenon' },
  tenon_length: { kind: 'length', words: 'length of a tenon' },
  spare: { kind: 'length', words: 'room behind tongue and tenons' },
  fixed: {
    kind: 'choice',
    words: 'peg that is fast',
    options: {
      middle: 'the middle one: the top moves both ways',
      front: 'the one at the front edge: it stays flush',
      back: 'the one at the back edge',
      left: 'the one at the left edge',
      right: 'the one at the right edge',
      bottom: 'the one at the bottom edge',
      top: 'the one at the top edge',
    },
  },
  allow: { kind: 'length', words: 'movement allowed each way at the farthest peg' },
  peg: { kind: 'length', words: 'diameter of the pegs' },
  peg_back: { kind: 'length', words: 'pegs from the shoulder' },
};
