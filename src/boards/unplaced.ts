/** Why a blank lies on no board, and the nearest way out. */
import { isWood, nearestWood, woodOf, woodWords } from '../wood/woods.ts';
import { type Blank, roughOf } from './blank.ts';
import type { Cure, Unplaced, WhyNot } from './layout.ts';
import { type PackLine, mayTurn, needOn, roughOn, thickEnough } from './need.ts';
import { type Shop, mmOf } from './shop.ts';

const mm = (n: number): string => `${Math.round(n * 10) / 10} mm`;

/** `lines`: all stock; a blank that is here fits no board, or the boards that it fits are used up. */
export function explained(blank: Blank, lines: readonly PackLine[], shop: Shop): Unplaced {
  const name = { part: blank.part, copy: blank.copy, piece: blank.piece, path: blank.path, wood: blank.wood };
  const told = (why: WhyNot, need: number | null, have: number | null, words: string, cure: Cure): Unplaced => ({
    ...name,
    why,
    need,
    have,
    words,
    cure,
  });
  const rough = roughOf(blank.finished, shop);
  const wood = woodWords(blank.wood);
  const board: Cure = {
    do: 'board',
    ...rough,
    words: `A board of ${wood} at least ${mm(rough.thickness)} thick, ${mm(rough.width)} wide and ${mm(rough.length)} long, and its trim, would do.`,
  };
  const mine = lines.filter((l) => woodOf(l.stock.wood).id === woodOf(blank.wood).id);
  if (mine.length === 0) return told('no such wood', null, null, `There are no boards of ${wood}.`, woodCure(blank, lines));
  const thick = mine.filter((l) => thickEnough(blank, l));
  if (thick.length === 0) {
    const have = Math.max(...mine.map((l) => l.gives));
    if (!isWood(blank.wood))
      return told('too thick', blank.finished.thickness, have, `There is no ${wood} ${mm(blank.finished.thickness)} thick.`, board);
    return told(
      'too thick',
      blank.finished.thickness,
      have,
      `It is ${mm(blank.finished.thickness)} thick; the thickest ${wood} gives ${mm(have)} once planed.`,
      layersCure(blank.finished.thickness, have, board),
    );
  }
  const long = thick.filter(
    (l) => roughOn(blank, l.stock, shop).l <= l.room.length || (mayTurn(blank, l) && roughOn(blank, l.stock, shop).w <= l.room.length),
  );
  if (long.length === 0) {
    const have = Math.max(...thick.map((l) => mmOf(shop, l.room.length)));
    return told(
      'too long',
      rough.length,
      have,
      `It needs ${mm(rough.length)} of length; the longest ${wood} that is thick enough has ${mm(have)} between its trimmed ends.`,
      board,
    );
  }
  const fits = long.filter((l) => needOn(blank, l, shop) !== null);
  if (fits.length === 0) {
    const widest = long.reduce((a, b) => (b.room.width > a.room.width ? b : a));
    const have = mmOf(shop, widest.room.width);
    const need = mmOf(shop, roughOn(blank, widest.stock, shop).w);
    return told(
      'too wide',
      need,
      have,
      `It needs ${mm(need)} of width; the widest ${wood} that is thick and long enough has ${mm(have)}.`,
      stavesCure(blank, have, need, board),
    );
  }
  return told('ran out', null, null, `Every board of ${wood} that would take it is used up.`, board);
}

function woodCure(blank: Blank, lines: readonly PackLine[]): Cure {
  const nearest = nearestWood(blank.wood);
  const there = [...new Set(lines.map((l) => woodWords(l.stock.wood)))];
  const has = there.length === 0 ? 'There are no boards at all.' : `There are boards of ${there.join(', ')}.`;
  return {
    do: 'wood',
    nearest,
    words: nearest ? `${has} Was "${nearest}" meant?` : `${has} Add boards of ${woodWords(blank.wood)}, or make the part of another wood.`,
  };
}
function layersCure(thickness: number, have: number, board: Cure): Cure {
  const count = have > 0 ? Math.ceil(thickness / have - 1e-9) : 0;
  if (count < 2 || count > 40) return board;
  const each = thickness / count;
  return { do: 'layers', count, each, words: `Glue it up from ${count} layers of ${mm(each)}.` };
}
function stavesCure(blank: Blank, have: number, need: number, board: Cure): Cure {
  const room = have - (need - blank.finished.width);
  const count = room > 0 ? Math.ceil(blank.finished.width / room - 1e-9) : 0;
  if (count < 2 || count > 100 || !isWood(blank.wood)) return board;
  const each = blank.finished.width / count;
  return { do: 'staves', count, each, words: `Glue it up from ${count} staves of ${mm(each)} each.` };
}
