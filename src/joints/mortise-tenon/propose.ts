import { ownSense } from '../blocks.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { downTo, nearestOwned, roundTo, stepOf } from '../cutters.ts';
import { byBook, byHabit, settle } from '../reasons.ts';
import { NOYES, PTSW, RIV, TIMBER_PEGS } from '../sources.ts';
import { type Crossing, type Ground, MITRE_SPACE, crossings, endSide, ground, hasFaceSide, runsAlongGrain, across, whole } from './lay.ts';
import type { MortiseTenon } from './params.ts';

type P = MortiseTenon;
type Proposed = { readonly sizes: P; readonly because: Readonly<Record<keyof P, Reason>> };
type Offer<K extends keyof P> = readonly [P[K], Reason];

/** Sizes from the two parts and the cutters owned, one after the other, each reading those before it as the document sets them. */
export function propose(p: Place<P>, shop: Cutting): Proposed | Refusal<P> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the tenon does not point into the receiving part', limit: 0, asked: 0 };
  const step = stepOf(shop);
  const set = p.set;
  const thickness = thicknessFor(g, shop);
  const t = set.thickness ?? thickness[0];
  const tenons = tenonsFor(g, t, set);
  const n = Math.max(1, Math.round(set.tenons ?? tenons[0]));
  const between: Offer<'between'> = [
    n > 1 ? roundTo(step, widthAll(g, set) / (2 * n - 1)) : 0,
    byBook('tenons side by side are parted by about their own width', PTSW),
  ];
  const gapBetween = set.between ?? between[0];
  const width = widthFor(g, t, n, gapBetween, set, step);
  const w = set.width ?? width[0];
  const drop = dropFor(g, n * w + (n - 1) * gapBetween, set, step);
  const placing = {
    thickness: t,
    offset: set.offset ?? 0,
    from: set.from ?? ('middle' as const),
    width: w,
    tenons: n,
    between: gapBetween,
    drop: set.drop ?? drop[0],
  };
  const meets = crossings(g, placing, p.siblings);
  const spare = spareFor(g, step);
  const length = lengthFor(g, t, set.spare ?? spare[0], meets, set, step);
  const l = set.length ?? length[0];
  const pegD = nearestOwned(shop.bits, Math.min(w / 4, 6.35), [Math.min(3, w / 4), w / 4], step);
  const d = set.peg_diameter ?? pegD;
  const back = pegBack(g, l, d, meets, set);
  const out = settle<P>(set, {
    thickness,
    width,
    length,
    tenons,
    between,
    drop,
    offset: [0, set.from === 'face' ? byHabit('flush with the face side') : byHabit('in the middle of the thickness')],
    from: ['middle', byHabit('the middle, unless a face must come flush')],
    shoulders: ['all', byHabit('a shoulder all round hides the edges of the mortise')],
    end: ['square', byHabit('square is the plainest; mitred where two tenons meet and length is short')],
    through: ['no', byHabit('blind, unless it is to be wedged or shown')],
    proud: [0, byHabit('flush at the back')],
    haunch: ['none', byHabit('none: for frames with a groove set it square')],
    haunch_length: [Math.min(t, l / 2), byBook('as long as the tenon is thick', PTSW, [t, 25.4])],
    wedge: ['none', byHabit('none')],
    wedges: [runsAlongGrain(g) ? 2 : 1, byHabit('one in each end of a long mortise, one where it is short along the grain')],
    wedge_thick: [Math.min(4, (runsAlongGrain(g) ? w : t) / 5), byHabit('slim: it spreads each half by a slope of about 1 : 8')],
    pegs: [0, byHabit('none: glue alone holds furniture')],
    peg_diameter: [pegD, byBook('up to a quarter of the tenon’s width; about 6 to 10 mm in furniture', TIMBER_PEGS, [6.35, 9.525])],
    peg_back: [back, byHabit('two diameters behind the face, and nearer the shoulder than the end')],
    peg_length: [pegLength(g, placing, d), byHabit('through the tenon and two diameters on, short of the far face')],
    drawbore: [0, byBook('none unless asked; 0.8 to 2.4 mm in furniture', TIMBER_PEGS, [0.8, 2.4])],
    spare,
    glue: ['yes', byHabit('glued')],
  });
  return refuse(p, g, out.sizes) ?? out;
}

