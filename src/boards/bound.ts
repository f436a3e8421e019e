/**
 * How few boards any plan can use that lays the grain along the board and keeps the kerf between blanks: proved, not searched.
 *
 * Each blank is given a worth so that no board can ever hold more worth than its own cost; then the sum of all worths is a lower
 * bound on the cost of the boards. Worth on one kind of board = its cost × f(length share) × g(width share), where f and g are
 * functions under which no set of shares that fits into 1 adds up to more than 1 (dual feasible functions; Fekete and Schepers,
 * Mathematical Programming 91, 2001); a blank takes the least worth over all boards that it could come from. With f and g plain this is the area
 * bound. The kerf enters by the usual growth: pieces (l + k) × (w + k) on boards (L + k) × (W + k).
 */
import type { Packing } from './pack.ts';

/** Share a / b, both whole, as a number 0…1 that never adds up to more than 1 when the shares do not. */
type Dual = { readonly name: 'plain' | 'steps' | 'large'; readonly at: (a: number, b: number) => number };

const plain: Dual = { name: 'plain', at: (a, b) => a / b };
/** u(k): whole k-ths; floor((k + 1)·x) / k where (k + 1)·x is not whole, else x. */
const steps = (k: number): Dual => ({
  name: 'steps',
  at: (a, b) => {
    const scaled = (k + 1) * a;
    return scaled % b === 0 ? a / b : Math.floor(scaled / b) / k;
  },
});
/** Above 1 − n/d a blank counts as the whole, below n/d as nothing. Needs 2n <= d. */
const large = (n: number, d: number): Dual => ({
  name: 'large',
  at: (a, b) => (a * d > (d - n) * b ? 1 : a * d < n * b ? 0 : a / b),
});
const MANY: readonly Dual[] = [
  plain,
  ...[1, 2, 3, 4, 5, 6, 7].map(steps),
  ...[2, 3, 4, 5, 7].map((d) => large(1, d)),
  large(2, 5),
  large(3, 7),
];
const FEW: readonly Dual[] = [plain, steps(1), steps(2), steps(3)];

export type WoodBound = { readonly boards: number; readonly cost: number; readonly by: 'area' | 'length' | 'width' | 'length and width' };

/** The bound for these items, all to come from `lines`. `counts[kind]` items of each kind. Every counted kind must fit some line. */
export function lowerBound(p: Packing, counts: ReadonlyMap<number, number>, lines: readonly number[]): WoodBound {
  const duals = counts.size * lines.length > 3000 ? FEW : MANY;
  let fewest = 0;
  let least = 0;
  let by: WoodBound['by'] = 'area';
  for (const f of duals)
    for (const g of duals) {
      let boards = 0;
      let cost = 0;
      for (const [kind, n] of counts) {
        const worth = worthOf(p, kind, lines, f, g);
        boards += n * worth.board;
        cost += n * worth.cost;
      }
      const whole = Math.ceil(boards - 1e-6);
      if (whole > fewest) {
        fewest = whole;
        by = f === plain ? (g === plain ? 'area' : 'width') : g === plain ? 'length' : 'length and width';
      }
      least = Math.max(least, cost);
    }
  const cheapest = Math.min(...lines.map((l) => p.lines[l]?.cost ?? 0));
  return { boards: fewest, cost: Math.max(least, counts.size === 0 ? 0 : fewest * cheapest), by };
}

/** Share of a board, and of its cost, that one blank of this kind takes up wherever it lies. */
function worthOf(p: Packing, kind: number, lines: readonly number[], f: Dual, g: Dual): { readonly board: number; readonly cost: number } {
  let board = Infinity;
  let cost = Infinity;
  for (const l of lines) {
    const line = p.lines[l];
    const need = p.needs[kind]?.[l];
    if (!line || !need) continue;
    const along = (n: number): number => f.at(n + p.kx, line.X + p.kx);
    const across = (n: number): number => g.at(n + p.ky, line.Y + p.ky);
    let share = need.l <= line.X && need.w <= line.Y ? along(need.l) * across(need.w) : Infinity;
    if (p.turns[kind]?.[l] && need.w <= line.X && need.l <= line.Y) share = Math.min(share, along(need.w) * across(need.l));
    board = Math.min(board, share);
    cost = Math.min(cost, share * line.cost);
  }
  if (!Number.isFinite(board)) throw new Error(`kind ${kind} fits none of its boards, so it has no bound`);
  return { board, cost };
}
