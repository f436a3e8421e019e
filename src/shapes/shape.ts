/** The contract of a shape: wood taken from one part for its own sake (a taper, an outline), not for a joint. */
import type { Box } from '../geom/box.ts';
import type { Axis, Vec2 } from '../geom/vec3.ts';
import type { ShapeFacts } from '../model/catalog.ts';
import type { Json, Source } from '../model/finding.ts';
import type { Face } from '../model/ids.ts';
import type { Feature } from '../model/record.ts';

/** The part as the shape sees it: its stock in its record frame. Lengths are mm. */
export type ShapePart = { readonly stock: Box; readonly grain: Axis };
/** An edge by its two faces: widths are measured across the first, depths from it, down the second. */
export type Edge = readonly [Face, Face];
/** A point of an outline, a hole, a turned profile. `via`: an arc runs through it to the next point; `by`: how else it gets there. */
export type Spot = { readonly at: Vec2; readonly via?: Vec2; readonly by?: string };
/** Resolved settings: lengths and angles as numbers, lists of faces as compass names, points in the record frame. */
export type ShapeSet = Readonly<Record<string, number | string | readonly Face[] | readonly Edge[] | readonly Spot[]>>;
/** A number that follows from the shape and that a maker sets a tool by: 'angle from the untouched face'. Degrees, mm or a plain count. */
export type ShapeSays = {
  readonly words: string;
  readonly value: number;
  readonly unit: 'mm' | 'deg' | 'count';
  /** Where it is no plain geometry: the range that sources span, and whose rule it is. */
  readonly range?: readonly [number, number];
  readonly source?: Source;
};
export type ShapeMade = { readonly ok: true; readonly features: readonly Feature[]; readonly says?: readonly ShapeSays[] };
/** It cannot be cut: `problem` says the limit; with `nearest` set it can be. */
export type ShapeRefusal = { readonly ok: false; readonly problem: string; readonly nearest?: ShapeSet };
/** A small piece that shows the shape, as a whole document; `removed` by path, mm³, worked out by hand. `planar`: every face is flat. */
export type ShapeExample = {
  readonly name: string;
  readonly words: string;
  readonly document: Json;
  readonly removed: Readonly<Record<string, number>>;
  readonly planar: boolean;
};
export type ShapeKind = ShapeFacts & {
  readonly id: string;
  readonly title: string;
  /** One sentence: what it is for. */
  readonly words: string;
  /** The features, in the record frame; or why it cannot be cut. */
  readonly make: (part: ShapePart, set: ShapeSet) => ShapeMade | ShapeRefusal;
  readonly examples: readonly ShapeExample[];
};

export const lengthIn = (set: ShapeSet, key: string): number | undefined => {
  const v = set[key];
  return typeof v === 'number' ? v : undefined;
};
const listIn = (set: ShapeSet, key: string): readonly unknown[] => {
  const v = set[key];
  return Array.isArray(v) ? (v as readonly unknown[]) : [];
};
export const facesIn = (set: ShapeSet, key: string): readonly Face[] => listIn(set, key) as readonly Face[];
export const edgesIn = (set: ShapeSet, key: string): readonly Edge[] => listIn(set, key) as readonly Edge[];
export const spotsIn = (set: ShapeSet, key: string): readonly Spot[] => listIn(set, key) as readonly Spot[];

/** A document of one part with one shape or several, for examples. */
export const onePart = (title: string, id: string, part: Readonly<Record<string, Json>>): Json => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { [id]: part },
});
