/**
 * Door: framed or solid, inside its opening or laid over it, hung on butt hinges.
 *
 *     inset, from above                 overlaid
 *     side │gap┌────────────┐closing    ┌───────────────┐ door
 *     ─────┤   │    door    │ gap       └───────────────┘ stands off a little
 *          (o)─┘            └           │side│
 *
 * The closing gap is the hinge's gap, more by what the door grows across its grain to the wettest season: the whole width of a solid
 * door (or height of a flap), the width of two stiles alone in a framed one. Never less than the far corner needs to swing past.
 */
import { door, hangs } from './door/build.ts';
import { checkDoor, hungOn } from './door/check.ts';
import { examples } from './door/examples.ts';
import { settings } from './door/settings.ts';
import { joined, namer, patchesOf } from './kit/draft.ts';
import type { Filled, Maker, Opening } from './kit/maker.ts';
import { isTrouble } from './kit/neighbours.ts';
import { readSettings } from './kit/settings.ts';

function fill(space: Opening, given: Readonly<Record<string, string>>): Filled {
  const read = readSettings(settings, space, given);
  if (!read.ok) return read;
  const s = read.values;
  const post = hungOn(space, s);
  if (isTrouble(post)) return { ok: false, troubles: [post] };
  const troubles = checkDoor(space, s, post);
  if (troubles.length) return { ok: false, troubles };
  const n = namer(s.name, space);
  return { ok: true, patches: patchesOf(joined(door(space, s, n, post), hangs(s, n, post))) };
}
export const maker: Maker = {
  id: 'door',
  title: 'Door',
  words: 'A framed or solid door or flap, inset or overlaid, on butt hinges, with gaps that follow the seasons.',
  settings,
  fill,
  examples,
};
