import { alongGrain } from '../blocks.ts';
import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { ground, moving } from './lay.ts';
import type { GrooveTongue } from './params.ts';
import { ENGAGED, roomFor } from './propose.ts';

const PANELS = { name: 'woodworkingtips.com, panels in frames', basis: 'read' } as const;
const PLAY = 0.05;

const tooDeep: Rule<GrooveTongue> = {
  id: 'groove too deep',
  words: 'a groove along the grain takes at most half of the part, across the grain a third',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g) return [];
    const along = alongGrain(g.into, [0, 1, 0]);
    const limit = along ? g.behind / 2 : g.behind / 3;
    if (s.depth <= limit + PLAY) return [];
    const w: Warning = {
      rule: 'groove too deep',
      grade: 'trouble',
      title: 'The groove is deep for the part that carries it',
      why: `It takes {mm:${s.depth}} of {mm:${g.behind}}; the wood left behind it is weak.`,
      measured: s.depth,
      limit,
      unit: 'mm',
      source: HABIT,
      at: [0, 0, s.depth],
      roles: ['into'],
      cures: [{ label: `make the groove ${typed(Math.floor(limit * 10) / 10)} deep`, set: { depth: typed(Math.floor(limit * 10) / 10) } }],
    };
    return [w];
  },
};
const dropsOut: Rule<GrooveTongue> = {
  id: 'panel drops out',
  words: 'at its driest a floating panel still stands 3 mm in its groove',
  run: (p, s) => {
    const g = ground(p.meeting);
    const left = s.depth - 2 * s.spare;
    if (!g || s.hold !== 'loose' || !g.swells || left >= ENGAGED - PLAY) return [];
    const depth = Math.ceil((ENGAGED + 2 * s.spare) * 10) / 10;
    const w: Warning = {
      rule: 'panel drops out',
      grade: 'trouble',
      title: 'The panel may shrink out of its groove',
      why: `With {mm:${s.spare}} to grow and as much to shrink, only {mm:${Math.max(0, left)}} stays in the groove in the driest season.`,
      measured: left,
      limit: ENGAGED,
      unit: 'mm',
      source: { name: 'groove depth from room and movement', basis: 'derived' },
      at: [0, 0, s.depth],
      roles: ['enter', 'into'],
      cures: [
        { label: `make the groove ${typed(depth)} deep`, set: { depth: typed(depth) } },
        { label: 'let depth and room follow the panel', set: { depth: null, spare: null } },
      ],
    };
    return [w];
  },
};
const noRoom: Rule<GrooveTongue> = {
  id: 'panel without room',
  words: 'a solid panel needs room to grow: 1/8 in for each 12 in of width, half on each side',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || s.hold !== 'loose' || !g.swells) return [];
    const wide = moving(g, s);
    const need = roomFor(wide);
    const boards = s.joins === 'boards';
    const shouldered = s.tongue < g.x[1] - g.x[0] - 1e-6;
    const room = shouldered ? Math.min(s.spare, s.clear) : s.spare;
    if (room >= need * 0.6 - 1e-6) return [];
    const short = s.spare < need * 0.6 ? 'spare' : 'clear';
    return [
      {
        rule: 'panel without room',
        grade: 'trouble',
        title: boards ? 'The boards have no gap to grow into' : 'The panel has no room to grow',
        why: boards
          ? `Two boards, {mm:${wide}} wide together, need a gap of about {mm:${need}} between them; they have {mm:${room}} and will push each other out.`
          : `A panel {mm:${wide}} wide needs about {mm:${need}} on each side; it has {mm:${room}} and will push the frame apart.`,
        measured: room,
        limit: need * 0.6,
        unit: 'mm',
        source: PANELS,
        at: [0, 0, short === 'spare' ? s.depth : 0],
        roles: ['enter', 'into'],
        cures: [{ label: 'let the room follow the panel’s width', set: { spare: null, clear: null, depth: null } }],
      },
    ];
  },
};
export const rules: readonly Rule<GrooveTongue>[] = [tooDeep, dropsOut, noRoom];
