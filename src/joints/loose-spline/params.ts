import type { Face } from '../../model/ids.ts';
import type { Fields } from '../family.ts';

export type LooseSpline = {
  /** Thickness of the spline, mm. */
  readonly thickness: number;
  /** Width of the spline across the seam, mm: half of it stands in each part. */
  readonly width: number;
  /** How much deeper than the spline each groove is, mm. */
  readonly spare: number;
  /** End of the seam before which the grooves stop, by the first part's own face. */
  readonly stopped: 'none' | 'both' | Face;
  readonly stop: number;
  readonly made: 'ply' | 'across' | 'along';
  readonly hold: 'glued' | 'dry';
};
export const params: Fields<LooseSpline> = {
  thickness: { kind: 'length', words: 'thickness of the spline' },
  width: { kind: 'length', words: 'width of the spline' },
  spare: { kind: 'length', words: 'room at each edge of the spline' },
  stopped: {
    kind: 'choice',
    words: 'end of the seam where the grooves stop short',
    options: {
      none: 'through, the spline shows at both ends',
      both: 'stopped at both ends',
      left: 'stopped at the left',
      right: 'stopped at the right',
      front: 'stopped at the front',
      back: 'stopped at the back',
      bottom: 'stopped at the bottom',
      top: 'stopped at the top',
    },
  },
  stop: { kind: 'length', words: 'how far from the end they stop' },
  made: {
    kind: 'choice',
    words: 'what the spline is made of',
    options: { ply: 'plywood', across: 'solid, its grain across the seam', along: 'solid, its grain along the seam' },
  },
  hold: { kind: 'choice', words: 'how it is held', options: { glued: 'glued', dry: 'dry' } },
};
