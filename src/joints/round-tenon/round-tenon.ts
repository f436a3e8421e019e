/**
 * Round tenon: the end of a leg or rung brought to a round and driven into a bored hole, also where it leans.
 *
 *          ┌──┐ wedge                 leg of a chair, rung entering a surface that is not flat:
 *   ═══════│\/│═══════ seat                ╭────╮
 *   ───────│  │───────                     │  ┌─┼──┐ ┌──────────
 *        ┌─┘  └─┐ shoulder, slanted        │  └─┼──┘ │   rung
 *         \      \  where the leg leans    ╰────╯    └──────────
 *          \ leg  \                             set back until nothing bites
 *
 * Words: *through* or *blind*; the *kerf* is the saw cut that the *wedge* spreads, always across the grain of the part with the
 * hole, so that it presses against end grain. The document dimensions the part up to the surface; the tenon is added.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type RoundTenon, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if ((m.kind !== 'end-to-face' && m.kind !== 'end-to-edge') || m.touch === 'share') return null;
  const enter = m.sides['enter']?.[0];
  if (!enter || Math.abs(enter.grain[2]) < 0.9) return null;
  const g = ground(m);
  if (!g) return null;
  const leans = Math.hypot(m.angle.rake, m.angle.splay) > 0.01;
  const round = enter.shapes.some((s) => s.why === 'shape');
  return leans || round
    ? { rank: 9, because: leans ? 'the part leans: a bored hole follows its axis' : 'the part is turned or shaped round its axis' }
    : { rank: 4, because: 'the end of a part stands on another' };
}
export const roundTenon: Family<RoundTenon> = {
  id: 'round_tenon',
  version: 1,
  title: 'Round tenon',
  words: 'A round end in a bored hole: legs in seats, rungs in legs, also leaning ones.',
  roles: { enter: { count: 'one', words: 'leg or rung' }, into: { count: 'one', words: 'part with the hole' } },
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
