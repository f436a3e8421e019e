import type { Operation } from '../family.ts';
import type { Lamination } from './params.ts';

const PLANER = 'Nothing shorter or thinner than the machine’s manual allows; stand out of line with the feed; eye and ear protection.';

export function bench(s: Lamination, hand: boolean): readonly Operation[] {
  return [
    {
      role: 'enter',
      words: 'Choose layers whose moisture lies within a few points of each other; mark the faces that meet.',
      tool: 'moisture meter',
    },
    hand
      ? { role: 'enter', words: 'Plane both faces flat and out of wind, and try them for rocking.', tool: 'try plane and winding sticks' }
      : {
          role: 'enter',
          words: 'Plane both faces flat, one joint at a time, shortly before gluing.',
          tool: 'jointer and planer',
          caution: PLANER,
        },
    s.hold === 'glued'
      ? {
          role: 'into',
          words: 'Spread glue on both faces, clamp from the middle outwards with thick cauls.',
          tool: 'clamps and cauls',
          caution: 'Keep to the glue maker’s sheet for pressure, warmth and time.',
        }
      : { role: 'into', words: 'Lay the faces together dry.', tool: 'none' },
  ];
}
