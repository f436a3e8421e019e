import type { Json, Patch } from '../../model/finding.ts';
import type { MakerExample } from '../kit/maker.ts';

/** A cupboard 440 wide of boards 20 thick, open at the front. */
const cupboard: Json = {
  dryfit: 1,
  title: 'Cupboard',
  units: 'mm',
  spaces: {
    opening: { left: 'side:left.right', right: 'side:right.left', front: '0', back: '240', bottom: 'bottom.top', top: 'top.bottom' },
  },
  parts: {
    side: {
      wood: 'oak',
      grain: 'z',
      copies: [{ mirror: 'x', names: ['left', 'right'] }],
      left: '-220',
      width: '20',
      front: '0',
      depth: '240',
      bottom: '0',
      height: '600',
      marks: { inner: 'right' },
      made: [{ staves: { widest: '120' }, along: 'depth' }],
    },
    top: { wood: 'oak', grain: 'x', left: '-220', right: '220', front: '0', depth: '240', top: '600', height: '20' },
    bottom: { wood: 'oak', grain: 'x', left: '-220', right: '220', front: '0', depth: '240', bottom: '0', height: '20' },
  },
  joints: {
    corners: { as: 'dovetail@1', places: ['top', 'bottom'].map((pins) => ({ tails: 'side:*', pins })) },
  },
};
const bigger: readonly Patch[] = [
  { op: 'replace', path: 'parts/side/left', value: '-240' },
  { op: 'replace', path: 'parts/top/left', value: '-240' },
  { op: 'replace', path: 'parts/top/right', value: '240' },
  { op: 'replace', path: 'parts/bottom/left', value: '-240' },
  { op: 'replace', path: 'parts/bottom/right', value: '240' },
  { op: 'replace', path: 'parts/side/height', value: '640' },
  { op: 'replace', path: 'parts/top/top', value: '640' },
];
export const examples: readonly MakerExample[] = [
  {
    name: 'framed inset door',
    words: 'A framed door inside its case, hung at the left.',
    document: cupboard,
    space: 'opening',
    settings: {},
    bigger,
  },
  {
    name: 'solid overlaid door',
    words: 'A door of boards before the case, hung at the right.',
    document: cupboard,
    space: 'opening',
    settings: { build: 'solid', lies: 'overlaid', hung: 'right' },
    bigger,
  },
];
