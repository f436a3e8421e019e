import type { Fields } from '../family.ts';
import type { Face } from '../../model/ids.ts';

export type CockBead = {
  /** Radius of the bead's two front arrises, mm; half its thickness makes it half round. */
  readonly radius: number;
  /** At which ends the bead is mitred: a face of the bead, both, or none. */
  readonly mitred: 'none' | 'both' | Face;
  readonly hold: 'glued' | 'pinned';
};
export const params: Fields<CockBead> = {
  radius: { kind: 'length', words: 'radius of the bead’s front arrises' },
  mitred: {
    kind: 'choice',
    words: 'ends at which the bead is mitred',
    options: {
      none: 'square at both ends',
      both: 'mitred at both ends',
      left: 'mitred at its left end',
      right: 'mitred at its right end',
      front: 'mitred at its front end',
      back: 'mitred at its back end',
      bottom: 'mitred at its lower end',
      top: 'mitred at its upper end',
    },
  },
  hold: { kind: 'choice', words: 'how it is held', options: { glued: 'glued in', pinned: 'pinned, with glue at the mitres only' } },
};
