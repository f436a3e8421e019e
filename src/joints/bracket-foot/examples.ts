import type { Example } from '../family.ts';

const base = { wood: 'cherry', grain: 'x', left: '0', width: '400', front: '0', depth: '300', top: '140', height: '20' };
const front = { wood: 'cherry', grain: 'x', left: '0', width: '180', front: '0', depth: '20', bottom: '0', top: 'base.bottom' };
const side = { wood: 'cherry', grain: 'y', left: '0', width: '20', front: '0', depth: '180', bottom: '0', top: 'base.bottom' };
const set = {
  spline_thick: '3',
  spline_wide: '10',
  block: '45',
  pieces: '2',
  fixing: '20',
  fixing_long: '60',
  screw: '4',
  screw_length: '30',
  slot: '1.5',
};
const piece = (title: string, more: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { base, front, side },
  joints: { foot: { as: 'bracket_foot@1', places: [{ front: 'front', side: 'side', base: 'base' }], set: { ...set, ...more } } },
});
/** The mitre takes 20 x 20 / 2 x 120 = 24 000 from each bracket, the slot 3 x 5 x 120 = 1800 more; each screw stands 30 - 20 = 10 in the base. */
const HOLES = 2 * Math.PI * 2 * 2 * 10;
export const examples: readonly Example[] = [
  {
    name: 'splined foot',
    words: 'Brackets 120 mm high under the corner of a chest, a spline across their mitre.',
    document: piece('Bracket foot', {}),
    removed: { front: 25800, side: 25800, base: HOLES },
    planar: false,
  },
  {
    name: 'plain mitre',
    words: 'The same without a spline, its glue block built up of lying pieces.',
    document: piece('Bracket foot, plain', { spline: 'none', block_grain: 'lying', pieces: '4' }),
    removed: { front: 24000, side: 24000, base: HOLES },
    planar: false,
  },
];
