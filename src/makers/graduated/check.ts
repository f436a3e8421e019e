import { thinSide } from '../drawer.ts';
import { stopDepth, stopWidth } from '../drawer/runners.ts';
import { checkBox } from '../drawer/settings.ts';
import { bounds } from '../kit/bounds.ts';
import type { Opening, Trouble } from '../kit/maker.ts';
import { type Neighbour, isTrouble, neighbourAt } from '../kit/neighbours.ts';
import { type GraduatedSettings, settings } from './settings.ts';

export type Found = {
  readonly left: Neighbour | null;
  readonly right: Neighbour | null;
  readonly below: Neighbour | null;
  readonly troubles: readonly Trouble[];
};
/** The sides that carry the dividers, and what the lowest drawer's stops are glued to. */
export function found(space: Opening, s: GraduatedSettings): Found {
  const left = neighbourAt(space, 'side_left', s.side_left, 'left', 'case side');
  const right = neighbourAt(space, 'side_right', s.side_right, 'right', 'case side');
  const below =
    s.fill === 'drawers' && s.stops === 'yes' ? neighbourAt(space, 'rail_below', s.rail_below, 'bottom', 'rail or bottom') : null;
  const apart = (
    [
      ['side_left', left],
      ['side_right', right],
    ] as const
  ).flatMap(([setting, x]): Trouble[] =>
    !isTrouble(x) && x.off > 0.05 ? [{ setting, cannot: 'the case side does not touch the space', limit: 0, asked: x.off }] : [],
  );
  return {
    left: isTrouble(left) ? null : left,
    right: isTrouble(right) ? null : right,
    below: below && !isTrouble(below) ? below : null,
    troubles: [left, right, ...(below ? [below] : [])].filter(isTrouble).concat(apart),
  };
}
/** Depth that runners need behind a rail, mm. */
const BEHIND = 60;
export function checkGraduated(space: Opening, s: GraduatedSettings, heights: readonly number[], at: Found): Trouble[] {
  const { add, all, most, least } = bounds(space.units, settings);
  if (s.dividers === 'rails') {
    most('rail_deep', 'the rails leave no depth behind them', space.depth - (s.fill === 'drawers' ? BEHIND : 0), s.rail_deep.mm);
    least('divider_thick', 'rails this thin hold no tenon', 12, s.divider_thick.mm);
  }
  if (s.fill !== 'drawers') return all();
  const known = new Set<string>();
  for (const height of heights)
    for (const t of checkBox({ ...space, height }, s))
      if (!known.has(t.setting)) {
        known.add(t.setting);
        add(t.setting === '' ? { ...t, ...fewer(s) } : t);
      }
  if (s.dividers === 'rails')
    for (const side of [at.left, at.right])
      if (side) for (const t of thinSide(side)) add({ ...t, setting: 'dividers', nearest: 'shelves' });
  if (s.stops === 'yes') for (const t of stopTroubles(space, s, at)) add(t);
  return all();
}
/** Too low a room for a drawer: fewer of them, or equal ones. */
function fewer(s: GraduatedSettings): Pick<Trouble, 'setting' | 'nearest'> {
  if (s.count > 2) return { setting: 'count', nearest: String(s.count - 1) };
  return s.rule === 'equal' ? { setting: 'fill', nearest: 'nothing' } : { setting: 'rule', nearest: 'equal' };
}
function stopTroubles(space: Opening, s: GraduatedSettings, at: Found): Trouble[] {
  const trouble = (cannot: string, limit: number, asked: number): Trouble => ({ setting: 'stops', cannot, limit, asked, nearest: 'no' });
  const deep = Math.min(s.dividers === 'rails' ? s.rail_deep.mm : space.depth, at.below?.box.max[1] ?? space.depth);
  return [
    ...(deep < stopDepth(s) ? [trouble('what lies below is not deep enough for stops behind the fronts', stopDepth(s), deep)] : []),
    ...(space.width < stopWidth(s) ? [trouble('the drawers are too narrow for two stops', stopWidth(s), space.width)] : []),
  ];
}
