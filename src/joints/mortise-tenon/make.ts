import { type Vec2, type Vec3 } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import { ROOT, block, boxOf, faceToward, ownSense } from '../blocks.ts';
import { type Crossing as Line, lineThrough } from '../convex.ts';
import type { ExtraPart, Made, Place } from '../family.ts';
import { CLEAR, type WedgeSpec, cylinder, frameAlong, pin, swept, wedgeExtra, wedgeKerf } from '../features.ts';
import type { Plane } from '../meeting.ts';
import {
  type Ground,
  type Span,
  type Tenon,
  across,
  bodyIn,
  crossings,
  ground,
  rowsOf,
  runsAlongGrain,
  tenonsOf,
  twinsOf,
  upSense,
  whole,
} from '../tenons.ts';
import { contacts } from './contacts.ts';
import { haunchSpan, tenonOutline } from './lay.ts';
import { type Laid, type PegAt, nameOf, spreadOf } from './laid.ts';
import type { MortiseTenon } from './params.ts';

export function layOut(p: Place<MortiseTenon>, s: MortiseTenon): Laid {
  const g = ground(p.meeting);
  if (!g) throw new Error('a tenon needs an end that points into the receiver: propose refuses the others');
  const tenons = tenonsOf(g, s);
  const meets = crossings(g, s, p.siblings);
  const planes = s.end === 'mitred' && s.through === 'no' ? meets.map((c) => c.mitre) : [];
  const axis = planes.some((m) => Math.abs(m.normal[1]) > 1e-6) ? 1 : 0;
  const mitres = planes.filter((m) => Math.abs(m.normal[axis === 0 ? 1 : 0]) < 1e-6);
  const tip = s.through === 'yes' ? g.gap + g.deep + s.proud : s.length;
  const floor = g.gap + (s.through === 'yes' ? g.deep : s.length + s.spare);
  const x = across(g.enter, s);
  // Fox wedges stand out of the tenon as far as the mortise is deeper: its bottom drives them.
  const wedges =
    s.wedge === 'none'
      ? []
      : tenons.flatMap((t, tenon) => wedgesIn(g, s, t, tip, s.fox === 'yes' ? floor : tip).map((spec) => ({ spec, tenon })));
  return {
    g,
    s,
    tenons,
    rows: rowsOf(g, s),
    twins: twinsOf(g, s),
    x,
    y: whole(g, s),
    meets,
    mitres,
    axis,
    tip,
    floor,
    flareFrom: wedges.length > 0 && s.flare > 0 ? g.gap + tip / 3 : null,
    haunch: haunchSpan(g, s),
    pegs: pegsAt(g, s, x),
    wedges,
  };
}
export function make(p: Place<MortiseTenon>, sizes: MortiseTenon): Made {
  const l = layOut(p, sizes);
  const roots = rootOf(p, l);
  const enter: Feature[] = l.tenons.flatMap((t, i) => [tenon(l, t, nameOf('tenon', l, i), roots)]);
  const into: Feature[] = l.tenons.map((t, i) => mortise(l, t, nameOf('mortise', l, i), roots));
  const h = l.haunch;
  if (h)
    l.twins.forEach((x, i) => {
      const name = l.twins.length > 1 ? `haunch ${i + 1}` : 'haunch';
      enter.push(haunch(l, name, x, h, 'add', -roots.root, 0));
      into.push(haunch(l, name, x, h, 'remove', roots.above, l.g.gap));
    });
  const extras: ExtraPart[] = [];
  l.pegs.forEach((peg, i) => {
    const name = `peg${i + 1}`;
    const [hole, through] = pegHoles(l, peg, name);
    into.push(hole);
    enter.push(through);
    extras.push(pin(name, 'peg', l.g.enter.wood, sizes.peg_diameter, peg.length, [peg.start, peg.y, peg.z], [peg.sign, 0, 0]));
  });
  l.wedges.forEach(({ spec }, i) => {
    enter.push(wedgeKerf(`kerf ${i + 1}`, spec));
    extras.push(wedgeExtra(`wedge${i + 1}`, 'wedge', l.g.enter.wood, spec));
  });
  return {
    features: { enter, into },
    extras,
    contacts: contacts(p, l),
    frees: freesOf(l, extras),
    holds: sizes.glue === 'yes' ? 'glue' : 'dry',
  };
}
/** Pegs first, and wedges driven from outside; fox wedges go in with the tenon and leave it only when it is out. */
function freesOf(l: Laid, extras: readonly ExtraPart[]): Made['frees'] {
  const out = (e: ExtraPart) => ({ moves: [e.name], along: scaleBack(e.enters) });
  const [pegs, wedges] = [extras.slice(0, l.pegs.length), extras.slice(l.pegs.length)];
  const home: Vec3 = [0, 0, -1];
  return l.s.fox === 'yes'
    ? [...pegs.map(out), { moves: ['enter', ...wedges.map((e) => e.name)], along: home }, ...wedges.map(out)]
    : [...extras.map(out), { moves: ['enter'], along: home }];
}
/** The hole through the receiver, and that through the tenons, nearer the shoulder by the drawbore. */
function pegHoles(l: Laid, peg: PegAt, name: string): [Feature, Feature] {
  const d = l.s.peg_diameter;
  const at = (z: number) => frameAlong([peg.start, peg.y, z], [peg.sign, 0, 0], [0, 1, 0]);
  const [first, last] = peg.sign > 0 ? l.x : [l.x[1], l.x[0]];
  const near = Math.abs(first - peg.start) - CLEAR;
  const far = Math.abs(last - peg.start) + CLEAR;
  return [
    cylinder(`${name} hole`, 'remove', at(peg.z), d, -CLEAR, peg.length, { round: 'hole', to: 'end' }),
    cylinder(`${name} hole`, 'remove', at(peg.z - l.g.gap - l.s.drawbore), d, near, Math.min(far, Math.max(peg.length, near + 0.1)), {
      round: 'hole',
    }),
  ];
}
const scaleBack = (v: Vec3): Vec3 => [0 - v[0], 0 - v[1], 0 - v[2]];

