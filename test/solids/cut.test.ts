import { beforeAll, expect, test } from 'vitest';
import { type Frame, HOME } from '../../src/geom/frame.ts';
import { circle, polygon, rectangle } from '../../src/geom/loop.ts';
import type { Feature, PartRecord, Shape } from '../../src/model/record.ts';
import { cutPart } from '../../src/solids/cut.ts';
import { factsOf } from '../../src/solids/facts.ts';
import { CHORDS_PER_CIRCLE, loadKernel } from '../../src/solids/kernel.ts';
import { measure } from '../../src/solids/measure.ts';
import { liveSolids, withSolids } from '../../src/solids/scope.ts';
import { block, board, bore, cutOf, feature, prism } from '../support/records.ts';
import { expectSound } from '../support/sound.ts';

beforeAll(() => loadKernel());

test('stock minus shapes, plus adds, minus removes, minus lates: in that order, whatever the order of the list', () => {
  // By hand: 100 x 40 x 20; the shape takes 20 off the right end; the tenon puts 30 x 20 x 10 back there, of which 10 lie in
  // the wood; the remove takes a 5 cube out of the tenon; the late trim takes 4 off its tip.
  const features = [
    block('end', 'shape', [80, 0, 0], [120, 40, 20]),
    block('tenon', 'add', [70, 10, 5], [100, 30, 15]),
    block('peg hole', 'remove', [85, 15, 7.5], [90, 20, 12.5]),
    block('flush', 'late', [96, 0, 0], [120, 40, 20]),
  ];
  const byHand = 80 * 40 * 20 + 20 * 20 * 10 - 125 - 4 * 20 * 10;
  withSolids(() => {
    for (const list of [features, features.toReversed()]) {
      const solid = cutOf(board(100, 40, 20, list));
      expectSound(solid);
      expect(solid.body.volume()).toBeCloseTo(byHand, 9);
    }
  });
  expect(liveSolids()).toBe(0);
});

