import { sizeOf } from '../geom/box.ts';
import { axisIndex } from '../geom/vec3.ts';
import { faceSide } from '../model/ids.ts';
import type { Feature } from '../model/record.ts';
import { LEAVE, limitsOf } from './limits.ts';
import { beyond } from './section.ts';
import { type ShapeKind, type ShapePart, facesIn, onePart } from './shape.ts';

const DEG = Math.PI / 180;
const stave = { wood: 'oak', grain: 'z', left: '0', width: '60', front: '0', depth: '20', bottom: '0', height: '300' };

/** A stave of a barrel, a column or a curved door: both long edges bevelled alike, so that equal staves close a ring or part of one. */
export const coopered: ShapeKind = {
  id: 'coopered',
  version: 1,
  title: 'Coopered stave',
  words: 'Bevels both long edges of a stave, so that staves side by side close a ring or a curve.',
  params: {
    face: { kind: 'faces', words: 'the outer face, which keeps its width (a face or mark)' },
    count: { kind: 'count', words: 'how many staves' },
    sweep: { kind: 'angle', words: 'angle that they close together (360 deg, a whole ring, unless said)' },
  },
  required: ['face', 'count'],
  make: (part, set) => {
    const face = facesIn(set, 'face')[0];
    const side = face && faceSide(face);
    if (!face || !side || side.quad.axis === part.grain)
      return { ok: false, problem: 'the outer face of a stave is one of its long faces.' };
    const across = (3 - side.axis - axisIndex(part.grain)) as 0 | 1 | 2;
    const size = sizeOf(part.stock);
    const [wide, thick] = [size[across], size[side.axis]];
    const limits = limitsOf(set);
    const sweep = limits.angle('sweep', 'the angle of the whole curve', 1 * DEG, 360 * DEG, 360 * DEG);
    // Both bevels must leave some of the inner face; none may reach 45°.
    const steepest = Math.min(45 * DEG, Math.atan((wide - LEAVE) / 2 / thick));
    const least = Math.max(2, Math.ceil(sweep / 2 / steepest - 1e-9));
    const count = limits.count('count', 'the number of staves', least, 200, 8);
    const refused = limits.refusal();
    if (refused) return refused;
    const bevel = sweep / count / 2;
    return {
      ok: true,
      features: ([1, -1] as const).map((sign) => edgeBevel(part, side, across, sign, bevel)),
      says: [
        { words: 'bevel of each edge', value: bevel / DEG, unit: 'deg' },
        { words: 'width of the inner face', value: wide - 2 * thick * Math.tan(bevel), unit: 'mm' },
        { words: 'radius to the middle of the outer face', value: wide / 2 / Math.tan(bevel), unit: 'mm' },
      ],
    };
  },
  examples: [
    {
      name: 'stave of eight',
      words: 'One of eight staves that close an octagonal column.',
      document: onePart('Stave', 'stave', { ...stave, shape: [{ as: 'coopered@1', face: ['front'], count: '8' }] }),
      // A triangle of 20 x 20 tan 22.5° / 2 on both edges.
      removed: { stave: 400 * Math.tan(22.5 * DEG) * 300 },
      planar: true,
    },
    {
      name: 'stave of a bowed door',
      words: 'One of five staves that bend a door through 40°.',
      document: onePart('Bowed door', 'stave', { ...stave, shape: [{ as: 'coopered@1', face: ['front'], count: '5', sweep: '40 deg' }] }),
      removed: { stave: 400 * Math.tan(4 * DEG) * 300 },
      planar: true,
    },
  ],
};

/** The plane through one outer arris that leans in by `bevel`; its normal points out of the wood that stays. */
function edgeBevel(part: ShapePart, side: ReturnType<typeof faceSide>, across: 0 | 1 | 2, sign: 1 | -1, bevel: number): Feature {
  const inward = side.high ? -1 : 1;
  const normal: [number, number, number] = [0, 0, 0];
  normal[across] = sign * Math.cos(bevel);
  normal[side.axis] = inward * Math.sin(bevel);
  const at: [number, number, number] = [0, 0, 0];
  at[across] = (sign > 0 ? part.stock.max : part.stock.min)[across];
  at[side.axis] = (side.high ? part.stock.max : part.stock.min)[side.axis];
  return beyond(`bevel ${sign > 0 ? 'high' : 'low'}`, normal, at, 'bevel');
}
