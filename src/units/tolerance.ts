/**
 * Every tolerance has a name here; no bare epsilon elsewhere. Lengths in mm, areas mm², volumes mm³, angles in radians.
 * Unless a source is named, a value is a rule of this project: chosen well above the noise of float64 geometry in pieces up to
 * 100 m and well below what a hand can feel.
 */

/** The grid of all numbers in records: two routes to one size differ in the last bit, and must hash alike. */
export const GRID = 1e-6;

/** Faces nearer than this stand in one plane; corners nearer than this are one. */
export const SAME_PLACE = 1e-4;

/** Directions closer than this are parallel. */
export const SAME_DIRECTION = 1e-6;

/** Touching is not overlapping: two solids overlap when they share more than this volume … */
export const TOUCH_VOLUME = 0.001;

/** … and the shared volume is thicker than this, taken as twice the volume over its area. */
export const TOUCH_THICKNESS = 0.01;

/** A shoulder that stands off, or bites in, by more than this is seen as a line in the finished joint. Common practice: a sharp knife line is about 0.1 mm. */
export const OPEN_SHOULDER = 0.05;

/** A feature that adds wood reaches at least so deep into its own stock, or rounding may leave it hanging in the air. */
export const ADD_ROOT = 1;

/** How far two measured sizes may differ and still be the same set-up of a fence or stop. */
export const SAME_SETTING = 0.02;
export const SAME_SETTING_ANGLE = (0.02 * Math.PI) / 180;

/** What instruments of the bench can tell, plus or minus; common practice. */
export const CALIPER = 0.03;
export const RULE = 0.25;

/** A shared volume thicker than a touch, by both tests. `area` is the whole surface of the shared solid. */
export function overlaps(volume: number, area: number): boolean {
  return volume > TOUCH_VOLUME && area > 0 && (2 * volume) / area > TOUCH_THICKNESS;
}
