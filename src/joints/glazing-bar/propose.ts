import { signAlong } from '../blocks.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { withNearest } from '../nearest.ts';
import { byBook, byHabit, settle, tenths } from '../reasons.ts';
import { type Ground, ground, isRabbeted, lapOf, showsOf } from './lay.ts';
import type { GlazingBar } from './params.ts';

const LAPPED = 'Latta, glass doors with delicate bars: the lattice is half-lapped';
/** The least tongue and the least ledge that are worth cutting, mm; common practice. */
export const LEAST_TONGUE = 3;
export const LEAST_LEDGE = 3;
type Proposed = { readonly sizes: GlazingBar; readonly because: Readonly<Record<keyof GlazingBar, Reason>> };

export function propose(p: Place<GlazingBar>, _shop: Cutting): Proposed | Refusal<GlazingBar> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the bars do not cross square, flush at front and back', limit: 0, asked: 0 };
  return withNearest(p.set, (set) => {
    const out = proposals(g, set);
    return refuse(g, out.sizes) ?? out;
  });
}
const narrowest = (g: Ground): number => Math.min(g.over.wide, g.under.wide);
function proposals(g: Ground, set: Partial<GlazingBar>): Proposed {
  const narrow = narrowest(g);
  return settle<GlazingBar>(set, {
    shows: [showsOf(g), byHabit('the face side; else the front, else the top')],
    rabbet_wide: [
      set.rabbet_deep === 0 ? 0 : tenths(Math.max(1, (narrow - Math.max(LEAST_TONGUE, narrow / 3)) / 2)),
      byHabit('the tongue keeps a third of the bar', [narrow / 4, narrow / 3]),
    ],
    rabbet_deep: [
      set.rabbet_wide === 0 ? 0 : g.thick / 2,
      byBook('half of the bar, where both are halved', LAPPED, [g.thick / 3, (g.thick * 2) / 3]),
    ],
    moulding: ['none', byHabit('square, unless the frame is moulded')],
    moulding_size: [tenths(Math.min(narrow / 4, g.thick / 4)), byHabit('a quarter of the bar')],
    hold: ['glued', byHabit('glued with the frame')],
  });
}
type No = Refusal<GlazingBar> | null;
function refuse(g: Ground, s: GlazingBar): No {
  if (signAlong(g.over.side, s.shows, 'z') === null)
    return { cannot: `"${s.shows}" is not a face or back of the bar`, limit: 0, asked: 0, nearest: { shows: showsOf(g) } };
  const least = Math.min(s.rabbet_wide, s.rabbet_deep);
  if (!(least >= 0))
    return { cannot: 'a rabbet is no less than nothing', limit: 0, asked: least, nearest: { rabbet_wide: 0, rabbet_deep: 0 } };
  if (least === 0 && Math.max(s.rabbet_wide, s.rabbet_deep) > 0)
    return { cannot: 'a rabbet has width and depth', limit: 0.5, asked: 0, nearest: { rabbet_wide: 0, rabbet_deep: 0 } };
  return (isRabbeted(s) ? refuseRabbet(g, s) : null) ?? refuseMoulding(g, s);
}
function refuseRabbet(g: Ground, s: GlazingBar): No {
  const wide = (narrowest(g) - 1) / 2;
  if (s.rabbet_wide > wide || s.rabbet_wide < 0.5)
    return {
      cannot: 'the rabbets leave a tongue between them',
      limit: s.rabbet_wide < 0.5 ? 0.5 : wide,
      asked: s.rabbet_wide,
      nearest: { rabbet_wide: narrowest(g) / 3 },
    };
  return s.rabbet_deep > g.thick - 1 || s.rabbet_deep < 0.5
    ? {
        cannot: 'the rabbets leave wood in front of the glass',
        limit: s.rabbet_deep < 0.5 ? 0.5 : g.thick - 1,
        asked: s.rabbet_deep,
        nearest: { rabbet_deep: g.thick / 2 },
      }
    : null;
}
function refuseMoulding(g: Ground, s: GlazingBar): No {
  if (s.moulding === 'none') return null;
  const most = Math.min(narrowest(g) / 2 - 0.5, lapOf(g, s) - 0.5);
  return s.moulding_size > most || !(s.moulding_size >= 0.3)
    ? {
        cannot: 'the moulding stays on the front of the bar',
        limit: s.moulding_size > most ? most : 0.3,
        asked: s.moulding_size,
        nearest: most >= 0.3 ? { moulding_size: Math.min(most, Math.max(0.3, narrowest(g) / 4)) } : { moulding: 'none' },
      }
    : null;
}
