/** Shapes tried on stock of their own: random settings, mirror images, and what chords leave out of a round. */
import fc from 'fast-check';
import { type Box, sizeOf } from '../../src/geom/box.ts';
import { mirrored } from '../../src/geom/frame.ts';
import { type Loop, arcThrough, loopPoints } from '../../src/geom/loop.ts';
import { type Axis, AXES, axisIndex } from '../../src/geom/vec3.ts';
import type { ShapeField } from '../../src/model/catalog.ts';
import { FACES, type Face, faceSide } from '../../src/model/ids.ts';
import { signature } from '../../src/model/part-record.ts';
import type { Feature, PartRecord } from '../../src/model/record.ts';
import { pointAxes } from '../../src/shapes/flat.ts';
import type { Edge, ShapeKind, ShapePart, ShapeSet, Spot } from '../../src/shapes/shape.ts';

/** The most that the volume of a record, cut in chords of 64 to a circle, may differ from the exact one, mm³. */
export function chordBound(r: PartRecord): number {
  return r.features.reduce((sum, f) => sum + ofFeature(f, r.stock), 1e-6);
}
function ofFeature(f: Feature, stock: Box): number {
  const s = f.solid;
  if (s.kind === 'half') return 0;
  const size = sizeOf(stock);
  const within = Math.hypot(...size);
  if (s.kind === 'prism') return s.profile.reduce((sum, l) => sum + segments(l) * Math.min(s.to - s.from, within), 0);
  // A circle of 64 chords is 0.161 % short; beside that the arcs of the profile are chords too.
  const [r, ys] = [Math.min(within / 2, Math.max(...s.profile.map((c) => c.at[0]))), s.profile.map((c) => c.at[1])];
  const high = Math.min(within, Math.max(...ys) - Math.min(...ys));
  return 0.00161 * Math.PI * r * r * high + 2 * Math.PI * r * segments(s.profile);
}
/** Area between the arcs of a loop and their chords. */
function segments(loop: Loop): number {
  const { edge } = loopPoints(loop, 64);
  return loop.reduce((sum, c, i) => {
    const arc = c.via ? arcThrough(c.at, c.via, loop[(i + 1) % loop.length]?.at ?? c.at) : null;
    if (!arc) return sum;
    const n = edge.filter((e) => e === i).length;
    const a = Math.abs(arc.sweep) / n;
    return sum + ((n * arc.r * arc.r) / 2) * (a - Math.sin(a)) * 1.01;
  }, 0);
}

/** Features as sets of spots, moved by a mirror where one is given. */
export const signsOf = (features: readonly Feature[], stock?: Box, axis?: Axis): string[] =>
  features
    .map((f) => {
      const k = axis && axisIndex(axis);
      const by = axis && k !== undefined && stock ? mirrored(axis, (stock.min[k] + stock.max[k]) / 2) : undefined;
      return signature(f, by);
    })
    .sort();

const flip = (face: Face, axis: Axis): Face => {
  const { quad, high } = faceSide(face);
  return quad.axis === axis ? (high ? quad.low : quad.high) : face;
};
/** The settings as the mirror image of the part would have them; `axis` lies across the grain. */
export function mirrorSet(kind: ShapeKind, part: ShapePart, set: ShapeSet, axis: Axis): ShapeSet {
  const k = axisIndex(axis);
  const turned = (n: number): number => part.stock.min[k] + part.stock.max[k] - n;
  const out: Record<string, ShapeSet[string]> = {};
  for (const [key, v] of Object.entries(set)) {
    const field = kind.params[key] as ShapeField;
    if (field.kind === 'faces') out[key] = (v as Face[]).map((f) => flip(f, axis));
    else if (field.kind === 'edges') out[key] = (v as Edge[]).map(([a, b]): Edge => [flip(a, axis), flip(b, axis)]);
    else if (field.kind === 'points') {
      const on = pointAxes(field.on, part, set);
      const moved = ([a, b]: Spot['at']): Spot['at'] => [on[0] === axis ? turned(a) : a, on[1] === axis ? turned(b) : b];
      out[key] = (v as Spot[]).map((s): Spot => ({ ...s, at: moved(s.at), ...(s.via ? { via: moved(s.via) } : {}) }));
    } else if (key === 'turn') {
      const on = pointAxes('face', part, set);
      out[key] = on[0] === axis ? Math.PI - (v as number) : on[1] === axis ? -(v as number) : v;
    } else out[key] = v;
  }
  return out;
}

