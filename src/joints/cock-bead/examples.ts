import type { Example } from '../family.ts';

const front = { wood: 'oak', grain: 'x', left: '0', width: '160', front: '0', depth: '18', bottom: '0', height: '100' };
const bead = { wood: 'walnut', grain: 'x', left: 'front.left', width: '160', front: 'front.front - 1.5', height: '3' };
const piece = (title: string, strip: Record<string, string>, set: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { front, bead: { ...bead, ...strip } },
  joints: { edging: { as: 'cock_bead@1', places: [{ bead: 'bead', front: 'front' }], set } },
});
/** What rounding takes from the section: a rectangle of 3 by 1.5 less half a circle of 1.5. */
const ROUND = 3 * 1.5 - (Math.PI * 1.5 * 1.5) / 2;
export const examples: readonly Example[] = [
  {
    name: 'bead along the top',
    words: 'A bead 3 mm thick over the whole top edge of a drawer front, half round and 1.5 mm proud, mitred at both ends.',
    document: piece('Cock bead, top', { back: 'front.back', top: 'front.top' }, { mitred: 'both' }),
    // 160 x 3 x 18 = 8640. The bead's section, 19.5 x 3 less the rounds, is 157 long on average: 160 outside, 154 inside.
    removed: { front: 8640, bead: 160 * 3 * 19.5 - 157 * (3 * 19.5 - ROUND) },
    planar: false,
  },
  {
    name: 'bead along the bottom',
    words: 'A bead let 12 mm into the lower edge and mitred at both ends.',
    document: piece('Cock bead, bottom', { depth: '13.5', bottom: 'front.bottom' }, { mitred: 'both' }),
    // 160 x 3 x 12 = 5760. The bead's section is 13.5 x 3 less the rounds, 157 long on average.
    removed: { front: 5760, bead: 160 * 3 * 13.5 - 157 * (3 * 13.5 - ROUND) },
    planar: false,
  },
];
