import type { Operation, Place } from '../family.ts';
import { ground, mitres } from './lay.ts';
import type { CockBead } from './params.ts';

const ROUTER = 'Unplug it to change the bit; clamp the work; eye and ear protection; follow the maker’s manual.';
const STRIP = 'Thin strips: work the edge of a wide board first and saw the strip off last.';

export function bench(p: Place<CockBead>, s: CockBead, hand: boolean): readonly Operation[] {
  const g = ground(p.meeting);
  if (!g) return [];
  const wide = g.shared[g.deep][1] - g.shared[g.deep][0];
  return [
    {
      role: 'front',
      words: 'Fit the drawer to its opening first; then gauge the rabbet from its edges with the bead itself.',
      tool: 'cutting gauge',
    },
    {
      role: 'front',
      words: `Rabbet the edge {mm:${g.thick}} by {mm:${wide}}${g.behind > 0 ? '' : ', through the whole thickness'}.`,
      tool: hand ? 'rebate plane or filletster' : 'router and fence',
      caution: hand ? 'Clamp the front; both hands on the plane.' : ROUTER,
    },
    {
      role: 'bead',
      words: `Round the front arrises to {mm:${s.radius}} on the edge of a board {mm:${g.thick}} thick.`,
      tool: hand ? 'scratch stock' : 'router table and bead bit',
      caution: hand ? STRIP : `${STRIP} ${ROUTER}`,
    },
    ...(mitres(g, s)?.includes(true)
      ? [
          {
            role: 'bead',
            words: 'Mitre the ends to each other, a little long, and plane them to fit.',
            tool: 'mitre block and block plane',
          },
        ]
      : []),
    {
      role: 'bead',
      words:
        s.hold === 'glued'
          ? 'Glue it in under tape, with a pin here and there.'
          : 'Pin it every 75 mm or so, with glue at the mitres only.',
      tool: 'pin hammer',
    },
  ];
}
