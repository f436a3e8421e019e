import type { Operation, Place } from '../family.ts';
import { bite, ground } from './lay.ts';
import type { BracketFoot } from './params.ts';

const SAW =
  'Guard and riving knife in place, blade leaning away from the fence; push stick; eye and ear protection; follow the maker’s manual.';

export function bench(p: Place<BracketFoot>, s: BracketFoot, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const mitre: Operation[] = (['front', 'side'] as const).map((role) => ({
    role,
    words: 'Mitre the end before the outline is sawn; leave the outline until the pair is glued.',
    tool: hand ? 'mitre saw and donkey’s ear shooting board' : 'table saw at 45 degrees',
    caution: hand ? 'Clamp the board; both hands behind the edge.' : SAW,
  }));
  const spline: Operation[] =
    s.spline === 'none'
      ? []
      : [
          {
            role: 'front',
            words: `Square to both mitres saw a slot {mm:${s.spline_thick}} wide and {mm:${s.spline_wide / 2}} deep, a third of the mitre from the inner corner; the spline’s grain runs across the mitre.`,
            tool: hand ? 'tenon saw' : 'table saw at 45 degrees',
            caution: hand ? 'Clamp the board upright.' : SAW,
          },
        ];
  return [
    ...mitre,
    ...spline,
    {
      role: 'side',
      words: 'Glue the pair over a square block, then saw and smooth the outline.',
      tool: 'clamps and bow saw',
      caution: 'Let the glue cure as its maker says.',
    },
    {
      role: 'front',
      words: `Rub the glue block, {mm:${s.block}} square, into the corner${s.pieces > 1 ? ` in ${s.pieces} pieces, a hair apart` : ''}; glue the fixing blocks behind the upper edges.`,
      tool: 'glue; no clamps',
    },
    {
      role: 'base',
      words: `Screw up through the fixing blocks, {mm:${bite(g, s)}} into the base${g.crossed.front || g.crossed.side ? '; where bracket and base cross their grain, through the slot and without glue' : ''}.`,
      tool: 'drill with a depth stop, screwdriver',
      caution: 'Turn the case over with a second pair of hands; no gloves at the drill.',
    },
  ];
}
