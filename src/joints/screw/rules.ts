import type { Rule } from '../family.ts';
import { screwRules } from '../screw-rules.ts';
import { LEAST_TRAVEL, ground, needOf, spotsOf } from './lay.ts';
import type { Screw } from './params.ts';

export const rules: readonly Rule<Screw>[] = screwRules<Screw>((p, s) => {
  const g = ground(p.meeting);
  if (!g) return null;
  const need = needOf(g, s);
  // What the document asks the slots to allow, or, where it is silent, what the wood does.
  const asked = p.set.travel === undefined ? (need < LEAST_TRAVEL ? 0 : need) : Math.max(s.travel, need < LEAST_TRAVEL ? 0 : need / 2);
  const has = s.travel > 0 ? (s.slot - s.diameter) / 2 : (s.clearance - s.diameter) / 2;
  return { g, s, spots: spotsOf(g, s), moves: { need: asked, has }, slotKeys: ['travel', 'slot', 'head', 'fast', 'sink'] };
});
