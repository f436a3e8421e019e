import type { Json, Patch } from '../../model/finding.ts';
import type { MakerExample } from '../kit/maker.ts';

const niche = (title: string, width: string, depth: string, height: string): Json => ({
  dryfit: 1,
  title,
  units: 'mm',
  spaces: { niche: { midwidth: '0', width, front: '0', depth, bottom: '0', height } },
});
const bigger: readonly Patch[] = [
  { op: 'replace', path: 'spaces/niche/width', value: '840' },
  { op: 'replace', path: 'spaces/niche/depth', value: '300' },
  { op: 'replace', path: 'spaces/niche/height', value: '1260' },
];
export const examples: readonly MakerExample[] = [
  {
    name: 'dovetailed wall cupboard',
    words: 'A small case dovetailed at its corners, with two shelves and a sheet for its back.',
    document: niche('Wall cupboard', '500', '220', '640'),
    space: 'niche',
    settings: { wood: 'cherry', thick: '18 mm', inside: 'shelves' },
    bigger,
  },
  {
    name: 'housed bookcase',
    words: 'A bookcase whose sides run past top and bottom, with a boarded back.',
    document: niche('Bookcase', '800', '280', '1200'),
    space: 'niche',
    settings: { corners: 'housing', back: 'boards', back_wood: 'pine', back_thick: '10 mm', inside: 'shelves', count: '3' },
    bigger,
  },
];
