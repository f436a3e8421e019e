/**
 * Peg: a round pin driven through parts that another joint has brought together, to lock them.
 *
 *        post                   looked at from above: the hole in the tenon lies nearer its shoulder,
 *      ┌──────┐                 so that the peg draws the joint tight (a *drawbore*)
 *      │ ┌────┼───────
 *   peg══╪═╪══│  rail                ( o )  post        (o  )  tenon
 *      │ └────┼───────
 *      └──────┘
 *
 * The first two parts settle where it goes: it runs across the thickness of the part that is let in, `back` behind the face on
 * which the two meet. Further parts (a second tenon in the same post) are bored on the same line.
 */
import type { Vec3 } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import type { Contact, Cutting, Family, Made, Operation, Place, Reason, Refusal, Rule } from '../family.ts';
import { nearestOwned, stepOf } from '../cutters.ts';
import { CLEAR, cylinder, frameAlong, pin, roundSide } from '../features.ts';
import type { Meeting } from '../meeting.ts';
import { HABIT, byBook, byHabit, settle, typed } from '../reasons.ts';
import { TIMBER_PEGS, read } from '../sources.ts';
import { examples } from './examples.ts';
import { type Ground, axesOf, drawn, ground, pegLines, shifted } from './lay.ts';
import { type Peg, params } from './params.ts';

type Proposed = { readonly sizes: Peg; readonly because: Readonly<Record<keyof Peg, Reason>> };
function propose(p: Place<Peg>, shop: Cutting): Proposed | Refusal<Peg> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'a peg goes through two parts or more that meet', limit: 2, asked: (p.meeting.sides['through'] ?? []).length };
  const way = p.set.way ?? 'thickness';
  const { run, row } = axesOf(g, way);
  const wide = span(g.inner.box, row);
  const diameter = nearestOwned(shop.bits, Math.min(6.35, wide / 8), [Math.min(3, wide / 8), wide / 4], stepOf(shop));
  const d = p.set.diameter ?? diameter;
  const through = span(g.outer.box, run);
  const out = settle<Peg>(p.set, {
    count: [1, byHabit('one in furniture; two where the tenon is wide')],
    diameter: [diameter, byBook('6 to 10 mm in furniture, up to a quarter of the tenon’s width', TIMBER_PEGS, [6.35, 9.525])],
    length: [through, byHabit('right through')],
    back: [
      p.meeting.touch === 'share' ? g.deep / 2 : Math.min(2 * d, g.deep / 3),
      byHabit('two diameters behind the joint face; in the middle where the parts share their wood'),
    ],
    apart: [Math.max(3 * d, wide / 3), byHabit('a third of the width')],
    up: [0, byHabit('in the middle')],
    way: ['thickness', byHabit('across the thickness of the part let in')],
    from: ['near', byHabit('from the side nearer to it')],
    drawbore: [0, byBook('none unless asked; 0.8 to 2.4 mm in furniture', TIMBER_PEGS, [0.8, 2.4])],
  });
  return refuse(g, out.sizes, wide) ?? out;
}
const span = (b: { min: Vec3; max: Vec3 }, axis: 'x' | 'y'): number => (axis === 'x' ? b.max[0] - b.min[0] : b.max[1] - b.min[1]);
function refuse(g: Ground, s: Peg, wide: number): Refusal<Peg> | null {
  if (!Number.isInteger(s.count) || s.count < 1 || s.count > 20)
    return { cannot: 'the number of pegs must be a whole number from 1 to 20', limit: 20, asked: s.count, nearest: { count: 1 } };
  if (!(s.diameter > 0) || s.diameter > wide / 2)
    return {
      cannot: 'the peg is thicker than half the part that it holds',
      limit: wide / 2,
      asked: s.diameter,
      nearest: { diameter: wide / 8 },
    };
  if (s.back <= s.diameter / 2 || s.back >= g.deep - s.diameter / 2)
    return {
      cannot: 'the peg must run inside the mortised part',
      limit: g.deep - s.diameter / 2,
      asked: s.back,
      nearest: { back: g.deep / 3 },
    };
  if (!(s.length > 0)) return { cannot: 'a peg needs a length above 0', limit: 1, asked: s.length };
  if (s.drawbore < 0 || s.drawbore >= s.diameter)
    return {
      cannot: 'a drawbore lies between 0 and the peg’s diameter',
      limit: s.diameter,
      asked: s.drawbore,
      nearest: { drawbore: s.diameter / 8 },
    };
  if (s.count > 1 && s.apart < s.diameter + 1)
    return { cannot: 'the pegs run into each other', limit: s.diameter * 3, asked: s.apart, nearest: { apart: s.diameter * 3 } };
  return null;
}

