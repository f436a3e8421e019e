import type { Example } from '../family.ts';

/** A drawer front 18 thick and 90 high with a side 12 thick at its left end; a case side 18 x 280 with a thin back. */
const front = { wood: 'oak', grain: 'x', left: '0', width: '400', front: '0', depth: '18', bottom: '0', height: '90' };
const flank = { wood: 'oak', grain: 'y', left: '0', width: '12', front: 'front.back', depth: '300', bottom: '0', height: '90' };
const side = { wood: 'pine', grain: 'z', left: '0', width: '18', front: '0', depth: '280', bottom: '0', height: '600' };
const sheet = { wood: 'plywood', grain: 'z', left: '12', width: '388', back: '280', depth: '4', bottom: '0', height: '600' };
type Words = Readonly<Record<string, string>>;
const piece = (title: string, parts: Readonly<Record<string, Words>>, place: Words, set: Words) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { edge: { as: 'rabbet@1', places: [place], set } },
});
export const examples: readonly Example[] = [
  {
    name: 'drawer front',
    words: 'The side of a drawer let into a rabbet in its front.',
    document: piece('Rabbeted drawer front', { front, flank }, { enter: 'flank', into: 'front' }, { depth: '9' }),
    // 12 wide x 9 deep x 90 high = 9 720, and the side grows by as much.
    removed: { front: 9720 },
    added: { flank: 9720 },
    planar: true,
  },
  {
    name: 'back in the side of a case',
    words: 'A thin back drawn 6 mm inside the side: the rabbet is where it stands, 1 mm wider for ease.',
    document: piece('Back of a case', { side, sheet }, { enter: 'sheet', into: 'side' }, { spare: '1', hold: 'dry' }),
    // (6 + 1) x 4 x 600 = 16 800; the back keeps its size.
    removed: { side: 16800 },
    planar: true,
  },
  {
    name: 'tongue under a lip',
    words: 'The side of a drawer rabbeted to a tongue of 6 mm on both faces, in a groove 3 mm in from the end of the front.',
    document: piece('Rabbet and lip', { front, flank }, { enter: 'flank', into: 'front' }, { depth: '8', outer: '3', inner: '3' }),
    // Tongue 12 - 3 - 3 = 6 thick: 6 x 8 x 90 = 4 320.
    removed: { front: 4320 },
    added: { flank: 4320 },
    planar: true,
  },
];
