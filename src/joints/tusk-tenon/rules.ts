import type { Rule, Warning } from '../family.ts';
import { PLAY, beside, nearEnd } from '../mortise-walls.ts';
import { HABIT, typed } from '../reasons.ts';
import { NOYES, PTSW, RIV, read } from '../sources.ts';
import { type Laid, deepest, layOut } from './lay.ts';
import type { TuskTenon } from './params.ts';
import { relishWanted } from './propose.ts';

type R = Rule<TuskTenon>;
type Said = Pick<Warning, 'title' | 'why' | 'measured' | 'limit' | 'cures'> & Partial<Warning>;
const mid = (s: readonly [number, number]): number => (s[0] + s[1]) / 2;
/** A rule that says one thing at most, at the key unless it says where. */
const rule = (id: string, words: string, say: (l: Laid) => Said | null): R => ({
  id,
  words,
  run: (p, s) => {
    const l = layOut(p.meeting, s);
    const said = say(l);
    if (!said) return [];
    return [{ rule: id, grade: 'trouble', unit: 'mm', source: HABIT, at: [mid(l.x), mid(l.y), l.face], roles: ['enter'], ...said }];
  },
});

const relish = rule('tusk relish short', 'beyond the key stands as much wood as the hole is deep and the tenon thick', (l) => {
  const limit = relishWanted(deepest(l.s, l.k[1] - l.k[0]), l.s.thickness);
  if (l.s.relish >= limit - PLAY) return null;
  return {
    title: 'Short wood beyond the key',
    why: `Only {mm:${l.s.relish}} of the tenon stands beyond the key; it shears out along its grain when the key is driven.`,
    measured: l.s.relish,
    limit,
    at: [mid(l.x), mid(l.y), l.tip],
    cures: [
      { label: `leave ${typed(limit)} beyond the key`, set: { relish: typed(limit) } },
      { label: 'let it follow the key', set: { relish: null } },
    ],
  };
});
const draws = rule('tusk does not draw', 'the key’s hole begins inside the mortised face', (l) => {
  const limit = 0.8;
  if (l.s.pull >= limit - PLAY) return null;
  return {
    title: 'The key does not draw',
    why: `Its hole begins {mm:${l.s.pull}} inside the face: the key strikes the hole’s inner wall before it pulls the shoulder up, the sooner as the wood shrinks.`,
    measured: l.s.pull,
    limit,
    source: read(NOYES),
    cures: [{ label: 'begin the hole inside the face', set: { pull: null } }],
  };
});
const keyThick = rule('tusk key thick', 'the key’s hole takes at most a third of the tenon', (l): Said | null => {
  const over = l.across === 'x' ? l.s.thickness : l.s.width;
  if (l.s.key_thick <= over / 3 + PLAY) return null;
  return {
    title: 'The key is thick for the tenon',
    why: `Its hole takes {mm:${l.s.key_thick}} of a tenon {mm:${over}} across; a third is the most.`,
    measured: l.s.key_thick,
    limit: over / 3,
    cures: [
      { label: `make the key ${typed(over / 3)} thick`, set: { key_thick: typed(over / 3) } },
      { label: 'let the key follow the tenon', set: { key_thick: null, key_deep: null, relish: null } },
    ],
  };
});
const steep = rule('tusk key steep', 'a key slopes no more than 1 in 6', (l) => {
  if (l.s.slope <= 1 / 6 + 1e-6) return null;
  return {
    title: 'The key is steep',
    why: 'Steeper than 1 in 6 it works out again by itself.',
    measured: (Math.atan(l.s.slope) * 180) / Math.PI,
    limit: (Math.atan(1 / 6) * 180) / Math.PI,
    unit: 'deg',
    cures: [{ label: 'let the key follow the rule', set: { slope: null, key_deep: null, relish: null } }],
  };
});
const wide = rule('tusk tenon wide', 'a tenon is at most 6 times as wide as thick', (l) => {
  if (l.s.width <= 6 * l.s.thickness + PLAY) return null;
  return {
    grade: 'note',
    title: 'The tenon is wide for its thickness',
    why: `{mm:${l.s.width}} is more than 6 times its thickness; it shrinks loose across its width and its long mortise weakens the other part.`,
    measured: l.s.width,
    limit: 6 * l.s.thickness,
    source: read(`${PTSW} (6 times); ${RIV} (5 times)`),
    cures: [{ label: 'let the width follow the rule', set: { width: null } }],
  };
});
const wall: R = {
  id: 'tusk mortise wall',
  words: 'wood beside the mortise is at least 4 mm thick',
  run: (p, s) => {
    const l = layOut(p.meeting, s);
    return beside('tusk mortise wall', l.g, l, [
      { label: 'set the tenon in the middle', set: { offset: null } },
      { label: 'let the thickness follow the parts', set: { thickness: null } },
    ]);
  },
};
const end: R = {
  id: 'tusk mortise near the end',
  words: 'the mortise stands at least its own width from the end of the part',
  run: (p, s) => {
    const l = layOut(p.meeting, s);
    return nearEnd('tusk mortise near the end', l.g, l, s.thickness, false, [
      { label: 'let width and drop follow the rule', set: { width: null, drop: null } },
    ]);
  },
};
export const rules: readonly R[] = [relish, draws, keyThick, steep, wide, wall, end];