const span = (low: number, high: number): fc.Arbitrary<number> =>
  fc.integer({ min: Math.round(low * 8), max: Math.round(high * 8) }).map((n) => n / 8);
export const anyPart: fc.Arbitrary<ShapePart> = fc.record({
  stock: fc
    .tuple(span(6, 80), span(6, 80), span(6, 80), span(-50, 50))
    .map(([x, y, z, o]): Box => ({ min: [o, 0, -o], max: [o + x, y, -o + z] })),
  grain: fc.constantFrom<Axis>(...AXES),
});
/** Settings for a part: mostly what could be cut, sometimes what could not, and what must be there. */
export function anySet(kind: ShapeKind, part: ShapePart): fc.Arbitrary<ShapeSet> {
  const size = Math.max(...sizeOf(part.stock));
  const must: Record<string, fc.Arbitrary<ShapeSet[string]>> = {};
  const may: Record<string, fc.Arbitrary<ShapeSet[string]>> = {};
  for (const [key, field] of Object.entries(kind.params)) (kind.required.includes(key) ? must : may)[key] = anyOf(field, part, size);
  return fc
    .tuple(fc.record(must), fc.record(may, { requiredKeys: [] }))
    .map(([a, b]) => Object.fromEntries(Object.entries({ ...a, ...b }).filter(([, v]) => v !== undefined)) as ShapeSet);
}
function anyOf(field: ShapeField, part: ShapePart, size: number): fc.Arbitrary<ShapeSet[string]> {
  const k = axisIndex(part.grain);
  const face = fc.constantFrom<Face>(...FACES);
  if (field.kind === 'faces') return fc.uniqueArray(face, { minLength: 1, maxLength: 3 });
  if (field.kind === 'edges') return fc.array(fc.tuple(face, face), { minLength: 1, maxLength: 4 }) as fc.Arbitrary<Edge[]>;
  if (field.kind === 'choice') return fc.constantFrom(...Object.keys(field.options ?? {}), ...Object.keys(field.options ?? {}), 'askew');
  if (field.kind === 'angle') return fc.integer({ min: -40, max: 200 }).map((n) => (n * Math.PI) / 360);
  if (field.kind === 'count') return fc.oneof(fc.integer({ min: 2, max: 24 }), fc.constantFrom(-1, 0, 2.5, 1e9));
  if (field.kind === 'place') return span(part.stock.min[k] - 4, part.stock.max[k] + 4);
  if (field.kind === 'points') return fc.array(anySpot(field.on, part), { minLength: 1, maxLength: 5 });
  return fc.oneof(
    { weight: 5, arbitrary: span(0.125, size / 3) },
    { weight: 2, arbitrary: span(-2, size * 1.5) },
    fc.constantFrom(0, Number.NaN, Infinity, 1e12),
  );
}
function anySpot(on: Extract<ShapeField, { kind: 'points' }>['on'], part: ShapePart): fc.Arbitrary<Spot> {
  const { min, max } = part.stock;
  const [low, high] = [Math.min(...min), Math.max(...max)];
  const k = axisIndex(part.grain);
  const at =
    on === 'turned'
      ? fc.tuple(span(min[k] - 1, max[k] + 1), span(0, Math.max(...sizeOf(part.stock))))
      : fc.tuple(span(low, high), span(low, high));
  return fc
    .record({ at, via: at, by: fc.constantFrom('curve', 'bead', 'cove', 'askew') }, { requiredKeys: ['at'] })
    .map((s) => (s.via && s.by ? { at: s.at, via: s.via } : s)) as fc.Arbitrary<Spot>;
}
