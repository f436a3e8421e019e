import type { Example } from '../family.ts';

const top = { wood: 'oak', grain: 'x', left: '0', width: '500', front: '0', depth: '600', top: '720', height: '24' };
const end = { wood: 'oak', grain: 'y', left: 'top.right', width: '75', front: 'top.front', depth: '600', top: 'top.top', height: '24' };
const piece = (title: string, set: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { top, end },
  joints: {
    bread: {
      as: 'breadboard@1',
      places: [{ top: 'top', end: 'end' }],
      set: {
        thickness: '8',
        tongue: '10',
        tenons: '3',
        tenon_width: '40',
        tenon_length: '50',
        spare: '1.5',
        peg: '6',
        peg_back: '30',
        ...set,
      },
    },
  },
});
/** A round hole or slot of diameter 6 through 8 or 24, beside its flat middle. */
const ROUND = Math.PI * 9;
export const examples: readonly Example[] = [
  {
    name: 'fast in the middle',
    words: 'An end board on a top 600 wide, glued and pegged in the middle; the outer pegs stand in slots.',
    document: piece('Breadboard end', { allow: '2' }),
    // Tongue 10 x 8 x 600 = 48 000; three tenons (50 - 10) x 8 x 40 = 12 800 each, 38 400.
    added: { top: 48000 + 38400 },
    // In the tenons one hole and two slots 4 longer: 3 rounds x 8 + 2 x (4 x 6 x 8).
    // In the end: groove 11.5 x 8 x 600 = 55 200; mortises 40 deep beyond it, 40 long and two of 44: 8 x 40 x 128 = 40 960;
    // holes through 24, of which the mortise already took 8: 3 rounds x 16.
    removed: { top: 3 * ROUND * 8 + 2 * 192, end: 55200 + 40960 + 3 * ROUND * 16 },
    planar: false,
  },
  {
    name: 'fast at the front',
    words: 'The same end, fast at the front edge, which stays flush; all movement goes to the back.',
    document: piece('Breadboard end, fast at the front', { fixed: 'front', allow: '4' }),
    added: { top: 86400 },
    // Slots 4 and 8 longer in all; mortises 40, 44 and 48 long.
    removed: { top: 3 * ROUND * 8 + (4 + 8) * 6 * 8, end: 55200 + 8 * 40 * (40 + 44 + 48) + 3 * ROUND * 16 },
    planar: false,
  },
];
