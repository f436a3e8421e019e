import type { Face } from '../../model/ids.ts';
import type { Fields } from '../family.ts';

export type Hinge = {
  readonly count: number;
  /** From the end of what the two share to the near end of the first hinge, mm. */
  readonly inset: number;
  /** Length of a hinge along the door, mm. */
  readonly length: number;
  /** How far a leaf reaches in from the face, mm. */
  readonly wide: number;
  /** Thickness of a leaf and depth of its recess, mm. */
  readonly thick: number;
  /** Diameter of the knuckle, mm. */
  readonly knuckle: number;
  /** How far the pin line stands in front of the face, mm. */
  readonly proud: number;
  /** The face of the door on whose side the knuckle stands. */
  readonly side: Face;
};
export const params: Fields<Hinge> = {
  count: { kind: 'count', words: 'number of hinges' },
  inset: { kind: 'length', words: 'first hinge from the end of the door' },
  length: { kind: 'length', words: 'length of a hinge' },
  wide: { kind: 'length', words: 'how far a leaf reaches in' },
  thick: { kind: 'length', words: 'thickness of a leaf' },
  knuckle: { kind: 'length', words: 'diameter of the knuckle' },
  proud: { kind: 'length', words: 'pin line in front of the face' },
  side: {
    kind: 'choice',
    words: 'where the knuckle stands',
    options: {
      front: 'at the front of the door',
      back: 'at the back of the door',
      left: 'at the left of the door',
      right: 'at the right of the door',
      top: 'at the top of the door',
      bottom: 'at the bottom of the door',
    },
  },
};
