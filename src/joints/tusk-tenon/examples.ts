import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

type Doc = Record<string, string>;
const leg: Doc = { wood: 'oak', grain: 'z', left: '0', width: '30', front: '0', depth: '200', bottom: '0', height: '400' };
const rail: Doc = {
  wood: 'oak',
  grain: 'x',
  left: 'leg.right',
  width: '300',
  front: 'leg.front + 85',
  depth: '30',
  bottom: '150',
  height: '100',
};
const piece = (title: string, set: Doc, parts: Record<string, Doc> = { leg, rail }): Json => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { key: { as: 'tusk_tenon@1', places: [{ enter: 'rail', into: 'leg' }], set } },
});
export const examples: readonly Example[] = [
  {
    name: 'stretcher of a trestle',
    words: 'A stretcher through the plank leg of a trestle, an upright key behind it.',
    document: piece('Keyed stretcher', {
      thickness: '15',
      width: '60',
      way: 'width',
      key_thick: '5',
      key_deep: '15',
      slope: '1/10',
      key_over: '20',
      pull: '1.5',
      relish: '22',
    }),
    // Mortise 15 x 60 x 30. The hole is 15 deep in the middle and 15 + 0.1 x 30 = 18 at most: the tenon is 30 + 18 + 22 = 70 long,
    // 15 x 60 x 70 = 63 000, less a hole of (1.5 + 15) x 60 x 5 = 4 950.
    removed: { leg: 27000 },
    added: { rail: 63000 - 4950 },
    planar: true,
  },
  {
    name: 'shelf through a side',
    words: 'The tenon of a shelf through the side of a bookcase, an upright key through its thickness.',
    document: piece(
      'Keyed shelf',
      {
        thickness: '20',
        width: '60',
        way: 'thickness',
        key_thick: '16',
        key_deep: '16',
        slope: '1/8',
        key_over: '16',
        pull: '2',
        relish: '25',
      },
      {
        leg: { ...leg, width: '22', depth: '250' },
        rail: { ...rail, front: 'leg.front', depth: '250', height: '20' },
      },
    ),
    // Mortise 20 x 60 x 22 = 26 400. The hole is 16 + 20/2/8 = 17.25 deep at most: the tenon is 22 + 17.25 + 25 = 64.25 long,
    // 20 x 60 x 64.25 = 77 100, less (2 + 16) x 20 x 16 = 5 760.
    removed: { leg: 26400 },
    added: { rail: 77100 - 5760 },
    planar: true,
  },
];