function make(p: Place<Peg>, s: Peg): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a peg needs two parts: propose refuses the others');
  const lines = pegLines(g, s);
  const name = (i: number): string => `peg${i + 1}`;
  const features: Record<string, Feature[]> = {};
  const contacts: Contact[] = [];
  g.parts.forEach((side, n) => {
    features[`through#${n}`] = lines.map((line, i) => {
      const at = frameAlong(shifted(line, drawn(g, side, line, s)), line.along, [0, 0, 1]);
      return cylinder(
        `${name(i)} hole`,
        'remove',
        at,
        s.diameter,
        -CLEAR,
        s.length + (side === g.outer && s.length < throughAll(g, s) - 1e-6 ? 0 : CLEAR),
        { round: 'hole', to: 'end' },
      );
    });
    lines.forEach((line, i) => {
      const bite = Math.hypot(...drawn(g, side, line, s));
      contacts.push({
        name: `${name(i)} in part ${n + 1}`,
        between: [
          roundSide('extra', 'turning', 'round', line.start, line.along, s.diameter / 2, s.length, i),
          roundSide('through', `${name(i)} hole`, 'hole', shifted(line, drawn(g, side, line, s)), line.along, s.diameter / 2, s.length, n),
        ],
        fit: bite > 0 ? 'press' : 'tap',
        meant: bite > 0 ? -bite : 0,
        hold: 'pinned',
        glue: side === g.outer ? 'end' : 'long',
      });
    });
  });
  const extras = lines.map((line, i) => pin(name(i), 'peg', g.inner.wood, s.diameter, s.length, line.start, line.along));
  return {
    features,
    extras,
    contacts,
    frees: extras.map((e) => ({ moves: [e.name], along: [0 - e.enters[0], 0 - e.enters[1], 0 - e.enters[2]] })),
    holds: 'dry',
  };
}
const throughAll = (g: Ground, s: Peg): number => span(g.outer.box, axesOf(g, s.way).run);

const nearFace: Rule<Peg> = {
  id: 'peg near the face',
  words: 'a peg stands one and a half diameters behind the joint face',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || s.back >= 1.5 * s.diameter - 0.05) return [];
    return [
      {
        rule: 'peg near the face',
        grade: 'trouble',
        title: 'The peg is near the joint face',
        why: `Its middle lies {mm:${s.back}} behind the face; the wall in front of it breaks out when it is driven.`,
        measured: s.back,
        limit: 1.5 * s.diameter,
        unit: 'mm',
        source: HABIT,
        at: pegLines(g, s)[0]?.start ?? [0, 0, 0],
        roles: ['through'],
        cures: [{ label: 'let the peg’s place follow the parts', set: { back: null } }],
      },
    ];
  },
};
const strong: Rule<Peg> = {
  id: 'peg drawbore strong',
  words: 'a drawbore is at most a quarter of the peg and 2.4 mm',
  run: (p, s) => {
    const limit = Math.min(2.4, s.diameter / 4);
    const g = ground(p.meeting);
    if (!g || s.drawbore <= limit + 0.05) return [];
    return [
      {
        rule: 'peg drawbore strong',
        grade: 'trouble',
        title: 'The drawbore is strong',
        why: `Holes {mm:${s.drawbore}} apart bend a peg of {mm:${s.diameter}} sharply; it breaks, or the end of the tenon splits.`,
        measured: s.drawbore,
        limit,
        unit: 'mm',
        source: read(TIMBER_PEGS),
        at: pegLines(g, s)[0]?.start ?? [0, 0, 0],
        roles: ['through'],
        cures: [{ label: `offset it ${typed(limit)}`, set: { drawbore: typed(limit) } }],
      },
    ];
  },
};
const DRILL = 'Clamp the work; no gloves; take the key out of the chuck.';
function bench(s: Peg): readonly Operation[] {
  const holes = s.count > 1 ? `${s.count} holes` : 'the hole';
  return [
    {
      role: 'through',
      words: `Bore ${holes} {mm:${s.diameter}} through the mortised part, {mm:${s.back}} from the joint face, with the joint apart.`,
      tool: 'drill and brad-point bit',
      caution: DRILL,
    },
    s.drawbore > 0
      ? {
          role: 'through',
          words: `Push the joint home dry, prick the tenon through the hole, and bore it {mm:${s.drawbore}} nearer its shoulder.`,
          tool: 'awl and drill',
          caution: DRILL,
        }
      : {
          role: 'through',
          words: 'Push the joint home and bore the tenon through the hole.',
          tool: 'drill and brad-point bit',
          caution: DRILL,
        },
    {
      role: 'through',
      words: 'Split the peg from dry, straight wood, taper its point, drive it, and trim it flush.',
      tool: 'mallet and flush saw',
    },
  ];
}
function suits(m: Meeting): { rank: number; because: string } | null {
  const g = m.sides['through'] && m.kind !== 'none' && m.kind !== 'point' ? ground(m) : null;
  return g ? { rank: 2, because: 'two parts that another joint brings together can be pinned' } : null;
}
export const peg: Family<Peg> = {
  id: 'peg',
  version: 1,
  title: 'Peg',
  words: 'A round pin through parts that another joint has brought together; drawbored, it pulls them tight.',
  roles: { through: { count: 'many', words: 'parts that the peg goes through, the first two meeting' } },
  touch: ['touch', 'share'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules: [nearFace, strong],
  bench: (_p, sizes) => bench(sizes),
  examples,
};