/** How far the tenon is rooted behind the shoulder, and where the mortise's cut starts, when either face is slanted. */
function rootOf(p: Place<MortiseTenon>, l: Laid): { root: number; above: number } {
  const low = (plane: Plane): number => {
    const heights = l.tenons.flatMap((t) =>
      [t.x[0], t.x[1]].flatMap((x) =>
        [l.g.y[0], l.g.y[1], t.y[0], t.y[1]].map((y) => (plane.off - plane.normal[0] * x - plane.normal[1] * y) / plane.normal[2]),
      ),
    );
    return Math.min(...heights);
  };
  return { root: ROOT - Math.min(0, low(p.meeting.shoulder)), above: Math.min(l.g.gap, low(p.meeting.face)) - CLEAR };
}
function tenon(l: Laid, t: Tenon, name: string, r: { root: number }): Feature {
  const cheeks = { low: `cheek ${faceToward(l.g.enter, [-1, 0, 0])}`, high: `cheek ${faceToward(l.g.enter, [1, 0, 0])}` };
  const edges = { low: `edge ${faceToward(l.g.enter, [0, -1, 0])}`, high: `edge ${faceToward(l.g.enter, [0, 1, 0])}` };
  if (l.mitres.length === 0)
    return block(name, 'add', boxOf(t.x[0], t.x[1], t.y[0], t.y[1], -r.root, l.tip), {
      'x-': cheeks.low,
      'x+': cheeks.high,
      'y-': edges.low,
      'y+': edges.high,
      'z+': 'end',
    });
  const [span, other] = l.axis === 0 ? [t.x, t.y] : [t.y, t.x];
  const [sides, ends] = l.axis === 0 ? [cheeks, edges] : [edges, cheeks];
  const outline = tenonOutline(span[0], span[1], -r.root, l.tip, l.mitres, l.axis);
  return swept(
    name,
    'add',
    l.axis === 0 ? 'xz' : 'yz',
    outline,
    other[0],
    other[1],
    outline.map((a, i) => sideWord(a, outline[(i + 1) % outline.length] ?? a, span, -r.root, l.tip, sides)),
    [ends.low, ends.high],
  );
}
function sideWord(a: Vec2, b: Vec2, span: Span, back: number, tip: number, sides: { low: string; high: string }): string | null {
  const on = (i: 0 | 1, v: number): boolean => Math.abs(a[i] - v) < 1e-7 && Math.abs(b[i] - v) < 1e-7;
  if (on(0, span[0])) return sides.low;
  if (on(0, span[1])) return sides.high;
  return on(1, back) ? null : on(1, tip) ? 'end' : 'mitre';
}
function mortise(l: Laid, t: Tenon, name: string, r: { above: number }): Feature {
  const word = (dir: Vec3): string => faceToward(l.g.into, dir);
  const to = l.s.through === 'yes' ? throughTo(l, t) : l.floor;
  const cheeks = { low: `cheek ${word([-1, 0, 0])}`, high: `cheek ${word([1, 0, 0])}` };
  const ends = { low: `end ${word([0, -1, 0])}`, high: `end ${word([0, 1, 0])}` };
  const bottom = l.s.through === 'yes' ? null : 'bottom';
  if (l.flareFrom === null)
    return block(name, 'remove', boxOf(t.x[0], t.x[1], t.y[0], t.y[1], r.above, to), {
      'x-': cheeks.low,
      'x+': cheeks.high,
      'y-': ends.low,
      'y+': ends.high,
      ...(bottom ? { 'z+': bottom } : {}),
    });
  const way = spreadOf(l) ?? 'y';
  const [span, other] = way === 'y' ? [t.y, t.x] : [t.x, t.y];
  const [pressed, flat] = way === 'y' ? [ends, cheeks] : [cheeks, ends];
  // At the same slope on to where the cut ends, past the far face of a through mortise.
  const wide = (l.s.flare * (to - l.flareFrom)) / (l.floor - l.flareFrom);
  const outline: Vec2[] = [
    [span[0], r.above],
    [span[1], r.above],
    [span[1], l.flareFrom],
    [span[1] + wide, to],
    [span[0] - wide, to],
    [span[0], l.flareFrom],
  ];
  const names = [null, pressed.high, `flare of ${pressed.high}`, bottom, `flare of ${pressed.low}`, pressed.low];
  return swept(name, 'remove', way === 'y' ? 'yz' : 'xz', outline, other[0], other[1], names, [flat.low, flat.high]);
}
/** Past the far face of the receiver wherever the mortise comes out. */
function throughTo(l: Laid, t: Tenon): number {
  const outs = t.x.flatMap((x) => t.y.map((y): Line | null => lineThrough(l.g.body, [x, y, 0], [0, 0, 1])));
  return Math.max(l.floor, ...outs.map((o) => o?.high ?? 0)) + CLEAR;
}
/** Wood (or its seat) between the tenon and the edge, full length or falling to nothing at the edge. */
function haunch(
  l: Laid,
  name: string,
  x: Span,
  h: { span: Span; side: 1 | -1 },
  op: 'add' | 'remove',
  from: number,
  face: number,
): Feature {
  // Where the edge lies flush with the receiver's end, the seat is cut a little past it, so that no skin is left standing.
  const atEnd = op === 'remove' && Math.abs((h.side > 0 ? l.g.into.box.max[1] : l.g.into.box.min[1]) - h.span[h.side > 0 ? 1 : 0]) < 0.01;
  const [y0, y1] = h.side > 0 ? [h.span[0], h.span[1] + (atEnd ? CLEAR : 0)] : [h.span[0] - (atEnd ? CLEAR : 0), h.span[1]];
  const deep = face + l.s.haunch_length;
  if (l.s.haunch === 'square') return block(name, op, boxOf(x[0], x[1], y0, y1, from, deep), { 'z+': 'haunch end' });
  const [tall, low] = h.side > 0 ? [h.span[0], h.span[1]] : [h.span[1], h.span[0]];
  const outline: Vec2[] =
    h.side > 0
      ? [[y0, from], [y1, from], ...(y1 > low ? ([[y1, face]] as Vec2[]) : []), [low, face], [tall, deep]]
      : [[y0, from], [y1, from], [tall, deep], [low, face], ...(y0 < low ? ([[y0, face]] as Vec2[]) : [])];
  return swept(
    name,
    op,
    'yz',
    outline,
    x[0],
    x[1],
    outline.map((c) => (c === (h.side > 0 ? outline[outline.length - 2] : outline[2]) ? 'haunch end' : null)),
  );
}

