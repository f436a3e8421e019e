import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

const rail = { wood: 'oak', grain: 'x', left: '0', width: '300', front: '0', depth: '60', bottom: '0', height: '21' };
const stile = { wood: 'oak', grain: 'y', left: '0', width: '60', front: '0', depth: '400', bottom: '0', height: '21' };
const base = { wood: 'cherry', grain: 'x', left: '0', width: '300', front: '0', depth: '200', bottom: '0', height: '18' };
const side = { wood: 'cherry', grain: 'z', left: '0', width: '18', front: '0', depth: '200', bottom: '0', height: '400' };
const piece = (title: string, parts: Readonly<Record<string, Json>>, set: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { mitre: { as: 'mitre@1', places: [{ first: Object.keys(parts)[0] ?? '', second: Object.keys(parts)[1] ?? '' }], set } },
});
export const examples: readonly Example[] = [
  {
    name: 'frame mitre',
    words: 'Two frame members of 60 by 21 meet in a plain mitre.',
    document: piece('Mitred frame', { rail, stile }, {}),
    // Half of the shared 60 x 60 x 21 from each.
    removed: { rail: 37800, stile: 37800 },
    planar: true,
  },
  {
    name: 'splined frame mitre',
    words: 'The same with a spline 7 thick along the middle of the mitre, 20 deep in each.',
    document: piece('Splined mitre', { rail, stile }, { form: 'splined', thick: '7', depth: '20' }),
    // Mitre 60 x sqrt 2 long; the groove in each is that less half of its depth (the outer face cuts it at 45 degrees): (84.8528 - 10) x 20 x 7.
    removed: { rail: 37800 + (60 * Math.SQRT2 - 10) * 140, stile: 37800 + (60 * Math.SQRT2 - 10) * 140 },
    planar: true,
  },
  {
    name: 'keyed case mitre',
    words: 'The corner of a case 18 thick and 200 deep, with three keys 3 thick across it.',
    document: piece('Keyed case', { base, side }, { form: 'keyed', thick: '3', depth: '12', count: '3' }),
    // Half of 18 x 18 x 200 = 32 400 from each, and three triangles of 12 x 12 / 2 x 3 = 216.
    removed: { base: 32400 + 648, side: 32400 + 648 },
    planar: true,
  },
  {
    name: 'splined case mitre',
    words: 'The same corner with a spline 4 thick along its whole width, near the inner corner.',
    document: piece('Splined case', { base, side }, { form: 'splined', thick: '4', depth: '6' }),
    removed: { base: 32400 + 4 * 6 * 200, side: 32400 + 4 * 6 * 200 },
    planar: true,
  },
];
