import { isSoftwood } from '../../wood/woods.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { type Reasons, byBook, byHabit, settle, tenths } from '../reasons.ts';
import { type Corner, FLUSH, LEAST_HALF, LEAST_TAIL, corner, grooveOf, layoutFor } from './lay.ts';
import type { Dovetail } from './params.ts';

const SLOPES = 'woodworking magazines and teachers, as surveyed at blog.lostartpress.com 2008 and 2023';
type Proposed = { readonly sizes: Dovetail; readonly because: Readonly<Record<keyof Dovetail, Reason>> };

/** Tails about twice the thickness apart, pins near a third of the tails, slope by the wood. */
export function propose(p: Place<Dovetail>, _shop: Cutting): Proposed | Refusal<Dovetail> {
  const c = corner(p.meeting);
  if (!c) return { cannot: 'the two boards do not share a square corner for their whole thickness', limit: 0, asked: 0 };
  if (c.proud > FLUSH) return { cannot: 'each board must run to the outer face of the other', limit: FLUSH, asked: c.proud };
  const out = settle<Dovetail>(p.set, proposals(p.set, c));
  const wrong = refuse(p, out.sizes, c);
  if (wrong) return wrong;
  const { angle, slope } = slopes(p.set, c);
  return { ...out, sizes: { ...out.sizes, angle, slope } };
}
function proposals(set: Partial<Dovetail>, c: Corner): Reasons<Dovetail> {
  const width = c.y[1] - c.y[0];
  const deep = c.z[1] - c.z[0];
  const pitch = Math.min(60, Math.max(25, 2 * Math.max(deep, c.x[1] - c.x[0])));
  const { angle, slope } = slopes(set, c);
  const n = set.tails ?? Math.max(1, Math.round(width / pitch));
  const pin = set.pin ?? Math.max(3, tenths(width / n / 3.5 - deep * slope));
  const soft = isSoftwood(c.tails.wood);
  const style = byBook(
    soft ? '1:6 in softwood' : '1:8 in hardwood; older books give hard wood more slope than soft: a matter of style',
    SLOPES,
    [1 / 8, 1 / 4],
  );
  return {
    tails: [n, byHabit('tails about twice the thickness of the boards apart')],
    slope: [slope, style],
    angle: [angle, style],
    pin: [pin, byHabit('tails two to three times as wide as the pins', [width / n / 4, width / n / 3])],
    half_pin: [Math.max(4, pin), byHabit('a half pin at each edge, no weaker than a whole one')],
    tail_over: [null, byHabit('nothing to hide')],
    over_size: [6, byHabit('the usual groove of a drawer bottom, about 6 mm')],
  };
}
/** Either the ratio or the angle may be set; each gives the other. */
function slopes(set: Partial<Dovetail>, c: Corner): { slope: number; angle: number } {
  const slope = set.slope ?? (set.angle === undefined ? (isSoftwood(c.tails.wood) ? 1 / 6 : 1 / 8) : Math.tan(set.angle));
  return { slope, angle: Math.atan(slope) };
}

function refuse(p: Place<Dovetail>, s: Dovetail, c: Corner): Refusal<Dovetail> | null {
  const { slope, angle } = slopes(p.set, c);
  if (p.set.angle !== undefined && Math.abs(p.set.angle - angle) > 1e-4)
    return { cannot: 'slope and angle say different things; one of them is enough', limit: angle, asked: p.set.angle, nearest: { angle } };
  if (!(slope >= 0.02 && slope <= 0.5))
    return {
      cannot: 'a tail leans between 1 in 50 and 1 in 2',
      limit: slope < 0.02 ? 0.02 : 0.5,
      asked: slope,
      nearest: { slope: 1 / 8, angle: Math.atan(1 / 8) },
    };
  if (!Number.isInteger(s.tails) || s.tails < 1 || s.tails > 200)
    return {
      cannot: 'the number of tails is a whole number from 1',
      limit: 1,
      asked: s.tails,
      nearest: { tails: Math.min(200, Math.max(1, Math.round(s.tails) || 1)) },
    };
  if (!(s.pin > 0)) return { cannot: 'a pin needs a width', limit: 0, asked: s.pin, nearest: { pin: 3 } };
  if (!(s.half_pin >= LEAST_HALF))
    return { cannot: 'a half pin this narrow cannot be cut', limit: LEAST_HALF, asked: s.half_pin, nearest: { half_pin: 4 } };
  return refuseLayout(p, { ...s, slope, angle }, c);
}
function refuseLayout(p: Place<Dovetail>, s: Dovetail, c: Corner): Refusal<Dovetail> | null {
  const keepHalf = p.set.half_pin !== undefined;
  if (layoutFor(c, s, keepHalf)) return null;
  const fewer = fewerTails(c, s, keepHalf);
  const groove = grooveOf(c, s);
  const width = c.y[1] - c.y[0];
  const rise = (c.z[1] - c.z[0]) * s.slope;
  if (groove && layoutFor(c, { ...s, tail_over: null }, keepHalf)) {
    const edge = Math.min(groove[0], width - groove[1]);
    const least = rise + (keepHalf ? s.half_pin : LEAST_HALF);
    return { cannot: 'no tail can be laid over the groove', limit: least, asked: edge, ...(fewer ? { nearest: { tails: fewer } } : {}) };
  }
  const most = Math.floor((width - 2 * s.half_pin + s.pin) / (s.pin + 2 * rise + LEAST_TAIL));
  return {
    cannot: 'so many tails leave no wood at their base',
    limit: Math.max(0, most),
    asked: s.tails,
    ...(fewer ? { nearest: { tails: fewer } } : {}),
  };
}
/** The greatest smaller number of tails that can be laid out; 0 when there is none. */
function fewerTails(c: Corner, s: Dovetail, keepHalf: boolean): number {
  for (let n = s.tails - 1; n >= 1; n--) if (layoutFor(c, { ...s, tails: n }, keepHalf)) return n;
  return 0;
}
