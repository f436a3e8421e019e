import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

type Doc = Record<string, string>;
const piece = (title: string, set: Doc, parts: Record<string, Doc>): Json => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { corner: { as: 'bridle@1', places: [{ fork: 'stile', tongue: 'rail' }], set } },
});
const stile: Doc = { wood: 'oak', grain: 'z', left: '0', width: '50', front: '0', depth: '24', bottom: '0', height: '300' };
const rail: Doc = { wood: 'oak', grain: 'x', left: '0', width: '240', front: '0', depth: '24', top: 'stile.top', height: '60' };
export const examples: readonly Example[] = [
  {
    name: 'corner of a frame',
    words: 'Two parts of a frame: an open mortise and a tenon of the full width.',
    document: piece('Bridled corner', { thickness: '8' }, { stile, rail }),
    // Shared 50 x 24 x 60. The slot takes 8 x 50 x 60 = 24 000, the two notches 8 x 50 x 60 each.
    removed: { stile: 24000, rail: 48000 },
    planar: true,
  },
  {
    name: 'tee on a rail',
    words: 'A leg forked over the middle of a rail that runs on to both sides.',
    document: piece(
      'Bridled tee',
      { thickness: '10', offset: '1' },
      { stile: { ...stile, depth: '30' }, rail: { ...rail, left: '-100', front: 'stile.front + 3', depth: '24' } },
    ),
    // The rail stands 3 in from either face of the leg; its tongue from 3 + 12 + 1 - 5 = 11 to 21. Slot 10 x 50 x 60; notches 8 and 6 deep.
    removed: { stile: 30000, rail: 14 * 50 * 60 },
    planar: true,
  },
  {
    name: 'thin rail taken in whole',
    words: 'A thin rail let unnotched into the forked top of a post.',
    document: piece(
      'Forked post',
      { thickness: '15' },
      { stile: { ...stile, depth: '50' }, rail: { ...rail, left: '-100', front: 'stile.front + 20', depth: '15' } },
    ),
    // Slot 15 x 50 x 60.
    removed: { stile: 45000 },
    planar: true,
  },
];
