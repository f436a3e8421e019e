/** Small checks against faults reported in public for geometry libraries of this kind; each says what the fault was. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { type Frame, HOME, compose, turned } from '../../src/geom/frame.ts';
import { type Vec3, cross, dot } from '../../src/geom/vec3.ts';
import type { PartRecord } from '../../src/model/record.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { measure } from '../../src/solids/measure.ts';
import { meshOf } from '../../src/solids/mesh.ts';
import { contactArea, gapBetween, overlap } from '../../src/solids/pair.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { law } from '../support/law.ts';
import { block, board, cutOf } from '../support/records.ts';
import { expectSound } from '../support/sound.ts';

beforeAll(() => loadKernel());

test('two mortises flush with one face, the second after the first (open faces, faces too many)', () => {
  withSolids(() => {
    const leg = board(38.1, 38.1, 700, [
      block('mortise 1', 'remove', [12.7, 0, 600], [25.4, 25.4, 700]),
      block('mortise 2', 'remove', [0, 12.7, 600], [25.4, 25.4, 700]),
    ]);
    const solid = cutOf(leg);
    expectSound(solid);
    const taken = 100 * (12.7 * 25.4 + 25.4 * 12.7 - 12.7 * 12.7);
    expect(Math.abs(solid.body.volume() / (38.1 * 38.1 * 700 - taken) - 1)).toBeLessThan(1e-12);
  });
});

test('two boards edge to edge glue up to one box; a board minus itself is nothing (doubled and missing faces)', () => {
  withSolids(() => {
    const glued = cutOf(board(800, 95.3, 22, [block('second stave', 'add', [0, 95.3, 0], [800, 200.1, 22])]));
    expectSound(glued);
    const m = measure(glued);
    expect(m.volume).toBeCloseTo(800 * 200.1 * 22, 6);
    expect(m.area).toBeCloseTo(2 * (800 * 200.1 + 800 * 22 + 200.1 * 22), 6);
    expect(meshOf(glued).edges.length / 6).toBe(12);
    expect(measure(cutOf(board(800, 95.3, 22, [block('itself', 'remove', [0, 0, 0], [800, 95.3, 22])]))).volume).toBe(0);
  });
});

/** A rail with a tenon in a leg with its mortise, shoulder flush, each in its own frame. */
const rail = board(400, 90, 20, [block('tenon', 'add', [399, 10, 6], [425, 80, 14])]);
const leg = board(45, 45, 700, [block('mortise', 'remove', [0, 10, 500], [27, 18, 570])]);
const railAt: Frame = { o: [0, 4, 490], x: [1, 0, 0], y: [0, 0, 1], z: [0, 1, 0] };
const legAt: Frame = { ...HOME, o: [400, 0, 0] };
const asSeen = (world: Frame): { bite: unknown; gap: number; contact: number } =>
  withSolids(() => {
    const [a, b] = [cutOf(rail, 'rail'), cutOf(leg, 'leg')];
    const [fa, fb] = [compose(world, railAt), compose(world, legAt)];
    return { bite: overlap(a, fa, b, fb), gap: gapBetween(a, fa, b, fb, 5), contact: contactArea(a, fa, b, fb, world.x) };
  });

test('a flush shoulder has a gap of 0 and no overlap, at home and turned by quarters made of sines (touching is not overlapping)', () => {
  for (const axis of ['x', 'y', 'z'] as const)
    for (let q = 0; q < 4; q++) {
      const a = (q * Math.PI) / 2;
      const [c, s] = [Math.cos(a), Math.sin(a)];
      const fromSines: Frame =
        axis === 'x'
          ? { ...HOME, y: [0, c, s], z: [0, -s, c] }
          : axis === 'y'
            ? { ...HOME, x: [c, 0, -s], z: [s, 0, c] }
            : { ...HOME, x: [c, s, 0], y: [-s, c, 0] };
      const seen = asSeen(fromSines);
      expect(seen.bite).toBeNull();
      expect(seen.gap).toBe(0);
      // The rail's end without the tenon; the tenon does not reach the bottom of its mortise.
      expect(seen.contact).toBeCloseTo(20 * 90 - 8 * 70, 3);
    }
});

test('the joint 10 m off and turned by 37°: the same volumes and the same verdict (slivers where faces lie on each other)', () => {
  const off: Frame = { ...turned('z', (37 * Math.PI) / 180), o: [10_000, -10_000, 10_000] };
  const leaning = compose(off, turned('x', (37 * Math.PI) / 180));
  for (const world of [off, leaning]) {
    const seen = asSeen(world);
    expect(seen.bite).toBeNull();
    expect(seen.gap).toBeLessThan(1e-9);
    expect(seen.contact).toBeCloseTo(1240, 3);
  }
  const tight = board(400, 90, 20, [block('tenon', 'add', [399, 10, 5.9], [425, 80, 14])]);
  const bite = (world: Frame): number =>
    withSolids(() => overlap(cutOf(tight), compose(world, railAt), cutOf(leg), compose(world, legAt))?.volume ?? 0);
  expect(bite(HOME)).toBeCloseTo(0.1 * 70 * 25, 6);
  for (const world of [off, leaning]) expect(Math.abs(bite(world) / bite(HOME) - 1)).toBeLessThan(1e-9);
});

