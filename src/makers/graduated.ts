/**
 * Graduated openings: an opening divided into rooms one under the other whose heights and dividers add up to it exactly, and a drawer in
 * each if wanted.
 *
 *     ┌──────────┐
 *     ├──────────┤   equal; growing downwards by one step; growing by one ratio; or chosen. One room, the
 *     ├──────────┤   lowest unless "*" names another, takes what the others leave: so they add up whatever
 *     │          │   becomes of the opening.
 *     └──────────┘
 *
 * The dividers are whole shelves housed in the sides, or front rails with runners behind them.
 */
import { boxFor } from './drawer.ts';
import { type Round, runners, stops } from './drawer/runners.ts';
import { checkGraduated, found } from './graduated/check.ts';
import { dividers } from './graduated/dividers.ts';
import { examples } from './graduated/examples.ts';
import { heightsOf, roomSpaces } from './graduated/heights.ts';
import { type GraduatedSettings, settings } from './graduated/settings.ts';
import { type Draft, type Namer, joined, namer, pathIn, patchesOf } from './kit/draft.ts';
import type { Filled, Maker, Opening } from './kit/maker.ts';
import type { Neighbour } from './kit/neighbours.ts';
import { readSettings } from './kit/settings.ts';

function fill(space: Opening, given: Readonly<Record<string, string>>): Filled {
  const read = readSettings(settings, space, given);
  if (!read.ok) return read;
  const s = read.values;
  const heights = heightsOf(space, s);
  if (!heights.ok) return heights;
  const round = found(space, s);
  const troubles = [
    ...round.troubles,
    ...checkGraduated(
      space,
      s,
      heights.rooms.map((r) => r.mm),
      round,
    ),
  ];
  if (troubles.length || !round.left || !round.right) return { ok: false, troubles };
  const n = namer(s.name, space);
  const { left, right } = round;
  const drafts = [roomSpaces(space, s, n, heights), dividers(space, s, n, heights, left.path, right.path)];
  if (s.fill === 'drawers') drafts.push(...heights.rooms.map((_, k) => drawerIn(space, s, n, k, { left, right, below: round.below })));
  return { ok: true, patches: patchesOf(joined(...drafts)) };
}
type Sides = { readonly left: Neighbour; readonly right: Neighbour; readonly below: Neighbour | null };
/** The drawer in room k, counted from the top, and what it runs on. */
function drawerIn(space: Opening, s: GraduatedSettings, n: Namer, k: number, at: Sides): Draft {
  const room = { ...space, path: n.path(`room_${k + 1}`) };
  const id = `${s.name}_drawer_${k + 1}`;
  const own: Namer = { ...n, id: (name) => `${id}_${name}`, path: (name, ...copies) => pathIn(space, `${id}_${name}`, ...copies) };
  const last = k === s.count - 1;
  const rail: Neighbour | null = last ? at.below : { path: n.path(`divider_${k + 1}`), off: 0, box: at.left.box };
  const drafts = [boxFor(room, id, s)];
  if (s.dividers === 'rails' && !last && rail) {
    const round: Round = { left: at.left, right: at.right, below: rail, above: null };
    drafts.push(runners(room, { ...s, runner_thick: s.divider_thick }, own, round));
  }
  if (s.stops === 'yes' && rail) drafts.push(stops(room, s, own, rail));
  return joined(...drafts);
}
export const maker: Maker = {
  id: 'graduated',
  title: 'Graduated drawers or shelves',
  words: 'Divides an opening so that heights and dividers add up to it, equal or growing downwards, with a drawer in each if wanted.',
  settings,
  fill,
  examples,
};
