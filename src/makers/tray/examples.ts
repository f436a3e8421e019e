import type { Patch } from '../../model/finding.ts';
import type { MakerExample } from '../kit/maker.ts';

const bench = (title: string, width: string, depth: string, height: string) => ({
  dryfit: 1,
  title,
  units: 'mm',
  spaces: { place: { midwidth: '0', width, middepth: '0', depth, bottom: '0', height } },
});
const bigger: readonly Patch[] = [
  { op: 'replace', path: 'spaces/place/width', value: '440' },
  { op: 'replace', path: 'spaces/place/depth', value: '320' },
  { op: 'replace', path: 'spaces/place/height', value: '90' },
];
export const examples: readonly MakerExample[] = [
  {
    name: 'letter tray',
    words: 'A plain tray with a sheet for its bottom.',
    document: bench('Letter tray', '320', '240', '70'),
    space: 'place',
    settings: {},
    bigger,
  },
  {
    name: 'cutlery tray',
    words: 'Three partitions in dry housings.',
    document: bench('Cutlery tray', '420', '300', '80'),
    space: 'place',
    settings: { wood: 'maple', partitions: '3' },
    bigger,
  },
];
