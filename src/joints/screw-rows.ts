/** A row of screws through one part into another: where it lies, which sizes suit, what cannot be driven. Families of screwed joints share it. */
import { type Axis, axisIndex, axisVec, quantise } from '../geom/vec3.ts';
import { isSoftwood, isWood } from '../wood/woods.ts';
import { alongGrain, isSquare, ownSense, sharedSpan, sideIn } from './blocks.ts';
import { nearestOwned, stepOf } from './cutters.ts';
import type { Cutting, Reason, Refusal } from './family.ts';
import type { MeetSide, Meeting } from './meeting.ts';
import { byBook, byHabit, tenths } from './reasons.ts';
import { type Bed, type ScrewSpec, type Spot, biteOf, headHeight, headWidth } from './screws.ts';
import type { Source } from '../model/finding.ts';

export type Span = readonly [number, number];
export type RowGround = {
  readonly bed: Bed;
  /** The axis along which the row runs, the one across it, and what the parts share along each. */
  readonly row: 'x' | 'y';
  readonly across: 'x' | 'y';
  readonly run: Span;
  readonly wide: Span;
  /** Thickness of the part under the heads, and of the one that holds. */
  readonly thick: number;
  readonly deep: number;
  readonly gap: number;
};
const INCH = 25.4;
/** Share of a width that wood may move each way from where it is fast: up to 1/8 in for each 12 in. */
export const SHARE = 1 / 96;
const MOVES = 'woodworkingtips.com: up to 1/8 in of movement for each 12 in of width';
/** The charts that come with screws, as remembered; the packet's own figures go first. */
export const CHARTS: Source = { name: 'charts of wood screws, from memory; the maker’s own figures go first', basis: 'memory' };
/** Room at each end of a slot over what it is made for, mm. */
export const MARGIN = INCH / 32;
/** A slot for a shank of this diameter that moves so far each way, to a hundredth of a mm. */
export const slotFor = (diameter: number, travel: number): number => hundredths(diameter + 2 * travel + 2 * MARGIN);
export const hundredths = (mm: number): number => quantise(Math.round(mm * 100) / 100);

/** The row runs along the longer side of what the two share, or along the grain of the first part where both are equal. */
export function rowGround(m: Meeting, through: string, into: string): RowGround | null {
  const [a, b] = [sideIn(m, through), sideIn(m, into)];
  const spans = { x: sharedSpan(a.box, b.box, 'x'), y: sharedSpan(a.box, b.box, 'y') };
  const long = { x: spans.x[1] - spans.x[0], y: spans.y[1] - spans.y[0] };
  if (!isSquare(m) || long.x < 4 || long.y < 4) return null;
  const row = Math.abs(long.x - long.y) < 1e-6 ? (alongGrain(a, axisVec('x')) ? 'x' : 'y') : long.x > long.y ? 'x' : 'y';
  const across = row === 'x' ? 'y' : 'x';
  return {
    bed: { through: { role: through, side: a, back: a.box.min[2] }, into: { role: into, side: b, face: m.gap } },
    row,
    across,
    run: spans[row],
    wide: spans[across],
    thick: -a.box.min[2],
    deep: b.box.max[2] - b.box.min[2],
    gap: m.gap,
  };
}
/** Does one of the two swell along this axis while the other does not? */
export function movesAlong(g: RowGround, axis: Axis): boolean {
  const swells = (s: MeetSide): boolean => isWood(s.wood) && !alongGrain(s, axisVec(axis));
  return swells(g.bed.through.side) !== swells(g.bed.into.side);
}
/** The way in which slots lie: along the row where the wood moves that way, else across it. */
export const slotWay = (g: RowGround): 'x' | 'y' => (movesAlong(g, g.row) || !movesAlong(g, g.across) ? g.row : g.across);

export type Row = { readonly count: number; readonly inset: number; readonly off: number };
/** Middles of the screws, numbered from the low end of the first part's own axis. */
export function rowSpots(g: RowGround, r: Row): { readonly n: number; readonly along: number; readonly across: number }[] {
  const { side } = g.bed.through;
  const [a, b] = [g.run[0] + r.inset, g.run[1] - r.inset];
  const across = (g.wide[0] + g.wide[1]) / 2 + ownSense(side, g.across) * r.off;
  const up = ownSense(side, g.row) > 0;
  return Array.from({ length: r.count }, (_, i) => {
    const k = up ? i : r.count - 1 - i;
    return { n: i + 1, along: r.count === 1 ? (a + b) / 2 : a + ((b - a) * k) / (r.count - 1), across };
  });
}
export const spotAt = (g: RowGround, p: { n: number; along: number; across: number }, slot: number, way: 'x' | 'y'): Spot => ({
  n: p.n,
  at: g.row === 'x' ? [p.along, p.across] : [p.across, p.along],
  slot,
  way,
});

