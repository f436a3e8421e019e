import type { Rule, Warning } from '../family.ts';
import { HABIT } from '../reasons.ts';
import { BRACKETS, type Ground, behind, bite, ground, pieces, screwAlong, spot } from './lay.ts';
import type { BracketFoot } from './params.ts';
import { CROSS_GLUE, SHARE } from './propose.ts';

/** Play in comparing with a limit, mm. */
const PLAY = 0.05;
const rule = (
  id: string,
  words: string,
  run: (g: Ground, s: BracketFoot) => Omit<Warning, 'rule' | 'unit' | 'source'> | null,
  tells?: 'glue',
): Rule<BracketFoot> => ({
  id,
  words,
  ...(tells ? { tells } : {}),
  run: (p, s) => {
    const g = ground(p.meeting);
    const w = g && run(g, s);
    return w ? [{ ...w, rule: id, unit: 'mm', source: HABIT }] : [];
  },
});
const glued = rule(
  'bracket glued across the base',
  'a bracket across the base’s grain is not glued to it over more than 100 mm',
  (g, s) => {
    const role = BRACKETS.find((r) => g.crossed[r] && g.long[r] > CROSS_GLUE + PLAY);
    if (!role || s.across !== 'glued') return null;
    return {
      grade: 'trouble',
      title: 'A bracket is glued across the grain of the base',
      why: `Over {mm:${g.long[role]}} the base moves about {mm:${g.long[role] * SHARE}} where the bracket does not: the glue gives, or the base splits.`,
      measured: g.long[role],
      limit: CROSS_GLUE,
      at: behind(g, role, g.long[role] / 2, 0, 0),
      roles: [role, 'base'],
      cures: [{ label: 'screw it in a slot instead', set: { across: null } }],
    };
  },
  'glue',
);
const tall = rule('glue block across the grain', 'an upright glue block stands in pieces of 100 mm at most', (g, s) => {
  const each = Math.max(...pieces(g, s).map(([a, b]) => b - a));
  if (s.block_grain !== 'upright' || each <= CROSS_GLUE + PLAY) return null;
  const cures: Warning['cures'] = [
    { label: 'let it stand in pieces', set: { pieces: null } },
    { label: 'let its grain lie along the brackets', set: { block_grain: 'lying', pieces: null } },
  ];
  return {
    grade: 'trouble',
    title: 'The glue block holds the brackets fast',
    why: `An upright block {mm:${each}} high is glued across the brackets’ grain; they shrink, it does not: a bracket splits or the block comes loose.`,
    measured: each,
    limit: CROSS_GLUE,
    at: spot(g, 0, 0, each / 2),
    roles: ['front', 'side'],
    cures,
  };
});
const slot = rule('screw slot short', 'the screw’s slot gives the base room to move: about 1/8 in for each 12 in', (g, s) => {
  const need = (Math.abs(g.inner[0] - g.outer[0]) + screwAlong(s)) * SHARE;
  if (s.across !== 'screwed' || !BRACKETS.some((r) => g.crossed[r]) || s.slot >= Math.max(0.5, need / 2) - PLAY) return null;
  const role = g.crossed.side ? 'side' : 'front';
  return {
    grade: 'trouble',
    title: 'The screw holds the base fast',
    why: `The base moves about {mm:${need}} each way there; the slot leaves its screw {mm:${s.slot}}.`,
    measured: s.slot,
    limit: Math.max(0.5, need / 2),
    at: behind(g, role, screwAlong(s), s.fixing / 2, s.fixing),
    roles: [role, 'base'],
    cures: [{ label: 'let the slot follow the base', set: { slot: null } }],
  };
});
const deep = rule('screw near the face of the base', 'a screw goes into the base by two thirds of its thickness at most', (g, s) => {
  const [in_, limit] = [bite(g, s), (g.baseThick * 2) / 3];
  if (in_ <= limit + PLAY) return null;
  return {
    grade: 'trouble',
    title: 'The screws nearly come through the base',
    why: `They go {mm:${in_}} into a base {mm:${g.baseThick}} thick.`,
    measured: in_,
    limit,
    at: behind(g, 'front', screwAlong(s), s.fixing / 2, -in_),
    roles: ['base'],
    cures: [{ label: 'let the screws follow the base', set: { screw_length: null } }],
  };
});
export const rules: readonly Rule<BracketFoot>[] = [glued, tall, slot, deep];