function thicknessFor(g: Ground, shop: Cutting): Offer<'thickness'> {
  const stock = g.x[1] - g.x[0];
  const room = g.into.box.max[0] - g.into.box.min[0];
  const post = room > stock * 1.5;
  // A rail in a thicker post may have more than a third: the post can spare it, the rail's shoulders cannot spare less.
  const wanted = post ? stock * 0.4 : stock / 3;
  const most = Math.min(stock / 2, room / 2);
  return [
    nearestOwned(shop.mortiseWidths, Math.min(wanted, most), [Math.min(stock / 4, most), most], stepOf(shop)),
    byBook(
      post
        ? 'a third of the rail, more where it enters a thicker post, as a chisel or bit is owned'
        : 'a third of the thinner part, as a chisel or bit is owned',
      `${PTSW}; ${RIV}`,
      [stock / 4, post ? stock / 2 : stock / 3],
    ),
  ];
}
/** The width over which tenons may spread: the shoulders wanted left and right taken off. */
function widthAll(g: Ground, set: Partial<P>): number {
  const w = g.y[1] - g.y[0];
  if (set.shoulders === 'broad') return w;
  return set.shoulders === 'top' || set.shoulders === 'bottom' ? (w * 5) / 6 : (w * 2) / 3;
}
function tenonsFor(g: Ground, t: number, set: Partial<P>): Offer<'tenons'> {
  const all = widthAll(g, set);
  // One tenon of up to 6 t, and up to 9 t of rail behind it; beyond that two or more share the width.
  const n = all <= 9 * t ? 1 : Math.max(2, Math.ceil((all / (6 * t) + 1) / 2));
  return [n, byBook('one tenon is not wider than 6 times its thickness; else several', `${PTSW}; ${RIV} (5 times)`)];
}
function widthFor(g: Ground, t: number, n: number, between: number, set: Partial<P>, step: number): Offer<'width'> {
  const all = widthAll(g, set);
  const one = n === 1 ? (set.shoulders === 'broad' ? all : Math.min(all, 6 * t)) : (all - (n - 1) * between) / n;
  const w = Math.max(Math.min(step, all), set.shoulders === 'broad' ? one : downTo(step, one));
  return [
    w,
    byBook('two thirds of the rail’s width, at most 6 times the thickness', `${PTSW} (after Moxon); ${RIV}`, [
      Math.min(all, 5 * t),
      Math.min(all, 6 * t),
    ]),
  ];
}
/** Away from the receiver's end, so that wood is left above the mortise. */
function dropFor(g: Ground, all: number, set: Partial<P>, step: number): Offer<'drop'> {
  const slack = g.y[1] - g.y[0] - all;
  const why = byBook('the wide shoulder stands towards the end of the leg, where the mortise would break out', NOYES);
  if (set.shoulders === 'top') return [slack / 2, why];
  if (set.shoulders === 'bottom') return [-slack / 2, why];
  const near = endSide(g);
  if (!runsAlongGrain(g) || near.room > (g.y[1] - g.y[0]) / 3 || near.room < -1e-6) return [0, byHabit('in the middle of the width')];
  // A third of the slack below, two thirds above.
  return [roundTo(step, (near.side * ownSense(g.enter, 'y') * slack) / 6), why];
}
function spareFor(_g: Ground, step: number): Offer<'spare'> {
  return [step === 1 ? 3 : 3.175, byBook('the mortise is about 1/8 in deeper than the tenon', PTSW)];
}
function lengthFor(g: Ground, t: number, spare: number, meets: readonly Crossing[], set: Partial<P>, step: number): Offer<'length'> {
  if (set.through === 'yes') return [g.deep + (set.proud ?? 0), byHabit('through the receiving part')];
  const deepest = (g.deep * 2) / 3;
  const ample = 5 * t - spare;
  const free = Math.min(deepest, ample);
  const book = byBook(
    'the mortise 3 to 5 times as deep as wide, the tenon less by the spare, two thirds of the receiving part at most',
    PTSW,
    [3 * t - spare, ample],
  );
  if (meets.length === 0) return [downTo(step, free), book];
  const mitred = set.end === 'mitred';
  const clear = Math.min(...meets.map((c) => (c.facing || !mitred ? c.square - MITRE_SPACE : c.long - MITRE_SPACE)));
  if (clear >= free) return [downTo(step, free), book];
  return [
    Math.max(0, downTo(step, clear)),
    {
      rule: mitred ? 'as long as the mitre against the other tenon allows' : 'the longest that clears the other tenon',
      source: { name: 'computed from the parts', basis: 'derived' },
    },
  ];
}
function pegBack(g: Ground, length: number, d: number, meets: readonly Crossing[], set: Partial<P>): number {
  const solid = set.end === 'mitred' ? Math.min(length, ...meets.map((c) => c.short)) : set.through === 'yes' ? g.deep : length;
  return Math.max(d, Math.min(2 * d, solid / 2));
}
function pegLength(g: Ground, s: { thickness: number; offset: number; from: 'middle' | 'face' }, d: number): number {
  const x = across(g.enter, s);
  const low = x[0] - g.into.box.min[0];
  const high = g.into.box.max[0] - x[1];
  const whole = g.into.box.max[0] - g.into.box.min[0];
  return Math.min(Math.min(low, high) + s.thickness + 2 * d, whole - 3);
}

