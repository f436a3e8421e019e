import type { Json } from '../../model/finding.ts';
import type { Example } from '../family.ts';

const post = { wood: 'oak', grain: 'z', left: '0', width: '70', front: '0', depth: '70', bottom: '0', height: '500' };
const rail = {
  wood: 'oak',
  grain: 'x',
  left: 'post.right',
  width: '600',
  front: '20',
  depth: '30',
  bottom: '250',
  height: '150',
  marks: { inner: 'back' },
};
const set = {
  diameter: '8',
  hole: '9',
  length: '120',
  depth: '70',
  sink: '10',
  bore: '20',
  back: '50',
  nut_size: '13',
  nut_long: '6.5',
  stub: '25',
  stub_width: '25',
  stub_off: '50',
};
const piece = (title: string, more: Record<string, string>): Json => ({
  dryfit: 1,
  title,
  units: 'mm',
  parts: { post, rail },
  joints: { bolted: { as: 'bed_bolt@1', places: [{ rail: 'rail', post: 'post' }], set: { ...set, ...more } } },
});
/** The counterbore 100 pi x 10, the hole 20.25 pi through the 60 below it. */
const POST = Math.PI * (1000 + 20.25 * 60);
/** The hole in the rail, 70 deep. */
const HOLE = Math.PI * 20.25 * 70;
export const examples: readonly Example[] = [
  {
    name: 'square nut and stub tenons',
    words: 'A bed rail drawn up to its post by one bolt; two dry stub tenons keep it from turning.',
    document: piece('Bed bolt', {}),
    // The nut's mortise: from the inner face 15 to the middle and 6.5 + 1 beyond, 13 wide, 6.5 + 1 along the rail: 22.5 x 13 x 7.5 = 2193.75;
    // of the hole's 9 it takes 7.5 of length and all of its width: counted once. Stub tenons 10 x 25 x 25 = 6250 each, mortises 26 deep.
    removed: { post: POST + 2 * 10 * 25 * 26, rail: HOLE + 2193.75 - Math.PI * 20.25 * 7.5 },
    added: { rail: 12500 },
    planar: false,
  },
  {
    name: 'two bolts with square nuts',
    words: 'A deep rail with two bolts and no tenons.',
    document: piece('Two bed bolts', { count: '2', apart: '70', stub: '0' }),
    removed: { post: 2 * POST, rail: 2 * (HOLE + 2193.75 - Math.PI * 20.25 * 7.5) },
    planar: false,
  },
];
