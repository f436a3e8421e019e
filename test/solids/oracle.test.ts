/** Both readers of a record, the kernel's and the exact one, on the same wood. */
import fc from 'fast-check';
import { beforeAll, expect, test } from 'vitest';
import { type Frame, HOME, compose, mirrored, quantiseFrame, turned } from '../../src/geom/frame.ts';
import { circle, polygon, rectangle, slot } from '../../src/geom/loop.ts';
import { quantise } from '../../src/geom/vec3.ts';
import type { Feature, PartRecord } from '../../src/model/record.ts';
import { CHORDS_PER_CIRCLE, loadKernel } from '../../src/solids/kernel.ts';
import { measure } from '../../src/solids/measure.ts';
import { overlap } from '../../src/solids/pair.ts';
import { withSolids } from '../../src/solids/scope.ts';
import { law } from '../support/law.ts';
import { exact, exactOverlap, loadOracle } from '../support/oracle.ts';
import { block, board, bore, cutOf, feature, prism } from '../support/records.ts';
import { expectSound } from '../support/sound.ts';

beforeAll(async () => {
  await Promise.all([loadKernel(), loadOracle()]);
});

const deg = Math.PI / 180;
const leaning = (rx: number, ry: number, o: Frame['o']): Frame =>
  quantiseFrame({ ...compose(turned('y', ry * deg), turned('x', rx * deg)), o });

const PLANAR: Readonly<Record<string, PartRecord>> = {
  'a rail with a haunched tenon': board(400, 90, 22, [
    block('tenon', 'add', [399, 10, 7], [430, 80, 15]),
    block('haunch', 'add', [399, 75, 7], [408, 90, 15]),
    block('groove', 'remove', [-1, 0, 8], [440, 6, 14]),
  ]),
  'a tenon mitred at its end and trimmed flush': board(400, 90, 22, [
    block('tenon', 'add', [399, 10, 7], [430, 80, 15]),
    feature('mitre', 'remove', { kind: 'half', normal: [1, 0, 1], off: 440 }),
    feature('flush', 'late', { kind: 'half', normal: [0, -1, 0], off: -12 }),
  ]),
  'a leg tapered on two faces, with a raked mortise': board(45, 45, 700, [
    feature('taper', 'shape', { kind: 'half', normal: [1, 0, -0.03], off: 30 }),
    feature('taper 2', 'shape', { kind: 'half', normal: [0, 1, -0.03], off: 30 }),
    feature('mortise', 'remove', prism(rectangle(-4, -30, 4, 30), -5, 25), {
      ...leaning(90 + 7, 0, [15, 0, 620]),
    }),
  ]),
  'a row of tails cut in a board': board(
    200,
    120,
    19,
    [0, 1, 2].map((i) =>
      feature(`socket ${i + 1}`, 'remove', prism(polygon([0, 15], [24, 10], [24, 40], [0, 35]), 0, 19), { ...HOME, o: [176, 36 * i, 0] }),
    ),
  ),
  'a sliding dovetail that tapers': board(300, 200, 25, [
    feature(
      'socket',
      'remove',
      {
        kind: 'prism',
        profile: [polygon([-8, 0], [8, 0], [11, 9], [-11, 9])],
        profileTo: [polygon([-6, 0], [6, 0], [9, 9], [-9, 9])],
        from: 0,
        to: 200,
      },
      { o: [150, 0, 25], x: [1, 0, 0], y: [0, 0, -1], z: [0, 1, 0] },
    ),
  ]),
  'a scribed outline with a field and an ell in it': board(300, 200, 25, [
    feature(
      'field',
      'remove',
      prism([rectangle(20, 20, 280, 180), polygon([60, 60], [200, 60], [200, 90], [100, 90], [100, 140], [60, 140])], 15, 25),
    ),
  ]),
  'shapes, adds and removes in left-handed frames': board(300, 60, 40, [
    feature('bevel', 'shape', { kind: 'half', normal: [0, 1, 1], off: 90 }, HOME),
    feature('wedge', 'add', prism(polygon([-2, 0], [30, 5], [30, 20], [-2, 25]), 0, 12), {
      o: [0, 10, 5],
      x: [-1, 0, 0],
      y: [0, 1, 0],
      z: [0, 0, 1],
    }),
    feature('key', 'remove', prism(polygon([0, 0], [12, 0], [4, 9]), -1, 50), {
      o: [100, 0, 20],
      x: [1, 0, 0],
      y: [0, 0, 1],
      z: [0, 1, 0],
    }),
  ]),
};

