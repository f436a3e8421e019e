import { thinSide } from '../drawer.ts';
import { stopDepth, stopWidth } from '../drawer/runners.ts';
import { checkBox } from '../drawer/settings.ts';
import type { Opening, Trouble } from '../kit/maker.ts';
import { type Neighbour, isTrouble, neighbourAt } from '../kit/neighbours.ts';
import { textAtMost } from '../kit/text.ts';
import type { GraduatedSettings } from './settings.ts';

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
  const out: Trouble[] = [];
  if (s.dividers === 'rails') {
    const limit = space.depth - (s.fill === 'drawers' ? BEHIND : 0);
    if (s.rail_deep.mm > limit)
      out.push({
        setting: 'rail_deep',
        cannot: 'the rails leave no depth behind them',
        limit,
        asked: s.rail_deep.mm,
        ...(limit >= 40 ? { nearest: textAtMost(limit, space.units) } : {}),
      });
    if (s.divider_thick.mm < 12)
      out.push({
        setting: 'divider_thick',
        cannot: 'rails this thin hold no tenon',
        limit: 12,
        asked: s.divider_thick.mm,
        nearest: '12 mm',
      });
  }
  if (s.fill !== 'drawers') return out;
  const known = new Set<string>();
  for (const height of heights)
    for (const t of checkBox({ ...space, height }, s))
      if (!known.has(t.setting)) {
        known.add(t.setting);
        out.push(t.setting === 'name' ? { ...t, setting: 'count', nearest: String(Math.max(2, s.count - 1)) } : t);
      }
  if (s.dividers === 'rails')
    for (const side of [at.left, at.right])
      if (side) out.push(...thinSide(side).map((t) => ({ ...t, setting: 'dividers', nearest: 'shelves' })));
  if (s.stops === 'yes') out.push(...stopTroubles(space, s, at));
  return out;
}
function stopTroubles(space: Opening, s: GraduatedSettings, at: Found): Trouble[] {
  const trouble = (cannot: string, limit: number, asked: number): Trouble => ({ setting: 'stops', cannot, limit, asked, nearest: 'no' });
  const deep = Math.min(s.dividers === 'rails' ? s.rail_deep.mm : space.depth, at.below?.box.max[1] ?? space.depth);
  return [
    ...(deep < stopDepth(s) ? [trouble('what lies below is not deep enough for stops behind the fronts', stopDepth(s), deep)] : []),
    ...(space.width < stopWidth(s) ? [trouble('the drawers are too narrow for two stops', stopWidth(s), space.width)] : []),
  ];
}
