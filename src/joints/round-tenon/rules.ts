import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { SPACE, type Laid, clearLength, layOut } from './lay.ts';
import type { RoundTenon } from './params.ts';

type R = Rule<RoundTenon>;
/** Least wood between a hole and the side of its part, mm. */
const WALL = 4;
const PLAY = 0.05;
const rule = (id: string, words: string, run: (l: Laid, clear: number) => readonly Warning[]): R => ({
  id,
  words,
  run: (p, s) => run(layOut(p.meeting, s), s.through === 'yes' ? Infinity : clearLength(s.diameter, p.siblings)),
});

const thick = rule('round tenon thick', 'a round tenon leaves 1.5 mm of shoulder all round', (l): readonly Warning[] => {
  const shoulder = (l.g.room - l.s.diameter) / 2;
  // A turned part may go in whole.
  if (shoulder < PLAY || shoulder >= 1.5 - PLAY) return [];
  return [
    {
      rule: 'round tenon thick',
      grade: 'note',
      title: 'The tenon leaves hardly a shoulder',
      why: `A round of {mm:${l.s.diameter}} in a part {mm:${l.g.room}} thick leaves {mm:${shoulder}}: nothing stops the part when it is driven in.`,
      measured: shoulder,
      limit: 1.5,
      unit: 'mm',
      source: HABIT,
      at: [0, 0, 0],
      roles: ['enter'],
      cures: [{ label: 'let the diameter follow the part', set: { diameter: null } }],
    },
  ];
});
const thin = rule('round tenon thin', 'a round tenon is at least two fifths of its part', (l): readonly Warning[] => {
  if (l.s.diameter >= l.g.room * 0.4 - PLAY) return [];
  return [
    {
      rule: 'round tenon thin',
      grade: 'trouble',
      title: 'The tenon is thin',
      why: `{mm:${l.s.diameter}} on a part {mm:${l.g.room}} thick breaks at the shoulder.`,
      measured: l.s.diameter,
      limit: l.g.room * 0.4,
      unit: 'mm',
      source: HABIT,
      at: [0, 0, 0],
      roles: ['enter'],
      cures: [{ label: 'let the diameter follow the part', set: { diameter: null } }],
    },
  ];
});
const wall = rule('hole wall', 'wood beside a round hole is at least 4 mm thick', (l): readonly Warning[] => {
  const mid = l.g.gap + Math.min(l.g.deep, l.tip) / 2;
  const sides = l.g.body.filter((f) => Math.abs(f.plane.normal[2]) < 0.5);
  const room =
    Math.min(...sides.map((f) => (f.plane.off - f.plane.normal[2] * mid) / Math.hypot(f.plane.normal[0], f.plane.normal[1]))) - l.r;
  if (room >= WALL - PLAY) return [];
  return [
    {
      rule: 'hole wall',
      grade: room <= 0 ? 'stops' : 'trouble',
      title: room <= 0 ? 'The hole breaks out at the side' : 'Thin wood beside the hole',
      why:
        room <= 0
          ? `The hole reaches {mm:${-room}} past the side of the part.`
          : `Only {mm:${room}} is left between the hole and the side of the part.`,
      measured: Math.max(0, room),
      limit: WALL,
      unit: 'mm',
      source: HABIT,
      at: [0, 0, mid],
      roles: ['into'],
      cures: [
        { label: 'let the diameter follow the part', set: { diameter: null } },
        {
          label: `make the tenon ${typed(Math.max(3, l.s.diameter - 2 * (WALL - room)))} thick`,
          set: { diameter: typed(Math.max(3, l.s.diameter - 2 * (WALL - room))) },
        },
      ],
    },
  ];
});
const deep = rule('hole too deep', 'a blind hole leaves 3 mm of wood at its bottom', (l): readonly Warning[] => {
  if (l.s.through === 'yes') return [];
  const left = l.g.gap + l.g.deep - l.floor;
  if (left >= 3 - PLAY) return [];
  const fits = Math.max(1, l.g.deep - l.s.spare - 3);
  return [
    {
      rule: 'hole too deep',
      grade: left <= 0 ? 'stops' : 'trouble',
      title: left <= 0 ? 'The blind hole comes out at the far side' : 'Thin bottom under the hole',
      why: `The hole is {mm:${l.floor - l.g.gap}} deep in wood {mm:${l.g.deep}} thick there.`,
      measured: l.floor - l.g.gap,
      limit: l.g.deep - 3,
      unit: 'mm',
      source: HABIT,
      at: [0, 0, l.floor],
      roles: ['into', 'enter'],
      cures: [
        { label: 'let the length follow the parts', set: { length: null } },
        { label: `make the tenon ${typed(fits)} long`, set: { length: typed(fits) } },
        { label: 'let it come through', set: { through: 'yes', length: null } },
      ],
    },
  ];
});
const short = rule('round tenon short', 'a round tenon is at least as long as thick', (l): readonly Warning[] => {
  const long = l.tip - l.g.gap;
  if (l.s.through === 'yes' || long >= l.s.diameter - PLAY) return [];
  return [
    {
      rule: 'round tenon short',
      grade: 'note',
      title: 'The tenon is short',
      why: `It goes {mm:${long}} deep and is {mm:${l.s.diameter}} thick; it has little to hold by.`,
      measured: long,
      limit: l.s.diameter,
      unit: 'mm',
      source: HABIT,
      at: [0, 0, l.tip],
      roles: ['enter'],
      cures: [{ label: 'let diameter and length follow the parts', set: { diameter: null, length: null } }],
    },
  ];
});
const meet: R = {
  tells: 'collision',
  ...rule('round tenons meet', 'round tenons in one part clear each other', (l, clear): readonly Warning[] => {
    if (l.tip <= clear + SPACE / 2 + 1e-6) return [];
    const most = Math.max(1, Math.floor(clear * 10) / 10);
    return [
      {
        rule: 'round tenons meet',
        grade: 'stops',
        title: 'Two tenons meet inside the part',
        why: `This one is {mm:${l.tip}} long; the other tenon leaves it {mm:${clear}}.`,
        measured: l.tip,
        limit: clear,
        unit: 'mm',
        source: { name: 'computed from the parts', basis: 'derived' },
        at: [0, 0, clear],
        roles: ['enter', 'into'],
        cures: [
          { label: `shorten the tenons to ${typed(most)}`, set: { length: typed(most) } },
          { label: 'let diameter and length follow the parts', set: { diameter: null, length: null } },
        ],
      },
    ];
  }),
};
const wedgeGrain = rule(
  'round wedge along the grain',
  'a wedge presses along the grain of the part with the hole',
  (l): readonly Warning[] => {
    if (l.s.wedge !== 'along') return [];
    return [
      {
        rule: 'round wedge along the grain',
        grade: 'trouble',
        title: 'The wedge splits the part with the hole',
        why: 'It presses across that part’s grain. Turned by a quarter it presses against end grain, which holds.',
        measured: 90,
        limit: 0,
        unit: 'deg',
        source: HABIT,
        at: [0, 0, l.tip],
        roles: ['into'],
        cures: [{ label: 'turn the wedge across the grain', set: { wedge: 'across' } }],
      },
    ];
  },
);
export const rules: readonly R[] = [thick, thin, wall, deep, short, meet, wedgeGrain];
