import type { Source } from '../../model/finding.ts';
import { type Answer, withNearest } from '../nearest.ts';
import { nearestOwned } from '../cutters.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { byHabit, settle, tenths } from '../reasons.ts';
import {
  type Ground,
  boltYs,
  ground,
  headHigh,
  headWide,
  innerFace,
  middleOf,
  nutAcross,
  nutAlong,
  nutSign,
  seatZ,
  stubs,
  tipIn,
} from './lay.ts';
import type { BedBolt } from './params.ts';

/** Bolts and nuts as sold, remembered: width and thickness of a square nut, diameter of a barrel. */
const NUTS: readonly { d: number; square: number; thick: number; barrel: number }[] = [
  { d: 6, square: 10, thick: 5, barrel: 10 },
  { d: 8, square: 13, thick: 6.5, barrel: 12 },
  { d: 10, square: 17, thick: 8, barrel: 14 },
];
const LENGTHS = [50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200, 220, 240];
const SOLD: Source = { name: 'sizes of bolts and nuts from memory; measure your own', basis: 'memory' };
const sold = (rule: string): Reason => ({ rule, source: SOLD });
/** The nut's middle lies at least this far behind the end of the rail, mm. */
const BACK = 45;
/** The hole goes past the tip of the bolt, mm. */
const PAST = 8;

