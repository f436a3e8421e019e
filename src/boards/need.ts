/** What a blank takes up on a board, in whole ticks. */
import { hasFaceGrain } from '../wood/woods.ts';
import type { Blank } from './blank.ts';
import { type Shop, ticksDown, ticksUp } from './shop.ts';
import { type Room, type StockLine, givesThickness, roomOf } from './stock.ts';

/** A stock line made ready for the packer. */
export type PackLine = { readonly stock: StockLine; readonly room: Room; readonly gives: number };
export type Need = { readonly l: number; readonly w: number };

export const packLine = (stock: StockLine, shop: Shop): PackLine => ({
  stock,
  room: roomOf(stock, shop),
  gives: givesThickness(stock, shop),
});

/** Less than the width of a saw mark: a finished size that differs from a dressed one by less is that size. */
export const SAME = 0.3;

/** Rough length and width of a blank on this kind of board, before asking whether it fits. */
export function roughOn(blank: Blank, stock: StockLine, shop: Shop): Need {
  const { length, width } = blank.finished;
  if (stock.surface === 'rough') return { l: ticksUp(shop, length + shop.over.length), w: ticksUp(shop, width + shop.over.width) };
  if (stock.surface === 'sheet') return { l: ticksUp(shop, length), w: ticksUp(shop, width) };
  const whole = Math.abs(width - stock.width) <= SAME;
  return {
    l: ticksUp(shop, length + shop.over.length),
    w: whole ? ticksDown(shop, stock.width) : ticksUp(shop, width + shop.dressed.sawnEdge),
  };
}
/** Is the board thick enough? A sheet has the thickness that it has. */
export const thickEnough = (blank: Blank, line: PackLine): boolean =>
  line.stock.surface === 'sheet'
    ? Math.abs(blank.finished.thickness - line.gives) <= SAME
    : blank.finished.thickness <= line.gives + (line.stock.surface === 'dressed' ? SAME : 1e-6);
/** May it lie across? Only sheets without a face grain, and only where it is said; wood never. */
export const mayTurn = (blank: Blank, line: PackLine): boolean =>
  blank.turns && line.stock.surface === 'sheet' && !hasFaceGrain(line.stock.wood);

/** What it needs on this board, or null when the board is too thin, too short or too narrow for it. */
export function needOn(blank: Blank, line: PackLine, shop: Shop): Need | null {
  if (!thickEnough(blank, line)) return null;
  const need = roughOn(blank, line.stock, shop);
  const fits = (l: number, w: number): boolean => l <= line.room.length && w <= line.room.width;
  return fits(need.l, need.w) || (mayTurn(blank, line) && fits(need.w, need.l)) ? need : null;
}
