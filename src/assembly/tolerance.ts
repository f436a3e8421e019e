/** Tolerances of the planner, mm unless said otherwise. It plans on parts as drawn, line to line, not as measured. */

/** Surfaces that bite less than this along the way still only touch; shadows that lap by less than this still pass. */
export const SLIP = 0.02;
/** Shadows that lap by less than this area (mm²) do not stop anything. */
export const LAP_AREA = 0.05;
/** A facet whose normal leans less than this (cosine) towards the direction lies along it and takes no part. */
export const ALONG = 1e-4;
/** Two surfaces that face each other within this distance are in contact: joints drawn with play hold each other all the same. */
export const CONTACT_REACH = 1;
/** Cosine of the angle within which two facing surfaces count as parallel: below one chord of a round of 64, above half of one. */
export const FACING = Math.cos((4 * Math.PI) / 180);
/** Contact patches below this area (mm²) are leftovers of clipping. */
export const PATCH_AREA = 0.5;
/** A contact whose normal leans less than this (cosine) towards the direction slides and is not opened. */
export const SLIDES = 0.05;
/** Cosine above which two directions are one. */
export const SAME_DIRECTION = 1 - 1e-9;
