/** A mortise and tenon as set out: what make, the contacts and the rules all read. */
import type { WedgeSpec } from '../features.ts';
import type { Plane } from '../meeting.ts';
import type { Crossing, Ground, Span, Tenon } from './lay.ts';
import type { MortiseTenon } from './params.ts';

/** All that make, the contacts and the rules read: worked out once. */
export type Laid = {
  readonly g: Ground;
  readonly s: MortiseTenon;
  readonly tenons: readonly Tenon[];
  readonly meets: readonly Crossing[];
  /** Mitre planes that the tenon is cut by, and the axis in which they lean. */
  readonly mitres: readonly Plane[];
  readonly axis: 0 | 1;
  /** The tenon reaches to this z; the mortise from the receiver's face to that one. */
  readonly tip: number;
  readonly floor: number;
  readonly haunch: { readonly span: Span; readonly side: 1 | -1 } | null;
  readonly pegs: readonly PegAt[];
  readonly wedges: readonly { readonly spec: WedgeSpec; readonly tenon: number }[];
};
export type PegAt = { readonly y: number; readonly z: number; readonly start: number; readonly sign: 1 | -1; readonly length: number };
export const nameOf = (word: string, l: Laid, i: number): string => (l.tenons.length > 1 ? `${word} ${i + 1}` : word);
