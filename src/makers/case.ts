/**
 * Case: two sides, top and bottom, with a back and shelves or dividers if wanted. The outside fills the space, the front is open.
 *
 *     ┌──────────────────┐  top            The grain runs round: up the sides, along top and bottom, so that all
 *     │                  │                 four grow to the back together and nothing fights. Only the back, held
 *     │  shelf ────────  │  side           in grooves and never glued, goes its own way.
 *     └──────────────────┘  bottom
 *
 * Corners: *dovetailed*, tails on the sides, so that neither weight nor a lift draws top or bottom off; or *housed*, the sides running
 * past. A housed case takes its back from the end, down the grooves of its sides, behind top, bottom and shelves.
 */
import { isWood } from '../wood/woods.ts';
import { inside } from './case/inside.ts';
import { panel } from './case/back.ts';
import { shell } from './case/shell.ts';
import { type CaseSettings, checkCase, settings } from './case/settings.ts';
import { joined, namer, patchesOf } from './kit/draft.ts';
import type { Filled, Maker, Opening } from './kit/maker.ts';
import { readSettings } from './kit/settings.ts';
import { examples } from './case/examples.ts';

function fill(space: Opening, given: Readonly<Record<string, string>>): Filled {
  const read = readSettings(settings, space, given);
  if (!read.ok) return read;
  const s: CaseSettings = { ...read.values, solid: isWood(read.values.back_wood) };
  const troubles = checkCase(space, s);
  if (troubles.length) return { ok: false, troubles };
  const names = namer(s.name, space);
  const draft = joined(shell(space, s, names), panel(space, s, names), inside(space, s, names));
  return { ok: true, patches: patchesOf(draft) };
}
export const maker: Maker = {
  id: 'case',
  title: 'Case with back',
  words: 'Sides, top and bottom with the grain running round, a back that is free to move, shelves or dividers.',
  settings,
  fill,
  examples,
};
