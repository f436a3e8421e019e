import type { Example } from '../family.ts';

const side = { wood: 'cherry', grain: 'z', left: '0', width: '20', front: '0', depth: '300', bottom: '0', height: '400' };
/** It stands 25 past the side in front, for the mitre. */
const moulding = {
  wood: 'cherry',
  grain: 'y',
  right: 'side.left',
  width: '25',
  front: '-25',
  back: 'side.back',
  top: 'side.top',
  height: '60',
};
const set = { mitred: 'front', glued: '50', count: '2', inset: '40', room: '2', screw: '4' };
const piece = (title: string, more: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { side, moulding },
  joints: { crown: { as: 'moulding@1', places: [{ moulding: 'moulding', side: 'side' }], set: { ...set, ...more } } },
});
/** 25 x 25 / 2 x 60 = 18 750 off the moulding. */
const MITRE = 18750;
export const examples: readonly Example[] = [
  {
    name: 'screwed in slots',
    words: 'A moulding 25 by 60 mm across a side 300 mm deep: glued in front, screwed from inside in slots behind.',
    document: piece('Moulding in slots', { hold: 'slots', screw_length: '35' }),
    // Slots 4.5 wide and 4 longer than that through 20: (pi 2.25² + 4 x 4.5) x 20. The screws stand 35 - 20 = 15 in the moulding.
    removed: { side: 2 * 20 * (Math.PI * 2.25 * 2.25 + 18), moulding: MITRE + 2 * Math.PI * 4 * 15 },
    planar: false,
  },
  {
    name: 'on dovetail keys',
    words: 'The same slid on two keys that are screwed to the side.',
    document: piece('Moulding on keys', { hold: 'keys', key_wide: '16', key_deep: '8', key_long: '40', slope: '1/6', screw_length: '20' }),
    // The groove is 8.5 deep, 16 - 2 x 8 / 6 = 13 1/3 wide at the back and 13 1/3 + 2 x 8.5 / 6 = 16 1/6 at its bottom, 300 - 50 = 250 long.
    // Screws 20 long go 8 through a key and 12 into the side.
    removed: { side: 2 * Math.PI * 4 * 12, moulding: MITRE + ((40 / 3 + 97 / 6) / 2) * 8.5 * 250 },
    planar: false,
  },
];