/** The common sizes of a screw: 4 to 12 gauge are 0.06 in and 0.013 in for each number (memory); lengths as sold. */
const METRIC = { diameters: [3, 3.5, 4, 4.5, 5, 6], lengths: [12, 16, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 120] };
const GAUGES = {
  diameters: [4, 6, 8, 10, 12].map((n) => (0.06 + 0.013 * n) * INCH),
  lengths: [0.5, 0.625, 0.75, 1, 1.25, 1.5, 1.75, 2, 2.25, 2.5, 3, 3.5, 4].map((n) => n * INCH),
};
export type Sizes = Omit<ScrewSpec, 'pilotDepth'> & { readonly pilot_depth: number };
export type SizeReasons = { readonly [K in keyof Sizes]: readonly [Sizes[K], Reason] };
/** Wood kept behind the tip of a screw, mm. */
const BEHIND = 3;
/** Sizes that suit the two parts. `flat`: the head must be able to slide, or to lie on a counterbore's floor. */
export function screwSizes(g: RowGround, set: Partial<Sizes>, shop: Cutting, flat: boolean): SizeReasons {
  const stock = stepOf(shop) === 1 ? METRIC : GAUGES;
  const most = g.deep - BEHIND;
  const d = set.diameter ?? nearestOwned(stock.diameters, Math.min(6, Math.max(3, g.thick / 4.5, g.thick > 40 ? 5 : 0)));
  const laid = layScrew(g, set, stock.lengths, most, flat, d);
  const { head, sink, length } = laid;
  const path = g.thick - sink + g.gap;
  const pilot = set.pilot ?? tenths(d * (isSoftwood(g.bed.into.side.wood) ? 0.6 : 0.7));
  const chart = (rule: string, range?: readonly [number, number]): Reason => ({ rule, source: CHARTS, ...(range ? { range } : {}) });
  return {
    diameter: [d, byHabit('about a fifth of the part under the head', [g.thick / 6, g.thick / 3])],
    length: [length, byHabit('two thirds of the screw in the second part where that is thick enough, half at least', [2 * path, 3 * path])],
    clearance: [set.clearance ?? tenths(d + 0.3), chart('the shank passes freely: a little more than its diameter')],
    pilot: [pilot, chart('0.7 of the shank in hardwood, 0.6 in softwood', [0.5 * d, 0.75 * d])],
    pilot_depth: [set.pilot_depth ?? Math.max(1, length - path), byHabit('as deep as the screw reaches')],
    head: [head, byHabit(head === 'countersunk' ? 'flush with the face' : 'a flat head draws down without wedging')],
    sink: [sink, byHabit('so deep that the screw has enough of its length in the second part')],
    bore: [set.bore ?? nearestOwned(shop.bits, headWidth(d) + 1, [headWidth(d), headWidth(d) + 5]), byHabit('a bit that clears the head')],
  };
}
/** Head, counterbore and length together: the longest screw sold of which half and more is in the second part, the head sunk for it where it must. */
function layScrew(
  g: RowGround,
  set: Partial<Sizes>,
  lengths: readonly number[],
  most: number,
  flat: boolean,
  d: number,
): Pick<Sizes, 'head' | 'sink' | 'length'> {
  const longest = (path: number): number =>
    set.length ??
    lengths.filter((l) => l - path <= most && l <= 3 * path + 1e-6).at(-1) ??
    Math.max(path + 1, path + Math.min(most, 2 * path));
  const fixed = set.sink ?? (set.head === 'countersunk' ? 0 : undefined);
  const shallow = Math.max(6, Math.min(g.thick, most, 30));
  const half = longest(shallow) / 2;
  // Where the whole thickness leaves less than half of a screw beyond it, the head is sunk.
  const whole = longest(g.thick + g.gap);
  const enough = whole - g.thick - g.gap >= whole / 2 - 1e-6 && g.thick <= 40;
  const path = enough ? g.thick : Math.min(shallow, Math.max(6, half));
  const plug = set.head === 'plugged' ? headHeight(d) + 5 : 0;
  const sink = fixed ?? Math.max(plug, Math.max(0, g.thick - path));
  const head = set.head ?? (flat || sink > 0 ? 'round' : 'countersunk');
  return { head, sink, length: longest(g.thick - sink + g.gap) };
}
export const specOf = (s: Sizes): ScrewSpec => ({ ...s, pilotDepth: s.pilot_depth });
/** How far the largest opening of a screw reaches from its middle, along its slot and beside it, mm. */
function reachOf(s: Sizes, slot: number): { readonly along: number; readonly beside: number } {
  const r = Math.max(s.clearance / 2, s.head === 'countersunk' ? s.diameter : s.sink > 0 ? s.bore / 2 : 0);
  return { along: Math.max(0, slot - s.clearance) / 2 + r, beside: r };
}

