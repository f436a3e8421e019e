import type { Rule, Warning } from '../family.ts';
import { BOTTOM, PLAY, beside, nearEnd, under } from '../mortise-walls.ts';
import { HABIT, typed } from '../reasons.ts';
import { PTSW, RIV, read } from '../sources.ts';
import { MITRE_SPACE } from '../tenons.ts';
import { type Laid, layOut } from './lay.ts';
import type { LooseTenon } from './params.ts';

type R = Rule<LooseTenon>;
const rule = (id: string, words: string, run: (l: Laid) => readonly Warning[]): R => ({
  id,
  words,
  run: (p, s) => run(layOut(p.meeting, p.siblings, s)),
});
const mid = (s: readonly [number, number]): number => (s[0] + s[1]) / 2;
const first = (l: Laid): Laid['x'] => l.tenons[0]?.y ?? l.y;
/** A warning about the entering part, at the shoulder. */
const atEnd = (l: Laid, w: Omit<Warning, 'unit' | 'at' | 'roles'>): Warning => ({
  unit: 'mm',
  at: [mid(l.x), mid(first(l)), 0],
  roles: ['enter'],
  ...w,
});
const follow = { label: 'let the thickness follow the parts', set: { thickness: null } };

const thin = rule('loose tenon thin', 'a loose tenon takes at least a quarter of the part', (l) => {
  const limit = (l.g.x[1] - l.g.x[0]) / 4;
  // In a thin part no thicker one has room.
  const room = (l.g.into.box.max[0] - l.g.into.box.min[0]) / 3;
  if (l.s.thickness >= Math.min(limit, room) - PLAY) return [];
  return [
    atEnd(l, {
      rule: 'loose tenon thin',
      grade: 'trouble',
      title: 'The tenon is thin',
      why: `{mm:${l.s.thickness}} is less than a quarter of the part: the tenon breaks before anything else.`,
      measured: l.s.thickness,
      limit: Math.min(limit, room),
      source: read(RIV),
      cures: [
        follow,
        { label: `make the tenon ${typed(Math.min(limit, room) * 1.3)} thick`, set: { thickness: typed(Math.min(limit, room) * 1.3) } },
      ],
    }),
  ];
});
const thick = rule('loose tenon thick', 'a loose tenon takes at most half of the part', (l) => {
  const limit = (l.g.x[1] - l.g.x[0]) / 2;
  if (l.s.thickness <= limit + PLAY) return [];
  return [
    atEnd(l, {
      rule: 'loose tenon thick',
      grade: 'trouble',
      title: 'The mortise leaves thin cheeks in the end',
      why: `It takes {mm:${l.s.thickness}} of {mm:${2 * limit}}; a third is the rule, half the most, or the cheeks split when the tenon swells with glue.`,
      measured: l.s.thickness,
      limit,
      source: read(`${PTSW}; ${RIV}`),
      cures: [follow],
    }),
  ];
});
const wide = rule('loose tenon wide', 'a tenon is at most 6 times as wide as thick', (l) => {
  const limit = 6 * l.s.thickness;
  if (l.s.width <= limit + PLAY) return [];
  return [
    atEnd(l, {
      rule: 'loose tenon wide',
      grade: 'note',
      title: 'The tenon is wide for its thickness',
      why: `{mm:${l.s.width}} is more than 6 times its thickness; it shrinks loose across its width and its long mortise weakens the other part.`,
      measured: l.s.width,
      limit,
      source: read(`${PTSW} (6 times); ${RIV} (5 times)`),
      cures: [
        { label: 'let the width follow the rule', set: { width: null } },
        { label: 'let the number of tenons follow the rule', set: { tenons: null, between: null, width: null, drop: null } },
      ],
    }),
  ];
});
const wall = rule('loose mortise wall', 'wood beside the mortise is at least 4 mm thick', (l) =>
  beside('loose mortise wall', l.g, l, [{ label: 'set the tenon in the middle', set: { offset: null, from: null } }, follow]),
);
const end = rule('loose mortise near the end', 'the mortise stands at least its own width from the end of the part', (l) =>
  nearEnd('loose mortise near the end', l.g, l, l.s.thickness, false, [
    { label: 'let width and drop follow the rule', set: { width: null, drop: null } },
    { label: 'let the tenons follow the rule', set: { width: null, drop: null, tenons: null, between: null } },
  ]),
);
const deep = rule('loose mortise too deep', 'the mortise leaves wood at its bottom', (l) => {
  const fits = Math.max(1, l.g.deep - l.s.spare - BOTTOM);
  return under('loose mortise too deep', l.g, { x: l.x, y: first(l) }, l.floor - l.g.gap, [
    { label: 'let the depth follow the parts', set: { deep_in: null } },
    { label: `let it go ${typed(fits)} in`, set: { deep_in: typed(fits) } },
  ]);
});
const short = rule('loose tenon short', 'each half goes in 3 times the thickness, or two thirds of the part', (l) => {
  const ends = [
    { has: l.s.deep_in, wants: Math.min(3 * l.s.thickness, (l.g.deep * 2) / 3) - l.s.spare, key: 'deep_in' },
    { has: l.s.deep_own, wants: 3 * l.s.thickness - l.s.spare, key: 'deep_own' },
  ];
  // One that another tenon stops is told by that.
  return ends
    .filter((e) => e.has < e.wants - 1 && !(e.key === 'deep_in' && l.meets.length))
    .slice(0, 1)
    .map((e) =>
      atEnd(l, {
        rule: 'loose tenon short',
        grade: 'note',
        title: 'The tenon is short',
        why: `It goes {mm:${e.has}} into ${e.key === 'deep_in' ? 'the part that is met' : 'the end'}; {mm:${e.wants}} would hold better.`,
        measured: e.has,
        limit: e.wants,
        source: read(PTSW),
        cures: [{ label: 'let the depth follow the parts', set: { [e.key]: null } }],
      }),
    );
});
const meets: R = {
  tells: 'collision',
  ...rule('loose tenons meet', 'two tenons in one part clear each other', (l) => {
    const c = l.meets.find((m) => l.tenon[1] > m.square + 1e-6);
    if (!c) return [];
    const longest = Math.max(1, Math.floor((c.square - MITRE_SPACE) * 10) / 10);
    return [
      {
        rule: 'loose tenons meet',
        grade: 'stops',
        title: 'Two tenons meet inside the part',
        why: `This tenon goes {mm:${l.s.deep_in}} in, but another one crosses its way at {mm:${c.square}}.`,
        measured: l.tenon[1],
        limit: c.square,
        unit: 'mm',
        source: { name: 'computed from the parts', basis: 'derived' },
        at: [mid(l.x), mid(first(l)), c.square],
        roles: ['enter', 'into'],
        cures: [
          { label: `let the tenons go only ${typed(longest)} in`, set: { deep_in: typed(longest) } },
          { label: 'let the depth follow the parts', set: { deep_in: null } },
        ],
      },
    ];
  }),
};
/** As for a tenon cut on the part: over more the wood that is met moves and the row of tenons does not, mm. */
const ACROSS = 100;
const grain: R = {
  tells: 'glue',
  ...rule(
    'loose tenons across the grain',
    'tenons glued across the grain of the other part stand within 100 mm',
    (l): readonly Warning[] => {
      const over = l.y[1] - l.y[0];
      // Where the other part's grain runs across the row, both move alike.
      if (l.s.glue !== 'yes' || over <= ACROSS + PLAY || Math.abs(l.g.into.grain[1]) < 0.7) return [];
      return [
        {
          rule: 'loose tenons across the grain',
          grade: 'trouble',
          title: 'Glued across the grain',
          why: `The tenons are glued over {mm:${over}} of a part whose width moves, into wood whose length does not: above about {mm:${ACROSS}} the joint works loose or the wood splits.`,
          measured: over,
          limit: ACROSS,
          unit: 'mm',
          source: HABIT,
          at: [mid(l.x), mid(l.y), l.g.gap],
          roles: ['enter', 'into'],
          cures: [
            { label: 'leave it without glue', set: { glue: 'no' } },
            { label: 'make one tenon of it', set: { tenons: '1', between: null, width: null, drop: null } },
          ],
        },
      ];
    },
  ),
};
export const rules: readonly R[] = [thin, thick, wide, wall, end, deep, short, meets, grain];
