import { isSoftwood } from '../../wood/woods.ts';
import type { Cutting, Place, Reason, Refusal } from '../family.ts';
import { type Reasons, byBook, byHabit, settle, tenths } from '../reasons.ts';
import { type Corner, FLUSH, LEAST_HALF, LEAST_TAIL, between, corner, grooveOf, lapOf, lapped, layoutFor } from './lay.ts';
import type { Dovetail } from './params.ts';

const SLOPES = 'woodworking magazines and teachers, as surveyed at blog.lostartpress.com 2008 and 2023';
/** The least wood that a tail must have to stand in, mm. */
const LEAST_TAIL_LENGTH = 3;
type Proposed = { readonly sizes: Dovetail; readonly because: Readonly<Record<keyof Dovetail, Reason>> };
type Set = Partial<Dovetail>;

/** Tails about twice the thickness apart, pins near a third of the tails, slope by the wood; lapped where the tail board stops short. */
export function propose(p: Place<Dovetail>, _shop: Cutting): Proposed | Refusal<Dovetail> {
  const c = corner(p.meeting);
  if (!c) return { cannot: 'the two boards do not share a square corner for their whole thickness', limit: 0, asked: 0 };
  if (c.proud > FLUSH) return { cannot: 'each board must run to the outer face of the other', limit: FLUSH, asked: c.proud };
  const deep = thickOf(c) - LEAST_TAIL_LENGTH;
  if (lapOf(c) > deep) return { cannot: 'the tail board reaches hardly into the pin board', limit: deep, asked: c.short };
  const { wrong, out } = settled(p.set, c);
  return wrong ? withNearest(wrong, p.set, c) : out;
}
const thickOf = (c: Corner): number => c.pins.box.max[2] - c.z[0];

function settled(set: Set, c: Corner): { readonly wrong: Wrong | null; readonly out: Proposed } {
  const first = settle<Dovetail>(set, proposals(set, c));
  const { angle, slope } = slopes(set, c);
  const out: Proposed = { ...first, sizes: { ...first.sizes, angle, slope } };
  return { wrong: flaw(set, out.sizes, c), out };
}
function proposals(set: Set, whole: Corner): Reasons<Dovetail> {
  const lap = set.lap ?? lapOf(whole);
  const c = lapped(whole, lap);
  const deep = c.z[1] - c.z[0];
  const mitreWidth = Math.min(10, tenths((c.y[1] - c.y[0]) / 8));
  const edges = between(c, { mitre: set.mitre ?? 'none', mitre_width: set.mitre_width ?? mitreWidth }) ?? [0, c.y[1] - c.y[0]];
  const width = edges[1] - edges[0];
  const { angle, slope } = slopes(set, c);
  const n = set.tails ?? Math.max(1, countOf(set, width, deep * slope, Math.max(thickOf(c), c.x[1] - c.x[0])));
  const pin = set.pin ?? Math.max(3, tenths((set.pitch ?? width / n) / 3.5 - deep * slope));
  const half = set.pitch === undefined ? Math.max(4, pin) : (width - n * set.pitch + pin) / 2;
  const soft = isSoftwood(c.tails.wood);
  const style = byBook(
    soft ? '1:6 in softwood' : '1:8 in hardwood; older books give hard wood more slope than soft: a matter of style',
    SLOPES,
    [1 / 8, 1 / 4],
  );
  return {
    tails: [n, byHabit(countRule(set))],
    pitch: [(width - 2 * (set.half_pin ?? half) + pin) / n, byHabit('as the number of tails gives it')],
    slope: [slope, style],
    angle: [angle, style],
    pin: [pin, byHabit('tails two to three times as wide as the pins', [width / n / 4, width / n / 3])],
    half_pin: [
      half,
      byHabit(set.pitch === undefined ? 'a half pin at each edge, no weaker than a whole one' : 'what the spacing leaves at each edge'),
    ],
    lap: [
      lap,
      byHabit(lap > 0 ? 'as far as the tail board stops short of the face; usual is a quarter to a third' : 'the tails come through', [
        thickOf(c) / 4,
        thickOf(c) / 3,
      ]),
    ],
    mitre: ['none', byHabit('a half pin at each edge; a mitre where a rabbet or moulding goes round the corner')],
    mitre_width: [mitreWidth, byHabit('as wide as the rabbet or moulding that goes round')],
    tail_over: [null, byHabit('nothing to hide')],
    over_size: [6, byHabit('the usual groove of a drawer bottom, about 6 mm')],
  };
}
const countRule = (set: Set): string =>
  set.pitch !== undefined
    ? 'as many as the spacing allows'
    : set.pin !== undefined
      ? 'tails two to three times as wide as the pins that are asked for'
      : 'tails about twice the thickness of the boards apart';
