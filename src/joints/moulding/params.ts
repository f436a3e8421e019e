import type { Fields } from '../family.ts';
import type { Face } from '../../model/ids.ts';

export type Moulding = {
  readonly hold: 'slots' | 'keys' | 'glued';
  /** Face of the moulding at its front end. */
  readonly front: Face;
  readonly mitred: 'none' | 'front' | 'both';
  /** Length glued at the front end, mm. */
  readonly glued: number;
  /** Screws, or keys, behind that; the last one's distance from the back end, and room each way for the side's movement, mm. */
  readonly count: number;
  readonly inset: number;
  readonly room: number;
  readonly screw: number;
  readonly screw_length: number;
  /** A key's wide face, its depth in the moulding, its length, mm; and the slope of its flanks. */
  readonly key_wide: number;
  readonly key_deep: number;
  readonly key_long: number;
  readonly slope: number;
};
export const params: Fields<Moulding> = {
  hold: {
    kind: 'choice',
    words: 'how it is held behind its front end',
    options: {
      slots: 'screwed from inside, in slots',
      keys: 'slid on dovetail keys',
      glued: 'glued over its whole length',
    },
  },
  front: {
    kind: 'choice',
    words: 'front end of the moulding',
    options: {
      front: 'its front',
      back: 'its back',
      left: 'its left end',
      right: 'its right end',
      bottom: 'its lower end',
      top: 'its upper end',
    },
  },
  mitred: {
    kind: 'choice',
    words: 'mitre',
    options: { none: 'square at both ends', front: 'mitred at its front end', both: 'mitred at both ends' },
  },
  glued: { kind: 'length', words: 'length glued at the front end' },
  count: { kind: 'count', words: 'number of screws or keys' },
  inset: { kind: 'length', words: 'last screw or key from the back end' },
  room: { kind: 'length', words: 'room each way for the side to move' },
  screw: { kind: 'length', words: 'diameter of the screws' },
  screw_length: { kind: 'length', words: 'length of the screws' },
  key_wide: { kind: 'length', words: 'width of a key' },
  key_deep: { kind: 'length', words: 'depth of a key' },
  key_long: { kind: 'length', words: 'length of a key' },
  slope: { kind: 'ratio', words: 'slope of the keys’ flanks, as 1/6' },
};
