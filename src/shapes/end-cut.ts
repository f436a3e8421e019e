import { sizeOf } from '../geom/box.ts';
import { type Axis, type Vec3, AXES, axisIndex, axisVec } from '../geom/vec3.ts';
import { type Face, faceSide } from '../model/ids.ts';
import { LEAVE, limitsOf } from './limits.ts';
import { beyond } from './section.ts';
import { type ShapeKind, facesIn, onePart } from './shape.ts';

const DEG = Math.PI / 180;
const MOST = 85 * DEG;
const LEAST_ANGLE = 0.01 * DEG;
const rail = { wood: 'maple', grain: 'x', left: '0', width: '300', front: '0', depth: '20', bottom: '0', height: '60' };

/**
 * An end sawn at an angle: the mitre is set at the gauge, across the wide face that lies on the table; the bevel is the tilt of the blade.
 * The stock stays as long as it is drawn: its longest edge is where the faces named "long" meet, everything else gets shorter.
 */
export const endCut: ShapeKind = {
  id: 'end_cut',
  version: 1,
  title: 'Angled end',
  words: 'Saws an end off at a mitre, a bevel or both at once; the longest edge keeps its length.',
  params: {
    end: { kind: 'faces', words: 'the end that is cut (a face or mark)' },
    mitre: { kind: 'angle', words: 'angle of the mitre gauge from square, across the wide face' },
    bevel: { kind: 'angle', words: 'tilt of the blade from upright, through the thickness' },
    long: { kind: 'faces', words: 'the faces at which the part keeps its length (one across, one through the thickness)' },
  },
  required: ['end', 'long'],
  make: (part, set) => {
    const end = facesIn(set, 'end')[0];
    const side = end && faceSide(end);
    if (!end || !side) return { ok: false, problem: 'say which end is cut.' };
    const size = sizeOf(part.stock);
    const [a, b] = AXES.filter((k) => axisIndex(k) !== side.axis) as [Axis, Axis];
    const [wide, thick] = size[axisIndex(a)] >= size[axisIndex(b)] ? [a, b] : [b, a];
    const limits = limitsOf(set);
    const room = size[side.axis] - LEAVE;
    const [w, t] = [size[axisIndex(wide)], size[axisIndex(thick)]];
    const most = Math.min(MOST, Math.atan(room / w));
    let mitre = limits.angle('mitre', 'the mitre', 0, most, 0);
    const left = room - w * Math.tan(mitre);
    const bevel = limits.angle('bevel', 'the bevel', 0, Math.min(MOST, Math.atan((Math.max(0, left) * Math.cos(mitre)) / t)), 0);
    if (mitre + bevel < LEAST_ANGLE) {
      mitre = Math.min(most, 45 * DEG);
      limits.wrong('an angled end needs a mitre or a bevel of at least 0.01°.', { mitre });
    }
    const long = facesIn(set, 'long');
    const longWide = long.find((f) => faceSide(f).quad.axis === wide);
    const longThick = long.find((f) => faceSide(f).quad.axis === thick);
    if (mitre > 0 && !longWide)
      return { ok: false, problem: `"long" must name the face, of the two along ${wide}, at which a mitred part keeps its length.` };
    if (bevel > 0 && !longThick)
      return { ok: false, problem: `"long" must name the face, of the two along ${thick}, at which a bevelled part keeps its length.` };
    const refused = limits.refusal();
    if (refused) return refused;
    const out = (f: Face | undefined, k: Axis): Vec3 => axisVec(k, f && faceSide(f).high ? -1 : 1);
    const [el, ew, et] = [axisVec(side.quad.axis, side.high ? 1 : -1), out(longWide, wide), out(longThick, thick)];
    const parts = [Math.cos(bevel) * Math.cos(mitre), Math.cos(bevel) * Math.sin(mitre), Math.sin(bevel)] as const;
    const normal = [0, 1, 2].map((i) => parts[0] * (el[i] ?? 0) + parts[1] * (ew[i] ?? 0) + parts[2] * (et[i] ?? 0)) as unknown as Vec3;
    const at = ([0, 1, 2] as const).map((i) => {
      const face = [end, longWide, longThick].find((f) => f && faceSide(f).axis === i);
      return face && faceSide(face).high ? part.stock.max[i] : part.stock.min[i];
    }) as unknown as Vec3;
    const shorter = w * Math.tan(mitre) + (t * Math.tan(bevel)) / Math.cos(mitre);
    return {
      ok: true,
      features: [beyond(`cut ${end}`, normal, at, 'cut')],
      says: [{ words: 'shorter at the opposite edge by', value: shorter, unit: 'mm' }],
    };
  },
  examples: [
    {
      name: 'mitred end',
      words: 'A rail mitred at 45° across its width.',
      document: onePart('Mitre', 'rail', { ...rail, shape: [{ as: 'end_cut@1', end: ['right'], mitre: '45 deg', long: ['top'] }] }),
      // Half of 60 x 60, 20 thick.
      removed: { rail: 1800 * 20 },
      planar: true,
    },
    {
      name: 'compound cut',
      words: 'Mitre and bevel in one cut, as for the sides of a box that lean outward.',
      document: onePart('Compound cut', 'rail', {
        ...rail,
        shape: [{ as: 'end_cut@1', end: ['right'], mitre: '30 deg', bevel: '20 deg', long: ['top', 'front'] }],
      }),
      // Mean loss of length, times the section of 60 x 20: half of 60 tan 30°, and half of 20 tan 20° / cos 30°.
      removed: { rail: 1200 * (30 * Math.tan(30 * DEG) + (10 * Math.tan(20 * DEG)) / Math.cos(30 * DEG)) },
      planar: true,
    },
  ],
};

/**
 * Saw settings for n equal sides whose faces are pitched up from flat by `pitch` (0: a flat frame, 90°: an upright box), the board flat on
 * the table: tan mitre = cos pitch · tan(180°/n), sin bevel = sin pitch · sin(180°/n). Radians.
 */
export function compoundMitre(sides: number, pitch: number): { readonly mitre: number; readonly bevel: number } {
  const half = Math.PI / sides;
  return { mitre: Math.atan(Math.cos(pitch) * Math.tan(half)), bevel: Math.asin(Math.sin(pitch) * Math.sin(half)) };
}
