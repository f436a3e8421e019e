import type { Fields } from '../family.ts';

export type TuskTenon = {
  /** Across the entering part's thickness (the meeting's x) and its width (y), mm. */
  readonly thickness: number;
  readonly width: number;
  /** Middle of the tenon from the middle of the thickness, and below the middle of the width, mm. */
  readonly offset: number;
  readonly drop: number;
  /** The key goes through the width of the tenon or through its thickness. */
  readonly way: 'width' | 'thickness';
  /** The key's sides, and what it measures along the tenon at its middle, mm. */
  readonly key_thick: number;
  readonly key_deep: number;
  /** How much the key deepens over its length: 1/10 is 1 mm in 10. */
  readonly slope: number;
  /** How far the key stands out of the tenon at each end, mm. */
  readonly key_over: number;
  /** How far inside the far face of the mortised part the hole begins, mm. */
  readonly pull: number;
  /** Wood beyond the hole, where that reaches farthest, to the end of the tenon, mm. */
  readonly relish: number;
};
export const params: Fields<TuskTenon> = {
  thickness: { kind: 'length', words: 'tenon thickness' },
  width: { kind: 'length', words: 'tenon width' },
  offset: { kind: 'length', words: 'offset across the thickness' },
  drop: { kind: 'length', words: 'how far the tenon lies below the middle of the width' },
  way: {
    kind: 'choice',
    words: 'which way the key goes through',
    options: { width: 'through the width of the tenon', thickness: 'through the thickness of the tenon' },
  },
  key_thick: { kind: 'length', words: 'key thickness' },
  key_deep: { kind: 'length', words: 'key from face to slope at its middle' },
  slope: { kind: 'ratio', words: 'slope of the key, as 1/10' },
  key_over: { kind: 'length', words: 'key stands out at each end' },
  pull: { kind: 'length', words: 'hole begins inside the face by' },
  relish: { kind: 'length', words: 'wood beyond the key' },
};
