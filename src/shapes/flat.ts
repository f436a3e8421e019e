/** Shapes that are drawn flat, seen along an axis of the part: their two axes, and what lies inside or outside a loop cut away. */
import { sizeOf } from '../geom/box.ts';
import type { Frame } from '../geom/frame.ts';
import { type Axis, axisIndex, axisVec } from '../geom/vec3.ts';
import type { ShapeField } from '../model/catalog.ts';
import { type Face, faceSide } from '../model/ids.ts';
import type { ShapePart, ShapeSet } from './shape.ts';

/** How far cutters reach past the stock, mm. */
export const OVER = 5;
const AXES: readonly Axis[] = ['x', 'y', 'z'];

/** The axis that a flat shape is seen along: the one that is said, else the thinnest way of the stock. */
export function seenAxis(part: ShapePart, set: ShapeSet): Axis {
  const said = set['seen'];
  if (said === 'x' || said === 'y' || said === 'z') return said;
  const size = sizeOf(part.stock);
  return AXES[size.indexOf(Math.min(...size))] ?? 'z';
}
/** The two axes on which the points of a setting are read, in the order x, y, z; a diameter has none. */
export function pointAxes(on: Extract<ShapeField, { kind: 'points' }>['on'], part: ShapePart, set: ShapeSet): readonly [Axis, Axis | null] {
  if (on === 'turned') return [part.grain, null];
  const face = Array.isArray(set['face']) ? (set['face'][0] as Face | undefined) : undefined;
  const across = on === 'face' ? (face ? faceSide(face).quad.axis : 'z') : seenAxis(part, set);
  const [a, b] = AXES.filter((k) => k !== across);
  return [a ?? 'x', b ?? 'y'];
}
/** A frame for what is drawn on two axes: x and y are these, z the third, at the record's origin. Left-handed where it is seen along y. */
export function flatFrame(seen: Axis): Frame {
  const [a, b] = AXES.filter((k) => k !== seen);
  return { o: [0, 0, 0], x: axisVec(a ?? 'x'), y: axisVec(b ?? 'y'), z: axisVec(seen) };
}
/** The stock as a rectangle on the two axes: low and high of each, and of the axis that it is seen along. */
export function flatStock(
  part: ShapePart,
  seen: Axis,
): { low: readonly [number, number]; high: readonly [number, number]; from: number; to: number } {
  const [i, j] = AXES.filter((k) => k !== seen).map(axisIndex) as [0 | 1 | 2, 0 | 1 | 2];
  const k = axisIndex(seen);
  const { min, max } = part.stock;
  return { low: [min[i], min[j]], high: [max[i], max[j]], from: min[k], to: max[k] };
}
