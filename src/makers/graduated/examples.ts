import type { Json, Patch } from '../../model/finding.ts';
import type { MakerExample } from '../kit/maker.ts';

/** A chest of two sides, top and bottom, empty inside. */
const chest = (title: string, wide: string, deep: string, high: string, units: 'mm' | 'in', thick: string): Json => {
  const level = {
    wood: 'oak',
    grain: 'x',
    left: 'side:left.right',
    right: 'side:right.left',
    front: '0',
    depth: deep,
    height: thick,
    made: [{ staves: { widest: '5 in' }, along: 'depth' }],
  };
  return {
    dryfit: 1,
    title,
    units,
    spaces: {
      inside: { left: 'side:left.right', right: 'side:right.left', front: '0', back: deep, bottom: 'bottom.top', top: 'top.bottom' },
    },
    parts: {
      side: {
        wood: 'oak',
        grain: 'z',
        copies: [{ mirror: 'x', names: ['left', 'right'] }],
        left: `-(${wide})/2`,
        width: thick,
        front: '0',
        depth: deep,
        bottom: '0',
        height: high,
        marks: { inner: 'right' },
        made: [{ staves: { widest: '5 in' }, along: 'depth' }],
      },
      top: { ...level, top: `${high} - 1 in` },
      bottom: { ...level, bottom: '2 in' },
    },
    joints: {
      housings: {
        as: 'housing@1',
        places: ['top', 'bottom'].flatMap((enter) => ['left', 'right'].map((s) => ({ enter, into: `side:${s}` }))),
      },
    },
  };
};
const bigger: readonly Patch[] = [
  { op: 'replace', path: 'parts/side/height', value: '1400 mm' },
  { op: 'replace', path: 'parts/top/top', value: '1375 mm' },
];
export const examples: readonly MakerExample[] = [
  {
    name: 'chest of drawers',
    words: 'Four drawers, each an inch higher than the one above, on rails and runners.',
    document: chest('Chest of drawers', '32 in', '18 in', '36 in', 'in', '7/8 in'),
    space: 'inside',
    settings: { dividers: 'rails', fill: 'drawers', side_wood: 'maple', bottom_wood: 'plywood', stops: 'yes' },
    bigger,
  },
  {
    name: 'shelves that grow',
    words: 'Three shelves; the rooms between them grow downwards by one ratio.',
    document: chest('Bookcase', '800 mm', '260 mm', '1300 mm', 'mm', '22 mm'),
    space: 'inside',
    settings: { rule: 'ratio', ratio: '1.12' },
    bigger,
  },
];
