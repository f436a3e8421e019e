import { sizeOf } from '../geom/box.ts';
import { archLength, archRadius } from '../geom/curve.ts';
import type { Frame } from '../geom/frame.ts';
import type { Corner } from '../geom/loop.ts';
import { type Axis, type Vec2, type Vec3, axisIndex, axisVec, tidy } from '../geom/vec3.ts';
import { faceSide } from '../model/ids.ts';
import type { Feature } from '../model/record.ts';
import { OVER } from './flat.ts';
import { LEAST, LEAVE, type Limits, limitsOf } from './limits.ts';
import { type ShapeKind, type ShapePart, type ShapeSet, facesIn, lengthIn, onePart } from './shape.ts';

const apron = { wood: 'cherry', grain: 'x', left: '0', width: '600', front: '0', depth: '20', bottom: '0', height: '90' };

/**
 * One arc on an edge of a part by its chord and rise: hollow, as under an apron, or crowned, as over a top rail.
 *
 *     hollow  ┌────────────────┐      crowned    ___────___
 *             └──╲________╱────┘               ┌╱          ╲┐
 */
export const arch: ShapeKind = {
  id: 'arch',
  version: 1,
  title: 'Arch',
  words: 'Cuts one arc into an edge, by its length and its rise: an arched apron, a crowned rail.',
  params: {
    face: { kind: 'faces', words: 'the narrow face that is arched (a face or mark)' },
    rise: { kind: 'length', words: 'how far the arc rises over its chord' },
    chord: { kind: 'length', words: 'length of the arch (the whole part, unless said)' },
    middle: { kind: 'place', words: 'where the middle of the arch stands along the grain (of the part, unless said)' },
    form: {
      kind: 'choice',
      words: 'which way it curves',
      options: { hollow: 'hollow: the middle is cut away', crown: 'crowned: the ends are' },
    },
  },
  required: ['face', 'rise'],
  make: (part, set) => {
    const face = facesIn(set, 'face')[0];
    if (!face) return { ok: false, problem: 'say which face is arched.' };
    const side = faceSide(face);
    if (side.quad.axis === part.grain) return { ok: false, problem: `"${face}" is an end of the part: an arch runs along its grain.` };
    const limits = limitsOf(set);
    const s = sizes(part, set, side.axis, limits);
    const refused = limits.refusal();
    if (refused) return refused;
    return {
      ok: true,
      features: [{ name: `arch ${face}`, op: 'shape', why: 'shape', faces: facesOf(s), ...solid(part, side, s) }],
      says: [
        { words: 'radius of the arch', value: archRadius(s.chord, s.rise), unit: 'mm' },
        { words: 'length along the arch', value: archLength(s.chord, s.rise), unit: 'mm' },
      ],
    };
  },
  examples: [
    {
      name: 'arched apron',
      words: 'The lower edge of an apron, lifted in one arc between two flats.',
      document: onePart('Arched apron', 'apron', { ...apron, shape: [{ as: 'arch@1', face: ['bottom'], chord: '480', rise: '30' }] }),
      // Radius (240² + 30²) / 60 = 975; a segment of 975² (a - sin a) / 2 with a = 2 asin(240 / 975), times 20.
      removed: { apron: ((975 * 975) / 2) * (2 * Math.asin(240 / 975) - Math.sin(2 * Math.asin(240 / 975))) * 20 },
      planar: false,
    },
    {
      name: 'crowned rail',
      words: 'A top rail that is highest in its middle.',
      document: onePart('Crowned rail', 'apron', { ...apron, shape: [{ as: 'arch@1', face: ['top'], rise: '25', form: 'crown' }] }),
      // A rectangle of 600 x 25 less the segment over it: radius (300² + 25²) / 50 = 1812.5.
      removed: { apron: (600 * 25 - ((1812.5 * 1812.5) / 2) * (2 * Math.asin(300 / 1812.5) - Math.sin(2 * Math.asin(300 / 1812.5)))) * 20 },
      planar: false,
    },
  ],
};

type Sizes = { readonly chord: number; readonly rise: number; readonly middle: number; readonly crown: boolean };
function sizes(part: ShapePart, set: ShapeSet, axis: 0 | 1 | 2, limits: Limits): Sizes {
  const k = axisIndex(part.grain);
  const size = sizeOf(part.stock);
  const long = size[k];
  const crown = limits.choice('form', 'the form', ['hollow', 'crown']) === 'crown';
  // A crowned edge has no flats: beyond the arc there would be nothing that it rises from.
  const chord =
    crown && lengthIn(set, 'chord') === undefined ? long : limits.length('chord', 'the length of an arch', crown ? long : 2, long, long);
  const rise = limits.length('rise', 'the rise of an arch', LEAST, Math.min(size[axis] - LEAVE, chord / 2), LEAST);
  const [low, high] = [part.stock.min[k] + chord / 2, part.stock.max[k] - chord / 2];
  const usual = (part.stock.min[k] + part.stock.max[k]) / 2;
  const middle = limits.length('middle', 'the middle of the arch', tidy(Math.min(low, usual)), tidy(Math.max(high, usual)), usual);
  return { chord, rise, middle, crown };
}
const facesOf = (s: Sizes): Feature['faces'] =>
  s.crown ? { 'arch low': { of: 'side', corner: 0 }, 'arch high': { of: 'side', corner: 1 } } : { arch: { of: 'side', corner: 0 } };

/** In a frame on the face at the middle of the arch: x along the grain, y into the wood. */
function solid(part: ShapePart, side: ReturnType<typeof faceSide>, s: Sizes): Pick<Feature, 'solid' | 'at'> {
  const k = axisIndex(part.grain);
  const through = (3 - k - side.axis) as 0 | 1 | 2;
  const o: [number, number, number] = [0, 0, 0];
  o[k] = s.middle;
  o[side.axis] = (side.high ? part.stock.max : part.stock.min)[side.axis];
  const axes: readonly Axis[] = ['x', 'y', 'z'];
  const inward: Vec3 = axisVec(side.quad.axis, side.high ? -1 : 1);
  const at: Frame = { o, x: axisVec(part.grain), y: inward, z: axisVec(axes[through] ?? 'x') };
  const profile = s.crown ? crown(s) : hollow(s);
  return { at, solid: { kind: 'prism', profile: [profile], from: part.stock.min[through] - OVER, to: part.stock.max[through] + OVER } };
}
function hollow({ chord, rise }: Sizes): Corner[] {
  const c = chord / 2;
  return [{ at: [c, 0], via: [0, rise] }, { at: [-c, 0] }, { at: [-c, -OVER] }, { at: [c, -OVER] }];
}
/** In two arcs, so that the highest spot is a corner of both and stands on the face. */
function crown({ chord, rise }: Sizes): Corner[] {
  const c = chord / 2;
  const r = archRadius(chord, rise);
  const half = Math.asin(Math.min(1, c / r)) / 2;
  const quarter = (sign: 1 | -1): Vec2 => [sign * r * Math.sin(half), r - r * Math.cos(half)];
  return [
    { at: [c, rise], via: quarter(1) },
    { at: [0, 0], via: quarter(-1) },
    { at: [-c, rise] },
    { at: [-c - OVER, rise] },
    { at: [-c - OVER, -OVER] },
    { at: [c + OVER, -OVER] },
    { at: [c + OVER, rise] },
  ];
}
