import type { Fields } from '../family.ts';

export type Dovetail = {
  readonly tails: number;
  /** Rise over run: 1/8 leans 1 mm in 8. */
  readonly slope: number;
  /** The same slope as an angle, radians; either may be set. */
  readonly angle: number;
  /** Width of a whole pin where it is narrow, on the outer face, mm. */
  readonly pin: number;
  /** Width of the half pins at the edges, on the outer face, mm. */
  readonly half_pin: number;
  /** A spot on the width of the tail board that must lie under a tail (the meeting's y), or null. */
  readonly tail_over: number | null;
  /** How much of the width round that spot the tail must cover: the width of a groove, mm. */
  readonly over_size: number;
};
export const params: Fields<Dovetail> = {
  tails: { kind: 'count', words: 'number of tails' },
  slope: { kind: 'ratio', words: 'slope of the tails, as 1/8' },
  angle: { kind: 'angle', words: 'slope of the tails as an angle' },
  pin: { kind: 'length', words: 'narrow width of a pin' },
  half_pin: { kind: 'length', words: 'narrow width of the half pins' },
  tail_over: { kind: 'place', words: 'where a tail must cover a groove' },
  over_size: { kind: 'length', words: 'width of the groove that it covers' },
};
