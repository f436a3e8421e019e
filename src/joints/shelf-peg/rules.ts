import type { Rule, Warning } from '../family.ts';
import { HABIT } from '../reasons.ts';
import { type Ground, ground, holes } from './lay.ts';
import type { ShelfPeg } from './params.ts';

const PLAY = 0.05;
type Said = Omit<Warning, 'rule' | 'unit' | 'source' | 'roles'>;
const rule = (id: string, words: string, say: (g: Ground, s: ShelfPeg) => Said | null): Rule<ShelfPeg> => ({
  id,
  words,
  run: (p, s) => {
    const g = ground(p.meeting);
    const said = g && say(g, s);
    return said ? [{ rule: id, unit: 'mm', source: HABIT, roles: ['side', 'shelf'], ...said }] : [];
  },
});
export const rules: readonly Rule<ShelfPeg>[] = [
  rule('peg hole near the edge', 'a peg hole stands at least twice its diameter from the edge of the side', (g, s) => {
    const [min, max] = [g.side.box.min[1], g.side.box.max[1]];
    const near = holes(g, s).map((h) => ({ h, far: Math.min(h.y - min, max - h.y) }));
    const worst = near.reduce((a, b) => (b.far < a.far ? b : a));
    if (worst.far >= 2 * s.diameter - PLAY) return null;
    return {
      grade: 'trouble',
      title: 'The peg holes are near the edge',
      why: `{mm:${worst.far}} from the middle of a hole to the edge of the side: a loaded shelf splits it out.`,
      measured: worst.far,
      limit: 2 * s.diameter,
      at: [worst.h.x, worst.h.y, g.gap],
      cures: [{ label: 'let pegs and inset follow the shelf', set: { inset: null, diameter: null, flat: null } }],
    };
  }),
  rule('peg hole deep', 'wood behind a peg hole is at least 3 mm thick', (g, s) => {
    const left = g.thick - s.depth;
    if (left >= 3 - PLAY) return null;
    return {
      grade: 'trouble',
      title: 'The peg holes nearly come through the side',
      why: `Only {mm:${left}} of the side is left behind them.`,
      measured: left,
      limit: 3,
      at: [0, 0, g.gap + s.depth],
      cures: [{ label: 'let the depth follow the side', set: { depth: null } }],
    };
  }),
  rule('shelf slips off its pegs', 'pegs reach at least 6 mm under the shelf, whatever air there is at its ends', (g, s) => {
    // Pushed against the other side, it lies twice the air away from this one.
    const left = s.reach - g.gap;
    if (left >= 6 - PLAY) return null;
    return {
      grade: 'trouble',
      title: 'The shelf may slip off its pegs',
      why: `Pushed home against the other side only {mm:${Math.max(0, left)}} of it lies on these pegs.`,
      measured: left,
      limit: 6,
      at: [g.under, 0, 0],
      cures: [{ label: 'let the pegs be as long as usual', set: { reach: null } }],
    };
  }),
  rule('shelf without air at its ends', 'a loose shelf is about 1 mm shorter than its opening', (g) =>
    g.gap >= 0.3 - PLAY
      ? null
      : {
          grade: 'note',
          title: 'The shelf has no air at its end',
          why: `{mm:${Math.max(0, g.gap)}} between shelf and side: it jams when it is lifted out, and marks the finish. Let it be a little shorter.`,
          measured: Math.max(0, g.gap),
          limit: 0.3,
          at: [0, 0, 0],
          cures: [],
        },
  ),
];
