import { type Answer, withNearest } from '../nearest.ts';
import type { Cutting, Place, Refusal } from '../family.ts';
import { byBook, byHabit, settle } from '../reasons.ts';
import { PTSW } from '../sources.ts';
import { type Ground, drawnDepth, ground, lipLeft } from './lay.ts';
import type { Rabbet } from './params.ts';

/** Least of a rabbet's depth, of the wood behind it and of the board's tongue, mm. */
const LEAST = 1;

export function propose(p: Place<Rabbet>, _shop: Cutting): Answer<Rabbet> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the board does not stand square at an edge of the other part', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => ask(g, set));
}
function ask(g: Ground, set: Partial<Rabbet>): Answer<Rabbet> {
  const drawn = drawnDepth(g);
  const half = g.deep / 2;
  const out = settle<Rabbet>(set, {
    depth:
      drawn === null
        ? [half, byHabit('half of the other part at a corner; a shallower one weakens it less', [g.deep / 4, (g.deep * 2) / 3])]
        : [drawn, byHabit('as the parts are drawn, one in the other')],
    spare: [0, byHabit('none: the edge closes on the wall; a wide solid board that is not glued needs some')],
    outer: [0, byHabit('the rabbet is open at the edge, the whole board lies in it')],
    inner: [0, byHabit('the board goes in with its whole thickness')],
    ends: ['through', byBook('a rabbet is planed or sawn from end to end', PTSW)],
    hold: ['glued', byHabit('glued, and pinned while it sets')],
  });
  return refuse(g, out.sizes, drawn) ?? out;
}
function refuse(g: Ground, s: Rabbet, drawn: number | null): Refusal<Rabbet> | null {
  if (drawn !== null && Math.abs(s.depth - drawn) > 1e-4)
    return {
      cannot: 'the board is drawn in its rabbet: change the board to change the depth',
      limit: drawn,
      asked: s.depth,
      nearest: { depth: drawn },
    };
  if (!(s.depth >= LEAST) || !(s.spare >= 0) || lipLeft(g, s) < LEAST) {
    const limit = g.deep - LEAST - Math.max(0, s.spare);
    const bad = s.spare < 0 ? s.spare : s.depth;
    const nearest = s.spare < 0 || drawn !== null ? { spare: 0 } : { depth: g.deep / 2, spare: Math.min(s.spare, g.deep / 4) };
    return { cannot: 'the rabbet must leave wood behind it', limit: s.depth < LEAST ? LEAST : limit, asked: bad, nearest };
  }
  const tongue = g.board - s.inner - s.outer;
  if (!(s.inner >= 0) || !(s.outer >= 0) || tongue < LEAST)
    return {
      cannot: 'the two rabbets of the board must leave a tongue between them',
      limit: g.board - LEAST,
      asked: s.inner + s.outer,
      nearest: { inner: 0, outer: 0 },
    };
  if (s.outer < 1e-6 && g.short > g.board + 1e-6)
    return { cannot: 'no edge of the other part is near the board', limit: g.board, asked: g.short };
  return null;
}
