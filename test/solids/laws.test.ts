import fc from 'fast-check';
import { beforeAll, expect } from 'vitest';
import { type Frame, compose, handed, mirrored, quantiseFrame, turned } from '../../src/geom/frame.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import type { Feature, FeatureOp } from '../../src/model/record.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { measure } from '../../src/solids/measure.ts';
import { meshOf } from '../../src/solids/mesh.ts';
import { overlap } from '../../src/solids/pair.ts';
import { liveSolids, withSolids } from '../../src/solids/scope.ts';
import { law } from '../support/law.ts';
import { block, board, cutOf } from '../support/records.ts';
import { openEdges } from '../support/sound.ts';

beforeAll(() => loadKernel());

const SIZE: Vec3 = [120, 60, 24];
type Span = readonly [number, number];
type Brick = { readonly op: FeatureOp; readonly spans: readonly [Span, Span, Span] };
/** Tenths of a millimetre, so that flush and touching faces come up often. */
const span = (size: number): fc.Arbitrary<Span> =>
  fc
    .tuple(fc.integer({ min: -2, max: size / 6 }), fc.integer({ min: 1, max: size / 6 }), fc.constantFrom(0, 0, 0.1, -0.1, 1e-6))
    .map(([low, long, off]): Span => [6 * low + off, 6 * (low + long)]);
const brick: fc.Arbitrary<Brick> = fc.record({
  op: fc.constantFrom<FeatureOp>('shape', 'add', 'remove', 'late'),
  spans: fc.tuple(span(SIZE[0]), span(SIZE[1]), span(SIZE[2])),
});
const toFeature = ({ op, spans: [x, y, z] }: Brick, i: number): Feature => block(`${op} ${i}`, op, [x[0], y[0], z[0]], [x[1], y[1], z[1]]);

/** Volume and surface by counting cells between all the planes there are: inclusion and exclusion, without a kernel. */
function counted(bricks: readonly Brick[]): { volume: number; area: number } {
  const cuts = [0, 1, 2].map((k) => [...new Set([0, SIZE[k] ?? 0, ...bricks.flatMap((b) => b.spans[k] ?? [])])].toSorted((a, b) => a - b));
  const mid = (k: number, i: number): number => ((cuts[k]?.[i] ?? Number.NaN) + (cuts[k]?.[i + 1] ?? Number.NaN)) / 2;
  const long = (k: number, i: number): number => (cuts[k]?.[i + 1] ?? 0) - (cuts[k]?.[i] ?? 0);
  const wood = (i: number, j: number, l: number): boolean => {
    const at = [mid(0, i), mid(1, j), mid(2, l)];
    const has = (...ops: FeatureOp[]): boolean =>
      bricks.some((b) => ops.includes(b.op) && b.spans.every((s, k) => (at[k] ?? Number.NaN) > s[0] && (at[k] ?? Number.NaN) < s[1]));
    const stock = at.every((m, k) => m > 0 && m < (SIZE[k] ?? 0)) && !has('shape');
    return (stock || has('add')) && !has('remove', 'late');
  };
  let [volume, area] = [0, 0];
  const [nx, ny, nz] = cuts.map((c) => c.length - 1) as [number, number, number];
  for (let i = 0; i < nx; i++)
    for (let j = 0; j < ny; j++)
      for (let l = 0; l < nz; l++) {
        if (!wood(i, j, l)) continue;
        const [x, y, z] = [long(0, i), long(1, j), long(2, l)];
        volume += x * y * z;
        area += [-1, 1].reduce(
          (sum, d) => sum + (wood(i + d, j, l) ? 0 : y * z) + (wood(i, j + d, l) ? 0 : x * z) + (wood(i, j, l + d) ? 0 : x * y),
          0,
        );
      }
  return { volume, area };
}
law(
  'a board with random blocks added and taken has the volume and the surface that counting gives',
  fc.array(brick, { maxLength: 7 }),
  (bricks) => {
    withSolids(() => {
      const solid = cutOf(board(...SIZE, bricks.map(toFeature)));
      const m = measure(solid);
      const byHand = counted(bricks);
      expect(Math.abs(m.volume - byHand.volume)).toBeLessThan(1e-6);
      expect(Math.abs(m.area - byHand.area)).toBeLessThan(1e-6);
      expect(openEdges(solid)).toBe(0);
      // A hollow inside a piece is not taken from that piece.
      expect(m.pieces.reduce((a, b) => a + b, 0)).toBeGreaterThan(m.volume - 1);
    });
    expect(liveSolids()).toBe(0);
  },
);

