import type { Json, Patch } from '../../model/finding.ts';
import type { MakerExample } from '../kit/maker.ts';

/** A case 500 wide of sides 20 thick, with two front rails 60 deep between which the drawer goes. */
const chest: Json = {
  dryfit: 1,
  title: 'Drawer in a case',
  units: 'mm',
  spaces: {
    opening: {
      left: 'side:left.right',
      right: 'side:right.left',
      front: '0',
      back: '400',
      bottom: 'low_rail.top',
      top: 'high_rail.bottom',
    },
  },
  parts: {
    side: {
      wood: 'oak',
      grain: 'z',
      copies: [{ mirror: 'x', names: ['left', 'right'] }],
      left: '-250',
      width: '20',
      front: '0',
      depth: '420',
      bottom: '0',
      height: '300',
      marks: { inner: 'right' },
      made: [{ staves: { widest: '120' }, along: 'depth' }],
    },
    low_rail: {
      wood: 'oak',
      grain: 'x',
      left: 'side:left.right',
      right: 'side:right.left',
      front: '0',
      depth: '60',
      bottom: '60',
      height: '20',
    },
    high_rail: {
      wood: 'oak',
      grain: 'x',
      left: 'side:left.right',
      right: 'side:right.left',
      front: '0',
      depth: '60',
      bottom: '220',
      height: '20',
    },
  },
  joints: {
    rails: {
      as: 'mortise_tenon@1',
      places: ['low_rail', 'high_rail'].flatMap((enter) => ['left', 'right'].map((s) => ({ enter, into: `side:${s}` }))),
    },
  },
};
const bigger: readonly Patch[] = [
  { op: 'replace', path: 'parts/side/left', value: '-270' },
  { op: 'replace', path: 'spaces/opening/back', value: '405' },
  { op: 'replace', path: 'parts/high_rail/bottom', value: '236' },
];
export const examples: readonly MakerExample[] = [
  {
    name: 'drawer in an opening',
    words: 'The drawer alone, for a shelf to run on.',
    document: chest,
    space: 'opening',
    settings: { side_wood: 'maple' },
    bigger,
  },
  {
    name: 'drawer on runners',
    words: 'Runners and kickers fast in the rails and free in the case sides, and stops.',
    document: chest,
    space: 'opening',
    settings: { runs_on: 'runners', kickers: 'yes', stops: 'yes', side_wood: 'maple' },
    bigger,
  },
];
