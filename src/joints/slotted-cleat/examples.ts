import type { Example } from '../family.ts';

const board = { wood: 'cherry', grain: 'x', left: '0', width: '700', front: '0', depth: '500', bottom: '0', height: '22' };
const batten = { wood: 'cherry', grain: 'y', left: '300', width: '45', front: '30', depth: '440', top: 'board.bottom', height: '20' };
const set = {
  count: '3',
  inset: '40',
  diameter: '4.5',
  clearance: '5',
  pilot: '3',
  sink: '6',
  bore: '10',
  length: '30',
  allow: '2',
  slot: '11',
};
export const examples: readonly Example[] = [
  {
    name: 'batten across a lid',
    words: 'A batten under a wide lid keeps it flat: the middle screw fast, the outer two in slots.',
    document: {
      dryfit: 1,
      title: 'Slotted batten',
      units: 'mm',
      parts: { board, batten },
      joints: { hold: { as: 'slotted_cleat@1', places: [{ cleat: 'batten', board: 'board' }], set } },
    },
    // Counterbores 10 wide and 6 deep, two of them 11 - 5 = 6 longer: 6 (3 x 25 pi + 2 x 6 x 10). Holes 5 wide through the 14 below, two of
    // them 6 longer: 14 (3 x 6.25 pi + 2 x 6 x 5). 30 less 14: 16 in the lid, 3 wide.
    removed: {
      batten: 6 * (75 * Math.PI + 120) + 14 * (18.75 * Math.PI + 60),
      board: 3 * 16 * Math.PI * 1.5 ** 2,
    },
    planar: false,
  },
];
