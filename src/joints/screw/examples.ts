import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

const rail = { wood: 'oak', grain: 'x', left: '0', width: '400', front: '0', depth: '20', bottom: '0', height: '60' };
const strip = { wood: 'oak', grain: 'x', left: '0', width: '400', front: 'rail.back', depth: '14', bottom: '20', height: '40' };
const piece = (title: string, set: Record<string, string>, parts: Record<string, Json>): Json => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts,
  joints: { fix: { as: 'screw@1', places: [{ through: 'strip', into: 'rail' }], set: { count: '2', inset: '50', diameter: '4', ...set } } },
});
const plain = { rail, strip };
/** A pilot hole of 2.8, a clearance hole of 4.4, for each mm of depth. */
const PILOT = Math.PI * 1.4 ** 2;
const CLEARANCE = Math.PI * 2.2 ** 2;

export const examples: readonly Example[] = [
  {
    name: 'countersunk',
    words: 'A strip screwed to a rail, the heads flush.',
    document: piece('Screwed strip', { length: '30', head: 'countersunk', sink: '0', clearance: '4.4', pilot: '2.8' }, plain),
    // 30 less the strip's 14: 16 in the rail. The countersink is a cone of radius 4 at the face, 2.2 where the hole takes over, 1.8 deep:
    // pi 1.8/3 (16 + 8.8 + 4.84) = 55.8708; the hole takes the other 12.2.
    removed: { strip: 2 * (12.2 * CLEARANCE + (Math.PI * 1.8 * (16 + 8.8 + 4.84)) / 3), rail: 2 * 16 * PILOT },
    planar: false,
  },
  {
    name: 'under plugs',
    words: 'The same, the heads sunk 8 deep under plugs of the same wood.',
    document: piece('Screws under plugs', { length: '20', head: 'plugged', sink: '8', bore: '10', clearance: '4.4', pilot: '2.8' }, plain),
    // The counterbore 25 pi x 8, the hole through the 6 below it; 20 - 6 = 14 in the rail.
    removed: { strip: 2 * (25 * Math.PI * 8 + 6 * CLEARANCE), rail: 2 * 14 * PILOT },
    planar: false,
  },
  {
    name: 'in slots',
    words: 'A strip across a wide board: the middle screw fast, the outer two in slots, so that the board may move.',
    document: piece(
      'Screws in slots',
      { count: '3', length: '30', head: 'round', sink: '0', clearance: '4.4', pilot: '2.8', travel: '1.6', slot: '8.4' },
      { ...plain, rail: { ...rail, grain: 'z', height: '600' } },
    ),
    // A slot is a hole and a rectangle 4 x 4.4. 30 less 14: 16 in the board.
    removed: { strip: 14 * (3 * CLEARANCE + 2 * 4 * 4.4), rail: 3 * 16 * PILOT },
    planar: false,
  },
];
