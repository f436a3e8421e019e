import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { BlankJob } from '../../src/boards/blank.ts';
import { type LayJob, layOut } from '../../src/boards/lay-out.ts';
import type { Cut, LaidBoard } from '../../src/boards/layout.ts';
import { replay } from '../../src/boards/replay.ts';
import { type Shop, defaultShop } from '../../src/boards/shop.ts';
import type { StockLine } from '../../src/boards/stock.ts';

const shop = defaultShop('mm');
const rough = (id: string, thickness: number, width: number, length: number, rest: Partial<StockLine> = {}): StockLine => ({
  id,
  wood: 'cherry',
  nominal: `${thickness} mm`,
  thickness,
  width,
  length,
  count: null,
  surface: 'rough',
  ...rest,
});
const part = (name: string, length: number, width: number, thickness: number, copies = 1, rest: Partial<BlankJob> = {}): BlankJob => ({
  part: name,
  copies,
  wood: 'cherry',
  finished: { length, width, thickness },
  ...rest,
});

test('one rail on one board, worked by hand', () => {
  // 1000 + 25 long, 90 + 6 wide, from 25 mm inside the left end and 3 mm inside the straightened edge.
  const out = layOut({ jobs: [part('B', 1000, 90, 20)], stock: [rough('a', 27, 150, 2500)] });
  const [b] = out.boards;
  if (!b) throw new Error('there is no board');
  expect(b.placements).toMatchObject([{ part: 'B', copy: 1, piece: '1', x: 25, y: 3, length: 1025, width: 96 }]);
  const steps = b.cuts.map((c) => [c.what, c.at]);
  expect(steps).toEqual([
    ['trim', 21.8],
    ['crosscut', 1025],
    ['straighten', 3],
    ['rip', 96],
    // Half of what 27 mm loses until it is 22.
    ['flatten', 2.5],
    ['thickness', 20],
    ['edge', 3],
    ['width', 90],
    ['length', 1000],
  ]);
  expect(out.yield).toBeCloseTo((1025 * 96) / (2500 * 150), 9);
  expect(out.finishedShare).toBeCloseTo((1000 * 90 * 20) / (2500 * 150 * 27), 9);
  expect(b.offcuts.filter((o) => o.keep)).toMatchObject([{ length: 1421.8, width: 144 }]);
  expect([out.boardsUsed, out.bound.boards, out.bound.name, out.gap]).toEqual([1, 1, 'area bound', 0]);
});

test('at a table saw every section is flat before it is ripped', () => {
  const job = { jobs: [part('B', 700, 60, 20, 4)], stock: [rough('a', 27, 200, 2500)], shop: { ...shop, ripAt: 'table saw' as const } };
  const cuts = layOut(job).boards.flatMap((b) => b.cuts);
  const first = (what: Cut['what']): number => cuts.find((c) => c.what === what)?.step ?? Infinity;
  expect(first('flatten')).toBeLessThan(first('straighten'));
  expect(first('straighten')).toBeLessThan(first('rip'));
  expect(cuts.filter((c) => c.what === 'rip').every((c) => c.machine === 'table saw')).toBe(true);
});

test('the thinnest boards that give the blank; thicker ones only when those run out', () => {
  const stock = [rough('thick', 50, 200, 2500), rough('thin', 27, 200, 2500, { count: 1 })];
  const few = layOut({ jobs: [part('B', 1000, 80, 20, 4)], stock });
  expect(few.boards.map((b) => b.stock)).toEqual(['thin']);
  expect(few.bound.plans).toContain('thinnest');
  const many = layOut({ jobs: [part('B', 1000, 80, 20, 6)], stock });
  expect(many.unplaced).toEqual([]);
  expect(many.boards.map((b) => b.stock).sort()).toEqual(['thick', 'thin']);
  expect(many.bound.plans).not.toContain('thinnest');
  for (const b of many.boards) expect(replay(b, shop)).toEqual([]);
});

