import type { Fields } from '../family.ts';
import type { Face } from '../../model/ids.ts';

export type Lap = {
  readonly form: 'plain' | 'mitred' | 'dovetailed';
  /** How much of the lapped thickness the first part keeps: 1/2 halves it, 1 leaves the first part whole. */
  readonly share: number;
  /** The face of the first part that its notch is cut in; 'auto' where the notch can open, its low face first. */
  readonly notch: 'auto' | Face;
  /** Rise over run of a dovetailed tongue's sides. */
  readonly slope: number;
  /** How much wider a trench is than the part that crosses in it, mm. */
  readonly play: number;
  readonly hold: 'glued' | 'dry';
};
export const params: Fields<Lap> = {
  form: {
    kind: 'choice',
    words: 'form of the lap',
    options: {
      plain: 'plain, square shoulders',
      mitred: 'mitred on the face of a corner',
      dovetailed: 'dovetailed tongue at a tee, cannot be drawn out lengthways',
    },
  },
  share: { kind: 'ratio', words: 'share of the lapped thickness that the first part keeps' },
  notch: {
    kind: 'choice',
    words: 'face of the first part that its notch is cut in',
    options: {
      auto: 'where the notch can open, the low face first',
      front: 'its front',
      back: 'its back',
      left: 'its left',
      right: 'its right',
      bottom: 'its underside',
      top: 'its top',
    },
  },
  slope: { kind: 'ratio', words: 'slope of the dovetailed tongue, as 1/8' },
  play: { kind: 'length', words: 'play of a part in the trench that it crosses in' },
  hold: { kind: 'choice', words: 'how it is held', options: { glued: 'glued', dry: 'dry, it can be taken apart' } },
};
