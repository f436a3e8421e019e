import type { Example } from '../family.ts';

/** Buttons 30 x 25, tongue 9 x 12, slot 10 high and 13 - 3 = 10 deep in the rail, 30 + 2 long. */
const set = {
  count: '2',
  inset: '50',
  width: '30',
  length: '25',
  tongue: '9',
  reach: '12',
  lip: '10',
  room: '3',
  allow: '1',
  draw: '0.8',
  screw: '4',
  screw_length: '30',
};
const top = { wood: 'cherry', grain: 'x', left: '0', width: '600', front: '0', depth: '500', top: '740', height: '22' };
const rail = { wood: 'cherry', grain: 'x', left: '50', width: '500', front: '40', depth: '20', top: 'top.bottom', height: '90' };
const piece = (title: string, more: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { top, rail },
  joints: { fix: { as: 'button@1', places: [{ under: 'top', rail: 'rail' }], set: { ...set, ...more } } },
});
/** The screw, 30 long, passes 19 of rail height to the top and goes 11 into it. */
const HOLES = 2 * Math.PI * 4 * 11;
export const examples: readonly Example[] = [
  {
    name: 'buttons along a rail',
    words: 'A top held down on a long rail; its buttons stand off the rail so that the top may move across it.',
    document: piece('Buttons', {}),
    // Two slots of 32 x 10 x 10.
    removed: { rail: 6400, top: HOLES },
    planar: false,
  },
  {
    name: 'buttons in a groove',
    words: 'The same with one groove along the rail, stopped 30 before its tenons.',
    document: piece('Buttons in a groove', { slot: 'groove', stop: '30' }),
    // (500 - 2 x 30) x 10 x 10.
    removed: { rail: 44000, top: HOLES },
    planar: false,
  },
];