test.each(Object.entries(PLANAR))('planar wood, to a millionth: %s', (_, rec) => {
  const e = exact(rec);
  withSolids(() => {
    const solid = cutOf(rec);
    expectSound(solid);
    const m = measure(solid);
    expect(Math.abs(m.volume / e.volume - 1)).toBeLessThan(1e-6);
    expect(Math.abs(m.area / e.area - 1)).toBeLessThan(1e-6);
    m.centre.forEach((c, i) => expect(Math.abs(c - (e.centre[i] ?? Number.NaN))).toBeLessThan(1e-4));
  });
});

/** Area of a circle's polygon of n chords, of the circle's: sin(2 pi / n) n / (2 pi). */
const shareOf = (n: number): number => (Math.sin((2 * Math.PI) / n) * n) / (2 * Math.PI);
const SHARE = shareOf(CHORDS_PER_CIRCLE);

test('round wood is short of the exact by just what the chords leave out', () => {
  const cases: readonly { rec: PartRecord; round: number }[] = [
    { rec: board(100, 60, 20, [bore('peg hole', 'remove', 4, 0, 20, { ...HOME, o: [50, 30, 0] })]), round: Math.PI * 16 * 20 },
    { rec: board(100, 60, 20, [bore('tenon', 'add', 9, -3, 30, { ...HOME, o: [50, 30, 20] })]), round: -Math.PI * 81 * 30 },
    // Slot of two half circles: half the chords on each, so together the share of one circle.
    { rec: board(100, 60, 20, [feature('slot', 'remove', prism(slot([30, 30], [60, 30], 5), 0, 12))]), round: Math.PI * 25 * 12 },
    {
      rec: board(100, 60, 20, [
        feature('pin', 'add', { kind: 'turned', profile: polygon([0, -5], [8, -5], [5, 40], [0, 40]) }, { ...HOME, o: [50, 30, 20] }),
      ]),
      // Frustum above the face: from radius 8 - 3/9 to 5 over 40.
      round: -((Math.PI * 40) / 3) * ((8 - 1 / 3) ** 2 + 25 + 5 * (8 - 1 / 3)),
    },
  ];
  for (const { rec, round } of cases) {
    const e = exact(rec);
    withSolids(() => {
      const solid = cutOf(rec);
      expectSound(solid);
      // To within the rounding of the polygon's corners to 1e-6.
      expect(Math.abs((solid.body.volume() - e.volume) / (round * (1 - SHARE)) - 1)).toBeLessThan(1e-4);
    });
  }
});

test('arcs of part of a circle stay within the error of their chords', () => {
  // A quarter circle of 16 chords: the segment between chord and arc is r²/2 (a - sin a) each.
  const rec = board(100, 60, 20, [
    feature(
      'corner',
      'remove',
      prism([{ at: [60, 0] }, { at: [100, 0] }, { at: [100, 40], via: [100 - 40 * Math.SQRT1_2, 40 * Math.SQRT1_2] }], 0, 20),
    ),
  ]);
  const e = exact(rec);
  const sweep = withSolids(() => {
    const solid = cutOf(rec);
    expectSound(solid);
    return Math.abs(solid.body.volume() - e.volume);
  });
  const a = (2 * Math.PI) / CHORDS_PER_CIRCLE;
  expect(sweep).toBeLessThan(((40 * 40) / 2) * (a - Math.sin(a)) * (CHORDS_PER_CIRCLE / 2) * 20);
});

