/** Usual cautions of the rough work. Common practice throughout: the manual of the machine rules. */
import type { Caution, LaidBoard } from './layout.ts';
import type { Shop } from './shop.ts';

export function cautionsOf(boards: readonly LaidBoard[], shop: Shop): Caution[] {
  const out = new Map<string, Caution>();
  const say = (part: string, what: string, words: string): void => void out.set(`${part} ${what}`, { part, words });
  for (const board of boards) {
    if (board.surface !== 'rough') continue;
    for (const p of board.placements) {
      if (p.length < shop.planer.shortest)
        say(
          p.part,
          'short',
          'Short for jointer and planer: mill it while it is still part of a longer strip, and keep to the shortest length in the machine’s manual.',
        );
      if (p.width > shop.jointer.widest)
        say(p.part, 'wide', 'Wider than the jointer: flatten it by hand or on a sled, or glue it up from narrower staves.');
      if (p.width > shop.planer.widest) say(p.part, 'wider', 'Wider than the planer: glue it up from narrower staves.');
    }
  }
  if (boards.some((b) => b.surface === 'rough'))
    out.set('all', {
      part: '',
      words:
        'Rough boards can bind a blade: nothing goes through a table saw before it has a flat face and a straight edge. Guards, push sticks and hearing, eye and dust protection as the machine’s manual says.',
    });
  return [...out.values()];
}
