import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

const rail = { wood: 'oak', grain: 'x', left: '0', width: '300', front: '0', depth: '60', bottom: '0', height: '20' };
const stile = { wood: 'oak', grain: 'y', left: '240', width: '60', front: '0', depth: '400', bottom: '0', height: '20' };
const piece = (title: string, parts: Readonly<Record<string, Json>>, set: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { lap: { as: 'lap@1', places: [{ over: Object.keys(parts)[0] ?? '', under: Object.keys(parts)[1] ?? '' }], set } },
});
const mid = { ...stile, left: '120', front: '-150' };
const end = { ...rail, width: '180', left: '120' };
export const examples: readonly Example[] = [
  {
    name: 'cross lap',
    words: 'Two rails of 60 by 20 cross flush; each gives half of its thickness.',
    document: piece('Crossing rails', { rail, stile: mid }, {}),
    // 60 x 60 x 10 from each.
    removed: { rail: 36000, stile: 36000 },
    planar: true,
  },
  {
    name: 'mitred corner lap',
    words: 'The corner of a frame: lapped behind, a mitre on the face.',
    document: piece('Corner of a frame', { rail, stile }, { form: 'mitred' }),
    // The stile loses the rail's triangle, 60 x 60 / 2 x 10 = 18 000; the rail the lap of 36 000 and the stile's triangle.
    removed: { rail: 54000, stile: 18000 },
    planar: true,
  },
  {
    name: 'dovetailed tee',
    words: 'The end of a rail let into the middle of another by a dovetailed tongue that cannot be drawn out.',
    document: piece('Dovetailed tee', { rail: end, stile: mid }, { form: 'dovetailed', slope: '1/6' }),
    // Tongue 60 long, 60 wide at its tip, 60 - 2 x 10 = 40 at its neck: 60 x 50 x 10 = 30 000 from the stile; the rest of 72 000 from the rail.
    removed: { rail: 42000, stile: 30000 },
    planar: true,
  },
  {
    name: 'dividers on edge',
    words: 'Two dividers on edge slide into each other, each notched for half of its height and 0.2 wider than the other is thick.',
    document: piece(
      'Dividers in a box',
      {
        long: { wood: 'oak', grain: 'x', left: '0', width: '300', front: '94', depth: '8', bottom: '0', height: '80' },
        short: { wood: 'oak', grain: 'y', left: '146', width: '8', front: '0', depth: '200', bottom: '0', height: '80' },
      },
      { play: '0.2', hold: 'dry' },
    ),
    // 8.2 x 8 x 40 from each.
    removed: { long: 2624, short: 2624 },
    planar: true,
  },
];
