/** Boards that there are, or that are assumed. All lengths mm, actual sizes: what is measured wins over what it is called. */
import { type Problem, problem } from '../model/problem.ts';
import type { Sawn } from '../wood/rings.ts';
import { type Shop, overThickness, ticksDown, ticksUp } from './shop.ts';

export type Price =
  { readonly each: number } | { readonly perBoardFoot: number } | { readonly perMetre: number } | { readonly perCubicMetre: number };
/** rough: as sawn; dressed: planed and square, ready to use; sheet: plywood and the like. */
export type Surface = 'rough' | 'dressed' | 'sheet';

export type StockLine = {
  readonly id: string;
  readonly wood: string;
  /** '4/4', '27 mm', '2x4'; how it is sold. */
  readonly nominal: string;
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  /** How many there are; null: as many as wanted. */
  readonly count: number | null;
  readonly surface: Surface;
  /** Not the user's own board but one that the tool takes for granted until told otherwise. */
  readonly assumed?: boolean;
  /** Lies in the shop already, so it is not bought. */
  readonly have?: boolean;
  readonly price?: Price;
  readonly sawn?: Sawn;
};

/** Edges and ends of a board that no blank may use, mm. */
export type Margins = { readonly end: number; readonly straight: number; readonly far: number };
export function marginsOf(line: StockLine, shop: Shop): Margins {
  if (line.surface === 'rough') return { end: shop.rough.endTrim, straight: shop.rough.straighten, far: shop.rough.farEdge };
  if (line.surface === 'dressed') return { end: shop.dressed.endTrim, straight: 0, far: 0 };
  return { end: shop.sheetTrim, straight: shop.sheetTrim, far: shop.sheetTrim };
}
/** Greatest finished thickness that a board gives, mm. */
export const givesThickness = (line: StockLine, shop: Shop): number =>
  line.surface === 'rough' ? line.thickness - overThickness(shop, line.thickness) : line.thickness;

/** The room for blanks on a board, in whole ticks: `x` and `y` where it begins, from the left end and the edge that is straightened. */
export type Room = { readonly x: number; readonly y: number; readonly length: number; readonly width: number };
export function roomOf(line: StockLine, shop: Shop): Room {
  const m = marginsOf(line, shop);
  const x = ticksUp(shop, m.end);
  const y = ticksUp(shop, m.straight);
  return { x, y, length: ticksDown(shop, line.length) - 2 * x, width: ticksDown(shop, line.width) - y - ticksUp(shop, m.far) };
}

/** Lines that can be used, and what is wrong with the others. */
export function soundStock(stock: readonly StockLine[]): { readonly lines: readonly StockLine[]; readonly problems: readonly Problem[] } {
  const problems: Problem[] = [];
  const seen = new Set<string>();
  const lines = stock.filter((s) => {
    const where = `stock ${s.id}`;
    const before = problems.length;
    for (const key of ['thickness', 'width', 'length'] as const)
      if (!(Number.isFinite(s[key]) && s[key] > 0 && s[key] <= 100_000))
        problems.push(problem(where, `its ${key} of ${s[key]} mm cannot be; the board is left out.`));
    if (s.count !== null && !(Number.isInteger(s.count) && s.count >= 0))
      problems.push(problem(where, `a count of ${s.count} cannot be; the board is left out.`));
    if (seen.has(s.id)) problems.push(problem(where, 'there are two of this name; the second is left out.'));
    seen.add(s.id);
    return problems.length === before;
  });
  return { lines, problems };
}
