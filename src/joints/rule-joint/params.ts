import type { Fields } from '../family.ts';
import type { Face } from '../../model/ids.ts';
import { SHOWING } from '../profile.ts';

export type RuleJoint = {
  /** Face of the leaf that is the surface of the table. */
  readonly upper: Face;
  /** The step above the round, radius of the round, and how much larger the cove is, mm. */
  readonly fillet: number;
  readonly radius: number;
  readonly clearance: number;
  readonly hinges: number;
  /** Middle of the first and last hinge from the ends of the joint, mm. */
  readonly inset: number;
  /** A hinge's size along the joint, mm. */
  readonly hinge_long: number;
  /** From the pin to the end of each flap; thickness of the flaps; diameter of the knuckle, mm. */
  readonly flap_top: number;
  readonly flap_leaf: number;
  readonly flap_thick: number;
  readonly knuckle: number;
};
export const params: Fields<RuleJoint> = {
  upper: { kind: 'choice', words: 'face of the leaf that is the table’s surface', options: SHOWING },
  fillet: { kind: 'length', words: 'fillet above the round' },
  radius: { kind: 'length', words: 'radius of the round' },
  clearance: { kind: 'length', words: 'how much larger the cove is' },
  hinges: { kind: 'count', words: 'number of hinges' },
  inset: { kind: 'length', words: 'first hinge from the end' },
  hinge_long: { kind: 'length', words: 'length of a hinge along the joint' },
  flap_top: { kind: 'length', words: 'flap under the fixed top, from the pin' },
  flap_leaf: { kind: 'length', words: 'flap under the leaf, from the pin' },
  flap_thick: { kind: 'length', words: 'thickness of the flaps' },
  knuckle: { kind: 'length', words: 'diameter of the knuckle' },
};
