import type { Rule, Warning } from '../family.ts';
import type { Source } from '../../model/finding.ts';
import { HABIT } from '../reasons.ts';
import { EASY, type Laid, SHARE, bite, ground, layOut, middleX, moves, yAt } from './lay.ts';
import type { Moulding } from './params.ts';
import { FRONT_ONLY, MOVES } from './propose.ts';

const read = (name: string): Source => ({ name, basis: 'read' });
/** Play in comparing with a limit, mm. */
const PLAY = 0.05;
/** A moulding glued over more than this of a side that moves works loose or splits it, mm; 75 to 100 is usual. */
const MOST_GLUED = 100;
/** Farther than this behind its last screw a moulding stands off, mm. */
const LOOSE_END = 80;
const rule = (id: string, words: string, run: (l: Laid) => Omit<Warning, 'rule' | 'unit'> | null, tells?: 'glue'): Rule<Moulding> => ({
  id,
  words,
  ...(tells ? { tells } : {}),
  run: (p, s) => {
    const g = ground(p.meeting);
    const w = g && run(layOut(g, s));
    return w ? [{ ...w, rule: id, unit: 'mm' }] : [];
  },
});
const glued = rule(
  'moulding glued across the grain',
  'a moulding across the side’s grain is glued over 100 mm at most, at its front end',
  (l) =>
    !l.g.crossed || l.glued <= MOST_GLUED + PLAY
      ? null
      : {
          grade: 'trouble',
          title: 'The moulding is glued across the grain of the side',
          why: `Over {mm:${l.glued}} the side moves about {mm:${l.glued * SHARE}} each way where the moulding does not: the side splits, or the moulding comes off.`,
          measured: l.glued,
          limit: MOST_GLUED,
          source: read(FRONT_ONLY),
          at: [middleX(l.g), yAt(l, l.glued / 2), 0],
          roles: ['moulding', 'side'],
          cures: [{ label: 'glue its front end only', set: { hold: null, glued: null } }],
        },
  'glue',
);
const short = rule('moulding held fast behind', 'screws’ slots and keys give the side room: about 1/8 in for each 12 in', (l) => {
  const need = moves(l);
  if (l.s.hold !== 'slots' || l.s.room >= need / 2 - PLAY) return null;
  return {
    grade: 'trouble',
    title: 'The screws hold the side fast',
    why: `From the glued end to the last screw the side moves about {mm:${need}} each way; its slot leaves {mm:${l.s.room}}.`,
    measured: l.s.room,
    limit: need / 2,
    source: read(MOVES),
    at: [middleX(l.g), yAt(l, l.long - l.s.inset), l.g.gap],
    roles: ['moulding', 'side'],
    cures: [{ label: 'let the slots follow the side', set: { room: null } }],
  };
});
const loose = rule('moulding loose behind', 'the last screw or key stands within 80 mm of the back end', (l) =>
  l.s.hold === 'glued' || l.s.inset <= LOOSE_END + PLAY
    ? null
    : {
        grade: 'note',
        title: 'The moulding may stand off behind',
        why: `Nothing holds the last {mm:${l.s.inset}} of it to the side.`,
        measured: l.s.inset,
        limit: LOOSE_END,
        source: HABIT,
        at: [middleX(l.g), yAt(l, l.long), 0],
        roles: ['moulding'],
        cures: [{ label: 'let the last one stand near the back end', set: { inset: null } }],
      },
);
const near = rule('screw near the moulding’s face', 'a screw leaves 3 mm of the moulding, a key’s groove 4 mm', (l) => {
  const keys = l.s.hold === 'keys';
  const left = l.g.deep - (keys ? l.s.key_deep + EASY : bite(l.g, l.s));
  const limit = keys ? 4 : 3;
  if (l.s.hold === 'glued' || left >= limit - PLAY) return null;
  const cures: Warning['cures'] = [
    keys
      ? { label: 'let the keys follow the moulding', set: { key_deep: null } }
      : { label: 'let the screws follow the moulding', set: { screw_length: null } },
  ];
  return {
    grade: 'trouble',
    title: keys ? 'The keys’ groove nearly comes through' : 'The screws nearly come through the moulding',
    why: `{mm:${left}} of the moulding are left before its face, and its profile takes more.`,
    measured: left,
    limit,
    source: HABIT,
    at: [middleX(l.g), yAt(l, l.long - l.s.inset), left - l.g.deep],
    roles: ['moulding'],
    cures,
  };
});
export const rules: readonly Rule<Moulding>[] = [glued, short, loose, near];