test('a left-handed frame cuts what its mirror image would', () => {
  const wedge = prism(polygon([0, 0], [30, 0], [30, 5]), 0, 10);
  const right: Frame = { ...HOME, o: [10, 0, 0] };
  const left: Frame = { o: [90, 0, 0], x: [-1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };
  withSolids(() => {
    const [a, b] = [right, left].map((at) => measure(cutOf(board(100, 40, 20, [feature('ramp', 'remove', wedge, at)]))));
    expect(b?.volume).toBeCloseTo(a?.volume ?? 0, 9);
    expect(b?.volume).toBeCloseTo(80_000 - 750, 9);
    expect(b?.centre[0]).toBeCloseTo(100 - (a?.centre[0] ?? 0), 9);
  });
});

test('a clockwise outline means the same wood as a counter-clockwise one', () => {
  withSolids(() => {
    const cut = (r: ReturnType<typeof polygon>): number =>
      cutOf(board(100, 40, 20, [feature('notch', 'remove', prism(r, 0, 5))])).body.volume();
    expect(cut(polygon([0, 0], [0, 10], [20, 10], [20, 0]))).toBeCloseTo(cut(rectangle(0, 0, 20, 10)), 9);
  });
});

test('a profile with holes leaves the wood in the holes standing', () => {
  withSolids(() => {
    const ring = prism([rectangle(0, 0, 100, 40), rectangle(40, 10, 60, 30)], 10, 20);
    const solid = cutOf(board(100, 40, 20, [feature('field', 'remove', ring)]));
    expectSound(solid);
    expect(solid.body.volume()).toBeCloseTo(80_000 - (4000 - 400) * 10, 9);
  });
});

test('a half-space takes all beyond its plane, adds included', () => {
  withSolids(() => {
    const tongue = block('tongue', 'add', [90, 10, 5], [130, 30, 15]);
    const trim = feature('trim', 'remove', { kind: 'half', normal: [2, 0, 0], off: 240 });
    const solid = cutOf(board(100, 40, 20, [tongue, trim]));
    expectSound(solid);
    expect(solid.body.volume()).toBeCloseTo(80_000 + 20 * 20 * 10, 9);
    expect(measure(solid).box?.max[0]).toBe(120);
  });
});

test('a loft is a frustum: h/3 (A + B + sqrt(AB)) for similar ends', () => {
  withSolids(() => {
    const loft: Shape = { kind: 'prism', profile: [rectangle(10, 10, 30, 30)], profileTo: [rectangle(15, 15, 25, 25)], from: 0, to: 20 };
    const solid = cutOf(board(100, 40, 20, [feature('socket', 'remove', loft)]));
    expectSound(solid);
    expect(solid.body.volume()).toBeCloseTo(80_000 - (20 / 3) * (400 + 100 + 200), 8);
    expect(measure(solid).genus).toBe(1);
  });
});

test('a turned solid is its profile once round, as a polygon of the chords that we name', () => {
  withSolids(() => {
    const n = CHORDS_PER_CIRCLE;
    expect(n).toBeGreaterThanOrEqual(64);
    const spindle: Shape = { kind: 'turned', profile: polygon([0, -5], [10, -5], [10, 30], [0, 30]) };
    const solid = cutOf(board(100, 40, 20, [feature('pin', 'add', spindle, { ...HOME, o: [50, 20, 20] })]));
    expectSound(solid);
    expect(solid.body.volume()).toBeCloseTo(80_000 + 30 * ((n * Math.sin((2 * Math.PI) / n)) / 2) * 100, 3);
  });
});

const at = (o: Frame['o']): Frame => ({ ...HOME, o });
const bad: readonly (readonly [string, PartRecord, RegExp])[] = [
  ['stock of no size', board(0, 40, 20), /shelf.*stock.*0 x 40 x 20/],
  ['stock of a negative size', board(100, -40, 20), /shelf.*stock.*-40/],
  ['stock that is not a number', board(Number.NaN, 40, 20), /shelf.*stock.*NaN/],
  ['endless stock', board(Infinity, 40, 20), /shelf.*stock/],
  ['no depth', board(100, 40, 20, [feature('dado', 'remove', prism(rectangle(0, 0, 10, 10), 5, 5))]), /shelf: dado .*no depth/],
  ['depth the wrong way', board(100, 40, 20, [feature('dado', 'remove', prism(rectangle(0, 0, 10, 10), 5, 2))]), /shelf: dado .*no depth/],
  ['NaN in a profile', board(100, 40, 20, [feature('dado', 'remove', prism(rectangle(0, 0, Number.NaN, 10), 0, 5))]), /shelf: dado .*NaN/],
  ['NaN in a depth', board(100, 40, 20, [feature('dado', 'remove', prism(rectangle(0, 0, 9, 9), 0, Number.NaN))]), /shelf: dado .*NaN/],
  ['NaN in a frame', board(100, 40, 20, [bore('hole', 'remove', 3, 0, 5, at([Number.NaN, 0, 0]))]), /shelf: hole .*frame/],
  ['a skew frame', board(100, 40, 20, [bore('hole', 'remove', 3, 0, 5, { ...HOME, x: [1, 0.1, 0] })]), /shelf: hole .*square/],
  ['a radius of zero', board(100, 40, 20, [bore('hole', 'remove', 0, 0, 5, HOME)]), /shelf: hole .*does not close/],
  [
    'two corners only',
    board(100, 40, 20, [feature('dado', 'remove', prism(polygon([0, 0], [1, 1]), 0, 5))]),
    /shelf: dado .*does not close/,
  ],
  [
    'no outline',
    board(100, 40, 20, [feature('dado', 'remove', { kind: 'prism', profile: [], from: 0, to: 1 })]),
    /shelf: dado .*no outline/,
  ],
  ['no area', board(100, 40, 20, [feature('dado', 'remove', prism(polygon([0, 0], [5, 5], [9, 9]), 0, 5))]), /shelf: dado .*no area/],
  [
    'a bow tie',
    board(100, 40, 20, [feature('tail', 'remove', prism(polygon([0, 0], [10, 10], [10, 0], [0, 9]), 0, 5))]),
    /shelf: tail .*crosses/,
  ],
  [
    'a spike',
    board(100, 40, 20, [feature('tail', 'remove', prism(polygon([0, 0], [10, 0], [5, 0], [5, 5]), 0, 5))]),
    /shelf: tail .*crosses/,
  ],
  [
    'pinched',
    board(100, 40, 20, [feature('tail', 'remove', prism(polygon([0, 0], [5, 5], [10, 0], [10, 10], [5, 5], [0, 10]), 0, 5))]),
    /shelf: tail .*crosses/,
  ],
  [
    'hole outside',
    board(100, 40, 20, [feature('field', 'remove', prism([rectangle(0, 0, 10, 10), circle(20, 5, 2)], 0, 5))]),
    /shelf: field .*outside/,
  ],
  [
    'hole across',
    board(100, 40, 20, [feature('field', 'remove', prism([rectangle(0, 0, 10, 10), circle(9, 5, 2)], 0, 5))]),
    /shelf: field .*touches the outline/,
  ],
  [
    'plane without a normal',
    board(100, 40, 20, [feature('taper', 'shape', { kind: 'half', normal: [0, 0, 0], off: 1 })]),
    /shelf: taper .*plane/,
  ],
  [
    'adding a half-space',
    board(100, 40, 20, [feature('tongue', 'add', { kind: 'half', normal: [1, 0, 0], off: 1 })]),
    /shelf: tongue .*no end/,
  ],
  [
    'negative radius',
    board(100, 40, 20, [feature('knob', 'add', { kind: 'turned', profile: polygon([-1, 0], [5, 0], [5, 5]) })]),
    /shelf: knob .*below zero/,
  ],
  [
    'unlike ends',
    board(100, 40, 20, [
      feature('key', 'remove', {
        kind: 'prism',
        profile: [rectangle(0, 0, 5, 5)],
        profileTo: [polygon([0, 0], [5, 0], [5, 5])],
        from: 0,
        to: 9,
      }),
    ]),
    /shelf: key .*different corners/,
  ],
];
test.each(bad)('refused with the names in it: %s', (_, record, words) => {
  withSolids(() => {
    const cut = cutPart(record, { who: 'shelf' });
    expect(cut.ok ? 'was cut' : cut.problem).toMatch(words);
    if (!cut.ok) expect(cut.who).toBe('shelf');
  });
  expect(liveSolids()).toBe(0);
});
test('a loft whose far end would fold over itself is refused', () => {
  const ell = polygon([0, 0], [20, 0], [20, 5], [5, 5], [5, 20], [0, 20]);
  const other = polygon([0, 0], [20, 0], [20, 20], [15, 20], [15, 5], [0, 5]);
  withSolids(() => {
    const cut = cutPart(
      board(100, 40, 20, [feature('key', 'remove', { kind: 'prism', profile: [ell], profileTo: [other], from: 0, to: 9 })]),
      { who: 'rail' },
    );
    expect(cut.ok ? 'was cut' : cut.problem).toMatch(/rail: key .*folds/);
  });
});

const facts = (features: readonly Feature[]): unknown => withSolids(() => factsOf(cutOf(board(100, 40, 20, features))));
test('what became of the features is told as data', () => {
  expect(facts([block('mortise', 'remove', [10, 10, 5], [40, 30, 20])])).toEqual([]);
  expect(facts([block('all', 'remove', [-1, -1, -1], [101, 41, 21])])).toEqual([{ fact: 'nothing left' }]);
  expect(facts([block('exactly all', 'remove', [0, 0, 0], [100, 40, 20])])).toEqual([{ fact: 'nothing left' }]);
  expect(facts([block('saw', 'remove', [40, 0, 0], [45, 40, 20])])).toEqual([
    { fact: 'in pieces', volumes: [expect.closeTo(44_000, 6), expect.closeTo(32_000, 6)] },
  ]);
  expect(facts([block('tenon', 'add', [102, 10, 5], [130, 30, 15])])).toEqual([
    { fact: 'in pieces', volumes: [expect.closeTo(80_000, 6), expect.closeTo(5600, 6)] },
    { fact: 'floats', feature: 'tenon' },
  ]);
  expect(facts([block('miss', 'remove', [200, 0, 0], [210, 10, 10])])).toEqual([{ fact: 'no effect', feature: 'miss' }]);
  expect(facts([block('kiss', 'remove', [100, 0, 0], [110, 40, 20])])).toEqual([{ fact: 'no effect', feature: 'kiss' }]);
  expect(facts([feature('trim', 'remove', { kind: 'half', normal: [0, 0, 1], off: 20 })])).toEqual([
    { fact: 'no effect', feature: 'trim' },
  ]);
  expect(facts([block('sunk', 'add', [10, 10, 5], [20, 20, 15])])).toEqual([{ fact: 'no effect', feature: 'sunk' }]);
  // Two cutters of which one lies in the other: both take wood, and one leaves no face.
  expect(facts([block('wide', 'remove', [10, 0, 10], [40, 40, 20]), block('narrow', 'remove', [20, 10, 15], [30, 20, 20])])).toEqual([]);
});
