import type { Fields } from '../family.ts';
import type { Face } from '../../model/ids.ts';

export type Housing = {
  /** How deep the shelf stands in the side, mm. */
  readonly depth: number;
  /** At which edge of the shelf the housing stops short: a face of the shelf, both, or none (through). */
  readonly stopped: 'none' | 'both' | Face;
  /** How much of the shelf's end is cut away at a stopped edge, mm. */
  readonly stop: number;
  /** Which faces of the shelf are cut back to a tongue: none (its whole thickness goes in), both, or the one named. */
  readonly shoulders: 'none' | 'both' | Face;
  /** Thickness of the end that goes in, mm; the whole shelf without shoulders. */
  readonly tongue: number;
  readonly hold: 'glued' | 'dry';
};
export const params: Fields<Housing> = {
  depth: { kind: 'length', words: 'depth of the housing' },
  stopped: {
    kind: 'choice',
    words: 'edge of the shelf at which the housing stops short',
    options: {
      none: 'through, from edge to edge',
      front: 'stopped at the front edge of the shelf',
      back: 'stopped at the back edge of the shelf',
      both: 'stopped at both edges',
      left: 'stopped at the left edge of the shelf',
      right: 'stopped at the right edge of the shelf',
      bottom: 'stopped at the bottom edge of the shelf',
      top: 'stopped at the top edge of the shelf',
    },
  },
  stop: { kind: 'length', words: 'how far it stops short' },
  shoulders: {
    kind: 'choice',
    words: 'faces of the shelf that are cut back to a tongue',
    options: {
      none: 'none: the whole thickness goes in',
      both: 'both, the tongue in the middle',
      left: 'the left face alone (bare-faced tongue)',
      right: 'the right face alone (bare-faced tongue)',
      front: 'the front face alone (bare-faced tongue)',
      back: 'the back face alone (bare-faced tongue)',
      bottom: 'the under face alone (bare-faced tongue)',
      top: 'the upper face alone (bare-faced tongue)',
    },
  },
  tongue: { kind: 'length', words: 'thickness of the tongue' },
  hold: { kind: 'choice', words: 'how it is held', options: { glued: 'glued in', dry: 'dry, it can be taken out' } },
};
