import type { Patch } from '../../model/finding.ts';
import type { MakerExample } from '../kit/maker.ts';

const wall = (title: string, width: string, height: string) => ({
  dryfit: 1,
  title,
  units: 'in',
  spaces: { field: { midwidth: '0', width, front: '0', depth: '3/4 in', bottom: '0', height } },
});
const bigger: readonly Patch[] = [
  { op: 'replace', path: 'spaces/field/width', value: '17 in' },
  { op: 'replace', path: 'spaces/field/height', value: '32 in' },
];
export const examples: readonly MakerExample[] = [
  {
    name: 'framed end',
    words: 'A framed end for a cupboard with a panel of solid wood and haunched tenons.',
    document: wall('Framed end', '14 in', '30 in'),
    space: 'field',
    settings: { wood: 'walnut', panel_wood: 'walnut' },
    bigger,
  },
  {
    name: 'light frame with a sheet',
    words: 'Stub tenons no longer than the groove, a sheet for a panel.',
    document: wall('Light frame', '15-7/8 in', '23-7/8 in'),
    space: 'field',
    settings: { wood: 'maple', tenons: 'stub', panel_wood: 'plywood', panel_thick: '1/4 in' },
    bigger,
  },
];
