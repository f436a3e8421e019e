/**
 * Tolerances that more than one floor judges by; what only one floor needs has its name there. Lengths in mm, volumes mm³.
 * Unless a source is named, a value is a rule of this project: well above the noise of float64 geometry in pieces up to 100 m
 * and well below what a hand can feel.
 */

/** Touching is not overlapping: two solids overlap when they share more than this volume … */
const TOUCH_VOLUME = 0.001;

/** … and the shared volume is thicker than this, taken as twice the volume over its surface. */
const TOUCH_THICKNESS = 0.01;

/** A shoulder that stands off, or bites in, by more than this shows as a line in the finished joint. Common practice, no source: half a sharp knife line. */
export const OPEN_SHOULDER = 0.05;

/** A shared volume thicker than a touch, by both tests. `area` is the whole surface of the shared solid. */
export function overlaps(volume: number, area: number): boolean {
  return volume > TOUCH_VOLUME && area > 0 && (2 * volume) / area > TOUCH_THICKNESS;
}