/** How many tails: by the spacing, by the width of the pins, else by the thickness of the boards. */
function countOf(set: Set, width: number, rise: number, thick: number): number {
  if (set.pitch !== undefined) return Math.floor((width - Math.max(set.pin ?? 0, 3)) / set.pitch + 1e-9);
  if (set.pin !== undefined) return Math.round(width / (3.5 * (set.pin + rise)));
  return Math.round(width / Math.min(60, Math.max(25, 2 * thick)));
}
/** Either the ratio or the angle may be set; each gives the other. */
function slopes(set: Set, c: Corner): { slope: number; angle: number } {
  const slope = set.slope ?? (set.angle === undefined ? (isSoftwood(c.tails.wood) ? 1 / 6 : 1 / 8) : Math.tan(set.angle));
  return { slope, angle: Math.atan(slope) };
}

/** What is wrong, and which settings may cure it, the likeliest first. */
type Wrong = { readonly cannot: string; readonly limit: number; readonly asked: number; readonly tries: readonly Set[] };
const GENTLE: Set = { slope: 1 / 8, angle: Math.atan(1 / 8) };
/** The first cure that holds; where several settings are wrong at once, all of them together. */
function withNearest({ tries, ...wrong }: Wrong, set: Set, c: Corner): Refusal<Dovetail> {
  const plain: Set = { ...GENTLE, tails: 1, pin: 3, half_pin: 4, lap: lapOf(c), mitre: 'none', over_size: 6 };
  const spaced: Set = set.pitch === undefined ? {} : { pitch: c.y[1] - c.y[0] - 5 };
  const all = [...tries, ...tries.map((t) => ({ ...plain, ...spaced, ...t })), { ...plain, ...spaced }];
  const nearest = all.find((t) => settled({ ...set, ...t }, c).wrong === null);
  return nearest ? { ...wrong, nearest } : wrong;
}
function flaw(set: Set, s: Dovetail, c: Corner): Wrong | null {
  const { angle } = slopes(set, c);
  if (set.angle !== undefined && Math.abs(set.angle - angle) > 1e-4)
    return { cannot: 'slope and angle say different things; one of them is enough', limit: angle, asked: set.angle, tries: [{ angle }] };
  if (!(s.slope >= 0.02 && s.slope <= 0.5))
    return { cannot: 'a tail leans between 1 in 50 and 1 in 2', limit: s.slope < 0.02 ? 0.02 : 0.5, asked: s.slope, tries: [GENTLE] };
  if (!Number.isInteger(s.tails) || s.tails < 1 || s.tails > 200)
    return {
      cannot: 'the number of tails is a whole number from 1',
      limit: 1,
      asked: s.tails,
      tries: [Math.min(200, Math.max(1, Math.round(s.tails) || 1)), 1].map((tails) => ({ tails })),
    };
  if (!(s.pin > 0)) return { cannot: 'a pin needs a width', limit: 0, asked: s.pin, tries: [{ pin: 3 }] };
  return lapFlaw(s, c) ?? mitreFlaw(s, c) ?? pitchFlaw(set, s, c) ?? halfFlaw(s) ?? layoutFlaw(set, s, lapped(c, s.lap));
}
const halfFlaw = (s: Dovetail): Wrong | null =>
  s.half_pin >= LEAST_HALF
    ? null
    : {
        cannot: 'a half pin this narrow cannot be cut',
        limit: LEAST_HALF,
        asked: s.half_pin,
        tries: [{ half_pin: 4 }, { tails: Math.max(1, s.tails - 1) }],
      };
