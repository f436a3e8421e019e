import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { exitTravel, freeTravel, runsInto } from '../../src/assembly/pair-test.ts';
import { type Shadow, basisAlong, shadowOf } from '../../src/assembly/shadow.ts';
import { type Vec3, cross, dot, scale, unit } from '../../src/geom/vec3.ts';
import { type Body, kernel, loadKernel } from '../../src/solids/kernel.ts';
import { readBody } from '../../src/solids/read.ts';
import { law } from '../support/law.ts';
import { type Block, facetsOfBlocks } from './wood.ts';

const seen = (t: Float64Array, d: Vec3): Shadow => shadowOf(t, basisAlong(unit(d)));
const block = (...b: Block): Float64Array => facetsOfBlocks([b]);

test('a block meets another after the gap between them, and passes one beside it', () => {
  const a = block(0, 10, 0, 10, 0, 10);
  const b = block(25, 40, 5, 15, 0, 10);
  const beside = block(25, 40, 10, 20, 0, 10);
  const [sa, sb, sc] = [a, b, beside].map((t) => seen(t, [1, 0, 0])) as [Shadow, Shadow, Shadow];
  expect(runsInto(sa, sb)).toBe(true);
  expect(freeTravel(sa, sb)).toBeCloseTo(15, 9);
  expect(runsInto(sa, sb, [0, 0, 0], 14.9)).toBe(false);
  expect(runsInto(sa, sb, [0, 0, 0], 15.1)).toBe(true);
  expect(runsInto(sa, sc)).toBe(false);
  expect(freeTravel(sa, sc)).toBe(Infinity);
  expect(runsInto(sb, sa)).toBe(false);
});
test('how far to be clear ahead of another', () => {
  const [a, b] = [seen(block(0, 10, 0, 10, 0, 10), [0, 0, 1]), seen(block(0, 10, 5, 20, -5, 60), [0, 0, 1])] as const;
  expect(exitTravel(a, b)).toBeCloseTo(60, 9);
  expect(exitTravel(a, b, [0, 0, 61])).toBeCloseTo(-1, 9);
  expect(exitTravel(a, b, [15, 0, 0])).toBe(-Infinity);
});
test('a tenon leaves its mortise, even a tight one, and goes no other way', () => {
  const leg = facetsOfBlocks([[0, 40, 0, 40, 0, 200]], [[10, 40, 15, 25, 50, 90]]);
  for (const bite of [0, 0.1]) {
    const rail = facetsOfBlocks([
      [40, 300, 5, 35, 40, 100],
      [10, 40, 15 - bite, 25 + bite, 50, 90],
    ]);
    const runs = (d: Vec3): boolean => runsInto(seen(rail, d), seen(leg, d));
    expect(runs([1, 0, 0])).toBe(false);
    for (const d of [
      [-1, 0, 0],
      [0, 0, 1],
      [0, 0, -1],
    ] as Vec3[])
      expect(runs(d), `${bite} ${d.join()}`).toBe(true);
    if (bite === 0)
      for (const d of [
        [0, 1, 0],
        [0, -1, 0],
      ] as Vec3[])
        expect(runs(d)).toBe(true);
  }
});
test('a thin wall far along the way is not stepped over', () => {
  const d: Vec3 = [1, 2, 0.5];
  const a = block(0, 10, 0, 10, 0, 10);
  const wall = block(400, 400.1, 0, 2000, 0, 2000);
  expect(freeTravel(seen(a, d), seen(wall, d))).toBeCloseTo(390 * Math.hypot(1, 2, 0.5), 6);
});

// The sweep as booleans: the mover, and the hull of every facet that looks ahead with itself moved. Slow, and independent of the test above.
beforeAll(() => loadKernel());
function sweep(body: Body, d: Vec3, far: number): Body {
  const { Manifold } = kernel();
  const all = [body];
  const t = trianglesOf(body);
  for (let k = 0; k < t.length; k += 9) {
    const [p, q, r] = [0, 3, 6].map((i): Vec3 => [t[k + i]!, t[k + i + 1]!, t[k + i + 2]!]) as [Vec3, Vec3, Vec3];
    const n = cross([q[0] - p[0], q[1] - p[1], q[2] - p[2]], [r[0] - p[0], r[1] - p[1], r[2] - p[2]]);
    if (dot(n, d) <= 1e-6 * Math.hypot(...n)) continue;
    const ends = [p, q, r].flatMap((c): [number, number, number][] => [[...c], [c[0] + d[0] * far, c[1] + d[1] * far, c[2] + d[2] * far]]);
    all.push(Manifold.hull(ends));
  }
  const out = Manifold.union(all);
  for (const b of all.slice(1)) b.delete();
  return out;
}
function trianglesOf(body: Body): Float64Array {
  const { positions, triangles } = readBody(body);
  const out = new Float64Array(3 * triangles.length);
  triangles.forEach((v, k) => out.set(positions.subarray(3 * v, 3 * v + 3), 3 * k));
  return out;
}
const whole = (low: number, high: number): fc.Arbitrary<number> => fc.integer({ min: low, max: high });
const someBlock: fc.Arbitrary<readonly [Vec3, Vec3]> = fc
  .tuple(fc.tuple(whole(-8, 6), whole(-8, 6), whole(-8, 6)), fc.tuple(whole(2, 10), whole(2, 10), whole(2, 10)))
  .map(([at, size]) => [at, size] as const);