test('why a blank finds no board', () => {
  const stock = [rough('a', 27, 150, 1200, { count: 1 })];
  const why = (job: BlankJob) => layOut({ jobs: [job], stock }).unplaced[0];
  expect(why(part('B', 1300, 90, 20))).toMatchObject({ why: 'too long', need: 1325, have: 1150, cure: { do: 'board', length: 1325 } });
  expect(why(part('B', 900, 300, 20))).toMatchObject({
    why: 'too wide',
    need: 306,
    have: 144,
    cure: { do: 'staves', count: 3, each: 100 },
  });
  expect(why(part('B', 900, 90, 70))).toMatchObject({ why: 'too thick', need: 70, cure: { do: 'layers', count: 4, each: 17.5 } });
  expect(why(part('B', 900, 90, 20, 1, { wood: 'chery' }))).toMatchObject({ why: 'no such wood', cure: { do: 'wood', nearest: 'cherry' } });
  const ran = layOut({ jobs: [part('B', 900, 90, 20, 2)], stock });
  expect(ran.unplaced).toMatchObject([{ part: 'B', copy: 2, why: 'ran out' }]);
});

test('no stock given: boards are assumed, sheets too, and what is bought to size is listed', () => {
  const jobs = [part('A', 700, 45, 45, 4), part('P', 400, 300, 6, 1, { wood: 'plywood' }), part('G', 400, 300, 4, 2, { wood: 'glass' })];
  const out = layOut({ jobs });
  expect(out.unplaced).toEqual([]);
  expect(out.boards.map((b) => [b.wood, b.nominal, b.assumed])).toEqual([
    ['cherry', '50 mm', true],
    ['plywood', '6 mm', true],
  ]);
  expect(out.buy.map((r) => [r.what, r.count])).toEqual([
    ['boards', 1],
    ['sheets', 1],
    ['glass', 2],
  ]);
  // 8/4 gives 1-3/4 in, 44.45 mm: not quite.
  expect(layOut({ jobs, system: 'in' }).boards.map((b) => b.nominal)).toEqual(['10/4', '6 mm']);
});

test('prices: by board, board foot, metre; own boards cost nothing and are not bought', () => {
  const jobs = [part('B', 2000, 90, 20)];
  const cost = (rest: Partial<StockLine>) => {
    const out = layOut({ jobs, stock: [rough('a', 25.4, 203.2, 2438.4, { nominal: '4/4', ...rest })] });
    return [out.cost, out.bound.cost, out.buy.length];
  };
  expect(cost({ price: { each: 30 } })).toEqual([30, 30, 1]);
  // 8 in × 8 ft of 4/4: 5-1/3, to the nearest 5 board feet.
  expect(cost({ price: { perBoardFoot: 10 } })).toEqual([50, 50, 1]);
  expect(cost({ price: { perMetre: 10 } })[0]).toBeCloseTo(24.384, 9);
  expect(cost({})).toEqual([null, null, 1]);
  expect(cost({ have: true })).toEqual([0, 0, 0]);
});

test('the cheaper of two boards that would do', () => {
  const stock = [rough('dear', 27, 150, 2500), rough('cheap', 27, 200, 3000)];
  const priced = stock.map((s) => ({ ...s, price: { each: s.id === 'dear' ? 60 : 40 } }));
  const out = layOut({ jobs: [part('B', 1000, 90, 20)], stock: priced });
  expect(out.boards.map((b) => b.stock)).toEqual(['cheap']);
  const unpriced = layOut({ jobs: [part('B', 1000, 90, 20)], stock });
  expect(unpriced.boards.map((b) => b.stock)).toEqual(['dear']);
});

