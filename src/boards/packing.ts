/** The packer's tables: which blank may come from which kind of board, what it takes up there, and what a board costs. */
import { type Blank } from './blank.ts';
import { priceOf } from './buy.ts';
import { type Need, type PackLine, mayTurn, needOn } from './need.ts';
import { classThickness } from './nominal.ts';
import type { Packing } from './pack.ts';
import { type Shop, ticksUp } from './shop.ts';

export type WoodJob = { readonly blanks: readonly Blank[]; readonly lines: readonly PackLine[] };

/** The packer's tables for one wood. */
export function packingOf(job: WoodJob, shop: Shop): Packing {
  const prices = job.lines.map((l) => (l.stock.have ? 0 : priceOf(l.stock)));
  const priced = prices.every((p) => p !== null) && prices.some((p) => p !== null && p > 0);
  // Litres of wood where there are no prices; a little of it beside prices, so that among equals the smaller board is taken.
  const litres = (l: PackLine): number => (l.stock.length * l.stock.width * l.stock.thickness) / 1e6;
  const bySize = new Map<string, number>();
  const needs: (Need | null)[][] = [];
  const turns: boolean[][] = [];
  const kindOf = job.blanks.map((b) => {
    const key = [b.finished.length, b.finished.width, b.finished.thickness, b.turns].join('|');
    const known = bySize.get(key);
    if (known !== undefined) return known;
    bySize.set(key, needs.length);
    needs.push(job.lines.map((l) => needOn(b, l, shop)));
    turns.push(job.lines.map((l) => mayTurn(b, l)));
    return needs.length - 1;
  });
  return {
    kx: ticksUp(shop, shop.kerf.crosscut),
    ky: ticksUp(shop, shop.kerf.rip),
    lines: job.lines.map((l, i) => ({
      X: l.room.length,
      Y: l.room.width,
      count: l.stock.count,
      cost: priced ? (prices[i] ?? 0) + 1e-6 * litres(l) : litres(l),
    })),
    kindOf,
    needs,
    turns,
  };
}

/** Boards of one nominal thickness, and the blanks for which it is the thinnest that gives them. */
export type Class = { readonly thickness: number; readonly lines: readonly number[]; readonly items: number[] };
export function classesOf(p: Packing, job: WoodJob): { readonly classes: readonly Class[]; readonly homeless: readonly number[] } {
  const by = new Map<number, number[]>();
  job.lines.forEach((l, i) => {
    const t = classThickness(l.stock.nominal, l.stock.thickness);
    by.set(t, [...(by.get(t) ?? []), i]);
  });
  const classes: Class[] = [...by].sort((a, b) => a[0] - b[0]).map(([thickness, lines]) => ({ thickness, lines, items: [] }));
  const homeless: number[] = [];
  const homes = p.needs.map((needs) => classes.find((c) => c.lines.some((l) => needs[l] && (p.lines[l]?.count ?? 1) > 0)));
  p.kindOf.forEach((kind, item) => (homes[kind]?.items ?? homeless).push(item));
  return { classes, homeless };
}

/** How many of each kind there are among some items. */
export function countsOf(p: Packing, items: readonly number[]): Map<number, number> {
  const counts = new Map<number, number>();
  for (const item of items) counts.set(p.kindOf[item] as number, (counts.get(p.kindOf[item] as number) ?? 0) + 1);
  return counts;
}
