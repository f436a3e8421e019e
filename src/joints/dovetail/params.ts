import type { Face } from '../../model/ids.ts';
import type { Fields } from '../family.ts';

export type Dovetail = {
  readonly tails: number;
  /** From the middle of one pin to the middle of the next, mm; where the document sets it the half pins take what is left. */
  readonly pitch: number;
  /** Rise over run: 1/8 leans 1 mm in 8. */
  readonly slope: number;
  /** The same slope as an angle, radians; either may be set. */
  readonly angle: number;
  /** Width of a whole pin where it is narrow, at the ends of the tails, mm. */
  readonly pin: number;
  /** Width of the half pins at the edges, measured in the same place, mm. */
  readonly half_pin: number;
  /** Wood of the pin board left before the ends of the tails, mm: 0 through, above 0 lapped (half-blind). */
  readonly lap: number;
  /** At which edge of the tail board the corner is mitred instead of pinned, so that a rabbet or moulding can go round it. */
  readonly mitre: 'none' | 'both' | Face;
  /** How much of the width the mitre takes at that edge, mm. */
  readonly mitre_width: number;
  /** A spot on the width of the tail board that must lie under a tail (the meeting's y), or null. */
  readonly tail_over: number | null;
  /** How much of the width round that spot the tail must cover: the width of a groove, mm. */
  readonly over_size: number;
};
export const params: Fields<Dovetail> = {
  tails: { kind: 'count', words: 'number of tails' },
  pitch: { kind: 'length', words: 'middle of one pin to the middle of the next' },
  slope: { kind: 'ratio', words: 'slope of the tails, as 1/8' },
  angle: { kind: 'angle', words: 'slope of the tails as an angle' },
  pin: { kind: 'length', words: 'narrow width of a pin' },
  half_pin: { kind: 'length', words: 'narrow width of the half pins' },
  lap: { kind: 'length', words: 'lap left before the tails, 0 when they come through' },
  mitre: {
    kind: 'choice',
    words: 'edge of the tail board with a mitred shoulder',
    options: {
      none: 'none: a half pin at each edge',
      top: 'mitred at the top edge',
      bottom: 'mitred at the bottom edge',
      front: 'mitred at the front edge',
      back: 'mitred at the back edge',
      left: 'mitred at the left edge',
      right: 'mitred at the right edge',
      both: 'mitred at both edges',
    },
  },
  mitre_width: { kind: 'length', words: 'width of the mitred shoulder' },
  tail_over: { kind: 'place', words: 'where a tail must cover a groove' },
  over_size: { kind: 'length', words: 'width of the groove that it covers' },
};
