import type { Example } from '../family.ts';

/** A case side 18 thick with a door 20 thick and 600 high beside it or before it. */
const side = { wood: 'oak', grain: 'z', right: '0', width: '18', front: '0', depth: '200', bottom: '-2', height: '604' };
const inset = { wood: 'oak', grain: 'z', left: '1', width: '300', front: '0', depth: '20', bottom: '0', height: '600' };
const overlaid = { wood: 'oak', grain: 'z', left: '-18', width: '318', back: '-1', depth: '20', bottom: '0', height: '600' };
const set = { count: '2', inset: '60', length: '50', wide: '14', thick: '2', knuckle: '6', proud: '3' };
const piece = (title: string, door: Record<string, string>, more: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { side, door },
  joints: { hang: { as: 'hinge@1', places: [{ enter: 'door', into: 'side' }], set: { ...set, ...more } } },
});
export const examples: readonly Example[] = [
  {
    name: 'inset door',
    words: 'A door inside its case, flush with the sides, 1 mm off the side that it hangs on.',
    document: piece('Inset door', inset, {}),
    // Two recesses 50 x 14 x 2 in each: 2 800.
    removed: { side: 2800, door: 2800 },
    planar: true,
  },
  {
    name: 'overlaid door',
    words: 'A door before the front edge of the side, the knuckles at its outer edge.',
    document: piece('Overlaid door', overlaid, { side: 'left', wide: '12' }),
    // Two recesses 50 x 12 x 2 in each: 2 400.
    removed: { side: 2400, door: 2400 },
    planar: true,
  },
];
