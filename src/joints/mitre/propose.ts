import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { nearestOwned } from '../cutters.ts';
import { withNearest } from '../nearest.ts';
import { type Reasons, byBook, byHabit, settle, tenths } from '../reasons.ts';
import { FLUSH } from '../shared-box.ts';
import { type Corner, alongMitre, corner, deepest, reaches } from './lay.ts';
import type { Mitre } from './params.ts';

const NAVED = 'US Navy training manual, joints (tongue and spline)';
/** Wood that keys leave beside themselves and at the inner corner, mm. */
const LEAST = 2;
type Proposed = { readonly sizes: Mitre; readonly because: Readonly<Record<keyof Mitre, Reason>> };

export function propose(p: Place<Mitre>, shop: Cutting): Proposed | Refusal<Mitre> {
  const c = corner(p.meeting);
  if (!c)
    return {
      cannot: 'a mitre needs two parts that are drawn overlapping in one corner, each going on from it one way',
      limit: 0,
      asked: 0,
    };
  if (!reaches(c)) return { cannot: 'both parts must run to the long point of the mitre', limit: FLUSH, asked: c.short };
  return withNearest<Mitre>(p.set, (set) => {
    const out = settle<Mitre>(set, proposals(set, c, shop));
    return refuse(out.sizes, c) ?? out;
  });
}
/** The thickness that spline or keys are a share of: the frame's, or the case's board. */
export const stockOf = (c: Corner): number => (alongMitre(c) ? c.span[1] - c.span[0] : Math.min(c.first.wide, c.second.wide));
function proposals(set: Partial<Mitre>, c: Corner, shop: Cutting): Reasons<Mitre> {
  const keyed = set.form === 'keyed';
  const wide = c.span[1] - c.span[0];
  const stock = stockOf(c);
  const count = set.count ?? Math.min(200, Math.max(1, Math.round(wide / 60)));
  const room = wide / count - LEAST;
  const thin = Math.min(keyed ? Math.min(4, stock / 3, room) : stock / 3);
  const thick = keyed
    ? tenths(thin)
    : alongMitre(c)
      ? nearestOwned(shop.grooveWidths, thin, [stock / 5, stock / 2], 0.1)
      : tenths(Math.min(stock / 4, 6));
  const used = set.thick ?? thick;
  const most = deepest(c, used);
  return {
    form: ['plain', byHabit('a spline or keys are added where the corner has to carry anything')],
    thick: [
      thick,
      keyed
        ? byHabit('keys as thick as a saw cut, up to a third of a frame', [2, Math.max(2, stock / 3)])
        : byBook('spline a third of the thickness in a frame; thinner in a case, where it stands near the inner corner', NAVED, [
            stock / 5,
            stock / 3,
          ]),
    ],
    depth: keyed
      ? [tenths(c.long / 2), byHabit('half way to the inner corner', [c.long / 3, (2 * c.long) / 3])]
      : [
          tenths(Math.min(most, stock)),
          byBook('the spline is twice as wide as the parts are thick, as far as there is wood for it', NAVED, [stock / 3, stock]),
        ],
    count: [count, byHabit('one key in a frame; about 60 mm apart in a case', [1, Math.max(1, Math.ceil(wide / 40))])],
    hold: ['glued', byHabit('glued, with size on the end grain first')],
  };
}
function refuse(s: Mitre, c: Corner): Refusal<Mitre> | null {
  if (s.form === 'plain') return null;
  if (!c.flat)
    return { cannot: 'splines and keys need both parts to lie flat with each other', limit: 0, asked: 0, nearest: { form: 'plain' } };
  const wide = c.span[1] - c.span[0];
  const stock = stockOf(c);
  if (s.form === 'splined') {
    const limit = alongMitre(c) ? wide - 2 * LEAST : c.long / 3;
    if (!(s.thick >= 1) || s.thick > limit)
      return {
        cannot: 'the spline must be at least 1 mm thick and leave wood on both sides',
        limit: s.thick > limit ? limit : 1,
        asked: s.thick,
        nearest: limit >= 1 ? { thick: Math.min(stock / 4, limit) < 1 ? 1 : Math.min(stock / 4, limit) } : { form: 'plain' },
      };
    const most = deepest(c, s.thick);
    if (!(s.depth >= 1) || s.depth > most + 1e-9)
      return {
        cannot: 'the spline must be let in 1 mm at least and not break through the outer face',
        limit: s.depth > most ? most : 1,
        asked: s.depth,
        nearest: most >= 1 ? { depth: Math.max(1, most / 2) } : { form: 'plain' },
      };
    return null;
  }
  if (!Number.isInteger(s.count) || s.count < 1 || s.count > 200)
    return {
      cannot: 'the number of keys is a whole number from 1 to 200',
      limit: s.count > 200 ? 200 : 1,
      asked: s.count,
      nearest: { count: Math.min(200, Math.max(1, Math.round(s.count) || 1)) },
    };
  const room = wide / s.count - LEAST;
  if (!(s.thick >= 1) || s.thick > room + 1e-9)
    return room >= 1
      ? {
          cannot: 'keys must be at least 1 mm thick and leave wood between them',
          limit: s.thick > room ? room : 1,
          asked: s.thick,
          nearest: { thick: Math.max(1, Math.min(3, room)) },
        }
      : {
          cannot: 'so many keys leave no wood between them',
          limit: Math.floor(wide / (1 + LEAST)),
          asked: s.count,
          nearest: wide > 1 + LEAST ? { count: Math.floor(wide / (1 + LEAST)) } : { form: 'plain' },
        };
  const most = c.long - LEAST;
  if (!(s.depth >= 1) || s.depth > most)
    return {
      cannot: 'a key reaches in 1 mm at least and stops short of the inner corner',
      limit: s.depth > most ? most : 1,
      asked: s.depth,
      nearest: most >= 1 ? { depth: Math.max(1, c.long / 2) } : { form: 'plain' },
    };
  return null;
}