/** Nonsense that cannot be drawn; everything that can is judged by the rules. */
function refuse(p: Place<P>, g: Ground, s: P): Refusal<P> | null {
  const [stock, wide] = [g.x[1] - g.x[0], g.y[1] - g.y[0]];
  const x = across(g.enter, s);
  const y = whole(g, s);
  if (s.from === 'face' && !hasFaceSide(g.enter))
    return {
      cannot: 'the entering part has no mark on a broad face to count the offset from',
      limit: 0,
      asked: 0,
      nearest: { from: 'middle' },
    };
  if (!Number.isInteger(s.tenons) || s.tenons < 1 || s.tenons > 20)
    return { cannot: 'the number of tenons must be a whole number from 1 to 20', limit: 20, asked: s.tenons, nearest: { tenons: 1 } };
  if (!(s.thickness > 0) || s.thickness > stock + 1e-6)
    return {
      cannot: 'the tenon must be thinner than the part that carries it',
      limit: stock,
      asked: s.thickness,
      nearest: { thickness: stock / 3 },
    };
  if (!(s.width > 0) || y[1] - y[0] > wide + 1e-6)
    return {
      cannot: 'the tenons must be narrower than the part that carries them',
      limit: wide,
      asked: y[1] - y[0],
      nearest: { width: ((wide * 2) / 3 - (s.tenons - 1) * s.between) / s.tenons },
    };
  if (x[0] < g.x[0] - 1e-6 || x[1] > g.x[1] + 1e-6)
    return {
      cannot: 'the offset sets the tenon beside the part that carries it',
      limit: (stock - s.thickness) / 2,
      asked: Math.abs(s.offset),
      nearest: { offset: 0, from: 'middle' },
    };
  if (y[0] < g.y[0] - 1e-6 || y[1] > g.y[1] + 1e-6)
    return {
      cannot: 'the drop sets the tenon beside the part that carries it',
      limit: (wide - (y[1] - y[0])) / 2,
      asked: Math.abs(s.drop),
      nearest: { drop: 0 },
    };
  if (!(s.length > 0))
    return { cannot: 'the tenon has no length: another tenon stands in its way', limit: 1, asked: s.length, nearest: { end: 'mitred' } };
  if (s.tenons > 1 && !(s.between > 0))
    return { cannot: 'tenons side by side need wood left out between them', limit: 1, asked: s.between, nearest: { between: s.width } };
  if (s.spare < 0 || s.proud < 0 || s.drawbore < 0)
    return {
      cannot: 'spare, proud and drawbore are 0 or more',
      limit: 0,
      asked: Math.min(s.spare, s.proud, s.drawbore),
      nearest: { spare: Math.max(0, s.spare), proud: Math.max(0, s.proud), drawbore: Math.max(0, s.drawbore) },
    };
  if (!Number.isInteger(s.pegs) || s.pegs < 0 || s.pegs > 20)
    return { cannot: 'the number of pegs must be a whole number from 0 to 20', limit: 20, asked: s.pegs, nearest: { pegs: 1 } };
  if (s.pegs > 0 && (!(s.peg_diameter > 0) || s.peg_diameter * s.pegs >= s.width * s.tenons))
    return {
      cannot: 'the pegs leave nothing of the tenon',
      limit: (s.width * s.tenons) / (4 * s.pegs),
      asked: s.peg_diameter,
      nearest: { pegs: 1 },
    };
  if (s.pegs > 0 && (s.peg_back - s.drawbore <= s.peg_diameter / 2 || s.peg_back >= s.length))
    return {
      cannot: 'the peg must pass through the tenon',
      limit: s.length / 2,
      asked: s.peg_back,
      nearest: { peg_back: s.length / 2, drawbore: 0 },
    };
  if (s.pegs > 0 && !(s.peg_length > 0)) return { cannot: 'a peg needs a length above 0', limit: 1, asked: s.peg_length };
  if (s.wedge !== 'none' && s.through !== 'yes')
    return { cannot: 'only a through tenon can be wedged from outside', limit: 0, asked: 0, nearest: { through: 'yes' } };
  if (
    s.wedge !== 'none' &&
    (!Number.isInteger(s.wedges) ||
      s.wedges < 1 ||
      s.wedges > 6 ||
      !(s.wedge_thick > 0) ||
      s.wedges * s.wedge_thick > Math.min(s.width, 1e9))
  )
    return { cannot: 'the wedges leave nothing of the tenon', limit: 6, asked: s.wedges, nearest: { wedges: 1 } };
  if (s.haunch !== 'none' && (!(s.haunch_length > 0) || s.haunch_length > s.length))
    return {
      cannot: 'a haunch is shorter than its tenon',
      limit: s.length,
      asked: s.haunch_length,
      nearest: { haunch_length: Math.min(s.thickness, s.length / 2) },
    };
  return p.meeting.touch === 'share'
    ? { cannot: 'the two share wood here: the rail must end at the receiving part, its tenon is added', limit: 0, asked: 0 }
    : null;
}
