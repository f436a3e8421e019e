import { sizeOf } from '../geom/box.ts';
import { archLength, archRadius, archRise } from '../geom/curve.ts';
import type { Frame } from '../geom/frame.ts';
import type { Loop } from '../geom/loop.ts';
import { type Vec3, AXES, axisIndex, axisVec } from '../geom/vec3.ts';
import type { Source } from '../model/finding.ts';
import { faceSide } from '../model/ids.ts';
import type { Feature } from '../model/record.ts';
import { OVER } from './flat.ts';
import { LEAST, limitsOf } from './limits.ts';
import { type ShapeKind, type ShapeSays, facesIn, onePart } from './shape.ts';

const back = { wood: 'ash', grain: 'x', left: '0', width: '480', front: '0', depth: '50', bottom: '0', height: '80' };

/**
 * A part bent to an arc and laminated of plies. The stock is the box round the finished bend; the hollow face runs from end to end of it
 * and the crown touches the face that is named.
 *
 *      ┌────___────┐  crown (the face named)
 *      │ ╱  ___  ╲ │  thickness between
 *      ╱ ╱╱   ╲╲ ╲│  rise of the hollow = depth of the box less the thickness
 */
export const bent: ShapeKind = {
  id: 'bent',
  version: 1,
  title: 'Bent lamination',
  words: 'Bends a part to an arc, glued up of thin plies round a form: a chair back, a bow front.',
  params: {
    face: { kind: 'faces', words: 'the face that the crown of the bend touches (a face or mark)' },
    thickness: { kind: 'length', words: 'thickness of the bent part' },
    plies: { kind: 'count', words: 'how many plies it is glued up from' },
  },
  required: ['face', 'thickness', 'plies'],
  make: (part, set) => {
    const face = facesIn(set, 'face')[0];
    const side = face && faceSide(face);
    if (!face || !side || side.quad.axis === part.grain) return { ok: false, problem: 'the crown of a bend is on one of the long faces.' };
    const size = sizeOf(part.stock);
    const [deep, chord] = [size[side.axis], size[axisIndex(part.grain)]];
    const limits = limitsOf(set);
    // The hollow rises by what the box is deeper than the part is thick: above nothing, below a half circle.
    const least = Math.max(LEAST, deep - chord / 2);
    const t = limits.length('thickness', 'the thickness of a bent part', least, deep - LEAST, least);
    const plies = limits.count('plies', 'the number of plies', 2, 100, 6);
    const refused = limits.refusal();
    if (refused) return refused;
    const rise = deep - t;
    const through = (3 - side.axis - axisIndex(part.grain)) as 0 | 1 | 2;
    return {
      ok: true,
      features: [bend(part.stock, side, axisIndex(part.grain), through, { chord, rise, t })],
      says: bendSays(chord, rise, t, plies),
    };
  },
  examples: [
    {
      name: 'chair back',
      words: 'The back of a chair, bent of five plies.',
      document: onePart('Chair back', 'back', { ...back, shape: [{ as: 'bent@1', face: ['back'], thickness: '15', plies: '5' }] }),
      // The box less what stays: hollow of chord 480 and rise 35, radius R = (240² + 35²) / 70; the crown is an arc of R + 15 about the same
      // middle, cut by the ends of the box. Area under a circle of radius q over 480: q² asin(240 / q) + 240 √(q² - 240²).
      removed: {
        back: (() => {
          const r = (240 * 240 + 35 * 35) / 70;
          const under = (q: number): number => q * q * Math.asin(240 / q) + 240 * Math.sqrt(q * q - 240 * 240);
          return (480 * 50 - (under(r + 15) - under(r))) * 80;
        })(),
      },
      planar: false,
    },
  ],
};

