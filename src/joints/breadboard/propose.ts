import { nearestOwned } from '../cutters.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { byBook, byHabit, settle, tenths } from '../reasons.ts';
import { type Ground, fastTenon, ground, lay, pitchOf } from './lay.ts';
import type { Breadboard } from './params.ts';

const PTSW = 'Port Townsend School of Woodworking, rules of thumb';
const MOVES = 'woodworkingtips.com: up to 1/8 in of movement for each 12 in of width';
/** Share of a width that a flat-sawn top may move over the seasons: 1/8 in in 12 in. */
const SHARE = 1 / 96;
/** Least wood of a tenon beside its slot, mm. */
const CHEEK = 3;
type Proposed = { readonly sizes: Breadboard; readonly because: Readonly<Record<keyof Breadboard, Reason>> };

export function propose(p: Place<Breadboard>, shop: Cutting): Proposed | Refusal<Breadboard> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the end board does not lie square along the end of the top', limit: 0, asked: 0 };
  const { set } = p;
  const width = g.y[1] - g.y[0];
  const thick = g.x[1] - g.x[0];
  const tenons = set.tenons ?? Math.max(3, 2 * Math.round((width / 200 - 1) / 2) + 1);
  const thickness = set.thickness ?? nearestOwned(shop.mortiseWidths, thick / 3, [thick / 4, thick / 2]);
  const tongue = set.tongue ?? tenths(Math.min(10, g.deep / 5));
  const length = set.tenon_length ?? tenths((g.deep * 2) / 3);
  const fast = fastTenon(g, { fixed: set.fixed ?? 'middle', tenons });
  const reach = pitchOf(g, tenons) * Math.max(fast ?? 0, tenons - 1 - (fast ?? 0));
  const allow = set.allow ?? Math.max(1, tenths(reach * SHARE));
  const wanted = tenths(Math.min(5 * thickness, pitchOf(g, tenons) / 2));
  const peg = set.peg ?? nearestOwned(shop.bits, wanted / 5, [Math.min(5, wanted / 4), Math.max(6.5, wanted / 4)]);
  const out = settle<Breadboard>(set, {
    thickness: [thickness, byBook('a third of the thickness', PTSW, [thick / 4, thick / 2])],
    tongue: [tongue, byHabit('a short tongue keeps the boards level between the tenons')],
    tenons: [
      tenons,
      byHabit('about 200 mm apart and an odd number, so that one stands in the middle', [3, Math.max(3, Math.round(width / 120))]),
    ],
    tenon_width: [
      Math.max(wanted, tenths(peg + 2 * allow + 2 * CHEEK + 0.1)),
      byBook('not over 5 times the thickness, at most half of the spacing', 'Notes on Building Construction (Rivington)', [
        2 * thickness,
        6 * thickness,
      ]),
    ],
    tenon_length: [length, byHabit('two thirds of the end board')],
    spare: [1.5, byBook('a mortise is about 1/8 in deeper than its tenon; half of it does', PTSW, [1, 3.2])],
    fixed: ['middle', byBook('fix at one point, let the rest slide', 'finewoodworking.com and woodweb.com, practitioners')],
    allow: [allow, byBook('1/8 in for each 12 in from the fast peg, each way', MOVES)],
    peg: [peg, byHabit('up to a quarter of the tenon’s width; 1/4 in is common')],
    peg_back: [tenths((tongue + length) / 2), byHabit('in the middle of the tenon beyond the tongue')],
  });
  return refuse(g, out.sizes) ?? out;
}

function refuse(g: Ground, s: Breadboard): Refusal<Breadboard> | null {
  const thick = g.x[1] - g.x[0];
  if (!(s.thickness > 0) || s.thickness > thick - 2)
    return {
      cannot: 'tongue and tenons leave a cheek on both sides',
      limit: thick - 2,
      asked: s.thickness,
      nearest: { thickness: thick / 3 },
    };
  if (!Number.isInteger(s.tenons) || s.tenons < 1 || s.tenons > 60)
    return { cannot: 'the number of tenons is a whole number from 1', limit: 1, asked: s.tenons, nearest: { tenons: 3 } };
  const fast = fastTenon(g, s);
  if (fast === null && s.fixed === 'middle')
    return {
      cannot: 'no tenon stands in the middle of an even number',
      limit: s.tenons + 1,
      asked: s.tenons,
      nearest: { tenons: s.tenons + 1 },
    };
  if (fast === null)
    return { cannot: `"${s.fixed}" is no edge of the top beside its end`, limit: 0, asked: 0, nearest: { fixed: 'middle' } };
  if (!(s.tongue > 0) || !(s.tenon_length > s.tongue))
    return {
      cannot: 'the tenons are longer than the tongue between them',
      limit: s.tongue,
      asked: s.tenon_length,
      nearest: { tongue: Math.min(10, g.deep / 5), tenon_length: (g.deep * 2) / 3 },
    };
  if (s.tenon_length + s.spare > g.deep - 3)
    return {
      cannot: 'the mortises must leave wood in the end board',
      limit: g.deep - 3 - s.spare,
      asked: s.tenon_length,
      nearest: { tenon_length: g.deep - 3 - s.spare },
    };
  if (!(s.spare >= 0) || !(s.allow >= 0) || !(s.peg > 0))
    return {
      cannot: 'room and movement are not below nothing, and a peg needs a diameter',
      limit: 0,
      asked: Math.min(s.spare, s.allow, s.peg),
      nearest: { spare: 1.5, allow: 3, peg: 6 },
    };
  return refuseAcross(g, s);
}
/** Slots inside their tenons, mortises inside the end board and clear of each other. */
function refuseAcross(g: Ground, s: Breadboard): Refusal<Breadboard> | null {
  const l = lay(g, s);
  const most = Math.max(...l.tenons.map((t) => t.allow));
  const slot = s.peg + 2 * most + 2 * CHEEK;
  if (s.tenon_width < slot - 1e-6)
    return {
      cannot: 'the slot would cut through the side of its tenon',
      limit: slot,
      asked: s.tenon_width,
      nearest: { tenon_width: slot },
    };
  const room = pitchOf(g, s.tenons) - 2 * most - 3;
  if (s.tenons > 1 && s.tenon_width > room)
    return {
      cannot: 'the mortises would run into each other',
      limit: room,
      asked: s.tenon_width,
      nearest: { tenons: s.tenons > 3 ? s.tenons - 2 : 1 },
    };
  const past = Math.max(
    ...l.tenons.map((t) => Math.max(g.y[0] - (t.y - s.tenon_width / 2 - t.allow), t.y + s.tenon_width / 2 + t.allow - g.y[1])),
  );
  if (past > -3)
    return {
      cannot: 'a mortise would run out at the end of the end board',
      limit: s.tenon_width - 2 * (past + 3),
      asked: s.tenon_width,
      nearest: { tenon_width: s.tenon_width - 2 * (past + 3) },
    };
  const [low, high] = [s.peg / 2 + 2, s.tenon_length - s.peg / 2 - 2];
  if (s.peg_back < low || s.peg_back > high)
    return {
      cannot: 'the pegs go through the tenons',
      limit: s.peg_back < low ? low : high,
      asked: s.peg_back,
      nearest: { peg_back: (s.tongue + s.tenon_length) / 2 },
    };
  return null;
}