const angle = fc.double({ min: -Math.PI, max: Math.PI, noNaN: true });
const place: fc.Arbitrary<Frame> = fc
  .record({
    x: angle,
    y: angle,
    z: angle,
    o: fc.tuple(...([0, 1, 2] as const).map(() => fc.integer({ min: -10_000, max: 10_000 }))),
    mirror: fc.boolean(),
  })
  .map(({ x, y, z, o, mirror }) => {
    const f = compose(turned('z', z), compose(turned('y', y), turned('x', x)));
    return { ...(mirror ? compose(f, mirrored('x', 0)) : f), o: o as unknown as Vec3 };
  });
const rail = board(400, 90, 20, [block('tenon', 'add', [399, 10, 5.8], [425, 80, 14])]);
const leg = board(45, 45, 700, [block('mortise', 'remove', [0, 10, 500], [27, 18, 570])]);
const railAt: Frame = { o: [0, 4, 490], x: [1, 0, 0], y: [0, 0, 1], z: [0, 1, 0] };
const legAt: Frame = { o: [400, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
law('a joint bites by the same volume and thickness wherever it stands, mirrored or not', place, (world) => {
  withSolids(() => {
    const bite = overlap(cutOf(rail), compose(world, railAt), cutOf(leg), compose(world, legAt));
    expect(bite?.volume).toBeCloseTo(0.2 * 70 * 25, 5);
    expect(bite?.thickness).toBeCloseTo((2 * 0.2 * 70 * 25) / (2 * 70 * 25 + 2 * 0.2 * 95), 7);
  });
});
law('a joint that fits does not bite anywhere', place, (world) => {
  const fits = board(400, 90, 20, [block('tenon', 'add', [399, 10, 6], [425, 80, 14])]);
  withSolids(() => expect(overlap(cutOf(fits), compose(world, railAt), cutOf(leg), compose(world, legAt))).toBeNull());
});
law(
  'a feature in a mirrored frame takes as much as in the frame it mirrors',
  fc.tuple(place, fc.constantFrom<FeatureOp>('shape', 'add', 'remove')),
  ([f, op]) => {
    const at = quantiseFrame({ ...f, o: [60, 30, 12] });
    const flip = (g: Frame): Frame => compose(mirrored('x', 60), g);
    const volume = (g: Frame): number =>
      withSolids(() => measure(cutOf(board(...SIZE, [{ ...block('any', op, [-15, -9, -7], [20, 10, 8]), at: g }]))).volume);
    expect(handed(flip(at))).toBe(-handed(at));
    expect(Math.abs(volume(flip(at)) - volume(at))).toBeLessThan(1e-5);
  },
);
law('a mesh closes: its own triangles enclose the volume that it states', fc.array(brick, { maxLength: 5 }), (bricks) => {
  withSolids(() => {
    const m = meshOf(cutOf(board(...SIZE, bricks.map(toFeature))));
    let v = 0;
    const p = (i: number): Vec3 => [0, 1, 2].map((k) => m.positions[3 * (m.indices[i] ?? 0) + k] ?? Number.NaN) as unknown as Vec3;
    for (let i = 0; i < m.indices.length; i += 3) {
      const [a, b, c] = [p(i), p(i + 1), p(i + 2)];
      v += (a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])) / 6;
    }
    expect(Math.abs(v - m.volume)).toBeLessThan(0.5);
    expect(m.triangleFace.length).toBe(m.indices.length / 3);
    for (const f of m.triangleFace) expect(m.faces[f]).toBeDefined();
  });
});