type Bend = { readonly chord: number; readonly rise: number; readonly t: number };
function bend(
  stock: { readonly min: Vec3; readonly max: Vec3 },
  side: ReturnType<typeof faceSide>,
  k: 0 | 1 | 2,
  through: 0 | 1 | 2,
  b: Bend,
): Feature {
  const o: [number, number, number] = [0, 0, 0];
  o[k] = (stock.min[k] + stock.max[k]) / 2;
  // On the face opposite the crown, y towards the crown.
  o[side.axis] = (side.high ? stock.min : stock.max)[side.axis];
  const at: Frame = { o, x: axisVec(AXES[k] ?? 'x'), y: axisVec(side.quad.axis, side.high ? 1 : -1), z: axisVec(AXES[through] ?? 'z') };
  const c = b.chord / 2;
  const r = archRadius(b.chord, b.rise);
  const end = b.rise - r + Math.sqrt((r + b.t) ** 2 - c * c);
  const keep: Loop = [
    { at: [c, 0] },
    { at: [c, end], via: quarter(c, r + b.t, b.rise - r) },
    { at: [0, b.rise + b.t], via: mirror(quarter(c, r + b.t, b.rise - r)) },
    { at: [-c, end] },
    { at: [-c, 0], via: [0, b.rise] },
  ];
  const deep = b.rise + b.t;
  const room: Loop = [
    { at: [-c - OVER, -OVER] },
    { at: [c + OVER, -OVER] },
    { at: [c + OVER, deep + OVER] },
    { at: [-c - OVER, deep + OVER] },
  ];
  return {
    name: 'bend',
    op: 'shape',
    why: 'shape',
    solid: { kind: 'prism', profile: [room, keep], from: stock.min[through] - OVER, to: stock.max[through] + OVER },
    at,
    faces: {
      'crown high': { of: 'side', loop: 1, corner: 1 },
      'crown low': { of: 'side', loop: 1, corner: 2 },
      hollow: { of: 'side', loop: 1, corner: 4 },
    },
  };
}
/** A spot of the crown half-way (in angle) between its end and its top. */
function quarter(c: number, q: number, middle: number): [number, number] {
  const half = Math.asin(Math.min(1, c / q)) / 2;
  return [q * Math.sin(half), middle + q * Math.cos(half)];
}
const mirror = ([x, y]: readonly [number, number]): [number, number] => [-x, y];

const RULE: Source = { name: 'rule of thumb of bent lamination: a bend of n plies opens by 1/n² of its rise', basis: 'common practice' };
/** Of the rule's springback, how much makers have reported: 0.4 (seven plies on 42 in, under 1/16 in over 48 in) to 1.5 (four plies, 20 in opened to 22). */
export const SPRINGBACK_RANGE = [0.4, 1.5] as const;
/** How far a bend of n plies springs back, as a part of its rise: 1/n². It hangs on glue, wood and time in the form: make a test bend. */
export const springback = (plies: number): number => 1 / (plies * plies);
/** The radius that a form needs so that the bend ends at `radius`: R · (1 - 1/n²). */
export const formRadius = (radius: number, plies: number, share = 1): number => radius * (1 - share * springback(plies));
/** The rise to build into the form, so that `rise` is left: rise · n² / (n² - 1). */
export const formRise = (rise: number, plies: number): number => rise / (1 - springback(plies));

function bendSays(chord: number, rise: number, t: number, plies: number): ShapeSays[] {
  const r = archRadius(chord, rise);
  const [low, high] = SPRINGBACK_RANGE;
  const form = formRadius(r, plies);
  return [
    { words: 'radius of the hollow face', value: r, unit: 'mm' },
    {
      words: 'radius of the form, before it springs back',
      value: form,
      unit: 'mm',
      range: [formRadius(r, plies, high), formRadius(r, plies, low)],
      source: RULE,
    },
    {
      words: 'springback of the rise',
      value: rise * springback(plies),
      unit: 'mm',
      range: [low * rise * springback(plies), high * rise * springback(plies)],
      source: RULE,
    },
    { words: 'thickness of a ply', value: t / plies, unit: 'mm' },
    { words: 'length of the outer ply, without trim', value: crownLength(chord, r + t), unit: 'mm' },
  ];
}
const crownLength = (chord: number, q: number): number => archLength(chord, archRise(q, chord));
