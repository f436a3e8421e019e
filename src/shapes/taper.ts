import { type Vec3, axisIndex } from '../geom/vec3.ts';
import { type Face, faceSide } from '../model/ids.ts';
import type { Feature } from '../model/record.ts';
import { LEAST, LEAVE, limitsOf } from './limits.ts';
import { beyond } from './section.ts';
import { type ShapeKind, type ShapePart, type ShapeSays, facesIn, onePart } from './shape.ts';

const DEG = 180 / Math.PI;
const leg = { wood: 'cherry', grain: 'z', left: '0', width: '40', front: '0', depth: '40', bottom: '0', height: '600' };

/**
 * A straight taper on chosen faces, from `start` (a place along the grain, in the part's own frame) to the foot, where `foot` of the section
 * is left. The foot is the low end along the grain, unless `end` says the high one. Two opposite faces share what is taken off.
 */
export const taper: ShapeKind = {
  id: 'taper',
  version: 1,
  title: 'Taper',
  words: 'Makes a leg slimmer towards its foot, on the faces that are named.',
  params: {
    faces: { kind: 'faces', words: 'faces that are tapered (faces or marks)' },
    start: { kind: 'place', words: 'where the taper starts, along the grain' },
    foot: { kind: 'length', words: 'what is left of the section at the foot' },
    end: {
      kind: 'choice',
      words: 'which end is made slimmer',
      options: { low: 'the left, front or bottom end', high: 'the right, back or top end' },
    },
  },
  required: ['faces', 'start', 'foot'],
  make: (part, set) => {
    const faces = [...new Set(facesIn(set, 'faces'))];
    const k = axisIndex(part.grain);
    const { min, max } = part.stock;
    if (!faces.length) return { ok: false, problem: 'a taper needs at least one face.' };
    const long = faces.filter((f) => faceSide(f).axis !== k);
    const limits = limitsOf(set);
    if (long.length < faces.length)
      limits.wrong(
        `"${faces.find((f) => !long.includes(f))}" is an end of the part: a taper runs on its long faces.`,
        long.length ? { faces: long } : undefined,
      );
    const high = limits.choice('end', 'the end of a taper', ['low', 'high']) === 'high';
    const start = limits.length(
      'start',
      'the start of a taper, counted from the datum corner,',
      high ? min[k] : min[k] + LEAVE,
      high ? max[k] - LEAVE : max[k],
      (min[k] + max[k]) / 2,
    );
    const least = Math.min(...long.map((f) => max[faceSide(f).axis] - min[faceSide(f).axis]));
    const foot = limits.length('foot', 'the foot of a taper', LEAST, least - LEAST, least / 2);
    const refused = limits.refusal();
    if (refused) return refused;
    const cut = long.map((face) => oneFace(part, face, start, foot, long, high));
    return { ok: true, features: cut.map((c) => c.feature), says: cut.map((c) => c.says) };
  },
  examples: [
    {
      name: 'taper on two faces',
      words: 'A table leg tapered on its two inner faces, from below the aprons to the foot.',
      document: onePart('Tapered leg', 'leg', {
        ...leg,
        marks: { inner: 'right', inner2: 'back' },
        shape: [{ as: 'taper@1', faces: ['inner', 'inner2'], start: '480', foot: '24' }],
      }),
      // Over 480 the section goes from 40 x 40 to 24 x 24: a frustum of 480 / 3 (1600 + 576 + 960).
      removed: { leg: 1600 * 480 - 160 * (1600 + 576 + 960) },
      planar: true,
    },
    {
      name: 'taper on one face',
      words: 'A leg tapered on one face.',
      document: onePart('Taper', 'leg', { ...leg, shape: [{ as: 'taper@1', faces: ['right'], start: '500', foot: '28' }] }),
      // A wedge of 500 x 12 / 2, 40 deep.
      removed: { leg: 3000 * 40 },
      planar: true,
    },
  ],
};

function oneFace(
  part: ShapePart,
  face: Face,
  start: number,
  foot: number,
  faces: readonly Face[],
  atHigh: boolean,
): { readonly feature: Feature; readonly says: ShapeSays } {
  const side = faceSide(face);
  const k = axisIndex(part.grain);
  const { stock } = part;
  const size = stock.max[side.axis] - stock.min[side.axis];
  const opposite = side.high ? side.quad.low : side.quad.high;
  const loss = (size - foot) / (faces.includes(opposite) ? 2 : 1);
  const length = atHigh ? stock.max[k] - start : start - stock.min[k];
  // The plane through the face at `start` and `loss` inside it at the foot; its normal points out of the wood that stays.
  const tilt = Math.hypot(length, loss);
  const normal: [number, number, number] = [0, 0, 0];
  normal[side.axis] = ((side.high ? 1 : -1) * length) / tilt;
  normal[k] = ((atHigh ? 1 : -1) * loss) / tilt;
  const at: Vec3 = [0, 1, 2].map((i) =>
    i === side.axis ? (side.high ? stock.max[i] : stock.min[i]) : i === k ? start : (stock.min[i] ?? 0),
  ) as unknown as Vec3;
  return {
    feature: beyond(`taper ${face}`, normal, at, 'taper'),
    says: { words: `taper of the ${face} face from one that is left straight`, value: Math.atan2(loss, length) * DEG, unit: 'deg' },
  };
}
