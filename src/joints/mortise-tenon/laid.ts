/** A mortise and tenon as set out: what make, the contacts and the rules all read. */
import type { WedgeSpec } from '../features.ts';
import type { Plane } from '../meeting.ts';
import type { Crossing, Ground, Span, Tenon } from '../tenons.ts';
import type { MortiseTenon } from './params.ts';

/** All that make, the contacts and the rules read: worked out once. */
export type Laid = {
  readonly g: Ground;
  readonly s: MortiseTenon;
  readonly tenons: readonly Tenon[];
  /** The tenons' spans over the width and across the thickness, and what each way they cover with what lies between. */
  readonly rows: readonly Span[];
  readonly twins: readonly Span[];
  readonly x: Span;
  readonly y: Span;
  readonly meets: readonly Crossing[];
  /** Mitre planes that the tenon is cut by, and the axis in which they lean. */
  readonly mitres: readonly Plane[];
  readonly axis: 0 | 1;
  /** The tenon reaches to this z; the mortise from the receiver's face to that one. */
  readonly tip: number;
  readonly floor: number;
  /** From this z on the mortise widens, by `s.flare` on each side; null where it is straight. */
  readonly flareFrom: number | null;
  readonly haunch: { readonly span: Span; readonly side: 1 | -1 } | null;
  readonly pegs: readonly PegAt[];
  readonly wedges: readonly { readonly spec: WedgeSpec; readonly tenon: number }[];
};
export type PegAt = { readonly y: number; readonly z: number; readonly start: number; readonly sign: 1 | -1; readonly length: number };
/** Where tenons are pressed apart: along the width or along the thickness. */
export const spreadOf = (l: Laid): 'x' | 'y' | null => l.wedges[0]?.spec.spread ?? null;
export const nameOf = (word: string, l: Laid, i: number): string => (l.tenons.length > 1 ? `${word} ${i + 1}` : word);
