import { nearestOwned } from '../cutters.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { withNearest } from '../nearest.ts';
import { byBook, byHabit, settle } from '../reasons.ts';
import { type Ground, ground, stops, tongueAcross } from './lay.ts';
import type { Housing } from './params.ts';

const BOOK = 'Port Townsend School of Woodworking, rules of thumb';
/** The least depth and stop that can be cut, mm. */
const SHALLOWEST = 0.1;
/** Least of a tongue, and of its shoulders together, mm. */
const LEAST = 1;
type Proposed = { readonly sizes: Housing; readonly because: Readonly<Record<keyof Housing, Reason>> };

/** Depth a quarter of the side (a third at most); a stopped housing leaves about 10 mm, less on narrow shelves. */
export function propose(p: Place<Housing>, shop: Cutting): Proposed | Refusal<Housing> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the end of the shelf does not stand square on the face of the side', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => ask(g, set, shop));
}
function ask(g: Ground, set: Partial<Housing>, shop: Cutting): Proposed | Refusal<Housing> {
  const width = g.y[1] - g.y[0];
  const shelf = g.x[1] - g.x[0];
  const shoulders = set.shoulders ?? (set.tongue !== undefined && set.tongue < shelf - 1e-6 ? 'both' : 'none');
  const out = settle<Housing>(set, {
    depth: [g.thick / 4, byBook('a quarter of the side, a third at most', BOOK, [g.thick / 4, g.thick / 3])],
    stopped: ['none', byHabit('through is the plainest to cut')],
    stop: [Math.min(10, width / 4), byHabit('about 10 mm: enough that the front edge keeps its line', [6, 20])],
    shoulders: [shoulders, byHabit('the whole thickness is the plainest; shoulders hide the line and let the shelf be planed afterwards')],
    tongue:
      shoulders === 'none'
        ? [shelf, byHabit('without shoulders the whole thickness goes in')]
        : [
            nearestOwned(shop.grooveWidths, shelf / 2, [shelf / 3, (shelf * 2) / 3]),
            byHabit('half the shelf, by a cutter that the shop owns', [shelf / 3, (shelf * 2) / 3]),
          ],
    hold: ['glued', byHabit('a plain housing has nothing but glue to hold it')],
  });
  return refuse(g, out.sizes) ?? refuseTongue(g, out.sizes) ?? out;
}

function refuse(g: Ground, s: Housing): Refusal<Housing> | null {
  const { thick } = g;
  const width = g.y[1] - g.y[0];
  if (!(s.depth >= SHALLOWEST) || s.depth > thick - 1)
    return {
      cannot: 'the housing must leave wood in the side',
      limit: Math.max(0, thick - 1),
      asked: s.depth,
      nearest: { depth: thick / 4 },
    };
  const cut = stops(g, s);
  if (!cut) return { cannot: `"${s.stopped}" is not an edge of the shelf's end`, limit: 0, asked: 0, nearest: { stopped: 'none' } };
  if (s.stopped === 'none') return null;
  if (!(s.stop >= SHALLOWEST) || cut[0] + cut[1] > width - 1)
    return {
      cannot: 'the stops must leave a housing between them',
      limit: (width - 1) / (cut[0] > 0 && cut[1] > 0 ? 2 : 1),
      asked: s.stop,
      nearest: { stop: Math.min(10, width / 4) },
    };
  return null;
}
function refuseTongue(g: Ground, s: Housing): Refusal<Housing> | null {
  const shelf = g.x[1] - g.x[0];
  if (!tongueAcross(g, s))
    return {
      cannot: `"${s.shoulders}" is no face of the shelf beside its end`,
      limit: 0,
      asked: 0,
      nearest: { shoulders: 'none', tongue: shelf },
    };
  if (s.shoulders === 'none')
    return Math.abs(s.tongue - shelf) < 1e-6
      ? null
      : { cannot: 'without shoulders the whole thickness goes in', limit: shelf, asked: s.tongue, nearest: { tongue: shelf } };
  if (!(s.tongue >= LEAST) || s.tongue > shelf - LEAST)
    return {
      cannot: 'tongue and shoulders each take a share of the shelf',
      limit: s.tongue >= LEAST ? shelf - LEAST : LEAST,
      asked: s.tongue,
      nearest: { tongue: shelf / 2 },
    };
  return null;
}
