import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

type Doc = Record<string, string>;
const post: Doc = { wood: 'oak', grain: 'z', left: '0', width: '45', front: '0', depth: '45', bottom: '0', height: '300' };
const rail: Doc = {
  wood: 'oak',
  grain: 'x',
  left: 'post.right',
  width: '200',
  front: 'post.front + 12',
  depth: '21',
  bottom: '150',
  height: '90',
};
const piece = (title: string, set: Doc, parts: Record<string, Doc> = { post, rail }): Json => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { slip: { as: 'loose_tenon@1', places: [{ enter: 'rail', into: 'post' }], set } },
});
export const examples: readonly Example[] = [
  {
    name: 'rail on a post',
    words: 'A rail butted on a post, one loose tenon in square mortises.',
    document: piece('Loose tenon', { thickness: '8', width: '50', deep_in: '26', deep_own: '30', drop: '0', spare: '1.5' }),
    // 8 x 50 x 27.5 in the post, 8 x 50 x 31.5 in the rail.
    removed: { post: 11000, rail: 12600 },
    planar: true,
  },
  {
    name: 'routed, with round edges',
    words: 'Mortises as a router leaves them, the tenon rounded to suit.',
    document: piece('Routed mortises', {
      thickness: '8',
      width: '50',
      deep_in: '25',
      deep_own: '25',
      drop: '0',
      spare: '1',
      ends: 'round',
    }),
    // A slot of (50 - 8) x 8 + 16π = 336 + 50.27, 26 deep in each.
    removed: { post: 26 * (336 + 16 * Math.PI), rail: 26 * (336 + 16 * Math.PI) },
    planar: false,
  },
  {
    name: 'two tenons in the edge of a stile',
    words: 'The wide rail of a door on the edge of its stile, two tenons with wood between.',
    document: piece(
      'Door rail',
      { thickness: '8', tenons: '2', width: '30', between: '20', deep_in: '30', deep_own: '30', drop: '0', spare: '2' },
      { post: { ...post, depth: '24', width: '90' }, rail: { ...rail, front: 'post.front', depth: '24', height: '120', bottom: '90' } },
    ),
    // Two of 8 x 30 x 32 = 7 680 in either part.
    removed: { post: 15360, rail: 15360 },
    planar: true,
  },
];
