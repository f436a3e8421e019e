import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { type Ground, ground, starts } from './lay.ts';
import type { Hinge } from './params.ts';
import { TALL, WALL } from './propose.ts';

const PLAY = 0.05;
const rule = (id: string, words: string, run: (g: Ground, s: Hinge) => readonly Omit<Warning, 'rule'>[]): Rule<Hinge> => ({
  id,
  words,
  run: (p, s) => {
    const g = ground(p.meeting, s.side);
    return g ? run(g, s).map((w) => ({ ...w, rule: id })) : [];
  },
});
const first = (g: Ground, s: Hinge): Warning['at'] => [g.face, starts(g, s)[0] ?? 0, 0];

const wall = rule('wall beside a leaf', 'wood behind the end of a leaf is at least 3 mm thick', (g, s) => {
  const left = g.deep - s.wide;
  if (left >= WALL - PLAY) return [];
  const fits = Math.max(1, Math.floor((g.deep - WALL) * 10) / 10);
  return [
    {
      grade: 'trouble',
      title: 'The leaf nearly comes out at the far face',
      why: `Only {mm:${left}} of wood is left behind a leaf {mm:${s.wide}} wide; it splits off with the screws.`,
      measured: left,
      limit: WALL,
      unit: 'mm',
      source: HABIT,
      at: first(g, s),
      roles: ['enter', 'into'],
      cures: fits <= g.deep - WALL + PLAY ? [{ label: `take leaves ${typed(fits)} wide`, set: { wide: typed(fits) } }] : [],
    },
  ];
});
const floor = rule('thin under a leaf', 'a recess takes at most half of the part', (g, s) => {
  if (s.thick <= g.behind / 2 + PLAY) return [];
  return [
    {
      grade: 'trouble',
      title: 'The recess is deep for the part',
      why: `Of {mm:${g.behind}} it leaves {mm:${g.behind - s.thick}}: no wood for the screws.`,
      measured: s.thick,
      limit: g.behind / 2,
      unit: 'mm',
      source: HABIT,
      at: first(g, s),
      roles: ['enter', 'into'],
      cures: [{ label: 'let the leaves follow the parts', set: { thick: null, knuckle: null, proud: null } }],
    },
  ];
});
const few = rule('few hinges', 'a door over about 1.2 m hangs on three hinges, any door on two', (g, s) => {
  const long = g.y[1] - g.y[0];
  const wanted = long > TALL ? 3 : 2;
  if (s.count >= wanted) return [];
  return [
    {
      grade: s.count < 2 ? 'trouble' : 'note',
      title: s.count < 2 ? 'One hinge lets the door sag' : 'A third hinge is usual on so long a door',
      why: `The door is {mm:${long}} long. ${s.count < 2 ? 'A single hinge twists out of its screws.' : 'With two it may twist between them.'}`,
      measured: s.count,
      limit: wanted,
      unit: 'count',
      source: HABIT,
      at: first(g, s),
      roles: ['enter'],
      cures: [{ label: `hang it on ${wanted}`, set: { count: String(wanted), inset: null } }],
    },
  ];
});
const endGrain = rule('screws in end grain', 'screws of a hinge hold in side grain, not in end grain', (g, s) => {
  const ends = [g.enter, g.into].filter((x) => Math.abs(x.grain[2]) > 0.7);
  if (ends.length === 0) return [];
  return [
    {
      grade: 'trouble',
      title: 'The screws of the hinges go into end grain',
      why: 'They draw out of end grain. Hang the door on a part whose grain runs along the gap.',
      measured: 90,
      limit: 0,
      unit: 'deg',
      source: HABIT,
      at: first(g, s),
      roles: ['enter', 'into'],
      cures: [],
    },
  ];
});
export const rules: readonly Rule<Hinge>[] = [wall, floor, few, endGrain];
