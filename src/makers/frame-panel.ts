/**
 * Frame and panel: two stiles, two rails, a panel that lies loose in grooves all round. The outside fills the space.
 *
 *     ┌──┬────────┬──┐   rail      The width moves by that of two stiles only; the panel has room of its
 *     │  ├────────┤  │             own in the grooves and is never glued. A *stub* tenon is no longer than
 *     │  │ panel  │  │   stile     the groove is deep: light doors and sheets; a *haunched* tenon goes
 *     │  ├────────┤  │             deep, its haunch fills the groove at the corner.
 *     └──┴────────┴──┘   rail
 */
import { namer, patchesOf } from './kit/draft.ts';
import type { Filled, Maker, Opening } from './kit/maker.ts';
import { readSettings } from './kit/settings.ts';
import { examples } from './frame-panel/examples.ts';
import { checkFrame, settings } from './frame-panel/settings.ts';
import { frame } from './frame-panel/frame.ts';

function fill(space: Opening, given: Readonly<Record<string, string>>): Filled {
  const read = readSettings(settings, space, given);
  if (!read.ok) return read;
  const s = read.values;
  const troubles = checkFrame(space, s);
  if (troubles.length) return { ok: false, troubles };
  const n = namer(s.name, space);
  return { ok: true, patches: patchesOf({ groups: { [s.name]: { ...n.home } }, ...frame(s, n, space.path, s.name) }) };
}
export const maker: Maker = {
  id: 'frame_panel',
  title: 'Frame and panel',
  words: 'Stiles and rails with stub or haunched tenons, and a panel with room to move in their grooves.',
  settings,
  fill,
  examples,
};
