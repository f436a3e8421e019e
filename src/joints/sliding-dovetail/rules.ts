import type { Rule, Warning } from '../family.ts';
import { HABIT, typed } from '../reasons.ts';
import { NOYES, PTSW, read } from '../sources.ts';
import { ground, lay } from './lay.ts';
import type { SlidingDovetail } from './params.ts';

const DEG = Math.PI / 180;
const PLAY = 0.05;
/** Steeper than 1:4 the thin edge of the wall crumbles; flatter than 1:10 the tail pulls out. */
const STEEPEST = Math.atan(1 / 4);
/** Glued across the grain over more than this, mm, the wide board splits or works loose. */
const CROSS = 100;

const tooDeep: Rule<SlidingDovetail> = {
  id: 'socket too deep',
  words: 'the socket of a sliding dovetail takes at most a third of the board',
  run: (p, s) => {
    const g = ground(p.meeting);
    if (!g || s.depth <= g.thick / 3 + PLAY) return [];
    const depth = Math.floor((g.thick / 3) * 10) / 10;
    const w: Warning = {
      rule: 'socket too deep',
      grade: 'trouble',
      title: 'The dovetail socket is deep for the board',
      why: `It takes {mm:${s.depth}} of {mm:${g.thick}}, and undercuts what is left; beyond a third the board is weak there.`,
      measured: s.depth,
      limit: g.thick / 3,
      unit: 'mm',
      source: read(`${PTSW}; ${NOYES}`),
      at: [0, 0, s.depth],
      roles: ['into', 'enter'],
      cures: [{ label: `make the socket ${typed(depth)} deep`, set: { depth: typed(depth), shoulder: null } }],
    };
    return [w];
  },
};
const steep: Rule<SlidingDovetail> = {
  id: 'sliding dovetail steep',
  words: 'a slope of more than 1:4 leaves short grain at the edge of the socket',
  run: (p, s) => {
    if (s.slope <= STEEPEST + 1e-6 || !ground(p.meeting)) return [];
    return [
      {
        rule: 'sliding dovetail steep',
        grade: 'trouble',
        title: 'The tail slopes steeply',
        why: 'Beyond 1:4 the thin upper edges of the socket and the corners of the tail are short grain and break off.',
        measured: s.slope / DEG,
        limit: STEEPEST / DEG,
        unit: 'deg',
        source: read('lostartpress.com, 2023: slopes from 1:4 to 1:8 perform alike'),
        at: [0, 0, 0],
        roles: ['enter', 'into'],
        cures: [{ label: 'make the slope 8 degrees', set: { slope: '8 deg', shoulder: null } }],
      },
    ];
  },
};
const weakNeck: Rule<SlidingDovetail> = {
  id: 'tail neck thin',
  words: 'the neck of the tail is at least half of the board',
  run: (p, s): readonly Warning[] => {
    const g = ground(p.meeting);
    const l = g && lay(g, s);
    if (!g || !l) return [];
    const [low, high] = l.neck(l.first);
    const half = (g.x[1] - g.x[0]) / 2;
    if (high - low >= half - PLAY) return [];
    return [
      {
        rule: 'tail neck thin',
        grade: 'trouble',
        title: 'The neck of the tail is thin',
        why: `The board hangs on a neck of {mm:${high - low}} where it is narrowest; half of its thickness is {mm:${half}}.`,
        measured: high - low,
        limit: half,
        unit: 'mm',
        source: HABIT,
        at: [(low + high) / 2, l.first, 0],
        roles: ['enter'],
        cures: [
          { label: 'let the shoulder follow depth and slope', set: { shoulder: null } },
          { label: 'let them follow, without a taper', set: { shoulder: null, taper: null } },
        ],
      },
    ];
  },
};
const gluedAcross: Rule<SlidingDovetail> = {
  id: 'sliding dovetail glued across',
  tells: 'glue',
  words: 'a tail that crosses the grain is glued at one end alone',
  run: (p, s): readonly Warning[] => {
    const g = ground(p.meeting);
    const l = g && lay(g, s);
    if (!g || !l || !g.crosses || s.hold === 'dry') return [];
    const over = s.hold === 'glued' ? Math.abs(l.last - l.first) : s.glued;
    if (over <= CROSS + 1e-6) return [];
    return [
      {
        rule: 'sliding dovetail glued across',
        grade: 'trouble',
        title: 'The tail is glued across the grain',
        why: `Glue over {mm:${over}} keeps the wide board from moving: it splits or cups. Glued at one end, the tail holds it flat and lets it slide.`,
        measured: over,
        limit: CROSS,
        unit: 'mm',
        source: HABIT,
        at: [0, l.first, 0],
        roles: ['enter', 'into'],
        cures: [
          { label: 'glue it at one end alone', set: { hold: 'end', glued: null } },
          { label: 'leave it without glue', set: { hold: 'dry' } },
        ],
      },
    ];
  },
};
/** The wall between the socket and the end of a board whose grain runs across it is all short grain. */
const shortWall: Rule<SlidingDovetail> = {
  id: 'socket near the end',
  words: 'between socket and board end stands at least as much wood as the socket is deep',
  run: (p, s) => {
    const g = ground(p.meeting);
    const l = g && lay(g, s);
    if (!g || !l || Math.abs(g.into.grain[0]) < 0.7) return [];
    const t = l.tip(l.mouth);
    const low = t[0] - g.into.box.min[0];
    const high = g.into.box.max[0] - t[1];
    const beside = Math.min(low, high);
    if (beside >= s.depth - PLAY) return [];
    return [
      {
        rule: 'socket near the end',
        grade: 'trouble',
        title: 'Little wood between the socket and the end of the board',
        why: `{mm:${beside}} of short grain is undercut by the socket and splits off when the tail is driven in.`,
        measured: beside,
        limit: s.depth,
        unit: 'mm',
        source: HABIT,
        at: [low < high ? t[0] : t[1], l.mouth, 0],
        roles: ['into'],
        cures: [],
      },
    ];
  },
};
export const rules: readonly Rule<SlidingDovetail>[] = [tooDeep, steep, weakNeck, gluedAcross, shortWall];
