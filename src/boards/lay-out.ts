/** Parts in, boards with plans out. Pure; counted work and a seed, so the same input gives the same bytes on every machine. */
import { type Problem, problem, shown } from '../model/problem.ts';
import { guessedPith } from '../wood/rings.ts';
import { nearestWood, woodOf } from '../wood/woods.ts';
import { assumedStock } from './assumed.ts';
import { type Blank, type BlankJob, blanksOf } from './blank.ts';
import { lowerBound } from './bound.ts';
import { buyRows, priceOf } from './buy.ts';
import { cautionsOf } from './caution.ts';
import type { Bound, LaidBoard, Layout } from './layout.ts';
import { type Run, type WoodPlan, layWood } from './lay-wood.ts';
import { type PackLine, packLine } from './need.ts';
import { type Open, type Packing, itemsOf } from './pack.ts';
import { type WoodJob, countsOf } from './packing.ts';
import { planOf } from './plan.ts';
import type { Aim } from './search.ts';
import { type Shop, defaultShop, mmOf, shopProblems } from './shop.ts';
import { type StockLine, soundStock } from './stock.ts';
import { explained } from './unplaced.ts';

export type LayJob = {
  readonly jobs: readonly BlankJob[];
  /** Absent: boards are assumed. A wood that is not in a given stock is named, not assumed. */
  readonly stock?: readonly StockLine[];
  readonly shop?: Shop;
  /** Which sizes of board are assumed, and the tick of the default shop. */
  readonly system?: 'mm' | 'in';
  readonly aim?: Aim;
};
export function layOut(job: LayJob, run: Run = {}): Layout {
  const system = job.system ?? 'mm';
  const given = job.shop ?? defaultShop(system);
  const shopTrouble = shopProblems(given);
  const shop = shopTrouble.length === 0 ? given : defaultShop(system);
  const { blanks, problems: blankTrouble } = blanksOf(job.jobs);
  const { lines, problems: stockTrouble } = soundStock(job.stock ?? assumedStock(blanks, system, shop));
  const ready = lines.map((l) => packLine(l, shop));
  const laid = blanks.filter((b) => !toSize(b));
  const plans = woodsOf(laid, ready).map((w) => layWood(w, shop, job.aim ?? 'least wood', { run, all: laid.length }));
  const problems = [
    ...shopTrouble.map((p) => problem(`shop ${p.where}`, `${p.what} The usual figures are used instead.`)),
    ...blankTrouble,
    ...stockTrouble,
    ...ownWoods(blanks),
  ];
  return put(plans, blanks.filter(toSize), ready, shop, problems);
}
/** Bought to size, not laid out: glass, stone, metal, upholstery. */
function toSize(b: Blank): boolean {
  const w = woodOf(b.wood);
  return w.kind === 'other' && w.of !== 'sheet';
}
/** Woods that may be a slip of the pen. */
function ownWoods(blanks: readonly Blank[]): Problem[] {
  const out = new Map<string, Problem>();
  for (const b of blanks) {
    if (out.has(b.wood) || woodOf(b.wood).kind !== 'own') continue;
    const nearest = nearestWood(b.wood);
    if (nearest !== null) out.set(b.wood, problem(`part ${b.part}`, `"${shown(b.wood)}" is taken for a timber of your own.`, nearest));
  }
  return [...out.values()];
}

/** One job for each wood, in the order in which the woods come up. */
function woodsOf(blanks: readonly Blank[], lines: readonly PackLine[]): WoodJob[] {
  const woods = new Map<string, Blank[]>();
  for (const b of blanks) {
    const id = woodOf(b.wood).id;
    const mine = woods.get(id);
    if (mine) mine.push(b);
    else woods.set(id, [b]);
  }
  return [...woods].map(([id, mine]) => ({ blanks: mine, lines: lines.filter((l) => woodOf(l.stock.wood).id === id) }));
}

const EVERY = 'any plan of straight cuts that keeps the grain along the board and the kerf between blanks';

/**
 * The bound for what is laid, thickness by thickness; where any blank of the piece lies on a thicker board than it needs, for plans
 * in which every blank may, so that the bound never speaks of fewer plans than the layout was chosen from.
 */