const PAIRS: readonly (readonly [string, PartRecord, Frame, PartRecord, Frame])[] = [
  ['boxes askew', board(100, 60, 20), HOME, board(80, 40, 30), leaning(20, 35, [30, 10, 5])],
  [
    'a tenon too thick for its mortise',
    board(200, 60, 20, [block('tenon', 'add', [199, 10, 5], [225, 50, 15.2])]),
    HOME,
    board(45, 60, 45, [block('mortise', 'remove', [0, 10, 5], [26, 50, 15])]),
    { ...HOME, o: [200, 0, 0] },
  ],
  [
    'one of them mirrored',
    PLANAR['a row of tails cut in a board'] as PartRecord,
    mirrored('x', 50),
    board(80, 200, 12),
    leaning(10, -20, [-90, -10, 2]),
  ],
];
test.each(PAIRS)('what two parts both claim, to a millionth: %s', (_, a, fa, b, fb) => {
  const e = exactOverlap(a, fa, b, fb);
  expect(e.volume).toBeGreaterThan(1);
  withSolids(() => {
    const bite = overlap(cutOf(a), fa, cutOf(b), fb);
    expect(Math.abs((bite?.volume ?? 0) / e.volume - 1)).toBeLessThan(1e-6);
    expect(Math.abs((bite?.area ?? 0) / e.area - 1)).toBeLessThan(1e-5);
  });
});

const span = (low: number, high: number): fc.Arbitrary<number> => fc.integer({ min: low * 10, max: high * 10 }).map((n) => n / 10);
const anyFeature: fc.Arbitrary<Feature> = fc
  .record({
    op: fc.constantFrom('shape' as const, 'add' as const, 'remove' as const),
    o: fc.tuple(span(10, 190), span(10, 70), span(0, 30)),
    lean: fc.tuple(fc.integer({ min: -80, max: 80 }), fc.integer({ min: -80, max: 80 })),
    size: fc.tuple(span(5, 40), span(5, 30), span(5, 30)),
    mirror: fc.boolean(),
    slant: span(-4, 4),
  })
  .map(({ op, o, lean, size, mirror, slant }) => {
    const at = leaning(lean[0], lean[1], o);
    const profile = polygon(
      [-size[0], -size[1]],
      [size[0], -size[1]],
      [quantise(size[0] + slant), size[1]],
      [quantise(slant - size[0]), size[1]],
    );
    return feature('any', op, prism(profile, 0, size[2]), mirror ? { ...at, x: [-at.x[0], -at.x[1], -at.x[2]] } : at);
  });
law(
  'random leaning wedges added and taken: both readers agree to a millionth of the stock',
  fc.array(anyFeature, { minLength: 1, maxLength: 3 }),
  (features) => {
    const rec = board(200, 80, 30, features);
    const e = exact(rec);
    withSolids(() => {
      const m = measure(cutOf(rec));
      expect(Math.abs(m.volume - e.volume) / (200 * 80 * 30)).toBeLessThan(1e-6);
    });
  },
  { runs: 20 },
);

test('circles far from their own frame: the two readers agree on where things are', () => {
  const rec = board(300, 60, 20, [
    feature('bores', 'remove', prism([circle(280, 30, 6)], 0, 20)),
    feature('bore', 'remove', prism(circle(0, 0, 6), 0, 20), { ...HOME, o: [20, 30, 0] }),
  ]);
  const e = exact(rec);
  withSolids(() => {
    const m = measure(cutOf(rec));
    expect(m.genus).toBe(2);
    m.centre.forEach((c, i) => expect(c).toBeCloseTo(e.centre[i] ?? Number.NaN, 6));
  });
});
