import type { Rule, Warning } from '../family.ts';
import { BOTTOM, PLAY, beside, nearEnd, under } from '../mortise-walls.ts';
import { HABIT, typed } from '../reasons.ts';
import { PTSW, RIV, TIMBER_PEGS, read } from '../sources.ts';
import { MITRE_SPACE } from '../tenons.ts';
import { type Laid, spreadOf } from './laid.ts';
import { layOut } from './make.ts';
import type { MortiseTenon } from './params.ts';
import { wedgeRules } from './rules-wedge.ts';

type R = Rule<MortiseTenon>;
const rule = (id: string, words: string, run: (l: Laid) => readonly Warning[]): R => ({ id, words, run: (p, s) => run(layOut(p, s)) });
const middle = (l: Laid): readonly [number, number] => [(l.x[0] + l.x[1]) / 2, ((l.tenons[0]?.y[0] ?? 0) + (l.tenons[0]?.y[1] ?? 0)) / 2];

/** A third of the part, in equal shares where there are twins. */
const third = (l: Laid): number => (l.g.x[1] - l.g.x[0]) / (l.s.twins > 1 ? 2 * l.s.twins + 1 : 3);
const thick = rule('tenon thick', 'a tenon takes at most half of the part that carries it', (l): readonly Warning[] => {
  const stock = l.g.x[1] - l.g.x[0];
  const thickness = l.s.thickness * l.s.twins;
  // Planks tenoned at their full thickness have no cheeks to weaken.
  if (thickness <= stock / 2 + PLAY || thickness >= stock - PLAY) return [];
  const [x, y] = middle(l);
  return [
    {
      rule: 'tenon thick',
      grade: 'note',
      title: 'The tenon leaves narrow shoulders',
      why: `${l.s.twins > 1 ? 'The twins take' : 'The tenon takes'} {mm:${thickness}} of {mm:${stock}}; a third is the rule, half the most.`,
      measured: thickness,
      limit: stock / 2,
      unit: 'mm',
      source: read(`${PTSW}; ${RIV}`),
      at: [x, y, 0],
      roles: ['enter'],
      cures: [
        { label: `make the tenon ${typed(third(l))} thick`, set: { thickness: typed(third(l)) } },
        { label: 'let the thickness follow the parts', set: { thickness: null } },
      ],
    },
  ];
});
const thin = rule('tenon thin', 'a tenon takes at least a quarter of the part that carries it', (l): readonly Warning[] => {
  const stock = l.g.x[1] - l.g.x[0];
  const thickness = l.s.thickness * l.s.twins;
  if (thickness >= stock / 4 - PLAY) return [];
  const [x, y] = middle(l);
  return [
    {
      rule: 'tenon thin',
      grade: 'trouble',
      title: 'The tenon is thin',
      why: `{mm:${thickness}} of {mm:${stock}} is less than a quarter: the tenon breaks before anything else.`,
      measured: thickness,
      limit: stock / 4,
      unit: 'mm',
      source: read(RIV),
      at: [x, y, 0],
      roles: ['enter'],
      cures: [
        { label: `make the tenon ${typed(third(l))} thick`, set: { thickness: typed(third(l)) } },
        { label: 'let the thickness follow the parts', set: { thickness: null } },
      ],
    },
  ];
});
const wide = rule('tenon wide', 'a tenon is at most 6 times as wide as thick', (l): readonly Warning[] => {
  // A stub in its groove is held by the panel, not by its own width.
  if (l.s.stub === 'yes' || l.s.width <= 6 * l.s.thickness + PLAY) return [];
  const [x, y] = middle(l);
  return [
    {
      rule: 'tenon wide',
      grade: 'note',
      title: 'The tenon is wide for its thickness',
      why: `{mm:${l.s.width}} is {n:${Math.round((l.s.width / l.s.thickness) * 10) / 10}} times its thickness; beyond 5 to 6 times it shrinks loose across its width and its long mortise weakens the post.`,
      measured: l.s.width,
      limit: 6 * l.s.thickness,
      unit: 'mm',
      source: read(`${PTSW} (6 times); ${RIV} (5 times)`),
      at: [x, y, 0],
      roles: ['enter', 'into'],
      cures: [
        { label: 'let the width follow the rule', set: { width: null } },
        { label: 'let the number of tenons follow the rule', set: { tenons: null, between: null, width: null, drop: null } },
        { label: `make it ${typed(6 * l.s.thickness)} wide`, set: { width: typed(6 * l.s.thickness) } },
      ],
    },
  ];
});
const wall = rule('mortise wall', 'wood beside a mortise is at least 4 mm thick', (l) =>
  beside('mortise wall', l.g, { x: mouth(l, 'x'), y: l.y }, [
    { label: 'set the tenon in the middle', set: { offset: null, from: null } },
    { label: 'let the thickness follow the parts', set: { thickness: null } },
    ...(l.s.twins > 1 ? [{ label: 'cut one tenon instead of twins', set: { twins: null, twin_between: null, thickness: null } }] : []),
  ]),
);
/** With the flare of a wedged mortise. */
function mouth(l: Laid, way: 'x' | 'y'): readonly [number, number] {
  const wide = spreadOf(l) === way ? l.s.flare : 0;
  return [l[way][0] - wide, l[way][1] + wide];
}
const end = rule(
  'mortise near the end',
  'a mortise stands at least its own width from the end of the part, unless it is haunched or open',
  (l) =>
    nearEnd('mortise near the end', l.g, { x: l.x, y: mouth(l, 'y') }, l.s.thickness, l.s.stub === 'yes', [
      { label: 'let width and drop follow the rule', set: { width: null, drop: null } },
      { label: 'leave a shoulder there', set: { shoulders: null, drop: null, width: null } },
    ]),
);
const deep = rule('mortise too deep', 'a blind mortise leaves wood at its bottom', (l) => {
  if (l.s.through === 'yes') return [];
  const fits = Math.max(1, l.g.deep - l.s.spare - BOTTOM);
  const cures: Warning['cures'] = [
    { label: 'let the length follow the parts', set: { length: null } },
    { label: `make the tenon ${typed(fits)} long`, set: { length: typed(fits) } },
    { label: 'let it come through', set: { through: 'yes', length: null } },
  ];
  return under('mortise too deep', l.g, { x: l.x, y: l.tenons[0]?.y ?? l.y }, l.floor - l.g.gap, cures);
});
const twinWall = rule(
  'twin tenons close',
  'between twin tenons stands at least half as much wood as each is thick',
  (l): readonly Warning[] => {
    const limit = Math.max(4, l.s.thickness / 2);
    if (l.s.twins < 2 || l.s.twin_between >= limit - PLAY) return [];
    return [
      {
        rule: 'twin tenons close',
        grade: 'trouble',
        title: 'Thin wood between the twin mortises',
        why: `Only {mm:${l.s.twin_between}} is left between them; it breaks when they are chopped.`,
        measured: l.s.twin_between,
        limit,
        unit: 'mm',
        source: HABIT,
        at: [middle(l)[0], middle(l)[1], l.g.gap],
        roles: ['into'],
        cures: [
          { label: 'let thickness and spacing follow the part', set: { thickness: null, twin_between: null } },
          { label: 'cut one tenon instead of twins', set: { twins: null, twin_between: null, thickness: null } },
        ],
      },
    ];
  },
);
const short = rule('tenon short', 'a mortise is at least 3 times as deep as wide', (l): readonly Warning[] => {
  const wanted = 3 * l.s.thickness - l.s.spare;
  if (l.s.through === 'yes' || l.tip >= wanted - PLAY) return [];
  const [x, y] = middle(l);
  return [
    {
      rule: 'tenon short',
      grade: 'note',
      title: 'The tenon is short',
      why:
        l.s.stub === 'yes'
          ? `A stub {mm:${l.tip}} long holds little by itself: the panel must be glued in all round, else the frame wants {mm:${wanted}}.`
          : `A tenon {mm:${l.s.thickness}} thick wants about {mm:${wanted}} of length; this one has {mm:${l.tip}} to hold by.`,
      measured: l.tip,
      limit: wanted,
      unit: 'mm',
      source: read(PTSW),
      at: [x, y, l.tip],
      roles: ['enter'],
      cures: [
        l.s.stub === 'yes'
          ? { label: 'make it a tenon of full length', set: { stub: null, length: null, width: null, spare: null } }
          : { label: 'let the length follow the parts', set: { length: null } },
        ...(l.meets.length
          ? [{ label: 'mitre the tenons that meet, so that both reach farther', set: { end: 'mitred', length: null } }]
          : []),
      ],
    },
  ];
});
const meetsOther: R = {
  tells: 'collision',
  ...rule('tenons meet', 'two tenons in one part clear each other', (l): readonly Warning[] => {
    const c = l.meets
      .filter((m) => l.tip > m.square + 1e-6 && (m.facing || l.mitres.length === 0))
      .reduce<(typeof l.meets)[number] | null>((a, b) => (a && a.square <= b.square ? a : b), null);
    if (!c) return [];
    const longest = Math.max(1, Math.floor((c.square - MITRE_SPACE) * 10 + 1e-6) / 10);
    const [x, y] = middle(l);
    return [
      {
        rule: 'tenons meet',
        grade: 'stops',
        title: 'Two tenons meet inside the part',
        why: c.facing
          ? `This tenon is {mm:${l.tip}} long, but another one comes towards it and they meet at {mm:${c.square}}.`
          : `This tenon is {mm:${l.tip}} long, but another one crosses its way at {deg:${Math.round((c.angle * 1800) / Math.PI) / 10}}: they touch at {mm:${c.square}}, and the longest that clears is {mm:${longest}}.`,
        measured: l.tip,
        limit: c.square,
        unit: 'mm',
        source: { name: 'computed from the parts', basis: 'derived' },
        at: [x, y, c.square],
        roles: ['enter', 'into'],
        cures: [
          ...(c.facing || l.s.through === 'yes' ? [] : [{ label: 'mitre the ends of both', set: { end: 'mitred', length: null } }]),
          { label: `shorten the tenons to ${typed(longest)}`, set: { length: typed(longest), through: 'no' } },
        ],
      },
    ];
  }),
};
const pegSize = rule('peg thick', 'a peg is at most a quarter of the tenon’s width', (l): readonly Warning[] => {
  if (l.pegs.length === 0 || l.s.peg_diameter <= l.s.width / 4 + PLAY) return [];
  return [
    {
      rule: 'peg thick',
      grade: 'trouble',
      title: 'The peg is thick for the tenon',
      why: `A peg of {mm:${l.s.peg_diameter}} takes more than a quarter of a tenon {mm:${l.s.width}} wide.`,
      measured: l.s.peg_diameter,
      limit: l.s.width / 4,
      unit: 'mm',
      source: read(TIMBER_PEGS),
      at: [middle(l)[0], l.pegs[0]?.y ?? 0, l.s.peg_back],
      roles: ['enter'],
      cures: [{ label: 'let the peg follow the tenon', set: { peg_diameter: null } }],
    },
  ];
});
/** Diameters of tenon wanted behind a peg. */
const RELISH = 1.5;
const relish = rule('peg near the end', 'a peg leaves one and a half diameters of tenon behind it', (l): readonly Warning[] => {
  const solid = l.mitres.length ? Math.min(l.tip, ...l.meets.map((c) => c.short)) : l.tip;
  const left = solid - (l.s.peg_back - l.s.drawbore) - l.s.peg_diameter / 2;
  const limit = RELISH * l.s.peg_diameter;
  if (l.pegs.length === 0 || left >= limit - PLAY) return [];
  return [
    {
      rule: 'peg near the end',
      grade: 'trouble',
      title: 'The peg is near the end of the tenon',
      why: `Only {mm:${left}} of tenon stands behind the peg; the end splits out when it is driven, the more so with a drawbore.`,
      measured: left,
      limit,
      unit: 'mm',
      source: HABIT,
      at: [middle(l)[0], l.pegs[0]?.y ?? 0, l.s.peg_back],
      roles: ['enter'],
      cures: [
        { label: 'let the peg’s place follow the tenon', set: { peg_back: null, peg_diameter: null } },
        { label: 'let the length follow the parts', set: { length: null } },
      ],
    },
  ];
});
const drawn = rule('drawbore strong', 'a drawbore is at most a quarter of the peg and 2.4 mm', (l): readonly Warning[] => {
  const limit = Math.min(2.4, l.s.peg_diameter / 4);
  if (l.pegs.length === 0 || l.s.drawbore <= limit + PLAY) return [];
  return [
    {
      rule: 'drawbore strong',
      grade: 'trouble',
      title: 'The drawbore is strong',
      why: `Holes {mm:${l.s.drawbore}} apart bend a peg of {mm:${l.s.peg_diameter}} sharply; it breaks, or the end of the tenon splits.`,
      measured: l.s.drawbore,
      limit,
      unit: 'mm',
      source: read(TIMBER_PEGS),
      at: [middle(l)[0], l.pegs[0]?.y ?? 0, l.s.peg_back],
      roles: ['enter'],
      cures: [{ label: `offset it ${typed(limit)}`, set: { drawbore: typed(limit) } }],
    },
  ];
});
export const rules: readonly R[] = [thick, thin, wide, wall, end, deep, short, meetsOther, pegSize, relish, drawn, twinWall, ...wedgeRules];
