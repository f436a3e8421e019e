import { isWood } from '../../wood/woods.ts';
import { alongGrain } from '../blocks.ts';
import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { type Ground, ground, lipLeft, vecOf } from './lay.ts';
import type { Rabbet } from './params.ts';

const PLAY = 0.05;
/** Wood behind a rabbet: a quarter of the part, and never under 3 mm. */
const leastLip = (g: Ground): number => Math.max(3, g.deep / 4);

const thinLip: Rule<Rabbet> = {
  id: 'rabbet lip thin',
  words: 'behind a rabbet stands a quarter of the part, 3 mm at least',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g) return [];
    const [left, least] = [lipLeft(g, s), leastLip(g)];
    if (left >= least - PLAY || g.deep < 6) return [];
    const depth = Math.floor((g.deep - least - s.spare) * 10) / 10;
    const w: Warning = {
      rule: 'rabbet lip thin',
      grade: 'trouble',
      title: 'The rabbet leaves a thin lip',
      why: `Of {mm:${g.deep}} only {mm:${left}} stand behind the rabbet; the lip splits off when the board is driven or pinned in.`,
      measured: left,
      limit: least,
      unit: 'mm',
      source: HABIT,
      at: [0, 0, 0],
      roles: ['into', 'enter'],
      cures: g.shared
        ? s.spare > 0
          ? [{ label: 'leave no room at the edge', set: { spare: null } }]
          : []
        : [
            { label: `make the rabbet ${typed(depth)} deep`, set: { depth: typed(depth) } },
            { label: 'let the depth follow the part', set: { depth: null, spare: null } },
          ],
    };
    return [w];
  },
};
/** With a lip outside, the wood between the tongue and the edge of the other part is short where its grain runs across. */
const shortLip: Rule<Rabbet> = {
  id: 'rabbet edge lip thin',
  words: 'a lip over the board’s edge is at least 3 mm thick',
  run: (p, s): readonly Warning[] => {
    const g = ground(p.meeting);
    if (!g || s.outer < 1e-6) return [];
    const lip = g.short + s.outer;
    if (lip >= 3 - PLAY) return [];
    return [
      {
        rule: 'rabbet edge lip thin',
        grade: 'trouble',
        title: 'The lip over the board’s edge is thin',
        why: `Only {mm:${lip}} of the other part stand outside the tongue; that breaks off.`,
        measured: lip,
        limit: 3,
        unit: 'mm',
        source: HABIT,
        at: [0, 0, 0],
        roles: ['into'],
        cures: [
          { label: 'open the rabbet at the edge', set: { outer: null } },
          { label: `rabbet the board ${typed(4)} on its outside`, set: { outer: typed(4), inner: null } },
        ],
      },
    ];
  },
};
/** A wide solid board laid in across its grain: it needs room, and no glue. */
const noRoom: Rule<Rabbet> = {
  id: 'rabbeted board without room',
  words: 'a solid board without glue needs room where it swells towards the wall: 1/8 in for each 12 in of width, half on each side',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || s.hold === 'glued' || !isWood(g.enter.wood) || alongGrain(g.enter, vecOf(g.tip))) return [];
    const i = ({ x: 0, y: 1, z: 2 } as const)[g.tip.axis];
    const width = g.enter.box.max[i] - g.enter.box.min[i];
    const need = width / 96 / 2;
    if (width < 60 || s.spare >= need * 0.6 - 1e-6) return [];
    const room = typed(Math.ceil(need * 10) / 10);
    return [
      {
        rule: 'rabbeted board without room',
        grade: 'trouble',
        title: 'The board has no room to grow in its rabbet',
        why: `A solid board {mm:${width}} wide needs about {mm:${need}} at each edge; it has {mm:${s.spare}} and will push the sides apart.`,
        measured: s.spare,
        limit: need * 0.6,
        unit: 'mm',
        source: { name: 'woodworkingtips.com, panels in frames', basis: 'read' },
        at: [0, 0, 0],
        roles: ['enter', 'into'],
        cures: [{ label: `leave ${room} at the edge`, set: { spare: room } }],
      },
    ];
  },
};
export const rules: readonly Rule<Rabbet>[] = [thinLip, shortLip, noRoom];
