/** What to buy: boards by size, counted and tallied; and stuff that is bought to size. */
import { isSoftwood, isWood } from '../wood/woods.ts';
import { type Blank } from './blank.ts';
import { type Tally, hardwoodFeet, newTally, softwoodFeet, volumeFeet } from './board-feet.ts';
import type { BuyRow } from './layout.ts';
import { nominalInches } from './nominal.ts';
import type { StockLine } from './stock.ts';

const INCH = 25.4;

/** Board feet of one board, as its wood is tallied; hardwood whose name says no inches goes by its measured thickness. */
function boardFeetOf(line: StockLine, tally: Tally): number {
  const n = nominalInches(line.nominal);
  if (isSoftwood(line.wood))
    return n && n.width !== null
      ? softwoodFeet(n.thickness, n.width, line.length)
      : Math.round(volumeFeet(line.thickness, line.width, line.length) * 100) / 100;
  return hardwoodFeet(n?.thickness ?? line.thickness / INCH, line.width, line.length, tally);
}
/** Price of one board tallied alone, an exact half up or down; null when none is known. */
export function priceOf(line: StockLine, halfUp = true): number | null {
  const p = line.price;
  if (!p) return null;
  if ('each' in p) return p.each;
  if ('perMetre' in p) return (p.perMetre * line.length) / 1000;
  if ('perCubicMetre' in p) return (p.perCubicMetre * line.length * line.width * line.thickness) / 1e9;
  return p.perBoardFoot * boardFeetOf(line, { halfUp });
}

/** Rows for the boards used that do not lie in the shop, in the order of the stock; then what is bought to size. */
export function buyRows(used: ReadonlyMap<StockLine, number>, toSize: readonly Blank[]): BuyRow[] {
  const tally = newTally();
  const rows: BuyRow[] = [];
  for (const [line, count] of used) {
    if (line.have || count === 0) continue;
    const feet = isWood(line.wood) ? Array.from({ length: count }, () => boardFeetOf(line, tally)).reduce((a, b) => a + b, 0) : null;
    const each = priceOf(line);
    // By the board foot the whole tally is paid for, so that halves that go up and down in turn even out.
    const cost =
      each === null ? null : line.price && 'perBoardFoot' in line.price && feet !== null ? feet * line.price.perBoardFoot : each * count;
    const { wood, nominal, thickness, width, length } = line;
    const m3 = (thickness * width * length * count) / 1e9;
    rows.push({
      what: line.surface === 'sheet' ? 'sheets' : 'boards',
      wood,
      nominal,
      thickness,
      width,
      length,
      count,
      boardFeet: feet,
      m3,
      cost,
      assumed: line.assumed ?? false,
    });
  }
  return [...rows, ...sizedRows(toSize)];
}
function sizedRows(blanks: readonly Blank[]): BuyRow[] {
  const rows = new Map<string, BuyRow>();
  for (const b of blanks) {
    const { length, width, thickness } = b.finished;
    const key = [b.wood, length, width, thickness].join('|');
    const row = rows.get(key) ?? {
      what: b.wood,
      wood: b.wood,
      nominal: 'to size',
      thickness,
      width,
      length,
      count: 0,
      boardFeet: null,
      m3: 0,
      cost: null,
      assumed: false,
    };
    rows.set(key, { ...row, count: row.count + 1, m3: (thickness * width * length * (row.count + 1)) / 1e9 });
  }
  return [...rows.values()];
}