function lapFlaw(s: Dovetail, c: Corner): Wrong | null {
  const most = thickOf(c) - LEAST_TAIL_LENGTH;
  if (!(s.lap >= 0) || s.lap > most)
    return {
      cannot: 'the lap must leave the tails wood to stand in',
      limit: s.lap >= 0 ? most : 0,
      asked: s.lap,
      tries: [{ lap: Math.max(lapOf(c), thickOf(c) / 3) }, { lap: lapOf(c) }],
    };
  if (s.lap < c.short - FLUSH)
    return {
      cannot: 'the tail board is too short for so thin a lap',
      limit: c.short,
      asked: s.lap,
      tries: [{ lap: c.short }],
    };
  return null;
}
function mitreFlaw(s: Dovetail, c: Corner): Wrong | null {
  const edges = between(c, s);
  if (!edges)
    return { cannot: `"${s.mitre}" is not an edge of the tail board at this corner`, limit: 0, asked: 0, tries: [{ mitre: 'none' }] };
  if (s.mitre === 'none') return null;
  if (s.lap > 0)
    return {
      cannot: 'a lapped corner has no mitred shoulder: the lap goes round already',
      limit: 0,
      asked: s.lap,
      tries: [{ mitre: 'none' }],
    };
  const width = c.y[1] - c.y[0];
  const most = width / (s.mitre === 'both' ? 4 : 2);
  if (s.mitre_width >= 1 && s.mitre_width <= most) return null;
  return {
    cannot: 'a mitred shoulder is at least 1 mm wide and leaves half of the width for the tails',
    limit: s.mitre_width < 1 ? 1 : most,
    asked: s.mitre_width,
    tries: [{ mitre_width: Math.min(10, width / 8) }, { mitre: 'none' }],
  };
}
/** Spacing, number and half pins say one thing twice: the half pins are what is left. */
function pitchFlaw(set: Set, s: Dovetail, c: Corner): Wrong | null {
  if (set.pitch === undefined) return null;
  const edges = between(c, s) ?? [0, c.y[1] - c.y[0]];
  const left = (edges[1] - edges[0] - s.tails * s.pitch + s.pin) / 2;
  if (!(s.pitch > s.pin) || left < LEAST_HALF)
    return {
      cannot: 'so many tails at this spacing leave no half pin at the edges',
      limit: LEAST_HALF,
      asked: left,
      tries: [{ tails: Math.max(1, Math.floor((edges[1] - edges[0] + s.pin - 2 * LEAST_HALF) / Math.max(1, s.pitch))) }, { tails: 1 }],
    };
  if (Math.abs(left - s.half_pin) < 1e-3) return null;
  return {
    cannot: 'with this spacing the half pins are what is left at the edges',
    limit: left,
    asked: s.half_pin,
    tries: [{ half_pin: left }],
  };
}
function layoutFlaw(set: Set, s: Dovetail, c: Corner): Wrong | null {
  const keepHalf = set.half_pin !== undefined || set.pitch !== undefined;
  if (layoutFor(c, s, keepHalf)) return null;
  const fewer = fewerTails(c, s, keepHalf);
  const groove = grooveOf(c, s);
  const [low, high] = between(c, s) ?? [0, c.y[1] - c.y[0]];
  const rise = (c.z[1] - c.z[0]) * s.slope;
  const tries: Set[] = [...(fewer ? [{ tails: fewer }] : []), GENTLE, { pin: 3 }, { half_pin: 4 }];
  if (groove && layoutFor(c, { ...s, tail_over: null }, keepHalf)) {
    const edge = Math.min(groove[0] - low, high - groove[1]);
    return { cannot: 'no tail can be laid over the groove', limit: rise + (keepHalf ? s.half_pin : LEAST_HALF), asked: edge, tries };
  }
  const most = Math.floor((high - low - 2 * s.half_pin + s.pin) / (s.pin + 2 * rise + LEAST_TAIL));
  return { cannot: 'the slopes of so many tails run into each other at their base', limit: Math.max(0, most), asked: s.tails, tries };
}
/** The greatest smaller number of tails that can be laid out; 0 when there is none. */
function fewerTails(c: Corner, s: Dovetail, keepHalf: boolean): number {
  for (let n = s.tails - 1; n >= 1; n--) if (layoutFor(c, { ...s, tails: n }, keepHalf)) return n;
  return 0;
}