type Fault<P> = Refusal<P> | null;
/** What cannot be driven so, whatever the family: `nearest` of each is one of the settings named here. */
export function refuseScrew(g: RowGround, s: Sizes): Fault<Sizes> {
  const { diameter: d } = s;
  const least = Math.min(s.length, s.clearance, s.pilot, s.pilot_depth, s.bore);
  if (!(least > 0) || !(s.sink >= 0)) return { cannot: 'the sizes of a screw are above nothing', limit: 0, asked: Math.min(least, s.sink) };
  if (!(d >= 1 && d <= 16)) return { cannot: 'a wood screw is between 1 and 16 mm thick', limit: d < 1 ? 1 : 16, asked: d };
  if (s.clearance < d)
    return { cannot: 'the shank does not pass the clearance hole', limit: d, asked: s.clearance, nearest: { clearance: d + 0.3 } };
  if (s.pilot > d - 0.2)
    return { cannot: 'the thread finds no wood in so wide a pilot hole', limit: d - 0.2, asked: s.pilot, nearest: { pilot: 0.7 * d } };
  if (s.head === 'countersunk' && s.sink > 0)
    return {
      cannot: 'a countersunk head lies flush; one that is sunk deeper has a flat head',
      limit: 0,
      asked: s.sink,
      nearest: { sink: 0 },
    };
  const plug = headHeight(d) + 2;
  if (s.head === 'plugged' && s.sink < plug)
    return { cannot: 'the counterbore has no room for a plug over the head', limit: plug, asked: s.sink, nearest: { sink: plug + 3 } };
  const under = s.head === 'countersunk' ? g.thick - d / 2 : g.thick - s.sink;
  if (under < 2)
    return { cannot: 'too little wood is left under the head', limit: g.thick - 2, asked: g.thick - under, nearest: { sink: 0 } };
  if (s.sink > 0 && s.bore < headWidth(d))
    return { cannot: 'the head does not go into the counterbore', limit: headWidth(d), asked: s.bore, nearest: { bore: headWidth(d) + 1 } };
  return refuseReach(g, s);
}
function refuseReach(g: RowGround, s: Sizes): Fault<Sizes> {
  const bite = biteOf(g.bed, specOf(s));
  const path = s.length - bite;
  if (bite < 2)
    return {
      cannot: 'the screw does not reach the second part',
      limit: path + 2,
      asked: s.length,
      nearest: { length: path + Math.min(g.deep / 2, 20) },
    };
  if (bite > g.deep - 0.5)
    return {
      cannot: 'the screw comes out on the far side',
      limit: path + g.deep - 0.5,
      asked: s.length,
      nearest: { length: path + g.deep * 0.7 },
    };
  if (s.pilot_depth < bite - 1e-6)
    return {
      cannot: 'the pilot hole is shorter than the screw reaches',
      limit: bite,
      asked: s.pilot_depth,
      nearest: { pilot_depth: bite },
    };
  if (s.pilot_depth > g.deep + 1)
    return { cannot: 'the pilot hole is deeper than the part', limit: g.deep, asked: s.pilot_depth, nearest: { pilot_depth: bite } };
  return null;
}
/** What cannot be laid in a row: openings that run into each other or out at an edge. */
export function refuseRow(g: RowGround, s: Sizes, r: Row, slots: readonly number[], way: 'x' | 'y'): Fault<Row> {
  const [long, wide] = [g.run[1] - g.run[0], g.wide[1] - g.wide[0]];
  const reach = reachOf(s, Math.max(s.clearance, ...slots));
  const [along, beside] = way === g.row ? [reach.along, reach.beside] : [reach.beside, reach.along];
  if (!Number.isInteger(r.count) || r.count < 1 || r.count > 100)
    return { cannot: 'the number of screws is a whole number from 1', limit: 1, asked: r.count, nearest: { count: 2 } };
  if (!(r.inset >= along + 0.5) || r.inset > long / 2)
    return {
      cannot: 'the first screw would run out at the end',
      limit: r.inset > long / 2 ? long / 2 : along + 0.5,
      asked: r.inset,
      nearest: { inset: Math.min(long / 2, along + long / 10) },
    };
  const pitch = r.count > 1 ? (long - 2 * r.inset) / (r.count - 1) : long;
  if (r.count > 1 && pitch < 2 * along + 1)
    return {
      cannot: 'the holes would run into each other',
      limit: 2 * along + 1,
      asked: pitch,
      nearest: { count: Math.max(1, Math.floor((long - 2 * r.inset) / (2 * along + 1))) },
    };
  if (Math.abs(r.off) > wide / 2 - beside - 0.5)
    return { cannot: 'the row would run out at the edge', limit: wide / 2 - beside - 0.5, asked: Math.abs(r.off), nearest: { off: 0 } };
  return null;
}
/** Distance of the nearest screw from an end of a part along its grain, and from an edge across it, mm. */
export function edgeDistances(side: MeetSide, spots: readonly Spot[]): { readonly end: number; readonly edge: number } {
  let [end, edge] = [Infinity, Infinity];
  for (const p of spots)
    for (const axis of ['x', 'y'] as const) {
      const i = axisIndex(axis);
      const at = p.at[i as 0 | 1];
      const near = Math.min(at - side.box.min[i], side.box.max[i] - at);
      if (alongGrain(side, axisVec(axis))) end = Math.min(end, near);
      else edge = Math.min(edge, near);
    }
  return { end, edge };
}
export const byMovement = (rule: string): Reason => byBook(rule, MOVES);
