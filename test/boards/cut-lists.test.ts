import { expect, test } from 'vitest';
import { layOut } from '../../src/boards/lay-out.ts';
import { replay } from '../../src/boards/replay.ts';
import { defaultShop } from '../../src/boards/shop.ts';
import type { StockLine } from '../../src/boards/stock.ts';
import { CUT_LISTS, type CutList } from './cut-lists.ts';

const inch = (n: number): number => n * 25.4;
const base = defaultShop('in');
/** As the lists were written: pieces at their finished size, nothing lost at the ends. */
const shop = { ...base, over: { ...base.over, length: 0, width: 0 }, dressed: { endTrim: 0, sawnEdge: 0 } };
const boards = (c: Pick<CutList, 'stock' | 't' | 'w' | 'stockLength'>, count: number | null): StockLine => ({
  id: c.stock,
  wood: 'pine',
  nominal: c.stock,
  thickness: inch(c.t),
  width: inch(c.w),
  length: inch(c.stockLength),
  count,
  surface: 'dressed',
});
const lay = (c: Pick<CutList, 'stock' | 't' | 'w' | 'stockLength' | 'parts'>, count: number | null = null) =>
  layOut(
    {
      jobs: c.parts.map((p) => ({
        part: p.name,
        copies: p.qty,
        wood: 'pine',
        finished: { length: inch(p.l), width: inch(c.w), thickness: inch(c.t) },
      })),
      stock: [boards(c, count)],
      shop,
      system: 'in',
    },
    { effort: 3000 },
  );

for (const c of CUT_LISTS)
  test(`${c.title}, ${c.stock} (${c.source})`, () => {
    const out = lay(c);
    expect(out.unplaced).toEqual([]);
    expect(out.boardsUsed).toBe(c.least);
    expect(out.bound.boards).toBeLessThanOrEqual(c.least);
    for (const b of out.boards) expect(replay(b, shop)).toEqual([]);
  });

test('with the boards that the garden bench’s author bought, one part finds no room, and is named', () => {
  const bench = CUT_LISTS.find((c) => c.title === 'slatted garden bench');
  if (!bench) throw new Error('the list is gone');
  const out = lay(bench, bench.bought);
  expect(out.boardsUsed).toBe(8);
  expect(out.unplaced.length).toBeGreaterThan(0);
  expect(out.unplaced.every((u) => u.why === 'ran out')).toBe(true);
});

// docplayer.net, picnic table plan 900b: two 72 in planks from one 144 in board leave nothing for the blade.
test('a plan that forgot the kerf', () => {
  const plank = { stock: '2x6', t: 1.5, w: 5.5, stockLength: 144 };
  const two = (l: number) => lay({ ...plank, parts: [{ name: 'plank', qty: 2, l }] }).boardsUsed;
  expect(two(72)).toBe(2);
  expect(two(71 + 15 / 16)).toBe(1);
  expect(two(71 + 61 / 64)).toBe(2);
});

// home.howstuffworks.com, the seventh board of the bench: 31 + 23-3/4 + 23-3/4 + 17 in and three kerfs are 95-7/8 of 96.
test('a board with 1/8 in to spare', () => {
  const out = lay({
    stock: '2x4',
    t: 1.5,
    w: 3.5,
    stockLength: 96,
    parts: [
      { name: 'upright', qty: 1, l: 31 },
      { name: 'bearer', qty: 2, l: 23.75 },
      { name: 'leg', qty: 1, l: 17 },
    ],
  });
  expect(out.boardsUsed).toBe(1);
  const end = Math.max(...(out.boards[0]?.placements ?? []).map((p) => p.x + p.length));
  expect((inch(96) - end) / 25.4).toBeCloseTo(1 / 8, 9);
});

// thewoodwhisperer.com, walnut side table: legs finished 2 × 2-1/8 from an 8/4 board, which gives 1-3/4 (NHLA).
test('legs thicker than the stock gives are named, with the layers that they need', () => {
  const rough = (nominal: string, quarters: number): StockLine => ({
    id: nominal,
    wood: 'walnut',
    nominal,
    thickness: inch(quarters / 4),
    width: inch(6),
    length: inch(72),
    count: 3,
    surface: 'rough',
  });
  const jobs = [{ part: 'leg', copies: 4, wood: 'walnut', finished: { length: inch(23.25), width: inch(2.125), thickness: inch(2) } }];
  const stock = [rough('5/4', 5), rough('8/4', 8)];
  const out = layOut({ jobs, stock, system: 'in' });
  expect(out.unplaced.map((u) => [u.part, u.copy, u.why])).toEqual([1, 2, 3, 4].map((c) => ['leg', c, 'too thick']));
  expect(out.unplaced[0]?.have).toBeCloseTo(inch(1.75), 6);
  expect(out.unplaced[0]?.cure).toMatchObject({ do: 'layers', count: 2, each: inch(1) });
  const glued = layOut({
    jobs: jobs.map((j) => ({ ...j, made: [{ layers: [inch(1), inch(1)], across: 'thickness' as const }] })),
    stock,
    system: 'in',
  });
  expect(glued.unplaced).toEqual([]);
  // The thinnest board that gives 1 in: 5/4 gives 1-1/16.
  expect(new Set(glued.boards.map((b) => b.nominal))).toEqual(new Set(['5/4']));
});
