import type { Vec3 } from '../geom/vec3.ts';

/** A line in space: a point on it (mm) and its unit direction. */
export type Axis3 = { readonly at: Vec3; readonly along: Vec3 };
