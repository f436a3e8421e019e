import type { Example } from '../family.ts';

const top = { wood: 'cherry', grain: 'x', left: '0', width: '500', front: '0', depth: '300', bottom: '0', height: '20' };
const leaf = { wood: 'cherry', grain: 'x', left: '0', width: '500', front: 'top.back', depth: '250', bottom: '0', height: '20' };
/** The pin lies 4 + 13 = 17 below the surface and 3 above the underside, half the knuckle: the hinges are flush. */
const set = {
  fillet: '4',
  radius: '13',
  clearance: '0.4',
  hinges: '2',
  inset: '100',
  hinge_long: '38',
  flap_top: '27',
  flap_leaf: '40',
  flap_thick: '2',
  knuckle: '6',
};
const piece = (title: string, more: Record<string, string>) => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { top, leaf },
  joints: { hung: { as: 'rule_joint@1', places: [{ leaf: 'leaf', top: 'top' }], set: { ...set, ...more } } },
});
/** Area between a chord at height s above or below the centre and the centre itself, of half a circle of 13. */
const under = (s: number): number => (s * Math.sqrt(169 - s * s) + 169 * Math.asin(s / 13)) / 2;
/** Each hinge in the top: flaps 2 deep on 27 and on what the round leaves there; above them the channel, 7 wide, half round from 17 up. */
const inTop = 38 * (2 * 27 + under(3) - under(1) + (Math.PI * 3.5 * 3.5) / 2 + 7 * 1);
/** Each hinge in the leaf: 2 deep on 40 - 13.4. */
const inLeaf = 38 * 2 * 26.6;
/** The round: a quarter of a circle of 13, and 3 more down to the underside. The cove: a quarter of 13.4, and 3 straight down. */
const round = 500 * ((Math.PI * 169) / 4 + under(3));
const cove = 500 * ((Math.PI * 13.4 * 13.4) / 4 + 3 * 13.4);
export const examples: readonly Example[] = [
  {
    name: 'leaf of a table',
    words: 'A leaf hung on a fixed top 20 mm thick; it swings down and the joint stays closed.',
    document: piece('Drop leaf', {}),
    removed: { top: 2 * inTop, leaf: cove + 2 * inLeaf },
    added: { top: round },
    planar: false,
  },
  {
    name: 'three hinges',
    words: 'The same on three hinges.',
    document: piece('Drop leaf on three hinges', { hinges: '3' }),
    removed: { top: 3 * inTop, leaf: cove + 3 * inLeaf },
    added: { top: round },
    planar: false,
  },
];
