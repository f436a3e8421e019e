/** The shop as the layout needs to know it: saws, allowances, machines. All lengths mm. Complete without any answer from the user. */
import { type Problem, problem } from '../model/problem.ts';

export type RipSaw = 'band saw' | 'table saw' | 'hand saw';
export type Shop = {
  /** Everything is worked out in whole ticks of this size: 0.1 mm, or 1/64 in. */
  readonly tick: number;
  /** What the blade turns to dust. */
  readonly kerf: { readonly crosscut: number; readonly rip: number };
  /** Which saw rips rough stock. A table saw needs a flat face and a straight edge first; a band saw or hand saw a straight edge. */
  readonly ripAt: RipSaw;
  /** How much larger than finished a blank leaves the rough board. */
  readonly over: {
    readonly length: number;
    readonly width: number;
    /** Thickness from boards up to `thickFrom` (exclusive), and from there on. */
    readonly thin: number;
    readonly thick: number;
    readonly thickFrom: number;
  };
  /** Lost on every rough board: each end (checks), the edge that is made straight, the far edge that is not. */
  readonly rough: { readonly endTrim: number; readonly straighten: number; readonly farEdge: number };
  /** The same for boards bought planed and square, and the allowance on a width that is ripped from one. */
  readonly dressed: { readonly endTrim: number; readonly sawnEdge: number };
  /** Trim round a sheet. */
  readonly sheetTrim: number;
  readonly planer: { readonly shortest: number; readonly widest: number };
  readonly jointer: { readonly widest: number };
  /** An offcut is worth keeping from this size. */
  readonly keep: { readonly length: number; readonly width: number };
};

const INCH = 25.4;

/**
 * The shop of someone who has told nothing. Laid out for a full-kerf blade, so that the plan holds at any saw.
 * SHOP_BASIS says where each figure comes from.
 */
export const defaultShop = (system: 'mm' | 'in'): Shop => ({
  tick: system === 'in' ? INCH / 64 : 0.1,
  kerf: { crosscut: INCH / 8, rip: INCH / 8 },
  ripAt: 'band saw',
  over: {
    length: 25,
    width: 6,
    ...(system === 'in' ? { thin: (3 / 16) * INCH, thick: (1 / 4) * INCH, thickFrom: 1.75 * INCH } : { thin: 5, thick: 6, thickFrom: 60 }),
  },
  rough: { endTrim: 25, straighten: 3, farEdge: 3 },
  dressed: { endTrim: 12, sawnEdge: 1.5 },
  sheetTrim: 6,
  planer: { shortest: 300, widest: 305 },
  jointer: { widest: 200 },
  keep: { length: 300, width: 50 },
});

/** Where the defaults come from; 'common practice' is a habit of the trade for which no publication is named. */
export const SHOP_BASIS: readonly { readonly what: string; readonly source: string }[] = [
  { what: 'tick', source: 'our own: a tenth of a millimetre, or the 64th that rules are marked in' },
  { what: 'kerf', source: 'full-kerf table saw blade, 1/8 in: common figure of blade makers' },
  {
    what: 'over.thin',
    source:
      'NHLA standard surfaced thickness, 3/16 in from rough 4/4 to 6/4; metric boards common practice, 27 gives 22 and 50 gives 45 mm',
  },
  {
    what: 'over.thick',
    source: 'NHLA standard surfaced thickness, 1/4 in from rough 7/4 up; metric boards common practice, 80 gives 74 mm',
  },
  { what: 'over.thickFrom', source: 'the same tables' },
  { what: 'over.length', source: 'common practice, 25 mm (published advice runs from 1/2 in to 100 mm)' },
  { what: 'over.width', source: 'common practice, 6 to 10 mm' },
  { what: 'rough.endTrim', source: 'common practice, 25 to 75 mm each end; look for checks' },
  { what: 'rough.straighten', source: 'common practice, 1.5 to 3 mm a jointed edge' },
  { what: 'rough.farEdge', source: 'common practice' },
  { what: 'dressed', source: 'common practice' },
  { what: 'sheetTrim', source: 'common practice' },
  { what: 'planer', source: 'common practice; the machine’s manual rules' },
  { what: 'jointer', source: 'common practice; the machine’s manual rules' },
  { what: 'keep', source: 'our own' },
];

/** Every figure that cannot be: named with its place, so that nothing is laid out with it. */
export function shopProblems(shop: Shop): Problem[] {
  const out: Problem[] = [];
  const walk = (value: unknown, where: string): void => {
    if (typeof value === 'number') {
      if (!Number.isFinite(value) || value < 0 || value > 10_000)
        out.push(problem(where, `${value} mm cannot be; it should be 0 or more.`));
    } else if (typeof value === 'object' && value !== null)
      for (const [k, v] of Object.entries(value)) walk(v, where === '' ? k : `${where}.${k}`);
  };
  walk(shop, '');
  if (!(shop.tick > 0)) out.push(problem('tick', 'the smallest unit must be above 0.'));
  return out;
}

/** What milling takes off the thickness from a rough board of this thickness. */
export const overThickness = (shop: Shop, thickness: number): number =>
  thickness < shop.over.thickFrom ? shop.over.thin : shop.over.thick;
/** Length to whole ticks, upward: for what must come out of the board. */
export const ticksUp = (shop: Shop, mm: number): number => Math.ceil(mm / shop.tick - 1e-4);
/** Length to whole ticks, downward: for what the board has. */
export const ticksDown = (shop: Shop, mm: number): number => Math.floor(mm / shop.tick + 1e-4);
/** Back to mm, rounded to 1e-6. */
export const mmOf = (shop: Shop, ticks: number): number => Math.round(ticks * shop.tick * 1e6) / 1e6;
