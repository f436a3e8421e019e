import type { Rule } from '../family.ts';
import { HABIT } from '../reasons.ts';
import { screwRules } from '../screw-rules.ts';
import { ground, shareOf, sizesOf, spotsOf } from './lay.ts';
import type { SlottedCleat } from './params.ts';

const ofScrews = screwRules<SlottedCleat>((p, s) => {
  const g = ground(p.meeting);
  if (!g) return null;
  // What the document asks for, and never less than half of what the rule of thumb gives.
  const need = Math.max(p.set.allow === undefined ? 0 : s.allow, shareOf(g, s) / 2);
  return { g, s: sizesOf(s), spots: spotsOf(g, s), moves: { need, has: (s.slot - s.diameter) / 2 }, slotKeys: ['allow', 'slot'] };
});
const farApart: Rule<SlottedCleat> = {
  id: 'batten screws far apart',
  words: 'between screws more than 300 mm apart a board cups away from its batten',
  run: (p, s) => {
    const g = ground(p.meeting);
    const pitch = g ? (g.run[1] - g.run[0] - 2 * s.inset) / (s.count - 1) : 0;
    if (!g || pitch <= 300 + 0.05) return [];
    return [
      {
        rule: 'batten screws far apart',
        grade: 'note',
        title: 'The screws of the batten stand far apart',
        why: `{mm:${pitch}} between two screws: the board may cup away from the batten there.`,
        measured: pitch,
        limit: 300,
        unit: 'mm',
        source: HABIT,
        at: [0, 0, 0],
        roles: ['cleat', 'board'],
        cures: [{ label: 'let their number follow the board', set: { count: null, inset: null } }],
      },
    ];
  },
};
export const rules: readonly Rule<SlottedCleat>[] = [...ofScrews, farApart];