test('bad stock and bad shop figures are named and not used', () => {
  const out = layOut({
    jobs: [part('B', 1000, 90, 20)],
    stock: [
      rough('a', 27, -150, 2500),
      rough('b', 27, 150, Infinity),
      rough('c', 27, 150, 2500, { count: 1.5 }),
      rough('d', 27, 150, 2500),
      rough('d', 27, 150, 2500),
    ],
    shop: { ...shop, kerf: { crosscut: -3, rip: NaN } },
  });
  expect(out.problems.map((p) => p.where)).toEqual(['shop kerf.crosscut', 'shop kerf.rip', 'stock a', 'stock b', 'stock c', 'stock d']);
  expect(out.boardsUsed).toBe(1);
  expect(replay(out.boards[0] as LaidBoard, shop)).toEqual([]);
  expect(layOut({ jobs: [part('B', 0, 90, 20)] })).toMatchObject({ boards: [], unplaced: [], gap: 0, problems: [{ where: 'part B' }] });
  expect(layOut({ jobs: [], stock: [] })).toMatchObject({ boards: [], boardsUsed: 0, yield: 0, cost: null });
});

test('short and wide blanks carry a caution that defers to the manual', () => {
  const out = layOut({ jobs: [part('B', 100, 40, 20), part('C', 900, 240, 20)], stock: [rough('a', 27, 300, 2500)] });
  expect(
    out.cautions
      .filter((c) => c.part === 'B')
      .map((c) => c.words)
      .join(),
  ).toContain('manual');
  expect(out.cautions.map((c) => c.part)).toEqual(['C', 'B', '']);
});

test('progress is told, and stopping keeps the best so far', () => {
  const jobs = Array.from({ length: 14 }, (_, i) => part(`P${i}`, 300 + ((i * 137) % 700), 40 + ((i * 29) % 70), 20, 3));
  const told: number[] = [];
  let asked = 0;
  const stock = [rough('a', 27, 190, 2400)];
  const whole = layOut({ jobs, stock }, { effort: 300, report: (r) => told.push(r.done) });
  const stopped = layOut({ jobs, stock }, { effort: 1e9, stop: () => ++asked > 40 });
  expect(told.length).toBeGreaterThan(0);
  expect(stopped.unplaced).toEqual([]);
  expect(stopped.boards.flatMap((b) => b.placements).length).toBe(42);
  expect(Math.abs(stopped.boardsUsed - whole.boardsUsed)).toBeLessThanOrEqual(1);
});

/** A sound board to spoil. */
const sound = (): LaidBoard =>
  layOut({ jobs: [part('B', 700, 60, 20, 4), part('C', 500, 40, 20, 3)], stock: [rough('a', 27, 200, 2500)] }).boards[0] as LaidBoard;
const spoil = (change: (b: LaidBoard) => Partial<LaidBoard>, by: Shop = shop): string => {
  const b = sound();
  return replay({ ...b, ...change(b) }, by).join('\n');
};
const cutsBut = (b: LaidBoard, change: (c: Cut) => Cut | null): { cuts: Cut[] } => ({ cuts: b.cuts.map(change).filter((c) => c !== null) });

test('the replay finds what is planted', () => {
  expect(spoil(() => ({}))).toBe('');
  const [p] = sound().placements;
  if (!p) throw new Error('nothing is placed');
  expect(spoil((b) => ({ placements: b.placements.map((q, i) => (i === 0 ? { ...q, x: q.x + 5 } : q)) }))).toMatch(/cut out at/);
  expect(spoil((b) => ({ placements: b.placements.map((q, i) => (i === 0 ? { ...q, length: q.length + 2 } : q)) }))).toMatch(
    /runs through/,
  );
  expect(spoil((b) => ({ placements: b.placements.map((q, i) => (i === 1 ? { ...q, x: p.x, y: p.y } : q)) }))).toMatch(
    /closer than the kerf/,
  );
  expect(spoil((b) => ({ room: { ...b.room, x: b.room.x + 10, length: b.room.length - 10 } }))).toMatch(/outside the room/);
  expect(spoil((b) => cutsBut(b, (c) => (c.what === 'straighten' ? null : c)))).toMatch(/no straight edge/);
  expect(spoil((b) => cutsBut(b, (c) => (c.what === 'rip' ? { ...c, machine: 'table saw' } : c)))).toMatch(/no flat face/);
  expect(spoil((b) => cutsBut(b, (c) => (c.what === 'flatten' ? null : c)))).toMatch(/flat face/);
  expect(spoil((b) => cutsBut(b, (c) => (c.what === 'thickness' ? null : c)))).toMatch(/before it is planed/);
  expect(spoil((b) => cutsBut(b, (c) => (c.what === 'crosscut' && c.step === 2 ? { ...c, takes: 1 } : c)))).toMatch(/the blade takes/);
  expect(spoil((b) => cutsBut(b, (c) => (c.what === 'length' ? { ...c, at: c.at - 1 } : c)))).toMatch(/ends with a length/);
  expect(spoil((b) => cutsBut(b, (c) => (c.what === 'crosscut' && c.step === 2 ? { ...c, at: 5000 } : c)))).toMatch(/beyond the end/);
  expect(spoil((b) => cutsBut(b, (c) => (c.what === 'rip' ? null : c)))).toMatch(/not there|never cut out/);
  expect(
    spoil((b) => ({ cuts: [...b.cuts.filter((c) => c.what === 'thickness'), ...b.cuts.filter((c) => c.what !== 'thickness')] })),
  ).toMatch(/not there|before the last cut/);
});

