/** The list of all shapes. A new one is a file beside this and a line here. */
import { octagon } from './octagon.ts';
import { outline } from './outline.ts';
import type { ShapeKind } from './shape.ts';
import { taper } from './taper.ts';
import { turnedRound } from './turned.ts';

export const shapes: Readonly<Record<string, ShapeKind>> = { outline, octagon, taper, turned: turnedRound };
