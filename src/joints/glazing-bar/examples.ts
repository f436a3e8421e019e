import type { Example } from '../family.ts';

const bars = (units: 'mm' | 'in', wide: string, deep: string, long: readonly [string, string]) => ({
  units,
  parts: {
    upright: { wood: 'oak', grain: 'z', midwidth: '0', width: wide, front: '0', depth: deep, midheight: '0', height: long[0] },
    cross: { wood: 'oak', grain: 'x', midwidth: '0', width: long[1], front: '0', depth: deep, midheight: '0', height: wide },
  },
});
const piece = (title: string, stuff: object, set: Record<string, string>) => ({
  dryfit: 1,
  title,
  ...stuff,
  joints: { crossing: { as: 'glazing_bar@1', places: [{ over: 'upright', under: 'cross' }], set } },
});
export const examples: readonly Example[] = [
  {
    name: 'halved bars',
    words: 'Square bars 1/2 in thick of a bookcase door, halved into each other.',
    document: piece('Glazing bars, halved', bars('in', '1/2 in', '1/2 in', ['12 in', '9 in']), { rabbet_wide: '0', rabbet_deep: '0' }),
    // 12.7 x 12.7 x 6.35 = 1024.1915 from each
    removed: { upright: 1024.1915, cross: 1024.1915 },
    planar: true,
  },
  {
    name: 'rabbeted and chamfered',
    words: 'Bars 20 by 24 mm with rabbets for the glass and chamfered arrises that meet in mitres.',
    document: piece('Glazing bars, moulded', bars('mm', '20', '24', ['300', '240']), {
      rabbet_wide: '7',
      rabbet_deep: '10',
      moulding: 'chamfer',
      moulding_size: '4',
    }),
    // The section loses 2 x 7 x 10 and 2 x 4 x 4 / 2 = 156: 300 x 156 and 240 x 156. At the crossing the upright's tongue loses 6 x 6 x 10 = 360;
    // the cross loses what both fronts share: 20 x 20 x 10 and, over the chamfers, the integral of (12 + 2 d)² from 0 to 4 = 1045 1/3.
    removed: { upright: 46800 + 360, cross: 37440 + 4000 + 3136 / 3 },
    planar: true,
  },
];
