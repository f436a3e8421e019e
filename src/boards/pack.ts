/**
 * Blanks on boards as the saw will find them: a board is crosscut into sections, a section ripped into strips, a strip crosscut
 * into blanks. Whole ticks throughout. A state is never changed in place: what changes is copied, the rest is shared.
 */
import type { Need } from './need.ts';

export type Lying = { readonly item: number; readonly l: number; readonly w: number; readonly turned: boolean };
/** `w` its width, `used` the length taken up, kerfs between blanks included. */
export type Strip = { readonly w: number; readonly used: number; readonly items: readonly Lying[] };
/** `len` the length of its longest strip, `used` the width taken up. */
export type Section = { readonly len: number; readonly used: number; readonly strips: readonly Strip[] };
/** `line` the kind of board, `used` the length taken up, `area` the blanks on it. */
export type Open = { readonly line: number; readonly used: number; readonly area: number; readonly sections: readonly Section[] };

export type Packing = {
  readonly kx: number;
  readonly ky: number;
  readonly lines: readonly { readonly X: number; readonly Y: number; readonly cost: number; readonly count: number | null }[];
  /** Kind of each item: items of equal needs are of one kind. */
  readonly kindOf: readonly number[];
  /** Need of each kind on each line, null where it cannot come from it. */
  readonly needs: readonly (readonly (Need | null)[])[];
  /** May the kind lie across on that line? */
  readonly turns: readonly (readonly boolean[])[];
};
/** What free room is worth beside uncut board, 0…1: in a section beside its strips, and at the end of a strip. */
export type Taste = { readonly section: number; readonly strip: number };

type Place = { board: number; section: number; strip: number; l: number; w: number; turned: boolean; loss: number };

/** Where on the open boards the item does least harm, or null when it fits on none. Equal harm: the first found. */
export function bestPlace(p: Packing, open: readonly Open[], item: number, taste: Taste): Place | null {
  const kind = p.kindOf[item] as number;
  const needs = p.needs[kind] as readonly (Need | null)[];
  let best: Place | null = null;
  for (let b = 0; b < open.length; b++) {
    const board = open[b] as Open;
    const need = needs[board.line];
    const line = p.lines[board.line];
    if (!need || !line || line.X * line.Y - board.area < need.l * need.w) continue;
    best = placeOn(p, board, b, need.l, need.w, false, taste, best);
    if (p.turns[kind]?.[board.line]) best = placeOn(p, board, b, need.w, need.l, true, taste, best);
  }
  return best;
}

/** The best of `best` and every place on one board. The loss is the worth of the room that is gone or tied down. */
function placeOn(
  p: Packing,
  board: Open,
  b: number,
  l: number,
  w: number,
  turned: boolean,
  taste: Taste,
  best: Place | null,
): Place | null {
  const { X, Y } = p.lines[board.line] as Packing['lines'][number];
  const { kx, ky } = p;
  let out = best;
  const offer = (section: number, strip: number, loss: number): void => {
    if (!out || loss < out.loss) out = { board: b, section, strip, l, w, turned, loss };
  };
  for (let c = 0; c < board.sections.length; c++) {
    const s = board.sections[c] as Section;
    for (let k = 0; k < s.strips.length; k++) {
      const strip = s.strips[k] as Strip;
      const longer = strip.used + kx + l;
      const grown = Math.max(0, longer - s.len);
      if (board.used + grown > X) continue;
      const wider = Math.max(0, w - strip.w);
      if (s.used + wider > Y) continue;
      const width = strip.w + wider;
      const boardLoss = grown * Y;
      const sectionLoss = taste.section * ((Y - s.used) * s.len - (Y - s.used - wider) * (s.len + grown));
      const stripLoss = taste.strip * (strip.w * (s.len - strip.used) - width * (s.len + grown - longer) - grown * (s.used - strip.w));
      offer(c, k, boardLoss + sectionLoss + stripLoss);
    }
    const grown = Math.max(0, l - s.len);
    if (board.used + grown > X || s.used + ky + w > Y) continue;
    const boardLoss = grown * Y;
    const sectionLoss = taste.section * ((Y - s.used) * s.len - (Y - s.used - ky - w) * (s.len + grown));
    const stripLoss = -taste.strip * (w * (s.len + grown - l) + grown * s.used);
    offer(c, -1, boardLoss + sectionLoss + stripLoss);
  }
  const start = board.sections.length === 0 ? 0 : kx;
  if (board.used + start + l <= X && w <= Y) offer(-1, -1, (start + l) * Y - taste.section * (Y - w) * l);
  return out;
}

/** The board with the item at that place. */
export function withItem(p: Packing, board: Open, at: Place, item: number): Open {
  const lying: Lying = { item, l: at.l, w: at.w, turned: at.turned };
  const area = board.area + at.l * at.w;
  const fresh: Strip = { w: at.w, used: at.l, items: [lying] };
  if (at.section < 0) {
    const used = board.used + (board.sections.length === 0 ? 0 : p.kx) + at.l;
    return { ...board, used, area, sections: [...board.sections, { len: at.l, used: at.w, strips: [fresh] }] };
  }
  const s = board.sections[at.section] as Section;
  const old = at.strip < 0 ? null : (s.strips[at.strip] as Strip);
  const strip = old ? { w: Math.max(old.w, at.w), used: old.used + p.kx + at.l, items: [...old.items, lying] } : fresh;
  const len = Math.max(s.len, strip.used);
  const section: Section = {
    len,
    used: old ? s.used + strip.w - old.w : s.used + p.ky + at.w,
    strips: old ? s.strips.map((o, k) => (k === at.strip ? strip : o)) : [...s.strips, strip],
  };
  return { ...board, used: board.used + len - s.len, area, sections: board.sections.map((o, c) => (c === at.section ? section : o)) };
}

/** An empty board of a line. */
export const emptyBoard = (line: number): Open => ({ line, used: 0, area: 0, sections: [] });

/** The board without some of its sections. */
export function withoutSections(p: Packing, board: Open, gone: (section: number) => boolean): Open {
  const sections = board.sections.filter((_, c) => !gone(c));
  const used = sections.reduce((u, s) => u + s.len, 0) + p.kx * Math.max(0, sections.length - 1);
  const area = sections.reduce((a, s) => a + s.strips.reduce((t, strip) => t + strip.items.reduce((q, i) => q + i.l * i.w, 0), 0), 0);
  return { ...board, used, area, sections };
}
export const itemsOf = (board: Open): number[] =>
  board.sections.flatMap((s) => s.strips.flatMap((strip) => strip.items.map((i) => i.item)));