export function propose(p: Place<BedBolt>, shop: Cutting): Answer<BedBolt> {
  const g = ground(p.meeting);
  if (!g) return { cannot: 'the end of a rail does not stand square on a post that is as wide as it', limit: 0, asked: 0 };
  if (g.thick < 18 || g.wide < 50 || g.deep < 25)
    return {
      cannot: 'rail or post is too slight for a bolt',
      limit: g.thick < 18 ? 18 : g.wide < 50 ? 50 : 25,
      asked: g.thick < 18 ? g.thick : g.wide < 50 ? g.wide : g.deep,
    };
  return withNearest(p.set, (set) => ask(g, set, shop));
}
function ask(g: Ground, set: Partial<BedBolt>, shop: Cutting): Answer<BedBolt> {
  const d = set.diameter ?? (g.thick >= 32 ? 10 : g.thick >= 22 ? 8 : 6);
  const size = NUTS.reduce((a, b) => (Math.abs(b.d - d) < Math.abs(a.d - d) ? b : a));
  const nut = set.nut ?? 'square';
  const across = set.nut_size ?? (nut === 'square' ? size.square : size.barrel);
  const long = set.nut_long ?? (nut === 'square' ? size.thick : Math.min(tenths(g.thick - 6), 2 * size.barrel));
  const sink = set.sink ?? Math.min(tenths(headHigh(d) + 2), g.deep - 15);
  const path = seatZ(g, { sink });
  const along = nut === 'square' ? long : across;
  const length = set.length ?? LENGTHS.find((l) => l - path >= (set.back ?? BACK) + along / 2 + 2) ?? path + BACK + along;
  const back = set.back ?? Math.max(along / 2 + 1, length - path - along / 2 - 3);
  const stub = set.stub ?? Math.max(0, Math.min(12, tenths(g.deep / 3), tenths(g.deep - sink - 3)));
  const stubWidth = set.stub_width ?? tenths(g.wide / 6);
  const count = set.count ?? 1;
  const out = settle<BedBolt>(set, {
    count: [1, byHabit('one in the middle, with two stub tenons against turning')],
    apart: [tenths(g.wide / 3), byHabit('two bolts a third of the rail apart')],
    off: [0, byHabit('in the middle')],
    diameter: [d, byHabit('8 mm in a bed rail, 6 in a slight one')],
    length: [length, sold('so long that it passes its nut')],
    hole: [tenths(d + 1), byHabit('1 mm more than the bolt, so that it finds its nut')],
    depth: [tenths(length - path + PAST), byHabit('past the tip of the bolt')],
    sink: [sink, byHabit('the head with its washer lies below the face, under a cover')],
    bore: [nearestOwned(shop.bits, 2.5 * d, [headWide(d) + 0.5, 3.5 * d]), byHabit('wide enough for the washer and the key')],
    nut: ['square', byHabit('a square nut let in from the inner face')],
    nut_size: [across, sold('as the nut that goes with the bolt')],
    nut_long: [long, sold('as the nut that goes with the bolt')],
    back: [back, byHabit('45 mm and more behind the end, so that the wood before the nut does not shear out', [35, 70])],
    from: [innerFace(g), byHabit('from the inner face, where it does not show')],
    stub: [stub, byHabit('short dry tenons beside the bolt carry the weight and keep the rail from turning')],
    stub_width: [stubWidth, byHabit('a sixth of the rail')],
    stub_off: [
      tenths(count === 2 ? Math.max((set.apart ?? g.wide / 3) / 2 + d + stubWidth / 2 + 6, g.wide / 3) : g.wide / 3),
      byHabit('clear of the bolt'),
    ],
  });
  return refuse(g, out.sizes) ?? out;
}
function refuse(g: Ground, s: BedBolt): Refusal<BedBolt> | null {
  if (!Number.isInteger(s.count) || s.count < 1 || s.count > 4)
    return { cannot: 'a rail is held by one to four bolts', limit: s.count < 1 ? 1 : 4, asked: s.count, nearest: { count: 1 } };
  const least = Math.min(s.length, s.depth, s.nut_size, s.nut_long, s.bore, s.back, s.stub_width);
  if (!(least > 0) || !(s.sink >= 0) || !(s.stub >= 0))
    return { cannot: 'sizes of bolts are above nothing', limit: 0, asked: Math.min(least, s.sink, s.stub) };
  if (!(s.diameter >= 4 && s.diameter <= 16))
    return { cannot: 'such bolts are between 4 and 16 mm thick', limit: s.diameter < 4 ? 4 : 16, asked: s.diameter };
  if (s.hole < s.diameter)
    return { cannot: 'the bolt does not pass its hole', limit: s.diameter, asked: s.hole, nearest: { hole: s.diameter + 1 } };
  if (s.hole > headWide(s.diameter) * 0.9)
    return {
      cannot: 'the head falls through so wide a hole',
      limit: headWide(s.diameter) * 0.9,
      asked: s.hole,
      nearest: { hole: s.diameter + 1 },
    };
  if (nutSign(g, s) === null)
    return { cannot: `the rail's ${s.from} is no face beside its end`, limit: 0, asked: 0, nearest: { from: innerFace(g) } };
  if (s.sink > g.deep - 8)
    return { cannot: 'too little of the post is left under the head', limit: g.deep - 8, asked: s.sink, nearest: { sink: g.deep / 4 } };
  if (s.sink > 0 && s.bore < headWide(s.diameter))
    return {
      cannot: 'the head does not go into the counterbore',
      limit: headWide(s.diameter),
      asked: s.bore,
      nearest: { bore: headWide(s.diameter) + 1 },
    };
  return refuseNut(g, s) ?? refuseSpots(g, s) ?? refuseStubs(g, s);
}
function refuseNut(g: Ground, s: BedBolt): Refusal<BedBolt> | null {
  const half = nutAlong(s) / 2;
  const tip = tipIn(g, s);
  if (s.nut_size < s.diameter + 2)
    return {
      cannot: 'the nut has no wall round the bolt',
      limit: s.diameter + 2,
      asked: s.nut_size,
      nearest: { nut_size: 1.6 * s.diameter },
    };
  if (s.nut === 'barrel' && s.nut_long < s.diameter + 2)
    return {
      cannot: 'the barrel has no wall round the bolt',
      limit: s.diameter + 2,
      asked: s.nut_long,
      nearest: { nut_long: s.diameter + 4 },
    };
  if (nutAcross(s) / 2 + (s.nut === 'square' ? 1 : 0) > g.thick / 2 - 1)
    return { cannot: 'the nut has no room in the thickness of the rail', limit: g.thick - 4, asked: nutAcross(s) };
  if (s.back < half + 3) return { cannot: 'the nut lies in the end of the rail', limit: half + 3, asked: s.back, nearest: { back: BACK } };
  if (tip < s.back + half)
    return {
      cannot: 'the bolt does not reach through its nut',
      limit: s.length + s.back + half - tip,
      asked: s.length,
      nearest: { length: s.length + s.back + half - tip + 2 },
    };
  if (s.depth < tip)
    return { cannot: 'the hole in the rail is shorter than the bolt', limit: tip, asked: s.depth, nearest: { depth: tip + PAST } };
  const long = g.rail.box.max[2] - g.rail.box.min[2];
  if (s.depth > long - 5) return { cannot: 'the rail is shorter than the bolt', limit: long - 5, asked: s.depth };
  return null;
}
function refuseSpots(g: Ground, s: BedBolt): Refusal<BedBolt> | null {
  const ys = boltYs(g, s);
  const r = Math.max(s.hole / 2, s.nut_size / 2, s.sink > 0 ? s.bore / 2 : 0) + 1;
  if (s.count > 1 && s.apart < 2 * r)
    return { cannot: 'two bolts stand in each other’s way', limit: 2 * r, asked: s.apart, nearest: { apart: Math.max(2 * r, g.wide / 3) } };
  const beside = Math.min(middleOf(g.x) - g.post.box.min[0], g.post.box.max[0] - middleOf(g.x)) - 1;
  if (s.sink > 0 && s.bore / 2 > beside)
    return {
      cannot: 'the counterbore runs out at the edge of the post',
      limit: 2 * beside,
      asked: s.bore,
      nearest: { bore: headWide(s.diameter) + 0.5 },
    };
  const low = Math.max(g.y[0], g.post.box.min[1]) + r;
  const high = Math.min(g.y[1], g.post.box.max[1]) - r;
  const out = ys.find((y) => y < low || y > high);
  if (out !== undefined)
    return {
      cannot: 'a bolt runs out at the edge of the rail',
      limit: Math.max(0, (high - low) / 2),
      asked: Math.abs(out),
      nearest: { off: 0, apart: Math.max(2 * r, g.wide / 3), count: 1 },
    };
  return null;
}
function refuseStubs(g: Ground, s: BedBolt): Refusal<BedBolt> | null {
  if (s.stub === 0) return null;
  // A mortise is 1 mm deeper than its tenon and stays clear of the counterbore.
  const most = g.deep - s.sink - 3;
  if (s.stub > most)
    return {
      cannot: 'the stub tenons would reach the head of the bolt, or come through the post',
      limit: most,
      asked: s.stub,
      nearest: { stub: Math.min(12, most) },
    };
  const [a, b] = stubs(g, s);
  if (a && b && s.stub_off < s.stub_width / 2 + 1)
    return {
      cannot: 'the two stub tenons run into each other',
      limit: s.stub_width / 2 + 1,
      asked: s.stub_off,
      nearest: { stub_off: g.wide / 3 },
    };
  if (s.stub_off + s.stub_width / 2 > g.wide / 2 - 1)
    return {
      cannot: 'a stub tenon runs out at the edge of the rail',
      limit: g.wide / 2 - 1,
      asked: s.stub_off + s.stub_width / 2,
      nearest: { stub_off: g.wide / 3, stub_width: g.wide / 6 },
    };
  return null;
}
