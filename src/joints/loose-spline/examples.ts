import type { Example } from '../family.ts';

const first = { wood: 'ash', grain: 'x', left: '0', width: '600', front: '0', depth: '120', bottom: '0', height: '18' };
const second = { wood: 'ash', grain: 'x', left: '0', width: '600', front: 'first.back', depth: '100', bottom: '0', height: '18' };
const long = { wood: 'ash', grain: 'x', left: '0', width: '500', front: '0', depth: '90', bottom: '0', height: '18' };
const short = { wood: 'ash', grain: 'x', left: 'long.right', width: '300', front: '0', depth: '90', bottom: '0', height: '18' };
type Words = Readonly<Record<string, string>>;
const piece = (title: string, parts: Readonly<Record<string, Words>>, place: Words, set: Words) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { seam: { as: 'loose_spline@1', places: [place], set } },
});
export const examples: readonly Example[] = [
  {
    name: 'edge to edge',
    words: 'Two boards glued edge to edge on a plywood spline that shows at both ends.',
    document: piece('Splined edge', { first, second }, { enter: 'second', into: 'first' }, { thickness: '6', width: '36', spare: '0.5' }),
    // Each groove 6 x (18 + 0.5) x 600 = 66 600.
    removed: { first: 66600, second: 66600 },
    planar: true,
  },
  {
    name: 'end to end, stopped',
    words: 'Two lengths end to end, tied by a spline with its grain across the seam, stopped 15 mm from both edges.',
    document: piece(
      'Splined ends',
      { long, short },
      { enter: 'long', into: 'short' },
      { thickness: '6', width: '36', spare: '0.5', stopped: 'both', stop: '15', made: 'across' },
    ),
    // 6 x 18.5 x (90 - 2 x 15) = 6 660.
    removed: { long: 6660, short: 6660 },
    planar: true,
  },
];
