/** The list of all shapes. A new one is a file beside this and a line here. */
import { arch } from './arch.ts';
import { bead } from './bead.ts';
import { bent } from './bent.ts';
import { chamfer } from './chamfer.ts';
import { coopered } from './coopered.ts';
import { cove } from './cove.ts';
import { endCut } from './end-cut.ts';
import { hole } from './hole.ts';
import { octagon } from './octagon.ts';
import { outline } from './outline.ts';
import { rabbet } from './rabbet.ts';
import { roundOver } from './round-over.ts';
import type { ShapeKind } from './shape.ts';
import { taper } from './taper.ts';
import { turnedRound } from './turned.ts';

export const shapes: Readonly<Record<string, ShapeKind>> = {
  taper,
  octagon,
  turned: turnedRound,
  outline,
  arch,
  chamfer,
  round_over: roundOver,
  cove,
  bead,
  rabbet,
  hole,
  end_cut: endCut,
  coopered,
  bent,
};
