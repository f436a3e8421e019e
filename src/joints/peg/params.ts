import type { Fields } from '../family.ts';

export type Peg = {
  readonly count: number;
  readonly diameter: number;
  readonly length: number;
  /** Middle of the peg from the face on which the parts meet, into the mortised part, mm. */
  readonly back: number;
  /** Pegs stand this far apart, about a middle that lies `up` from the middle of the pegged part's width. */
  readonly apart: number;
  readonly up: number;
  readonly way: 'thickness' | 'width';
  readonly from: 'near' | 'far';
  /** How much nearer its shoulder each tenoned part is bored, mm. */
  readonly drawbore: number;
};
export const params: Fields<Peg> = {
  count: { kind: 'count', words: 'pegs' },
  diameter: { kind: 'length', words: 'peg diameter' },
  length: { kind: 'length', words: 'peg length' },
  back: { kind: 'length', words: 'peg from the joint face' },
  apart: { kind: 'length', words: 'distance between pegs' },
  up: { kind: 'length', words: 'how far above the middle' },
  way: {
    kind: 'choice',
    words: 'which way it goes through',
    options: { thickness: 'through the thickness of the pegged part', width: 'through the width of the pegged part' },
  },
  from: {
    kind: 'choice',
    words: 'the side it goes in from',
    options: { near: 'the side nearer to the pegged part', far: 'the other side' },
  },
  drawbore: { kind: 'length', words: 'drawbore offset' },
};
