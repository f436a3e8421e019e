import type { Example } from '../family.ts';

const side = { wood: 'pine', grain: 'z', left: '0', width: '18', front: '0', depth: '280', bottom: '0', height: '400' };
const shelf = { wood: 'pine', grain: 'x', left: 'side.right', width: '300', front: '0', depth: '280', bottom: '150', height: '18' };
const top = { wood: 'oak', grain: 'x', left: '0', width: '900', front: '0', depth: '400', bottom: '100', height: '24' };
const batten = { wood: 'oak', grain: 'y', left: '430', width: '40', front: '40', depth: '360', top: 'top.bottom', height: '30' };
const shelved = (title: string, set: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { side, shelf },
  joints: { slide: { as: 'sliding_dovetail@1', places: [{ enter: 'shelf', into: 'side' }], set } },
});
/** Rise of a flank over 6 and over 8 mm of depth. */
const rise6 = 6 * Math.tan((8 * Math.PI) / 180);
const rise8 = 8 * Math.tan((10 * Math.PI) / 180);

export const examples: readonly Example[] = [
  {
    name: 'shelf, two slanted sides',
    words: 'A shelf that ties the side of a case: a tail from edge to edge, slid in from the back.',
    document: shelved('Shelf on a sliding dovetail', { depth: '6', slope: '8 deg', shoulder: '2' }),
    // Neck 18 - 2 x 2 = 14, tip 14 + 2 x 6 tan 8 deg; mean (14 + 6 tan 8) = 14.8433 wide, 6 deep, 280 long.
    removed: { side: (14 + rise6) * 6 * 280 },
    added: { shelf: (14 + rise6) * 6 * 280 },
    planar: true,
  },
  {
    name: 'one slanted side, stopped',
    words: 'The upper side square, the under side slanted, stopped 12 mm behind the front edge.',
    document: shelved('Shelf on a one-sided dovetail', { depth: '6', slope: '8 deg', slanted: 'bottom', shoulder: '2', stop: '12' }),
    // Neck 18 - 2 = 16, mean 16 + 6 tan 8 / 2; 268 long.
    removed: { side: (16 + rise6 / 2) * 6 * 268 },
    added: { shelf: (16 + rise6 / 2) * 6 * 268 },
    planar: true,
  },
  {
    name: 'tapered batten under a top',
    words: 'A batten that keeps a wide top flat: tapered, glued at its front end alone, driven in from the back.',
    document: {
      dryfit: 1,
      title: 'Batten under a top',
      units: 'mm',
      parts: { top, batten },
      joints: {
        slide: {
          as: 'sliding_dovetail@1',
          places: [{ enter: 'batten', into: 'top' }],
          set: { depth: '8', slope: '10 deg', shoulder: '8', taper: '4', glued: '60' },
        },
      },
    },
    // Neck at the back 40 - 2 x 8 = 24, at the front 20: mean 22 over the batten's 360; flanks add 8 tan 10 deg on the whole.
    added: { batten: (22 + rise8) * 8 * 360 },
    // The socket runs out at the back edge of the top, which the batten's end is flush with, and ends where the batten does.
    removed: { top: (22 + rise8) * 8 * 360 },
    planar: true,
  },
];
