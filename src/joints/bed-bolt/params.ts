import type { Face } from '../../model/ids.ts';
import type { Fields } from '../family.ts';

export type BedBolt = {
  readonly count: number;
  /** Distance between two bolts, and how far the middle of them lies above the middle of the rail's width, mm. */
  readonly apart: number;
  readonly off: number;
  readonly diameter: number;
  /** Length under the head, mm. */
  readonly length: number;
  /** Diameter of the hole through the post and into the rail, and its depth in the rail, mm. */
  readonly hole: number;
  readonly depth: number;
  /** How deep the head lies in the post, and how wide its counterbore is, mm. */
  readonly sink: number;
  readonly bore: number;
  readonly nut: 'square' | 'barrel';
  /** Width of a square nut, diameter of a barrel; thickness along the bolt of the one, length of the other, mm. */
  readonly nut_size: number;
  readonly nut_long: number;
  /** Middle of the nut from the end of the rail, mm. */
  readonly back: number;
  /** The face of the rail from which the nut goes in. */
  readonly from: Face;
  /** Two dry stub tenons beside the bolts that keep the rail from turning: length (0: none), width, and their middles from the rail's middle, mm. */
  readonly stub: number;
  readonly stub_width: number;
  readonly stub_off: number;
};
export const params: Fields<BedBolt> = {
  count: { kind: 'count', words: 'bolts' },
  apart: { kind: 'length', words: 'distance between two bolts' },
  off: { kind: 'length', words: 'bolts off the middle of the rail' },
  diameter: { kind: 'length', words: 'diameter of the bolt' },
  length: { kind: 'length', words: 'length of the bolt under its head' },
  hole: { kind: 'length', words: 'diameter of the bolt hole' },
  depth: { kind: 'length', words: 'depth of the hole in the rail' },
  sink: { kind: 'length', words: 'depth of the counterbore for the head' },
  bore: { kind: 'length', words: 'width of the counterbore' },
  nut: { kind: 'choice', words: 'kind of nut', options: { square: 'a square nut in a mortise', barrel: 'a round barrel nut in a hole' } },
  nut_size: { kind: 'length', words: 'width of a square nut, diameter of a barrel' },
  nut_long: { kind: 'length', words: 'thickness of a square nut, length of a barrel' },
  back: { kind: 'length', words: 'nut from the end of the rail' },
  from: {
    kind: 'choice',
    words: 'face of the rail that takes the nut',
    options: { left: 'left', right: 'right', front: 'front', back: 'back', bottom: 'bottom', top: 'top' },
  },
  stub: { kind: 'length', words: 'length of the stub tenons, 0 for none' },
  stub_width: { kind: 'length', words: 'width of a stub tenon' },
  stub_off: { kind: 'length', words: 'stub tenons from the middle of the rail' },
};
