import type { Fields } from '../family.ts';

export type LooseTenon = {
  /** Across the entering part's thickness (the meeting's x), and of each tenon over its width (y), mm. */
  readonly thickness: number;
  readonly width: number;
  /** How far a tenon goes into the part that is met, and into the end of the other, mm. */
  readonly deep_in: number;
  readonly deep_own: number;
  /** Tenons one beside the other over the width, and the wood left between two of their mortises. */
  readonly tenons: number;
  readonly between: number;
  readonly offset: number;
  readonly from: 'middle' | 'face' | 'low' | 'high';
  readonly drop: number;
  /** As a chisel or as a router's bit leaves the mortises. */
  readonly ends: 'square' | 'round';
  /** How much deeper each mortise is than the tenon goes, mm. */
  readonly spare: number;
  readonly glue: 'yes' | 'no';
};
export const params: Fields<LooseTenon> = {
  thickness: { kind: 'length', words: 'tenon thickness' },
  width: { kind: 'length', words: 'tenon width' },
  deep_in: { kind: 'length', words: 'tenon into the part that is met' },
  deep_own: { kind: 'length', words: 'tenon into the end of the part' },
  tenons: { kind: 'count', words: 'tenons one beside the other over the width' },
  between: { kind: 'length', words: 'wood left between tenons' },
  offset: { kind: 'length', words: 'offset across the thickness' },
  from: {
    kind: 'choice',
    words: 'what the offset counts from',
    options: {
      middle: 'the middle of the thickness, to the middle of the tenon',
      face: 'the face side (the part’s mark), to the nearer cheek',
      low: 'the part’s left, front or lower face, to the nearer cheek',
      high: 'the part’s right, back or upper face, to the nearer cheek',
    },
  },
  drop: { kind: 'length', words: 'how far the tenons lie below the middle of the width' },
  ends: { kind: 'choice', words: 'ends of the mortises', options: { square: 'square', round: 'round, as a router leaves them' } },
  spare: { kind: 'length', words: 'each mortise deeper by' },
  glue: { kind: 'choice', words: 'is it glued', options: { yes: 'glued', no: 'not glued' } },
};
