/**
 * Mortise and tenon: the end of a rail made thinner and let into a post or stile.
 *
 *        rail               post, cut open
 *   ──────────┐             ┌────┐         haunch ▷ ┌──┐
 *   shoulder →└──────┐      │  ┌─┘                ┌─┘  │
 *      cheek         │ end  │  │ mortise          │ tenon
 *   shoulder →┌──────┘      │  └─┐                │
 *   ──────────┘             └────┘                └────
 *
 * Words: the *tenon* has two broad *cheeks*, two narrow *edges* and an *end*; the rail's *shoulders* close on the post. The
 * *mortise* has cheeks, ends and, where it is *blind*, a bottom with some *spare*. A *haunch* keeps the rail's edge from
 * twisting where the tenon cannot reach the end of the post. *Drawbored*, the tenon's hole lies nearer the shoulder than the
 * post's, so that the *peg* pulls the joint up. *Twin* tenons stand side by side in the thickness, *double* ones one above the
 * other over the width; a *stub* is as long as a groove is deep; a *bare* tenon has no shoulder on one face. *Fox wedges* stand in
 * the kerfs of a blind tenon, and the bottom of its mortise, which widens downwards, drives them in. The document dimensions the
 * rail from shoulder to shoulder.
 *
 *     twin, on end     fox-wedged, cut open
 *    ┌───────────┐      ───┐  ┌──────
 *    │ ██     ██ │         └──┘ ━━━━▌
 *    │ ██     ██ │         ┌──┐ ━━━━▌
 *    └───────────┘      ───┘  └──────
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground, runsAlongGrain } from '../tenons.ts';
import { make } from './make.ts';
import { type MortiseTenon, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if ((m.kind !== 'end-to-face' && m.kind !== 'end-to-edge') || m.touch === 'share') return null;
  const enter = m.sides['enter']?.[0];
  if (!enter || Math.abs(enter.grain[2]) < 0.9) return null;
  const g = ground(m);
  if (!g || g.deep < 8) return null;
  return runsAlongGrain(g) || g.deep > (g.x[1] - g.x[0]) * 0.75
    ? { rank: 9, because: 'the end of a rail stands on a part thick enough for a mortise' }
    : { rank: 3, because: 'the end of a part stands on another' };
}
export const mortiseTenon: Family<MortiseTenon> = {
  id: 'mortise_tenon',
  version: 1,
  title: 'Mortise and tenon',
  words: 'The end of a rail let into a post, stile or plank; the joint of frames, tables and chairs.',
  roles: { enter: { count: 'one', words: 'rail with the tenon' }, into: { count: 'one', words: 'part with the mortise' } },
  touch: ['touch'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules,
  bench: (p, sizes, _made, hand) => bench(p, sizes, hand),
  examples,
};
