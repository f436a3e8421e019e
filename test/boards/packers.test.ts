/** Faults that are known from general rectangle packers (public bug reports), and what must be true of ours. */
import { expect, test } from 'vitest';
import type { BlankJob } from '../../src/boards/blank.ts';
import { layOut } from '../../src/boards/lay-out.ts';
import { replay } from '../../src/boards/replay.ts';
import { type Shop, defaultShop } from '../../src/boards/shop.ts';
import type { StockLine } from '../../src/boards/stock.ts';

const base = defaultShop('mm');
/** No kerf, no allowances: bare rectangles. */
const bare: Shop = {
  ...base,
  kerf: { crosscut: 0, rip: 0 },
  over: { ...base.over, length: 0, width: 0 },
  dressed: { endTrim: 0, sawnEdge: 0 },
  sheetTrim: 0,
};
const line = (length: number, width: number, rest: Partial<StockLine> = {}): StockLine => ({
  id: 's',
  wood: 'mdf',
  nominal: '18 mm',
  thickness: 18,
  width,
  length,
  count: null,
  surface: 'sheet',
  ...rest,
});
const piece = (part: string, length: number, width: number, copies = 1, rest: Partial<BlankJob> = {}): BlankJob => ({
  part,
  copies,
  wood: 'mdf',
  finished: { length, width, thickness: 18 },
  ...rest,
});

// Reports against several packers: a part that fits only turned opens a new bin; 4 parts of 260 × 80 in a bin of 256 × 1024.
test('a part that fits only turned is turned where it may, and named where it may not', () => {
  const turning = layOut({ jobs: [piece('A', 260, 80, 4, { turns: true })], stock: [line(256, 1024)], shop: bare });
  expect(turning.boardsUsed).toBe(1);
  expect(turning.unplaced).toEqual([]);
  for (const p of turning.boards[0]?.placements ?? []) expect([p.turned, p.length, p.width]).toEqual([true, 80, 260]);
  const grained = layOut({ jobs: [piece('A', 260, 80, 4)], stock: [line(256, 1024)], shop: bare });
  expect(grained.unplaced.map((u) => u.why)).toEqual(['too long', 'too long', 'too long', 'too long']);
});

test('wood never turns, whatever is asked', () => {
  const wide = { ...line(256, 1024, { wood: 'oak', surface: 'dressed' }), thickness: 18 };
  const out = layOut({ jobs: [piece('A', 260, 80, 4, { wood: 'oak', turns: true })], stock: [wide], shop: bare });
  expect(out.boardsUsed).toBe(0);
  expect(out.unplaced.length).toBe(4);
});

test('plywood has a face grain and keeps it', () => {
  const out = layOut({
    jobs: [piece('A', 260, 80, 1, { wood: 'plywood', turns: true })],
    stock: [line(256, 1024, { wood: 'plywood' })],
    shop: bare,
  });
  expect(out.unplaced.map((u) => u.why)).toEqual(['too long']);
});

test('with turning allowed the plan is never worse than without', () => {
  for (let n = 3; n < 40; n += 4) {
    const lay = (turns: boolean) =>
      layOut(
        { jobs: [piece('A', 310, 170, n, { turns }), piece('B', 520, 95, n, { turns })], stock: [line(1000, 600)], shop: bare },
        { effort: 400 },
      );
    expect(lay(true).boardsUsed).toBeLessThanOrEqual(lay(false).boardsUsed);
  }
});

// 24x48, 20x40, 60x90, 72x48, 72x24, 32x32 in a bin 100 wide: overlaps and parts dropped without a word.
test('nothing overlaps and nothing is dropped', () => {
  const sizes: [number, number][] = [
    [48, 24],
    [40, 20],
    [90, 60],
    [72, 48],
    [72, 24],
    [32, 32],
  ];
  for (const kerf of [0, 3.2]) {
    const shop = { ...bare, kerf: { crosscut: kerf, rip: kerf } };
    const out = layOut({ jobs: sizes.map(([l, w], i) => piece(String(i), l, w, 2, { turns: true })), stock: [line(200, 100)], shop });
    expect(out.boards.flatMap((b) => b.placements).length + out.unplaced.length).toBe(12);
    expect(out.unplaced).toEqual([]);
    for (const b of out.boards) expect(replay(b, shop)).toEqual([]);
  }
});

// Sizes that differ by float noise (0.0075 - 0.0025 and the like) must neither collide nor be refused.
test('float noise neither collides nor refuses', () => {
  const third = 100 / 3;
  const out = layOut({
    jobs: [piece('A', third, third, 9)],
    stock: [line(third * 3, third + third + third)],
    shop: { ...bare, tick: 100 / 3 / 1000 },
  });
  expect(out.boardsUsed).toBe(1);
  expect(out.unplaced).toEqual([]);
});

// Quality mark: 31 pieces of 24 × 18 in 114 × 120; greedy packers stop at 30. The area allows 31.67.
test('31 pieces of 24 × 18 on one sheet of 114 × 120', () => {
  const out = layOut({ jobs: [piece('A', 24, 18, 31, { turns: true })], stock: [line(120, 114)], shop: bare }, { effort: 100 });
  expect(out.boardsUsed).toBe(1);
  expect(out.bound.boards).toBe(1);
  expect(replay(out.boards[0] ?? never(), bare)).toEqual([]);
});
const never = (): never => {
  throw new Error('there is no board');
};
