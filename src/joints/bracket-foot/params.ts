import type { Fields } from '../family.ts';

export type BracketFoot = {
  readonly spline: 'loose' | 'none';
  readonly spline_thick: number;
  /** Across the mitre, half of it in each bracket, mm. */
  readonly spline_wide: number;
  /** Side of the square glue block, and in how many pieces it stands one above the other. */
  readonly block: number;
  readonly pieces: number;
  readonly block_grain: 'upright' | 'lying';
  /** Section of the fixing blocks, and their length along the brackets, mm. */
  readonly fixing: number;
  readonly fixing_long: number;
  readonly screw: number;
  readonly screw_length: number;
  /** Room each way for a screw in a bracket that runs across the base's grain, mm. */
  readonly slot: number;
  /** How a bracket across the base's grain is held to it. */
  readonly across: 'screwed' | 'glued';
};
export const params: Fields<BracketFoot> = {
  spline: { kind: 'choice', words: 'spline across the mitre', options: { loose: 'a loose spline', none: 'none' } },
  spline_thick: { kind: 'length', words: 'thickness of the spline' },
  spline_wide: { kind: 'length', words: 'width of the spline' },
  block: { kind: 'length', words: 'side of the glue block' },
  pieces: { kind: 'count', words: 'pieces that the glue block stands in' },
  block_grain: {
    kind: 'choice',
    words: 'grain of the glue block',
    options: { upright: 'upright, across the brackets’ grain', lying: 'lying, piece by piece along one bracket and the other' },
  },
  fixing: { kind: 'length', words: 'section of the fixing blocks' },
  fixing_long: { kind: 'length', words: 'length of the fixing blocks' },
  screw: { kind: 'length', words: 'diameter of the screws' },
  screw_length: { kind: 'length', words: 'length of the screws' },
  slot: { kind: 'length', words: 'room each way for the screw across the base’s grain' },
  across: {
    kind: 'choice',
    words: 'bracket across the base’s grain',
    options: { screwed: 'screwed in a slot, without glue', glued: 'glued to the base' },
  },
};
