/**
 * Boards taken for granted when the user has told of none: for each wood and thickness one size of board, as many as wanted, large
 * enough for the largest blank and, of those, the one from which a quick layout wastes least. Thicknesses: NHLA quarters, or EN 1313-2. Widths and lengths: common practice at a hardwood yard
 * (NHLA FAS begins at 6 in × 8 ft; standard lengths 4 to 16 ft, from memory).
 */
import { quantise } from '../geom/vec3.ts';
import { woodOf } from '../wood/woods.ts';
import type { Blank } from './blank.ts';
import { METRIC, QUARTERS } from './nominal.ts';
import { packLine, roughOn, thickEnough } from './need.ts';
import { packingOf } from './packing.ts';
import { TASTE, fill } from './search.ts';
import { type Shop, mmOf } from './shop.ts';
import { type StockLine, marginsOf } from './stock.ts';

const INCH = 25.4;
type Ladder = {
  readonly thicknesses: readonly { nominal: string; thickness: number }[];
  readonly widths: readonly number[];
  readonly lengths: readonly number[];
};
const LADDERS: Readonly<Record<'in' | 'mm', Ladder>> = {
  in: {
    thicknesses: QUARTERS.map((q) => ({ nominal: q.nominal, thickness: quantise(q.rough) })),
    widths: [6, 8, 10, 12].map((n) => quantise(n * INCH)),
    lengths: [8, 9, 10, 11, 12, 13, 14, 15, 16].map((n) => quantise(n * 12 * INCH)),
  },
  mm: {
    thicknesses: METRIC.map((t) => ({ nominal: `${t} mm`, thickness: t })),
    widths: [150, 200, 250, 300],
    lengths: [2500, 3000, 3500, 4000, 4500, 5000],
  },
};
/** A usual sheet: 8 × 4 ft, or its metric brother. */
const SHEET = { in: { length: quantise(96 * INCH), width: quantise(48 * INCH) }, mm: { length: 2440, width: 1220 } };

/** Stock for exactly these blanks; the blanks of a wood that outgrow every step are left to be named by the layout. */
export function assumedStock(blanks: readonly Blank[], system: 'mm' | 'in', shop: Shop): StockLine[] {
  const out: StockLine[] = [];
  const woods = new Map<string, Blank[]>();
  for (const b of blanks) {
    const id = woodOf(b.wood).id;
    woods.set(id, [...(woods.get(id) ?? []), b]);
  }
  for (const [id, mine] of woods) {
    const wood = mine[0]?.wood ?? id;
    const kind = woodOf(wood);
    if (kind.kind === 'other') {
      if (kind.of === 'sheet') out.push(...sheetsFor(mine, id, wood, system));
    } else out.push(...boardsFor(mine, id, wood, LADDERS[system], shop));
  }
  return out;
}

function boardsFor(blanks: readonly Blank[], id: string, wood: string, ladder: Ladder, shop: Shop): StockLine[] {
  const most = { width: ladder.widths.at(-1) ?? 0, length: ladder.lengths.at(-1) ?? 0 };
  let rest = [...blanks];
  return ladder.thicknesses.map(({ nominal, thickness }) => {
    const line: StockLine = { id: `${id} ${nominal}`, wood, nominal, thickness, ...most, count: null, surface: 'rough', assumed: true };
    const ready = packLine(line, shop);
    const mine = rest.filter((b) => thickEnough(b, ready));
    rest = rest.filter((b) => !mine.includes(b));
    return bestSize(mine, line, ladder, shop);
  });
}

/** The size of board for these blanks; blanks larger than every step do not count. */
function bestSize(blanks: readonly Blank[], line: StockLine, ladder: Ladder, shop: Shop): StockLine {
  const m = marginsOf(line, shop);
  const needs = blanks.map((b) => roughOn(b, line, shop)).map((n) => ({ l: mmOf(shop, n.l), w: mmOf(shop, n.w) }));
  // Margins are rounded up to whole ticks, hence the ticks on top.
  const enough = (steps: readonly number[], sizes: readonly number[], margin: number): number[] => {
    const top = steps.at(-1) ?? 0;
    const largest = sizes.filter((s) => s + margin <= top + 1e-6).reduce((a, s) => Math.max(a, s), 0);
    const fit = steps.filter((s) => s + 1e-6 >= largest + margin);
    return fit.length > 0 ? fit.slice(0, 3) : [top];
  };
  const widths = enough(
    ladder.widths,
    needs.map((n) => n.w),
    m.straight + m.far + 3 * shop.tick,
  );
  const lengths = enough(
    ladder.lengths,
    needs.map((n) => n.l),
    2 * m.end + 3 * shop.tick,
  );
  const sizes = widths.flatMap((width) => lengths.map((length) => ({ ...line, width, length })));
  if (blanks.length === 0 || blanks.length > MANY) return sizes[0] ?? line;
  const rated = sizes.map((size) => ({ size, rate: litresOf(blanks, size, shop) }));
  return rated.reduce((a, b) =>
    b.rate.left < a.rate.left || (b.rate.left === a.rate.left && b.rate.litres < a.rate.litres * (1 - 1e-9)) ? b : a,
  ).size;
}
/** Above this the smallest size is taken unseen. */
const MANY = 1000;

/** Wood that a first layout of these blanks takes from boards of one size. */
function litresOf(blanks: readonly Blank[], line: StockLine, shop: Shop): { readonly left: number; readonly litres: number } {
  const p = packingOf({ blanks, lines: [packLine(line, shop)] }, shop);
  const order = blanks.map((_, i) => i).sort((a, b) => (blanks[b]?.finished.length ?? 0) - (blanks[a]?.finished.length ?? 0) || a - b);
  const done = fill(p, [], { order, taste: TASTE, opens: [0] });
  return { left: done.left.length, litres: done.boards.length * (p.lines[0]?.cost ?? 0) };
}
function sheetsFor(blanks: readonly Blank[], id: string, wood: string, system: 'mm' | 'in'): StockLine[] {
  const thicknesses = [...new Set(blanks.map((b) => b.finished.thickness))].sort((a, b) => a - b);
  return thicknesses.map((thickness) => {
    const nominal = `${Math.round(thickness * 10) / 10} mm`;
    return { id: `${id} ${nominal}`, wood, nominal, thickness, ...SHEET[system], count: null, surface: 'sheet', assumed: true };
  });
}
