import { HOME } from '../geom/frame.ts';
import { type Vec3, axisIndex } from '../geom/vec3.ts';
import { type Face, faceSide } from '../model/ids.ts';
import type { Feature } from '../model/record.ts';
import { type ShapeKind, type ShapePart, lengthIn } from './shape.ts';

/**
 * A straight taper on chosen faces, from `start` (a place along the grain, in the part's own frame) down to the foot, where
 * `foot` of the section is left. The foot is the low end along the grain. Two opposite faces share what is taken off.
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
  },
  required: ['faces', 'start', 'foot'],
  make: (part, set) => {
    const start = lengthIn(set, 'start') ?? 0;
    const foot = lengthIn(set, 'foot') ?? 0;
    const faces = Array.isArray(set['faces']) ? (set['faces'] as readonly Face[]) : [];
    const k = axisIndex(part.grain);
    if (!faces.length) return { ok: false, problem: 'a taper needs at least one face.' };
    if (start <= part.stock.min[k] + 1e-6)
      return { ok: false, problem: 'the taper starts at or below the foot: nothing is left to taper.' };
    const features: Feature[] = [];
    for (const face of new Set(faces)) {
      const f = oneFace(part, face, start, foot, faces);
      if (typeof f === 'string') return { ok: false, problem: f };
      features.push(f);
    }
    return { ok: true, features };
  },
};

function oneFace(part: ShapePart, face: Face, start: number, foot: number, faces: readonly Face[]): Feature | string {
  const side = faceSide(face);
  const k = axisIndex(part.grain);
  if (side.axis === k) return `"${face}" is an end of the part: a taper runs on its long faces.`;
  const { stock } = part;
  const size = stock.max[side.axis] - stock.min[side.axis];
  const opposite = side.high ? side.quad.low : side.quad.high;
  const loss = (size - foot) / (faces.includes(opposite) ? 2 : 1);
  if (!(foot > 0) || loss <= 0) return `the foot of a taper must be above 0 and below the ${size.toFixed(1)} mm of the part.`;
  const length = start - stock.min[k];
  // The plane through the face at `start` and `loss` inside it at the foot; its normal points out of the wood that stays.
  const tilt = Math.hypot(length, loss);
  const sign = side.high ? 1 : -1;
  const normal: [number, number, number] = [0, 0, 0];
  normal[side.axis] = (sign * length) / tilt;
  normal[k] = -loss / tilt;
  const at: Vec3 = [0, 1, 2].map((i) =>
    i === side.axis ? (side.high ? stock.max[i] : stock.min[i]) : i === k ? start : 0,
  ) as unknown as Vec3;
  const off = normal[0] * at[0] + normal[1] * at[1] + normal[2] * at[2];
  return {
    name: `taper ${face}`,
    op: 'shape',
    solid: { kind: 'half', normal, off },
    at: HOME,
    faces: { taper: { of: 'plane' } },
    why: 'shape',
  };
}
