/**
 * How few boards any plan can use that lays the grain along the board and keeps the kerf between blanks: proved, not searched.
 *
 * Each blank is given a worth so that no board can ever hold more worth than its own cost; then the sum of all worths is a lower
 * bound on the cost of the boards. Worth on one kind of board = its cost × f(length share) × g(width share), where f and g are
 * functions under which no set of shares that fits into 1 adds up to more than 1 (dual feasible functions; Fekete and Schepers,
 * Mathematical Programming 91, 2001, cited from memory); a blank takes the least worth over all boards that it could come from. With f and g plain this is the area
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

/** What f and g make of one kind of blank on one kind of board, lying along and, where it may, across. */
type Shares = { readonly cost: number; readonly along: Ways; readonly across: Ways | null };
type Ways = { readonly f: readonly number[]; readonly g: readonly number[] };

function sharesOf(p: Packing, kind: number, lines: readonly number[], duals: readonly Dual[]): Shares[] {
  return lines.flatMap((l) => {
    const line = p.lines[l];
    const need = p.needs[kind]?.[l];
    if (!line || !need) return [];
    const ways = (length: number, width: number): Ways | null =>
      length > line.X || width > line.Y
        ? null
        : { f: duals.map((d) => d.at(length + p.kx, line.X + p.kx)), g: duals.map((d) => d.at(width + p.ky, line.Y + p.ky)) };
    const along = ways(need.l, need.w);
    const across = p.turns[kind]?.[l] ? ways(need.w, need.l) : null;
    if (along) return [{ cost: line.cost, along, across }];
    return across ? [{ cost: line.cost, along: across, across: null }] : [];
  });
}

/** The bound for these items, all to come from `lines`. `counts`: items of each kind. Every counted kind must fit some line. */
export function lowerBound(p: Packing, counts: ReadonlyMap<number, number>, lines: readonly number[]): WoodBound {
  const duals = counts.size * lines.length > 3000 ? FEW : MANY;
  const kinds = [...counts].map(([kind, n]) => ({ n, shares: sharesOf(p, kind, lines, duals) }));
  const homeless = kinds.findIndex((k) => k.shares.length === 0);
  if (homeless >= 0) throw new Error(`kind ${[...counts.keys()][homeless]} fits none of its boards, so it has no bound`);
  let fewest = 0;
  let least = 0;
  let by: WoodBound['by'] = 'area';
  duals.forEach((f, i) => {
    duals.forEach((g, j) => {
      const sum = worthOf(kinds, i, j);
      const whole = Math.ceil(sum.boards - 1e-6);
      if (whole > fewest) {
        fewest = whole;
        by = f === plain ? (g === plain ? 'area' : 'width') : g === plain ? 'length' : 'length and width';
      }
      least = Math.max(least, sum.cost);
    });
  });
  const cheapest = Math.min(...lines.map((l) => p.lines[l]?.cost ?? 0));
  return { boards: fewest, cost: Math.max(least, counts.size === 0 ? 0 : fewest * cheapest), by };
}

/** Boards, and cost, that all blanks together take up at the least under one pair of functions. */
function worthOf(
  kinds: readonly { readonly n: number; readonly shares: readonly Shares[] }[],
  i: number,
  j: number,
): { readonly boards: number; readonly cost: number } {
  let boards = 0;
  let cost = 0;
  const share = (w: Ways): number => (w.f[i] as number) * (w.g[j] as number);
  for (const { n, shares } of kinds) {
    let board = Infinity;
    let money = Infinity;
    for (const s of shares) {
      const part = s.across ? Math.min(share(s.along), share(s.across)) : share(s.along);
      board = Math.min(board, part);
      money = Math.min(money, part * s.cost);
    }
    boards += n * board;
    cost += n * money;
  }
  return { boards, cost };
}
