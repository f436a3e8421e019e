import { tongueRule } from './tongue.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { byBook, byHabit, settle, tenths } from '../reasons.ts';
import { type Ground, ground, lay, moving, tongueAcross } from './lay.ts';
import type { GrooveTongue } from './params.ts';
import { signAlong } from '../blocks.ts';
import { isFace } from '../../model/ids.ts';

type Proposed = { readonly sizes: GrooveTongue; readonly because: Readonly<Record<keyof GrooveTongue, Reason>> };
const EIGHTH = 3.175;

/** Room for a season's movement on one side, mm: 1/8 in for each 12 in of the whole width, half of it on each side; never under 1.5. */
export const roomFor = (width: number): number => Math.max(1.5, tenths((width * EIGHTH) / 304.8 / 2));
/** The panel must still stand this deep in the groove at its driest, mm. */
export const ENGAGED = 3;

export function propose(p: Place<GrooveTongue>, shop: Cutting): Proposed | Refusal<GrooveTongue> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the panel’s edge does not lie square along the framed part', limit: 0, asked: 0 };
  const { set } = p;
  const hold = set.hold ?? 'loose';
  const [tongue, why] = tongueRule(g, shop);
  const thick = set.tongue ?? tongue;
  const joins = set.joins ?? (g.alike && g.x[1] - g.x[0] - thick > 1e-6 ? 'boards' : 'panel');
  const spare = set.spare ?? (hold === 'loose' ? roomFor(moving(g, { joins })) : 0.5);
  const depth = Math.max(Math.min(9.5, g.across / 2, tenths(g.behind / 2)), hold === 'loose' ? ENGAGED + 2 * spare : 0);
  const shouldered = thick < g.x[1] - g.x[0] - 1e-6;
  const out = settle<GrooveTongue>(set, {
    tongue: [tongue, why],
    bare: ['none', byHabit('shoulders on both sides hide the groove')],
    depth: [
      depth,
      byHabit(
        'about 3/8 in (9.5 mm) in a 3/4 in frame, at most half of a thin side, and deep enough that the panel stays in at its driest',
      ),
    ],
    spare: [
      spare,
      hold === 'loose'
        ? byBook('1/8 in of movement for each 12 in of width, half on each side', 'woodworkingtips.com, panels in frames')
        : byHabit('a little room for glue'),
    ],
    clear: [hold === 'loose' && shouldered ? spare : 0, byHabit('the shoulders of a floating panel need the same room as its tongue')],
    stopped: ['none', byHabit('a through groove is the plainest to cut')],
    stop: [flushStop(g, set), byHabit('where the tongue ends; 10 mm where that would be at the very end')],
    corners: ['none', byHabit('the tongue is as long as its edge unless the panel is held all round')],
    hold: ['loose', byBook('a solid panel is never glued in', 'woodworkingtips.com, panels in frames')],
    joins: [joins, byHabit('boards of one thickness along one grain each bring half of their movement to the gap between them')],
  });
  return refuse(g, out.sizes) ?? out;
}
/** Where the panel ends flush with the grooved part, a stopped groove must stop short of the end or it would show. */
function flushStop(g: Ground, set: Partial<GrooveTongue>): number {
  const s = set.stopped ?? 'none';
  if (s === 'none') return 0;
  const sign = isFace(s) ? signAlong(g.into, s, 'y') : null;
  const room = [g.y[0] - g.into.box.min[1], g.into.box.max[1] - g.y[1]] as const;
  const least = sign === null ? Math.min(...room) : room[sign > 0 ? 1 : 0];
  return least < 3 ? 10 : 0;
}

function refuse(g: Ground, s: GrooveTongue): Refusal<GrooveTongue> | null {
  const thick = g.x[1] - g.x[0];
  if (!(s.tongue > 0) || s.tongue > thick + 1e-6)
    return { cannot: 'the tongue is cut from the panel’s thickness', limit: thick, asked: s.tongue, nearest: { tongue: thick } };
  const x = tongueAcross(g, s);
  if (!x) return { cannot: `"${s.bare}" is no face of the panel beside this edge`, limit: 0, asked: 0, nearest: { bare: 'none' } };
  const out = Math.max(g.into.box.min[0] - x[0], x[1] - g.into.box.max[0]);
  if (out > -0.5) return { cannot: 'the groove would run out at the face of the framed part', limit: 0.5, asked: -out };
  if (!(s.depth > 0) || s.depth > g.behind - 1)
    return { cannot: 'the groove must leave wood behind it', limit: g.behind - 1, asked: s.depth, nearest: { depth: g.behind / 3 } };
  if (!(s.spare >= 0) || s.spare > s.depth - 1)
    return {
      cannot: 'the tongue must still reach into the groove',
      limit: s.depth - 1,
      asked: s.spare,
      nearest: { spare: Math.max(0, Math.min(1, s.depth / 3)) },
    };
  if (!(s.clear >= 0) || s.clear > 20)
    return {
      cannot: 'the shoulders stand off between nothing and 20 mm',
      limit: s.clear < 0 ? 0 : 20,
      asked: s.clear,
      nearest: { clear: 0 },
    };
  const l = lay(g, s);
  const run = l ? l.root[1] - l.root[0] : 0;
  if (!(s.stop >= 0) || !l || run < 5)
    return { cannot: 'the stops must leave a groove between them', limit: 5, asked: run, nearest: { stop: 0 } };
  return null;
}
