import type { Feature } from '../../model/record.ts';
import type { Made, Place } from '../family.ts';
import { type Looks, ROOT, block, boxOf, faceToward } from '../blocks.ts';
import { contacts } from './contacts.ts';
import { type Ground, type Run, ground, run } from './lay.ts';
import type { Housing } from './params.ts';

export function make(p: Place<Housing>, sizes: Housing): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a housing needs a shelf that stands square on the side: propose refuses the others');
  const r = run(g, sizes);
  return {
    features: { enter: [housedEnd(g, r, sizes.depth)], into: [housing(g, r, sizes.depth)] },
    extras: [],
    contacts: contacts(g, r, sizes),
    frees: frees(r),
    holds: sizes.hold === 'glued' ? 'glue' : 'dry',
  };
}
/** The length that the shelf grows by, stopped or not, rooted in the shelf. */
const housedEnd = (g: Ground, r: Run, depth: number): Feature =>
  block('housed end', 'add', boxOf(r.x[0], r.x[1], r.span[0], r.span[1], -ROOT, depth), { ...around(g, 'enter', 'side'), 'z+': 'end' });
/** Measured from the side's own face, wherever that lies as built. */
const housing = (g: Ground, r: Run, depth: number): Feature =>
  block('housing', 'remove', boxOf(r.x[0], r.x[1], r.span[0], r.span[1], g.gap, g.gap + depth), {
    ...around(g, 'into', 'wall'),
    'z+': 'bottom',
  });

/** The four upright sides, each named by the face of the part itself that looks the same way. */
function around(g: Ground, role: 'enter' | 'into', word: string): Partial<Record<Looks, string>> {
  const part = g[role];
  return {
    'x-': `${word} ${faceToward(part, [-1, 0, 0])}`,
    'x+': `${word} ${faceToward(part, [1, 0, 0])}`,
    'y-': `${word} ${faceToward(part, [0, -1, 0])}`,
    'y+': `${word} ${faceToward(part, [0, 1, 0])}`,
  };
}
/** Out the way it came in; and along the housing where that comes out of the side. */
const frees = (r: Run): Made['frees'] => [
  { moves: ['enter'], along: [0, 0, -1] },
  ...(r.open[1] ? [{ moves: ['enter'], along: [0, 1, 0] as const }] : []),
  ...(r.open[0] ? [{ moves: ['enter'], along: [0, -1, 0] as const }] : []),
];