const round = fc.tuple(
  fc.tuple(whole(-6, 6), whole(-6, 6), whole(-6, 6)),
  whole(2, 5),
  whole(3, 12),
  fc.constantFrom([0, 0, 0], [90, 0, 0], [0, 90, 0], [30, 0, 0], [0, 40, 0]),
);
const direction = fc.tuple(whole(-3, 3), whole(-3, 3), whole(-3, 3)).filter((d) => d.some((n) => n !== 0));

law(
  'the pair test says what swept booleans say, of blocks and leaning rounds cut out of each other',
  fc.record({
    mine: fc.array(someBlock, { minLength: 1, maxLength: 3 }),
    theirs: fc.array(someBlock, { minLength: 1, maxLength: 3 }),
    peg: fc.option(round, { nil: null }),
    d: direction,
  }),
  ({ mine, theirs, peg, d }) => {
    const { Manifold } = kernel();
    const made: Body[] = [];
    const keep = (b: Body): Body => (made.push(b), b);
    const union = (all: readonly (readonly [Vec3, Vec3])[]): Body[] =>
      all.map(([at, size]) => keep(keep(Manifold.cube([...size])).translate([...at])));
    try {
      const pegs = peg
        ? [
            keep(
              keep(keep(Manifold.cylinder(peg[2], peg[1], peg[1], 24, true)).rotate(peg[3] as [number, number, number])).translate(
                peg[0] as [number, number, number],
              ),
            ),
          ]
        : [];
      const a = keep(Manifold.union([...union(mine), ...pegs]));
      const b = keep(keep(Manifold.union(union(theirs))).subtract(a));
      if (b.volume() < 1 || a.volume() < 1) return;
      const way = unit(d as unknown as Vec3);
      const hit = keep(keep(sweep(a, way, 60)).intersect(b)).volume();
      const said = runsInto(seen(trianglesOf(a), way), seen(trianglesOf(b), way));
      // Both ways, each to its own tolerance: what is stopped does share wood, what is let past shares no more than a sliver.
      if (said) expect(hit, 'stopped').toBeGreaterThan(1e-3);
      else expect(hit, 'let past').toBeLessThan(1);
    } finally {
      for (const m of made) m.delete();
    }
  },
  { runs: 250, timeout: 180_000 },
);
law('free travel is where the test with a limit changes its mind', fc.tuple(someBlock, someBlock, direction), ([p, q, d]) => {
  const of = ([at, size]: readonly [Vec3, Vec3]): Float64Array =>
    block(at[0], at[0] + size[0], at[1], at[1] + size[1], at[2], at[2] + size[2]);
  const way = unit(d as unknown as Vec3);
  const [a, b] = [seen(of(p), way), seen(of([[q[0][0] + 26, q[0][1], q[0][2]], q[1]]), way)];
  const free = freeTravel(a, b);
  if (free === Infinity) expect(runsInto(a, b)).toBe(false);
  else {
    expect(runsInto(a, b, [0, 0, 0], free - 0.1)).toBe(false);
    expect(runsInto(a, b, [0, 0, 0], free + 5)).toBe(true);
  }
});
law('moving one along d is moving the other against d', fc.tuple(someBlock, someBlock, direction), ([p, q, d]) => {
  const of = ([at, size]: readonly [Vec3, Vec3], x: number): Float64Array =>
    block(at[0] + x, at[0] + size[0] + x, at[1], at[1] + size[1], at[2], at[2] + size[2]);
  const way = unit(d as unknown as Vec3);
  const [a, b] = [of(p, 0), of(q, 26)];
  expect(runsInto(seen(a, way), seen(b, way))).toBe(runsInto(seen(b, scale(way, -1)), seen(a, scale(way, -1))));
});
