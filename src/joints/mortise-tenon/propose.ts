import { ownSense } from '../blocks.ts';
import type { Cutting, Place, Reason } from '../family.ts';
import { type Answer, withNearest } from '../nearest.ts';
import { downTo, nearestOwned, roundTo, stepOf } from '../cutters.ts';
import { type Reasons, byBook, byHabit, settle } from '../reasons.ts';
import { NOYES, PTSW, RIV, TIMBER_PEGS } from '../sources.ts';
import { type Crossing, type Ground, MITRE_SPACE, type Placing, across, crossings, endSide, ground, runsAlongGrain } from '../tenons.ts';
import type { MortiseTenon } from './params.ts';
import { refuse } from './refuse.ts';

type P = MortiseTenon;
type Offer<K extends keyof P> = readonly [P[K], Reason];

export const propose = (p: Place<P>, shop: Cutting): Answer<P> => withNearest(p.set, (set) => settled({ ...p, set }, shop));
/** Sizes from the two parts and the cutters owned, one after the other, each reading those before it as the document sets them. */
function settled(p: Place<P>, shop: Cutting): Answer<P> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the tenon does not point into the receiving part', limit: 0, asked: 0 };
  const step = stepOf(shop);
  const stub = p.set.stub === 'yes';
  const set: Partial<P> = stub ? { shoulders: 'broad', ...p.set } : p.set;
  const twins = Math.min(6, Math.max(1, Math.round(set.twins ?? 1)));
  const thickness = thicknessFor(g, shop, twins);
  const t = set.thickness ?? thickness[0];
  const tenons: Offer<'tenons'> = stub ? [1, byHabit('a stub fills its groove over the whole width')] : tenonsFor(g, t, set);
  const n = Math.max(1, Math.round(set.tenons ?? tenons[0]));
  const between: Offer<'between'> = [
    n > 1 ? roundTo(step, widthAll(g, set) / (2 * n - 1)) : 0,
    byBook('tenons side by side are parted by about their own width', PTSW),
  ];
  const gapBetween = set.between ?? between[0];
  const width = widthFor(g, t, n, gapBetween, set, step, stub);
  const w = set.width ?? width[0];
  const drop = dropFor(g, n * w + (n - 1) * gapBetween, set, step);
  const placing = {
    thickness: t,
    twins,
    twin_between: set.twin_between ?? twinGap(g, t, twins),
    offset: set.offset ?? 0,
    from: set.from ?? ('middle' as const),
    width: w,
    tenons: n,
    between: gapBetween,
    drop: set.drop ?? drop[0],
  };
  const meets = crossings(g, placing, p.siblings);
  const spare = spareFor(step, stub);
  const length = stub ? stubLength(g, step) : lengthFor(g, t, set.spare ?? spare[0], meets, set, step);
  const l = set.length ?? length[0];
  const pegD = nearestOwned(shop.bits, Math.min(w / 4, 6.35), [Math.min(3, w / 4), w / 4], step);
  const d = set.peg_diameter ?? pegD;
  const back = pegBack(g, l, d, meets, set);
  const wedge = wedgeFor(g, t, w, set);
  const out = settle<P>(p.set, {
    thickness,
    width,
    length,
    tenons,
    between,
    drop,
    twins: [1, byHabit('one; two where the part is thick: the glue doubles, and neither mortise takes much of the post')],
    twin_between: [placing.twin_between, byHabit('twins, the wood between them and the shoulders are all equally thick')],
    offset: [
      0,
      (set.from ?? 'middle') === 'middle' ? byHabit('in the middle of the thickness') : byHabit('flush with that face: a bare tenon'),
    ],
    from: ['middle', byHabit('the middle, unless a face must come flush')],
    shoulders: stub
      ? ['broad', byHabit('the stub fills the groove over the whole width')]
      : ['all', byHabit('a shoulder all round hides the edges of the mortise')],
    stub: ['no', byHabit('no: a stub holds only round a panel that is glued in')],
    end: ['square', byHabit('square is the plainest; mitred where two tenons meet and length is short')],
    through: ['no', byHabit('blind, unless it is to be wedged or shown')],
    proud: [0, byHabit('flush at the back')],
    haunch: ['none', byHabit('none: for frames with a groove set it square')],
    haunch_length: [Math.min(t, l / 2), byBook('as long as the tenon is thick', PTSW, [t, 25.4])],
    ...wedge,
    pegs: [0, byHabit('none: glue alone holds furniture')],
    peg_diameter: [pegD, byBook('up to a quarter of the tenon’s width; about 6 to 10 mm in furniture', TIMBER_PEGS, [6.35, 9.525])],
    peg_back: [back, byHabit('two diameters behind the face, and nearer the shoulder than the end')],
    peg_stagger: [0, byHabit('none: two pegs that meet in a post are staggered by two diameters')],
    peg_length: [pegLength(g, placing, d), byHabit('through the tenon and two diameters on, short of the far face')],
    drawbore: [0, byBook('none unless asked; 0.8 to 2.4 mm in furniture', TIMBER_PEGS, [0.8, 2.4])],
    spare,
    glue: ['yes', byHabit('glued')],
  });
  return refuse(p, g, out.sizes) ?? out;
}