test('two jobs of one letter count on', () => {
  const out = layOut({ jobs: [part('B', 500, 60, 20, 2), part('B', 400, 60, 20, 1)] });
  expect(out.boards.flatMap((b) => b.placements.map((p) => p.copy)).sort()).toEqual([1, 2, 3]);
});

test('a tidier plan of the thick boards never costs a thin part the room that it would have found in them', () => {
  const job = JSON.parse(readFileSync(new URL('../fixtures/thick-boards-spilled.json', import.meta.url), 'utf8')) as LayJob;
  expect(layOut(job, { effort: 40, seed: 3, stop: () => true }).unplaced).toEqual([]);
  expect(layOut(job, { effort: 40, seed: 3 }).unplaced).toEqual([]);
});

test('a blank at the end of a board may keep what the board has beyond whole ticks', () => {
  // 1512.09375 is 3810 ticks of 1/64 in, 3416.3125 mm of board are 8608.03 of them: both are lost or kept, never asked for twice.
  const bare: Shop = { ...defaultShop('in'), kerf: { crosscut: 0, rip: 0 }, rough: { endTrim: 0, straighten: 0, farEdge: 0 } };
  const s: Shop = { ...bare, ripAt: 'band saw', over: { ...bare.over, length: 0, width: 0 } };
  const jobs = [part('D', 1904, 20, 20), part('B', 30, 12, 20), part('F', 1511.703125, 32, 6, 2)];
  const out = layOut({ jobs, stock: [rough('a', 40, 76.609375, 3416.3125)], shop: s }, { effort: 12, seed: 7 });
  expect(out.unplaced).toEqual([]);
  expect(out.boards.flatMap((b) => b.placements.filter((p) => p.part === 'F'))).toHaveLength(2);
  for (const b of out.boards) expect(replay(b, s)).toEqual([]);
});

test('so may a blank at its far edge: no cut is planned for what a rule does not show', () => {
  // 40.015625 less 12 for the straight edge is 28.015625: the blank of 28 keeps the sixty-fourth, and no tick more is let pass.
  const bare: Shop = { ...defaultShop('mm'), kerf: { crosscut: 0, rip: 0 }, rough: { endTrim: 0, straighten: 12, farEdge: 0 } };
  const s: Shop = { ...bare, ripAt: 'band saw', over: { ...bare.over, length: 0, width: 0, thin: 0 } };
  const { boards, unplaced } = layOut(
    { jobs: [part('A', 30, 28, 6)], stock: [rough('a', 40, 40.015625, 300)], shop: s },
    { effort: 12, seed: 7 },
  );
  expect(unplaced).toEqual([]);
  const [board] = boards;
  if (!board) throw new Error('nothing was laid');
  expect(board.cuts.some((c) => c.what === 'width')).toBe(false);
  expect(replay(board, s)).toEqual([]);
  expect(replay({ ...board, width: board.width + 0.2 }, s)).not.toEqual([]);
});
