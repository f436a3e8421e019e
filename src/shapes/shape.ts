/** The contract of a shape: wood taken from one part for its own sake (a taper, an outline), not for a joint. */
import type { Box } from '../geom/box.ts';
import type { Axis } from '../geom/vec3.ts';
import type { ShapeFacts } from '../model/catalog.ts';
import type { Face } from '../model/ids.ts';
import type { Feature } from '../model/record.ts';

/** The part as the shape sees it: its stock in its record frame. Lengths are mm. */
export type ShapePart = { readonly stock: Box; readonly grain: Axis };
/** Resolved settings: lengths and angles as numbers, lists of faces as compass names. */
export type ShapeSet = Readonly<Record<string, number | string | readonly Face[]>>;
export type ShapeKind = ShapeFacts & {
  readonly id: string;
  readonly title: string;
  /** One sentence: what it is for. */
  readonly words: string;
  /** The features, in the record frame; or why it cannot be cut. */
  readonly make: (
    part: ShapePart,
    set: ShapeSet,
  ) => { readonly ok: true; readonly features: readonly Feature[] } | { readonly ok: false; readonly problem: string };
};

export const lengthIn = (set: ShapeSet, key: string): number | undefined => {
  const v = set[key];
  return typeof v === 'number' ? v : undefined;
};