const NINE = Array.from({ length: 81 }, (_, i): [number, number] => [i % 9, Math.floor(i / 9)]);
law(
  '81 equal blocks in one union, in whatever order, are one slab (open surfaces now and then)',
  fc.shuffledSubarray(NINE, { minLength: 81 }),
  (order) => {
    withSolids(() => {
      const first = order[0] ?? [0, 0];
      const stock = { min: [10 * first[0], 10 * first[1], 0] as Vec3, max: [10 * first[0] + 10, 10 * first[1] + 10, 5] as Vec3 };
      const record: PartRecord = {
        ...board(1, 1, 1),
        stock,
        features: order.slice(1).map(([x, y]) => block(`block ${x} ${y}`, 'add', [10 * x, 10 * y, 0], [10 * x + 10, 10 * y + 10, 5])),
      };
      const solid = cutOf(record);
      expectSound(solid);
      expect(solid.body.volume()).toBeCloseTo(90 * 90 * 5, 6);
      expect(measure(solid).genus).toBe(0);
    });
  },
  { runs: 25 },
);

test('a board with one dado is drawn with 24 lines and no diagonal (stray lines where triangles do not meet at corners)', () => {
  withSolids(() => {
    const solid = cutOf(board(400, 100, 20, [block('dado', 'remove', [100, 0, 12], [120, 100, 20])]));
    const { edges } = meshOf(solid);
    // By hand: 8 along the ends and uprights of the ends, 2 long below, 4 long above, 2 x 2 rims and bottoms of the dado across,
    // 2 x 3 of its outlines on front and back.
    expect(edges.length / 6).toBe(24);
    for (let i = 0; i < edges.length; i += 6) {
      const along = [0, 1, 2].filter((k) => edges[i + k] !== edges[i + k + 3]);
      expect(along).toHaveLength(1);
    }
    const stopped = cutOf(board(400, 100, 20, [block('dado', 'remove', [100, 0, 12], [120, 80, 20])]));
    // By hand: 12 of the board, two of them cut in half at the front top: 13; the dado: 2 sides above, 2 below, its far end above
    // and below, 2 uprights at the far end, 3 on the front: 11.
    expect(meshOf(stopped).edges.length / 6).toBe(24);
  });
});

test('parts that touch at a face, an edge, a corner do not overlap', () => {
  withSolids(() => {
    const a = cutOf(board(100, 40, 20));
    for (const o of [
      [100, 0, 0],
      [100, 40, 0],
      [100, 40, 20],
      [30, 40, 0],
      [0, 0, -20],
    ] as Vec3[])
      expect(overlap(a, HOME, a, { ...HOME, o })).toBeNull();
    const bite = overlap(a, HOME, a, { ...HOME, o: [0, 0, 19.9] });
    expect(bite?.volume).toBeCloseTo(400, 6);
    expect(bite?.thickness).toBeCloseTo((2 * 400) / (2 * 4000 + 2 * 0.1 * 140), 9);
    expect(bite?.box.min[2]).toBeCloseTo(19.9, 9);
  });
});

test('the bite of a joint is the wood that both claim, without the sheets where they only touch', () => {
  const tight = board(400, 90, 20, [block('tenon', 'add', [399, 10, 5.9], [425, 80, 14])]);
  withSolids(() => {
    const bite = overlap(cutOf(tight), railAt, cutOf(leg), legAt, { facets: true });
    if (!bite?.facets) throw new Error('no bite');
    // One cheek, 70 x 25, a tenth deep. Shoulder, other cheek and edges touch over 3000 mm² more.
    expect(bite.volume).toBeCloseTo(175, 6);
    expect(bite.area).toBeCloseTo(2 * 70 * 25 + 2 * 0.1 * (70 + 25), 3);
    const want = { min: [400, 9.9, 500], max: [425, 10, 570] };
    for (const k of [0, 1, 2] as const) {
      expect(bite.box.min[k]).toBeCloseTo(want.min[k] ?? Number.NaN, 4);
      expect(bite.box.max[k]).toBeCloseTo(want.max[k] ?? Number.NaN, 4);
    }
    const corner = (t: number, c: number): Vec3 => [0, 1, 2].map((k) => bite.facets?.[t + 3 * c + k] ?? Number.NaN) as unknown as Vec3;
    let enclosed = 0;
    for (let t = 0; t < bite.facets.length; t += 9) enclosed += dot(corner(t, 0), cross(corner(t, 1), corner(t, 2))) / 6;
    expect(enclosed).toBeCloseTo(175, 2);
  });
});