function thicknessFor(g: Ground, shop: Cutting, twins: number): Offer<'thickness'> {
  const stock = g.x[1] - g.x[0];
  if (twins > 1) {
    const share = stock / (2 * twins + 1);
    return [
      nearestOwned(shop.mortiseWidths, share, [share * 0.75, share * 1.25], stepOf(shop)),
      byHabit('twins, the wood between them and the shoulders are all equally thick', [share * 0.75, share * 1.25]),
    ];
  }
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
const twinGap = (g: Ground, t: number, twins: number): number => (twins > 1 ? Math.max(0, (g.x[1] - g.x[0] - twins * t) / (twins + 1)) : 0);
/** The width over which tenons may spread: the shoulders wanted left and right taken off. */
function widthAll(g: Ground, set: Partial<P>): number {
  const w = g.y[1] - g.y[0];
  if (set.shoulders === 'broad') return w;
  return set.shoulders === 'top' || set.shoulders === 'bottom' ? (w * 5) / 6 : (w * 2) / 3;
}
function tenonsFor(g: Ground, t: number, set: Partial<P>): Offer<'tenons'> {
  const all = widthAll(g, set);
  // One tenon of up to 6 t, and up to 9 t of rail behind it; beyond that two or more share the width.
  const n = all <= 9 * t ? 1 : Math.min(20, Math.max(2, Math.ceil((all / (6 * t) + 1) / 2)));
  return [n, byBook('one tenon is not wider than 6 times its thickness; else several', `${PTSW}; ${RIV} (5 times)`)];
}
function widthFor(g: Ground, t: number, n: number, between: number, set: Partial<P>, step: number, stub: boolean): Offer<'width'> {
  const all = widthAll(g, set);
  if (stub) return [all, byHabit('a stub fills its groove over the whole width')];
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
/** The usual groove of a panelled frame: 10 mm or 3/8 in. */
function stubLength(g: Ground, step: number): Offer<'length'> {
  return [Math.min(step === 1 ? 10 : 9.525, g.deep / 2), byHabit('as long as the groove is deep, 10 mm or 3/8 in as a rule', [6, 12.7])];
}
type Wedging = Pick<Reasons<P>, 'wedge' | 'wedges' | 'wedge_thick' | 'fox' | 'flare'>;
function wedgeFor(g: Ground, t: number, w: number, set: Partial<P>): Wedging {
  const fox = set.fox === 'yes';
  const along = runsAlongGrain(g);
  const thick = set.wedge_thick ?? Math.min(4, (along ? w : t) / 5);
  const count = set.wedges ?? (along ? 2 : 1);
  return {
    wedge: fox ? ['across', byHabit('across the grain of the mortised part, which they split otherwise')] : ['none', byHabit('none')],
    wedges: [count, byHabit('one in each end of a long mortise, one where it is short along the grain')],
    wedge_thick: [thick, byHabit('slim: it spreads each half by a slope of about 1 : 8')],
    fox: ['no', byHabit('no: once driven home it never comes apart')],
    flare: fox
      ? [
          (count * (thick - Math.min(1.5, thick / 2))) / 2,
          byBook('slightly wider at the bottom, by as much as the wedges spread the tenon', NOYES),
        ]
      : [0, byHabit('eased by eye at the back')],
  };
}
function spareFor(step: number, stub: boolean): Offer<'spare'> {
  if (stub) return [step === 1 ? 1 : 25.4 / 32, byHabit('a hair of air at the bottom of the groove')];
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
function pegLength(g: Ground, s: Placing, d: number): number {
  const x = across(g.enter, s);
  const low = x[0] - g.into.box.min[0];
  const high = g.into.box.max[0] - x[1];
  const whole = g.into.box.max[0] - g.into.box.min[0];
  return Math.min(Math.min(low, high) + (x[1] - x[0]) + 2 * d, whole - 3);
}
