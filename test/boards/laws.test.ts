/** What must hold for every job: read from the answer alone, with sizes worked out here anew. */
import fc from 'fast-check';
import { expect } from 'vitest';
import { blanksOf } from '../../src/boards/blank.ts';
import { layOut } from '../../src/boards/lay-out.ts';
import type { Layout, Placement } from '../../src/boards/layout.ts';
import { replay } from '../../src/boards/replay.ts';
import { defaultShop } from '../../src/boards/shop.ts';
import type { StockLine } from '../../src/boards/stock.ts';
import { law } from '../support/law.ts';
import { type KnownJob, anyJob, usualParts } from './jobs.ts';

const run = { effort: 12, seed: 7 };
const key = (p: { part: string; copy: number; piece: string }): string => `${p.part}/${p.copy}/${p.piece}`;
const sameWood = (a: string, b: string): boolean => a.replace(' ', '_') === b.replace(' ', '_');

/** Room on a board by plain arithmetic in mm. */
function room(s: StockLine, { shop }: KnownJob): { length: number; width: number; gives: number } {
  if (s.surface === 'dressed') return { length: s.length - 2 * shop.dressed.endTrim, width: s.width, gives: s.thickness };
  const over = s.thickness < shop.over.thickFrom ? shop.over.thin : shop.over.thick;
  return {
    length: s.length - 2 * shop.rough.endTrim,
    width: s.width - shop.rough.straighten - shop.rough.farEdge,
    gives: s.thickness - over,
  };
}
/** Length, width and thickness that a blank asks of a board, by the same arithmetic. */
function asks(f: Placement['finished'], s: StockLine, { shop }: KnownJob): { length: number; width: number } {
  if (s.surface === 'rough') return { length: f.length + shop.over.length, width: f.width + shop.over.width };
  return { length: f.length + shop.over.length, width: Math.abs(f.width - s.width) <= 0.3 ? s.width : f.width + shop.dressed.sawnEdge };
}

function holds(job: KnownJob, out: Layout): void {
  const { blanks } = blanksOf(job.jobs);
  const placed = out.boards.flatMap((b) => b.placements);
  // Demand: every blank once, on a board or by name among those that found no place.
  expect([...placed.map(key), ...out.unplaced.map(key)].sort()).toEqual(blanks.map(key).sort());
  for (const b of out.boards) {
    expect(replay(b, job.shop)).toEqual([]);
    const line = job.stock.find((s) => s.id === b.stock);
    if (!line) throw new Error(`board ${b.id} is of no stock line`);
    expect([b.length, b.width, b.thickness]).toEqual([line.length, line.width, line.thickness]);
    const r = room(line, job);
    for (const p of b.placements) {
      const blank = blanks.find((x) => key(x) === key(p));
      if (!blank) throw new Error(`${key(p)} was never asked for`);
      expect(sameWood(blank.wood, b.wood)).toBe(true);
      expect(p.turned).toBe(false);
      expect(p.finished).toEqual(blank.finished);
      expect(p.finished.thickness).toBeLessThanOrEqual(r.gives + 0.31);
      const asked = asks(p.finished, line, job);
      // Along the board lies the length, at its rough size, at most a tick more.
      for (const k of ['length', 'width'] as const) {
        expect(p[k]).toBeGreaterThanOrEqual(asked[k] - job.shop.tick - 1e-3);
        expect(p[k]).toBeLessThanOrEqual(asked[k] + job.shop.tick + 1e-3);
      }
    }
  }
  for (const line of job.stock) expect(out.boards.filter((b) => b.stock === line.id).length).toBeLessThanOrEqual(line.count ?? Infinity);
  expect(out.bound.boards).toBeLessThanOrEqual(out.boardsUsed);
  expect(out.gap).toBe(out.boardsUsed - out.bound.boards);
  expect(out.bound.boards > 0).toBe(out.boardsUsed > 0);
  for (const u of out.unplaced) whyHolds(job, u, blanks.find((x) => key(x) === key(u))?.finished);
}

