import type { Fields } from '../family.ts';

export type ShelfPeg = {
  readonly diameter: number;
  /** Depth of the holes in the side, mm. */
  readonly depth: number;
  /** How far a peg reaches under the shelf, mm. */
  readonly reach: number;
  /** How much is planed off the peg where the shelf lies on it, mm. */
  readonly flat: number;
  /** Middle of the pegs from the front and the back edge of the shelf, mm. */
  readonly inset: number;
  /** From one hole of a row to the next, mm, and how many there are above and below the pegs. */
  readonly step: number;
  readonly above: number;
  readonly below: number;
  readonly peg: 'wood' | 'metal';
};
export const params: Fields<ShelfPeg> = {
  diameter: { kind: 'length', words: 'diameter of the pegs' },
  depth: { kind: 'length', words: 'depth of the holes' },
  reach: { kind: 'length', words: 'how far a peg reaches under the shelf' },
  flat: { kind: 'length', words: 'flat on the peg under the shelf' },
  inset: { kind: 'length', words: 'pegs from the front and back edges of the shelf' },
  step: { kind: 'length', words: 'from one hole of a row to the next' },
  above: { kind: 'count', words: 'spare holes above the pegs' },
  below: { kind: 'count', words: 'spare holes below the pegs' },
  peg: { kind: 'choice', words: 'what the pegs are made of', options: { wood: 'the wood of the side', metal: 'brass' } },
};
