import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { byBook, byHabit, settle } from '../reasons.ts';
import { ground, stops } from './lay.ts';
import type { Housing } from './params.ts';

const BOOK = 'Port Townsend School of Woodworking, rules of thumb';
type Proposed = { readonly sizes: Housing; readonly because: Readonly<Record<keyof Housing, Reason>> };

/** Depth a quarter of the side (a third at most); a stopped housing leaves about 10 mm, less on narrow shelves. */
export function propose(p: Place<Housing>, _shop: Cutting): Proposed | Refusal<Housing> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the end of the shelf does not stand square on the face of the side', limit: 0, asked: 0 };
  const width = g.y[1] - g.y[0];
  const out = settle<Housing>(p.set, {
    depth: [g.thick / 4, byBook('a quarter of the side, a third at most', BOOK, [g.thick / 4, g.thick / 3])],
    stopped: ['none', byHabit('through is the plainest to cut')],
    stop: [Math.min(10, width / 4), byHabit('about 10 mm: enough that the front edge keeps its line', [6, 20])],
    hold: ['glued', byHabit('a plain housing has nothing but glue to hold it')],
  });
  return refuse(p, out.sizes, g.thick, width) ?? out;
}

function refuse(p: Place<Housing>, s: Housing, thick: number, width: number): Refusal<Housing> | null {
  if (!(s.depth > 0) || s.depth > thick - 1)
    return {
      cannot: 'the housing must leave wood in the side',
      limit: Math.max(0, thick - 1),
      asked: s.depth,
      nearest: { depth: thick / 4 },
    };
  const g = ground(p.meeting);
  const cut = g && stops(g, s);
  if (!cut) return { cannot: `"${s.stopped}" is not an edge of the shelf's end`, limit: 0, asked: 0, nearest: { stopped: 'none' } };
  if (s.stopped === 'none') return null;
  if (!(s.stop > 0) || cut[0] + cut[1] > width - 1)
    return {
      cannot: 'the stops must leave a housing between them',
      limit: (width - 1) / (cut[0] > 0 && cut[1] > 0 ? 2 : 1),
      asked: s.stop,
      nearest: { stop: Math.min(10, width / 4) },
    };
  return null;
}
