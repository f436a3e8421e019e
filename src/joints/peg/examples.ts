import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

const post = { wood: 'oak', grain: 'z', left: '0', width: '45', front: '0', depth: '45', bottom: '0', height: '300' };
const rail = {
  wood: 'oak',
  grain: 'x',
  left: 'post.right',
  width: '200',
  front: 'post.front + 12',
  depth: '20',
  bottom: '150',
  height: '90',
};
const tenon = { thickness: '8', width: '60', length: '32', drop: '0', spare: '3' };
const corner: Json = { as: 'mortise_tenon@1', places: [{ enter: 'rail', into: 'post' }], set: tenon };
const piece = (
  title: string,
  set: Record<string, string>,
  through: readonly string[],
  parts: Record<string, Json>,
  joints: Record<string, Json>,
): Json => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { ...joints, pin: { as: 'peg@1', places: [{ through }], set } },
});
const plain = (title: string, set: Record<string, string>): Json => piece(title, set, ['post', 'rail'], { post, rail }, { corner });
const a = 9 * Math.PI;

export const examples: readonly Example[] = [
  {
    name: 'through post and tenon',
    words: 'A 6 mm peg right through a post and the tenon in it.',
    document: plain('Pegged corner', { diameter: '6', back: '14' }),
    // Mortise 8 x 60 x 35 = 16 800; the hole of 9π takes 45 - 8 of the post more, and 8 of the tenon's 8 x 60 x 32 = 15 360.
    removed: { post: 16800 + 37 * a },
    added: { rail: 15360 - 8 * a },
    planar: false,
  },
  {
    name: 'two blind pegs, drawbored',
    words: 'Two pegs 30 long from the outside, the tenon bored 1 mm nearer its shoulder.',
    document: plain('Drawbored corner', { count: '2', diameter: '6', back: '14', length: '30', apart: '30', drawbore: '1' }),
    removed: { post: 16800 + 2 * 22 * a },
    added: { rail: 15360 - 2 * 8 * a },
    planar: false,
  },
  {
    name: 'through two tenons',
    words: 'Two rails meet in a post from opposite sides, one tenon above the other; an upright peg holds both.',
    document: piece(
      'Two tenons on one peg',
      { diameter: '6', back: '30', way: 'width', length: '110' },
      ['post', 'rail', 'brace'],
      {
        post: { wood: 'oak', grain: 'y', left: '0', width: '60', middepth: '0', depth: '300', bottom: '0', height: '110' },
        rail: { wood: 'oak', grain: 'x', left: 'post.right', width: '200', middepth: '0', depth: '30', bottom: '10', height: '90' },
        brace: { wood: 'oak', grain: 'x', right: 'post.left', width: '200', middepth: '0', depth: '30', bottom: '10', height: '90' },
      },
      {
        low: {
          as: 'mortise_tenon@1',
          places: [{ enter: 'rail', into: 'post' }],
          set: { thickness: '12', width: '30', length: '50', drop: '20', spare: '2' },
        },
        high: {
          as: 'mortise_tenon@1',
          places: [{ enter: 'brace', into: 'post' }],
          set: { thickness: '12', width: '30', length: '50', drop: '-20', spare: '2' },
        },
      },
    ),
    // Each mortise 12 x 30 x 52 = 18 720; the upright hole takes 110 - 2 x 30 of the post more, and 30 of each tenon's 12 x 30 x 50 = 18 000.
    removed: { post: 2 * 18720 + 50 * a },
    added: { rail: 18000 - 30 * a, brace: 18000 - 30 * a },
    planar: false,
  },
];
