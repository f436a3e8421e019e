import type { Fields } from '../family.ts';
import type { Face } from '../../model/ids.ts';
import { SHOWING } from '../profile.ts';

export type GlazingBar = {
  /** Face of the over bar that looks into the room. */
  readonly shows: Face;
  /** Width and depth of the rabbets, mm; 0 for none. */
  readonly rabbet_wide: number;
  readonly rabbet_deep: number;
  readonly moulding: 'none' | 'chamfer' | 'ovolo';
  /** How much of face and sides the moulding takes, mm. */
  readonly moulding_size: number;
  readonly hold: 'glued' | 'dry';
};
export const params: Fields<GlazingBar> = {
  shows: { kind: 'choice', words: 'face of the over bar that shows', options: SHOWING },
  rabbet_wide: { kind: 'length', words: 'ledge for the glass at each side' },
  rabbet_deep: { kind: 'length', words: 'depth of the rabbets from behind' },
  moulding: {
    kind: 'choice',
    words: 'moulding of the front arrises',
    options: { none: 'square', chamfer: 'chamfered', ovolo: 'a quarter round' },
  },
  moulding_size: { kind: 'length', words: 'size of the moulding' },
  hold: { kind: 'choice', words: 'how it is held', options: { glued: 'glued', dry: 'dry' } },
};
