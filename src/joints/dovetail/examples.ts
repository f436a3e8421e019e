import type { Example } from '../family.ts';

const side = { wood: 'pine', grain: 'y', left: '0', width: '12', front: '0', depth: '300', bottom: '0', height: '90' };
const front = { wood: 'pine', grain: 'x', left: '0', width: '240', front: '0', depth: '18', bottom: '0', height: '90' };
const corner = (title: string, set: Record<string, string>, more: Record<string, string> = {}) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { side: { ...side, ...more }, front },
  joints: {
    corner: {
      as: 'dovetail@1',
      places: [{ tails: 'side', pins: 'front' }],
      set: { tails: '2', slope: '1/6', pin: '6', half_pin: '6', ...set },
    },
  },
});
export const examples: readonly Example[] = [
  {
    name: 'corner of a box',
    words: 'Two tails in a side 90 wide and 12 thick, through a front 18 thick.',
    document: corner('Dovetailed corner', {}),
    // Rise 18/6 = 3. Tails (90 - 2 x 6 - 6) / 2 = 36 wide outside, 30 at the base: mean 33, two of them 66.
    // Pins take 90 - 66 = 24 of the side: 24 x 18 x 12 = 5184. Tails take 66 x 18 x 12 = 14256 of the front.
    removed: { side: 5184, front: 14256 },
    planar: true,
  },
  {
    name: 'groove under a tail',
    words: 'The same corner; a groove 6 wide, its middle 12 above the bottom edge, is covered by the lowest tail.',
    document: corner('Dovetail over a groove', { tail_over: '12', over_size: '6' }),
    // The groove runs 9 to 15; the lowest tail at its base runs 9 to 39: covered as it is laid out evenly.
    removed: { side: 5184, front: 14256 },
    planar: true,
  },
  {
    name: 'lapped',
    words: 'The corner of a drawer: the side ends 6 behind the face of the front, so that the tails do not show.',
    document: corner('Lapped dovetail', {}, { front: '6', depth: '294' }),
    // Tails 18 - 6 = 12 long, rise 12/6 = 2; 36 wide outside, 32 at the base, mean 34: two of them 68, the pins 22.
    // Pins take 22 x 12 x 12 = 3168 of the side, tails 68 x 12 x 12 = 9792 of the front.
    removed: { side: 3168, front: 9792 },
    planar: true,
  },
  {
    name: 'mitred at the bottom',
    words: 'A mitred shoulder 9 wide at the lower edge, for a rabbet that goes round.',
    document: corner('Dovetail with a mitred shoulder', { mitre: 'bottom', mitre_width: '9' }),
    // The mitre takes half of 12 x 18 over 9 from each board: 972. Of the 81 left the tails have (81 - 2 x 6 - 6)/2 = 31.5 outside, 25.5 at
    // the base: two of them 57, the pins 24. 24 x 18 x 12 = 5184 of the side, 57 x 18 x 12 = 12312 of the front.
    removed: { side: 6156, front: 13284 },
    planar: true,
  },
];