/**
 * Pegs go in from the face of the receiver that is nearer to the tenons (from its own low side where both are as near), spread over the rows.
 * Staggered, those of tenons in the receiver's own front and back stand higher by half of it, the others lower.
 */
function pegsAt(g: Ground, s: MortiseTenon, x: Span): PegAt[] {
  const out: PegAt[] = [];
  const body = bodyIn(g.into);
  const rows = rowsOf(g, s);
  const share = Math.ceil(s.pegs / rows.length);
  const higher = g.into.end === 'front' || g.into.end === 'back' ? 1 : -1;
  rows.forEach((row, k) => {
    const n = Math.min(share, s.pegs - k * share);
    for (let i = 0; i < n; i++) {
      const y = spread(row, i, n, ownSense(g.enter, 'y')) + (higher * upSense(g) * s.peg_stagger) / 2;
      const z = g.gap + s.peg_back;
      const line = lineThrough(body, [0, y, z], [1, 0, 0]);
      const [low, high] = line ? [line.low, line.high] : [g.into.box.min[0], g.into.box.max[0]];
      const lead = x[0] - low - (high - x[1]);
      const sign: 1 | -1 = Math.abs(lead) < 1e-6 ? ownSense(g.enter, 'x') : lead < 0 ? 1 : -1;
      out.push({ y, z, sign, start: sign > 0 ? low : high, length: s.peg_length });
    }
  });
  return out;
}
/** The middle of share i of n of a span, counted from its low side, or from its high side where the part's own axis runs against it. */
const spread = (span: Span, i: number, n: number, sense: 1 | -1): number => {
  const step = ((span[1] - span[0]) * (2 * i + 1)) / (2 * n);
  return sense > 0 ? span[0] + step : span[1] - step;
};
/** Kerfs lie across the grain of the receiver ('along' turns them): they spread the tenon against its end grain. */
function wedgesIn(g: Ground, s: MortiseTenon, t: Tenon, tip: number, thickEnd: number): WedgeSpec[] {
  const way = runsAlongGrain(g) === (s.wedge === 'across') ? 'y' : 'x';
  const [over, span] = way === 'y' ? [t.y, t.x] : [t.x, t.y];
  const kerf = Math.min(1.5, s.wedge_thick / 2);
  return Array.from({ length: s.wedges }, (_, i) => ({
    spread: way,
    span,
    kerf,
    tip: thickEnd,
    at: spread(over, i, s.wedges, ownSense(g.enter, way)),
    sense: ownSense(g.enter, way),
    root: tip - (tip * 2) / 3,
    thick: s.wedge_thick,
  }));
}
