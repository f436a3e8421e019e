import { expect, test } from 'vitest';
import { type BlankJob, blanksOf, roughOf } from '../../src/boards/blank.ts';
import { QUARTERS } from '../../src/boards/nominal.ts';
import { defaultShop } from '../../src/boards/shop.ts';
import { givesThickness } from '../../src/boards/stock.ts';

const leg: BlankJob = { part: 'A', copies: 2, wood: 'cherry', finished: { length: 713, width: 45, thickness: 45 } };
const top: BlankJob = { part: 'T', copies: 1, wood: 'cherry', finished: { length: 1200, width: 600, thickness: 22 } };
const board = (thickness: number) => ({
  id: 'x',
  wood: 'cherry',
  nominal: 'x',
  thickness,
  width: 200,
  length: 2000,
  count: 1,
  surface: 'rough' as const,
});

test('two layers of a leg: both copies, wide side down', () => {
  const { blanks } = blanksOf([{ ...leg, made: [{ layers: [22.5, 22.5], across: 'width' }], paths: ['leg:left', 'leg:right'] }]);
  expect(blanks.map((b) => [b.path, b.copy, b.piece, b.of])).toEqual([
    ['leg:left', 1, '1', 2],
    ['leg:left', 1, '2', 2],
    ['leg:right', 2, '1', 2],
    ['leg:right', 2, '2', 2],
  ]);
  for (const b of blanks) {
    expect(b.finished).toEqual({ length: 713, width: 45, thickness: 22.5 });
    expect(b.later).toEqual({ length: true, width: true });
  }
});

test('a top of staves no wider than 120, heart side up and down in turn', () => {
  const { blanks } = blanksOf([{ ...top, made: [{ staves: { widest: 120, alternate: true }, across: 'width' }] }]);
  expect(blanks.map((b) => b.finished.width)).toEqual([120, 120, 120, 120, 120]);
  expect(blanks.map((b) => b.heart)).toEqual(['up', 'down', 'up', 'down', 'up']);
  expect(blanks[0]?.later).toEqual({ length: true, width: false });
  const seven = blanksOf([{ ...top, made: [{ staves: { widest: 90 }, across: 'width' }] }]).blanks;
  expect(seven.length).toBe(7);
  expect(seven.every((b) => b.heart === null)).toBe(true);
  expect(seven.reduce((w, b) => w + b.finished.width, 0)).toBeCloseTo(600, 4);
});

test('layers of staves', () => {
  const { blanks } = blanksOf([
    {
      ...top,
      finished: { ...top.finished, thickness: 40 },
      made: [
        { layers: [20, 20], across: 'thickness' },
        { staves: { widest: 200 }, across: 'width' },
      ],
    },
  ]);
  expect(blanks.map((b) => b.piece)).toEqual(['1.1', '1.2', '1.3', '2.1', '2.2', '2.3']);
  for (const b of blanks) expect(b.finished).toEqual({ length: 1200, width: 200, thickness: 20 });
});

test('a narrow stave keeps the thickness of its panel', () => {
  const { blanks } = blanksOf([{ ...top, made: [{ staves: { widest: 15 }, across: 'width' }] }]);
  expect(blanks.length).toBe(40);
  expect(blanks[0]?.finished).toEqual({ length: 1200, width: 15, thickness: 22 });
});

test('pieces that are worked out already are taken as they are', () => {
  const pieces = [0, 1, 2].map(() => ({ length: 1200, width: 200, thickness: 22 }));
  const { blanks } = blanksOf([{ ...top, pieces, alternate: true }]);
  expect(blanks.map((b) => [b.piece, b.heart, b.later.width])).toEqual([
    ['1', 'up', false],
    ['2', 'down', false],
    ['3', 'up', false],
  ]);
});

// popularwoodworking.com, milling rough lumber: a rail of 4 × 14 in is cut 4-1/4 × 14-1/2.
test('allowances are the shop’s', () => {
  const shop = defaultShop('in');
  const own = { ...shop, over: { ...shop.over, length: 12.7, width: 6.35 } };
  const rough = roughOf({ length: 14 * 25.4, width: 4 * 25.4, thickness: (9 / 16) * 25.4 }, own);
  expect(rough.length / 25.4).toBeCloseTo(14.5, 6);
  expect(rough.width / 25.4).toBeCloseTo(4.25, 6);
  expect(rough.thickness / 25.4).toBeCloseTo(0.75, 6);
});

// NHLA standard surfaced thicknesses, 4/4 … 16/4.
test('what a rough board gives is the standard surfaced thickness', () => {
  for (const q of QUARTERS) expect(givesThickness(board(q.rough), defaultShop('in')), q.nominal).toBeCloseTo(q.surfaced, 6);
});
test('the rough thickness asked for is one that gives the finished thickness', () => {
  for (const system of ['in', 'mm'] as const)
    for (let t = 3; t < 95; t += 0.25) {
      const shop = defaultShop(system);
      const rough = roughOf({ length: 500, width: 100, thickness: t }, shop).thickness;
      expect(givesThickness(board(rough), shop)).toBeGreaterThanOrEqual(t - 1e-6);
    }
});

test('sizes and counts that cannot be are named and left out', () => {
  const bad: BlankJob[] = [
    { ...leg, part: 'nan', finished: { ...leg.finished, width: NaN } },
    { ...leg, part: 'nought', finished: { ...leg.finished, length: 0 } },
    { ...leg, part: 'half', copies: 1.5 },
    { ...leg, part: 'thin', made: [{ staves: { widest: 0 }, across: 'width' }] },
    { ...leg, part: 'none', made: [{ layers: [], across: 'width' }] },
    leg,
  ];
  const { blanks, problems } = blanksOf(bad);
  expect(problems.map((p) => p.where)).toEqual(['part nan', 'part nought', 'part half', 'part thin', 'part none']);
  expect(new Set(blanks.map((b) => b.part))).toEqual(new Set(['A']));
});
