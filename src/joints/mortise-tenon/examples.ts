import type { Example } from '../family.ts';

type Doc = Record<string, string>;
const post: Doc = { wood: 'oak', grain: 'z', left: '0', width: '45', front: '0', depth: '45', bottom: '0', height: '300' };
const rail: Doc = {
  wood: 'oak',
  grain: 'x',
  left: 'post.right',
  width: '200',
  front: 'post.front + 12',
  depth: '20',
  bottom: '150',
  height: '90',
};
const piece = (
  title: string,
  set: Doc,
  parts: Record<string, Doc> = { post, rail },
  places: readonly Doc[] = [{ enter: 'rail', into: 'post' }],
) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { corner: { as: 'mortise_tenon@1', places, set } },
});
const side: Doc = {
  wood: 'oak',
  grain: 'y',
  front: 'post.back',
  depth: '200',
  left: 'post.left + 12',
  width: '20',
  bottom: '150',
  height: '90',
};
const alongX: Doc = { ...rail, front: 'post.front + 12' };

export const examples: readonly Example[] = [
  {
    name: 'blind',
    words: 'A rail tenoned 25 mm into a post, the mortise 3 mm deeper.',
    document: piece('Rail in a post', { thickness: '8', width: '60', length: '25', drop: '0', spare: '3' }),
    // Mortise 8 x 60 x (25 + 3) = 13 440; tenon 8 x 60 x 25 = 12 000.
    removed: { post: 13440 },
    added: { rail: 12000 },
    planar: true,
  },
  {
    name: 'through, three pins of wood between',
    words: 'A wide plank with two full-thickness tenons through a board, standing 5 mm proud.',
    document: piece(
      'Plank through a board',
      { thickness: '20', width: '40', tenons: '2', between: '30', drop: '0', through: 'yes', proud: '5' },
      { post: { ...post, depth: '200', width: '25' }, rail: { ...rail, front: 'post.front + 60', height: '140', bottom: '80' } },
    ),
    // Each: mortise 20 x 40 x 25 = 20 000, tenon 20 x 40 x 30 = 24 000.
    removed: { post: 40000 },
    added: { rail: 48000 },
    planar: true,
  },
  {
    name: 'haunched',
    words: 'The rail of a frame at the end of its stile: a square haunch fills the groove’s end.',
    document: piece(
      'Frame corner',
      { thickness: '7', width: '36', length: '30', drop: '9', haunch: 'square', haunch_length: '8', spare: '3' },
      { post: { ...post, depth: '20', width: '60' }, rail: { ...rail, front: 'post.front', bottom: 'post.top - 60', height: '60' } },
    ),
    // Rail 60 wide, tenon from 3 above its lower edge to 39: mortise 7 x 36 x 33 = 8 316, seat of the haunch 7 x 21 x 8 = 1 176;
    // tenon 7 x 36 x 30 = 7 560 and the haunch.
    removed: { post: 9492 },
    added: { rail: 8736 },
    planar: true,
  },
  {
    name: 'sloped haunch, shoulder above',
    words: 'A haunch that falls to nothing at the end of the leg, so that it does not show.',
    document: piece(
      'Rail at the top of a leg',
      { thickness: '8', width: '50', length: '28', drop: '10', haunch: 'sloped', haunch_length: '12', spare: '2' },
      { post, rail: { ...rail, bottom: 'post.top - 90' } },
    ),
    // Tenon from 10 above the lower edge to 60, 30 of shoulder above: mortise 8 x 50 x 30 = 12 000, seat 8 x 30 x 12 / 2 = 1 440.
    removed: { post: 13440 },
    added: { rail: 8 * 50 * 28 + 1440 },
    planar: true,
  },
  {
    name: 'two mitred tenons',
    words: 'Rails from two sides into one leg; their tenons meet inside and are mitred.',
    document: piece(
      'Corner of a table',
      { thickness: '8', width: '60', length: '26', drop: '0', end: 'mitred', spare: '2' },
      { post, rail: alongX, side },
      [
        { enter: 'rail', into: 'post' },
        { enter: 'side', into: 'post' },
      ],
    ),
    // Middles at 12 + 10 = 22 from the outer faces, 23 from the inner ones: the mitre runs from 19 (outer... nearer cheek) to 27, less
    // half a millimetre square to it, 0.7071 along the tenon: 18.2929 and 26.2929. The end at 26 takes 0.2929 off the point:
    // area (8 x 18.2929) + (8 x 8 / 2) - 0.2929² / 2 = 146.3431 + 32 - 0.0429 = 178.3002, times 60 = 10 698.01.
    // Mortises 8 x 60 x 28 each; both reach past the other's middle and share 8 x 60 x (28 - 19 = 9, but at most 8) = 8 x 8 x 60.
    removed: { post: 2 * 13440 - 3840 },
    added: { rail: 10698.01, side: 10698.01 },
    planar: true,
  },
  {
    name: 'pegged',
    words: 'One 6 mm peg through the cheeks, drawbored 1 mm.',
    document: piece('Pegged rail', {
      thickness: '8',
      width: '60',
      length: '28',
      drop: '0',
      spare: '2',
      pegs: '1',
      peg_diameter: '6',
      peg_back: '12',
      peg_length: '30',
      drawbore: '1',
    }),
    // Post 45 with the tenon from 18 to 26: mortise 8 x 60 x 30 = 14 400; the hole of 9π mm² adds 30 - 8 = 22 of length.
    removed: { post: 14400 + 22 * 9 * Math.PI },
    added: { rail: 13440 - 8 * 9 * Math.PI },
    planar: false,
  },
  {
    name: 'wedged',
    words: 'A through tenon with two wedges across the grain of the post.',
    document: piece('Wedged rail', {
      thickness: '8',
      width: '60',
      drop: '0',
      through: 'yes',
      proud: '0',
      wedge: 'across',
      wedges: '2',
      wedge_thick: '4',
    }),
    // Mortise 8 x 60 x 45 = 21 600. Each kerf is 30 long, 1.5 wide at its root and 4 at the end, 8 across: (1.5 + 4) / 2 x 30 x 8 = 660.
    removed: { post: 21600 },
    added: { rail: 21600 - 2 * 660 },
    planar: true,
  },
  {
    name: 'twin',
    words: 'Two tenons side by side in the thickness of a heavy rail.',
    document: piece(
      'Heavy rail in a post',
      { twins: '2', thickness: '10', twin_between: '10', width: '60', length: '25', drop: '0', spare: '3' },
      { post: { ...post, depth: '60' }, rail: { ...rail, front: 'post.front + 5', depth: '50' } },
    ),
    // Two mortises 10 x 60 x 28 = 16 800, two tenons 10 x 60 x 25 = 15 000.
    removed: { post: 33600 },
    added: { rail: 30000 },
    planar: true,
  },
  {
    name: 'fox-wedged',
    words: 'A blind tenon with two wedges that the bottom of the mortise drives in.',
    document: piece('Fox-wedged rail', {
      thickness: '8',
      width: '60',
      length: '30',
      drop: '0',
      spare: '2',
      fox: 'yes',
      wedges: '2',
      wedge_thick: '4',
      flare: '2.5',
    }),
    // Mortise: 60 high to a third of the tenon, 8 x 60 x 10 = 4 800; then from 60 to 65 over 22: 8 x 62.5 x 22 = 11 000.
    // The wedges run from 10 to the bottom at 32, 1.5 to 4 thick; where the tenon ends at 30, 1.5 + 2.5 x 20/22 = 3.772 727. Each kerf takes
    // (1.5 + 3.772 727) / 2 x 20 x 8 = 421.818; the tenon 8 x 60 x 30 = 14 400 less two of them.
    removed: { post: 15800 },
    added: { rail: 14400 - 2 * 421.818182 },
    planar: true,
  },
  {
    name: 'stub',
    words: 'The rail of a panelled frame with a stub as long as the groove is deep.',
    document: piece(
      'Stub in a groove',
      { stub: 'yes', thickness: '6', width: '60', length: '10', spare: '1' },
      { post: { ...post, depth: '20', width: '60' }, rail: { ...rail, front: 'post.front', height: '60' } },
    ),
    // 6 x 60 x 11 and 6 x 60 x 10.
    removed: { post: 3960 },
    added: { rail: 3600 },
    planar: true,
  },
  {
    name: 'bare on one face',
    words: 'A tenon flush with the front of its rail, shouldered behind.',
    document: piece('Bare tenon', { from: 'low', offset: '0', thickness: '10', width: '60', length: '25', drop: '0', spare: '3' }),
    // 10 x 60 x 28 and 10 x 60 x 25.
    removed: { post: 16800 },
    added: { rail: 15000 },
    planar: true,
  },
];