function boundOf(plans: readonly WoodPlan[], priced: boolean): Bound {
  const thicker = plans.some((p) => p.thicker);
  const parts = plans.flatMap((w) => {
    const placed = new Set(w.boards.flatMap(itemsOf));
    // Halves of a tally rounded down: no order of tallying makes a board cheaper.
    const lines = w.packing.lines.map((l, i) => ({ ...l, cost: priced ? lowestPrice((w.job.lines[i] as PackLine).stock) : 0 }));
    const p: Packing = { ...w.packing, lines };
    if (thicker)
      return placed.size === 0
        ? []
        : [
            lowerBound(
              p,
              countsOf(p, [...placed]),
              lines.map((_, i) => i),
            ),
          ];
    return w.classes
      .map((c) =>
        c.items.filter((i) => placed.has(i)).length === 0
          ? null
          : lowerBound(
              p,
              countsOf(
                p,
                c.items.filter((i) => placed.has(i)),
              ),
              c.lines,
            ),
      )
      .filter((b) => b !== null);
  });
  return {
    boards: parts.reduce((a, b) => a + b.boards, 0),
    cost: priced ? parts.reduce((a, b) => a + b.cost, 0) : null,
    name: `${parts.find((b) => b.by !== 'area')?.by ?? 'area'} bound`,
    plans: thicker ? EVERY : `${EVERY}, each blank from the thinnest boards that give it`,
    proved: true,
  };
}
const lowestPrice = (s: StockLine): number => (s.have ? 0 : (priceOf(s, false) ?? 0));

/** The layout as it leaves: boards numbered through, nothing but plain records in mm. */
function put(
  plans: readonly WoodPlan[],
  sized: readonly Blank[],
  lines: readonly PackLine[],
  shop: Shop,
  problems: readonly Problem[],
): Layout {
  const boards: LaidBoard[] = [];
  const used = new Map<StockLine, number>(lines.map((l) => [l.stock, 0]));
  for (const plan of plans)
    for (const open of plan.boards) {
      const line = plan.job.lines[open.line] as PackLine;
      used.set(line.stock, (used.get(line.stock) ?? 0) + 1);
      boards.push(laidBoard(String(boards.length + 1), open, line, plan.job.blanks, shop));
    }
  const buy = buyRows(used, sized);
  const face = boards.reduce((a, b) => a + b.length * b.width, 0);
  const volume = boards.reduce((a, b) => a + b.length * b.width * b.thickness, 0);
  const placements = boards.flatMap((b) => b.placements);
  const blanksArea = placements.reduce((a, p) => a + p.length * p.width, 0);
  const inParts = placements.reduce((a, p) => a + p.finished.length * p.finished.width * p.finished.thickness, 0);
  const bought = buy.filter((r) => r.what === 'boards' || r.what === 'sheets');
  const cost = boards.length > 0 && bought.every((r) => r.cost !== null) ? bought.reduce((a, r) => a + (r.cost ?? 0), 0) : null;
  const bound = boundOf(plans, cost !== null);
  return {
    boards,
    unplaced: plans.flatMap((p) => p.left.map((b) => explained(b, lines, shop))),
    yield: face > 0 ? blanksArea / face : 0,
    finishedShare: volume > 0 ? inParts / volume : 0,
    boardsUsed: boards.length,
    cost,
    bound,
    gap: boards.length - bound.boards,
    buy,
    problems,
    cautions: cautionsOf(boards, shop),
  };
}
function laidBoard(id: string, open: Open, line: PackLine, blanks: readonly Blank[], shop: Shop): LaidBoard {
  const { wood, nominal, surface, length, width, thickness } = line.stock;
  const plan = planOf(open, line, blanks, shop);
  const { room } = line;
  const area = plan.placements.reduce((a, p) => a + p.length * p.width, 0);
  return {
    id,
    stock: line.stock.id,
    wood,
    nominal,
    surface,
    assumed: line.stock.assumed ?? false,
    length,
    width,
    thickness,
    pith: guessedPith(width, thickness, line.stock.sawn ?? 'flat'),
    room: { x: mmOf(shop, room.x), y: mmOf(shop, room.y), length: mmOf(shop, room.length), width: mmOf(shop, room.width) },
    ...plan,
    used: area / (length * width),
  };
}
