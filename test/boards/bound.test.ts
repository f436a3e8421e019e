/** The bound against plans that are known to exist: boards sawn up at random, and small jobs solved by trying everything. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { BlankJob } from '../../src/boards/blank.ts';
import { layOut } from '../../src/boards/lay-out.ts';
import { type Shop, defaultShop } from '../../src/boards/shop.ts';
import type { StockLine } from '../../src/boards/stock.ts';
import { law } from '../support/law.ts';

const base = defaultShop('mm');
/** Boards as they are, pieces as they are: only the blade counts. Whole millimetres. */
const bare = (crosscut: number, rip: number): Shop => ({
  ...base,
  tick: 1,
  kerf: { crosscut, rip },
  over: { ...base.over, length: 0, width: 0 },
  dressed: { endTrim: 0, sawnEdge: 0 },
});
const board = (id: string, length: number, width: number, each: number): StockLine => ({
  id,
  wood: 'oak',
  nominal: '20 mm',
  thickness: 20,
  width,
  length,
  count: null,
  surface: 'dressed',
  price: { each },
});

/** Wider than thick, so that no piece is laid on its side. */
const LEAST = 21;
/** A line of pieces and kerfs that fills `whole` at most: the cuts that `choices` (0…1) ask for, at least one piece. */
function divided(whole: number, kerf: number, choices: readonly number[]): number[] {
  const out: number[] = [];
  let rest = whole;
  for (const c of choices) {
    const piece = Math.floor(LEAST + c * (rest - LEAST));
    if (piece < LEAST || piece > rest) break;
    out.push(piece);
    rest -= piece + kerf;
    if (rest < LEAST) break;
  }
  return out.length > 0 ? out : [whole];
}
const choices = (n: number) => fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: n });
const sawn = fc.record({
  kx: fc.integer({ min: 0, max: 6 }),
  ky: fc.integer({ min: 0, max: 6 }),
  boards: fc.array(fc.record({ big: fc.boolean(), sections: choices(3), strips: choices(3), pieces: choices(3) }), {
    minLength: 1,
    maxLength: 5,
  }),
  prices: fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 })),
});

law(
  'boards sawn up at random: their number and their price are never below the bound',
  sawn,
  ({ kx, ky, boards, prices }) => {
    const small = board('small', 900, 150, prices[0]);
    const big = board('big', 1400, 220, prices[1]);
    const jobs: BlankJob[] = [];
    boards.forEach((b, n) => {
      const line = b.big ? big : small;
      for (const length of divided(line.length, kx, b.sections))
        for (const width of divided(line.width, ky, b.strips))
          for (const l of divided(length, kx, b.pieces))
            jobs.push({
              part: `${n}.${jobs.length}`,
              copies: 1,
              wood: 'oak',
              finished: { length: l, width, thickness: 20 },
            });
    });
    for (const aim of ['fewest boards', 'least wood'] as const) {
      const out = layOut({ jobs, stock: [small, big], shop: bare(kx, ky), aim }, { effort: 30 });
      expect(out.unplaced).toEqual([]);
      expect(out.bound.boards).toBeLessThanOrEqual(boards.length);
      expect(out.bound.cost).toBeLessThanOrEqual(boards.reduce((c, b) => c + (b.big ? prices[1] : prices[0]), 0) + 1e-6);
      expect(out.bound.boards).toBeLessThanOrEqual(out.boardsUsed);
      expect(out.bound.cost).toBeLessThanOrEqual((out.cost ?? NaN) + 1e-6);
    }
  },
  { runs: 400 },
);

/** Fewest bars for lengths, by trying every place for every piece. */
function fewestBars(lengths: readonly number[], bar: number, kerf: number): number {
  let best = lengths.length;
  const bars: number[] = [];
  const place = (i: number): void => {
    if (bars.length >= best) return;
    const l = lengths[i];
    if (l === undefined) {
      best = bars.length;
      return;
    }
    for (let b = 0; b < bars.length; b++) {
      const rest = bars[b] as number;
      if (rest < l) continue;
      bars[b] = rest - l - kerf;
      place(i + 1);
      bars[b] = rest;
    }
    bars.push(bar - l - kerf);
    place(i + 1);
    bars.pop();
  };
  place(0);
  return best;
}

law(
  'pieces as wide as their boards: the bound, the truth and the plan stand in that order, the plan mostly on the truth',
  fc.record({ lengths: fc.array(fc.integer({ min: 80, max: 900 }), { minLength: 1, maxLength: 8 }), kerf: fc.integer({ min: 0, max: 5 }) }),
  ({ lengths, kerf }) => {
    const stock = [board('bar', 1000, 60, 1)];
    const jobs = lengths.map((length, i) => ({ part: String(i), copies: 1, wood: 'oak', finished: { length, width: 60, thickness: 20 } }));
    const out = layOut({ jobs, stock, shop: bare(kerf, kerf) }, { effort: 200 });
    const truth = fewestBars(lengths, 1000, kerf);
    expect(out.bound.boards).toBeLessThanOrEqual(truth);
    // Eight pieces and two hundred rounds: the plan is the best there is.
    expect(out.boardsUsed).toBe(truth);
  },
  { runs: 300 },
);

test('the bound by lengths is stronger where widths leave no choice', () => {
  const jobs = [{ part: 'sign', copies: 27, wood: 'oak', finished: { length: 240, width: 60, thickness: 20 } }];
  const out = layOut({ jobs, stock: [board('bar', 960, 60, 1)], shop: bare(1, 1) });
  // Four times 240 and three kerfs are 963: three to a board, though the area alone allows 27 / 4.
  expect(out.bound).toMatchObject({ boards: 9, name: 'length bound', proved: true });
  expect(out.gap).toBe(0);
});
