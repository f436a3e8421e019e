import type { Example } from '../family.ts';

const top = { wood: 'pine', grain: 'x', left: '0', width: '400', front: '0', depth: '200', top: '220', height: '20' };
const rail = { wood: 'pine', grain: 'x', left: '0', width: '400', front: '10', depth: '20', top: 'top.bottom', height: '80' };
const block = { wood: 'pine', grain: 'x', left: '170', width: '60', front: 'rail.back', depth: '25', top: 'top.bottom', height: '25' };
export const examples: readonly Example[] = [
  {
    name: 'block under a top',
    words: 'A block rubbed into the corner between a rail and the board above it.',
    document: {
      dryfit: 1,
      title: 'Glue block',
      units: 'mm',
      parts: { top, rail, block },
      joints: { corner: { as: 'glue_block@1', places: [{ block: 'block', on: 'top', beside: 'rail' }], set: { bevel: '15' } } },
    },
    // A triangle of 15 by 15 over the length of 60. The rail is held by nothing else here.
    removed: { block: (15 * 15 * 60) / 2 },
    planar: true,
  },
];