/** Is the reason given for a blank true? Margins of a tick are left open. */
function whyHolds(job: KnownJob, u: Layout['unplaced'][number], finished: Placement['finished'] | undefined): void {
  if (!finished) throw new Error(`${key(u)} was never asked for`);
  const slack = 4 * job.shop.tick + 0.31;
  const mine = job.stock.filter((s) => sameWood(s.wood, u.wood));
  const fits = (s: StockLine, by: number): boolean => {
    const r = room(s, job);
    const a = asks(finished, s, job);
    return finished.thickness <= r.gives + by && a.length <= r.length + by && a.width <= r.width + by;
  };
  expect(u.words.length).toBeGreaterThan(10);
  expect(u.cure.words.length).toBeGreaterThan(10);
  if (u.why === 'no such wood') expect(mine.length).toBe(0);
  else expect(mine.length).toBeGreaterThan(0);
  if (u.why === 'ran out') expect(mine.some((s) => fits(s, slack))).toBe(true);
  else expect(mine.some((s) => fits(s, -slack))).toBe(false);
  if (u.why === 'too thick') expect(Math.max(...mine.map((s) => room(s, job).gives))).toBeLessThan(finished.thickness);
}

law(
  'every plan can be cut, keeps the kerf, meets the demand or says why not, and never beats its bound',
  anyJob,
  (job) => holds(job, layOut(job, run)),
  { runs: 2000, timeout: 180_000 },
);

law(
  'the same job gives the same bytes',
  anyJob,
  (job) => {
    expect(JSON.stringify(layOut(job, run))).toBe(JSON.stringify(layOut(job, run)));
  },
  { runs: 100 },
);

law(
  'a stopped search still answers with a whole plan, and a longer search is never worse',
  anyJob,
  (job) => {
    const stopped = layOut(job, { effort: 40, seed: 3, stop: () => true });
    holds(job, stopped);
    const whole = layOut(job, { effort: 40, seed: 3 });
    expect(whole.unplaced.length).toBeLessThanOrEqual(stopped.unplaced.length);
  },
  { runs: 150 },
);

law(
  'assumed boards take every part of usual size, and are called assumed',
  fc.record({ jobs: usualParts, system: fc.constantFrom('mm' as const, 'in' as const) }),
  (job) => {
    const out = layOut(job, { effort: 5 });
    expect(out.unplaced).toEqual([]);
    for (const b of out.boards) {
      expect(b.assumed).toBe(true);
      expect(replay(b, defaultShop(job.system))).toEqual([]);
    }
    expect(out.buy.reduce((n, r) => n + r.count, 0)).toBe(out.boardsUsed);
  },
  { runs: 300 },
);

law(
  'the way out that is named is one: glued up as told, the part finds wood thick and wide enough',
  anyJob,
  (job) => {
    const out = layOut(job, { effort: 0 });
    const first = out.unplaced.find((u) => u.cure.do === 'layers' || u.cure.do === 'staves');
    if (!first || (first.cure.do !== 'layers' && first.cure.do !== 'staves')) return;
    const { cure } = first;
    const of = blanksOf(job.jobs).blanks.find((b) => key(b) === key(first));
    if (!of) throw new Error('the blank is gone');
    const made =
      cure.do === 'layers'
        ? { layers: Array.from({ length: cure.count }, () => cure.each), across: 'thickness' as const }
        : { staves: { widest: cure.each }, across: 'width' as const };
    const again = layOut(
      {
        ...job,
        jobs: [{ part: 'cured', copies: 1, wood: first.wood, finished: of.finished, made: [made] }],
        stock: job.stock.map((s) => ({ ...s, count: null })),
      },
      { effort: 0 },
    );
    expect(again.unplaced.filter((u) => u.why === (cure.do === 'layers' ? 'too thick' : 'too wide'))).toEqual([]);
  },
  { runs: 600 },
);
