/**
 * Glazing bars: two bars of a glass door that cross, halved into each other, rabbeted for the glass and moulded in front.
 *
 *        section of a bar                  the crossing from the front
 *         ╱────────╲   face, moulded           │ over │
 *        │          │                     ─────┤      ├─────
 *        └──┐    ┌──┘  ledge for the      under│      │under
 *     glass │    │     glass              ─────┤      ├─────
 *           └────┘     tongue                  │ over │
 *
 * Words: the glass lies in *rabbets* behind; between them stands the *tongue*. One bar's moulded front runs *over* the other, whose tongue
 * runs through *under* it: they are parted at the ledge, or in the middle where there is no rabbet. The under bar's front is scribed to the
 * over bar's section, so that equal mouldings meet in a mitre. Both bars share the crossing; the joint divides it and works both sections.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type GlazingBar, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

/** Wider bars are rails, mm. */
const SLIM = 40;
function suits(m: Meeting): { rank: number; because: string } | null {
  const g = m.kind === 'cross' && m.touch === 'share' ? ground(m) : null;
  const slim = g && Math.max(g.thick, ...[g.over, g.under].map((b) => b.wide)) <= SLIM;
  return slim ? { rank: 5, because: 'two slim bars cross, their faces flush' } : null;
}
export const glazingBar: Family<GlazingBar> = {
  id: 'glazing_bar',
  version: 1,
  title: 'Crossing glazing bars',
  words: 'Bars of a glass door halved where they cross, with rabbets for the glass and a moulding in front.',
  roles: {
    over: { count: 'one', words: 'bar that runs through in front' },
    under: { count: 'one', words: 'bar that runs through behind' },
  },
  touch: ['share'],
  suits,
  params,
  upgrades: [],
  propose,
  make,
  rules,
  bench: (p, sizes, _made, hand) => bench(p, sizes, hand),
  examples,
};
