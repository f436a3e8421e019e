import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

const side = {
  wood: 'oak',
  grain: 'z',
  copies: [{ mirror: 'x', at: '200', names: ['left', 'right'] }],
  left: '0',
  width: '18',
  front: '0',
  depth: '280',
  bottom: '0',
  height: '400',
};
const shelf = {
  wood: 'oak',
  grain: 'x',
  left: 'side:left.right + 1',
  right: 'side:right.left - 1',
  front: '10',
  depth: '260',
  bottom: '200',
  height: '18',
};
const set = { diameter: '6', depth: '12', reach: '12', flat: '1', inset: '37', step: '32', above: '2', below: '3' };
const piece = (title: string, more: Record<string, string>): Json => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { side, shelf },
  joints: { lies: { as: 'shelf_peg@1', places: [{ shelf: 'shelf', side: 'side:*' }], set: { ...set, ...more } } },
});
/** Two rows of holes, each 9 pi x 12. */
const holes = (per: number): number => 2 * per * 9 * Math.PI * 12;
export const examples: readonly Example[] = [
  {
    name: 'shelf on rows of holes',
    words: 'A loose shelf on four pegs; two spare holes above and three below each, in both sides.',
    document: piece('Shelf on pegs', {}),
    removed: { 'side:left': holes(6), 'side:right': holes(6) },
    planar: false,
  },
  {
    name: 'brass pegs at one height',
    words: 'The same shelf on brass pegs, without spare holes.',
    document: piece('Shelf on brass pegs', { above: '0', below: '0', peg: 'metal' }),
    removed: { 'side:left': holes(1), 'side:right': holes(1) },
    planar: false,
  },
];
