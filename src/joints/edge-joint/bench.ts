import type { Operation } from '../family.ts';
import type { EdgeJoint } from './params.ts';

const JOINTER = 'Guard over the cutters, push blocks, nothing shorter than the machine’s manual allows; eye and ear protection.';

export function bench(s: EdgeJoint, hand: boolean): readonly Operation[] {
  return [
    { role: 'enter', words: 'Mark the faces and the order of the boards; let the grain of all run one way.', tool: 'pencil' },
    hand
      ? {
          role: 'enter',
          words: 'Plane both edges together, folded face to face, until no light shows between them.',
          tool: 'jointer plane',
        }
      : {
          role: 'enter',
          words: 'Joint one edge face in and the other face out, so that any error of the fence cancels.',
          tool: 'jointer',
          caution: JOINTER,
        },
    s.hold === 'glued'
      ? {
          role: 'into',
          words: 'Glue soon after planing; clamps above and below in turn, a thin even bead along the whole seam.',
          tool: 'clamps',
          caution: 'Keep to the glue maker’s sheet for pressure, warmth and time.',
        }
      : { role: 'into', words: 'Lay the edges together dry.', tool: 'none' },
  ];
}
