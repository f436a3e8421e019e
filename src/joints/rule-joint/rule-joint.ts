/**
 * Rule joint: the leaf of a table hung so that no gap opens at its edge, up or down.
 *
 *     ─────────────┐┌──────────────      the leaf's lip lies over the round;
 *      fixed top   ││fillet   leaf       one centre for round, cove and hinge pin
 *                  └╮╭─────╮
 *                    ╲╲    │cove
 *                     ││
 *     ───────────(○)──┘└───────────      the hinge is let in from below, its knuckle upward
 *               ═══╧═══════════
 *
 * Words: the *round* is the edge of the fixed top, the *fillet* the small step above it; the *cove* in the leaf's edge turns about the same
 * centre, larger by the *clearance*; the thin wood over it is the leaf's *lip*. The hinge's *knuckle* holds the *pin*: it lies fillet and
 * radius below the surface, and half the knuckle above the underside. Its longer *flap* reaches across the cove into the leaf.
 * Both boards are dimensioned to the line that shows between them; the round is added to the top here.
 */
import type { Family } from '../family.ts';
import type { Meeting } from '../meeting.ts';
import { alongGrain } from '../blocks.ts';
import { bench } from './bench.ts';
import { examples } from './examples.ts';
import { ground } from './lay.ts';
import { make } from './make.ts';
import { type RuleJoint, params } from './params.ts';
import { propose } from './propose.ts';
import { rules } from './rules.ts';

function suits(m: Meeting): { rank: number; because: string } | null {
  if (m.kind !== 'edge-to-edge' || m.touch !== 'touch') return null;
  const g = ground(m);
  const along = g && alongGrain(g.leaf, [0, 1, 0]) && alongGrain(g.top, [0, 1, 0]);
  return along && g.thick >= 12 ? { rank: 3, because: 'two boards meet edge to edge: one may hang on the other as a leaf' } : null;
}
export const ruleJoint: Family<RuleJoint> = {
  id: 'rule_joint',
  version: 1,
  title: 'Rule joint',
  words: 'Hangs the leaf of a table on hinges so that it swings down and no gap opens at its edge.',
  roles: { leaf: { count: 'one', words: 'leaf' }, top: { count: 'one', words: 'fixed top' } },
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
