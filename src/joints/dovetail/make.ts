import type { Vec2 } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import { block, boxOf } from '../blocks.ts';
import type { Made, Place } from '../family.ts';
import { CLEAR, swept } from '../features.ts';
import { contacts } from './contacts.ts';
import { type Corner, type Drawn, type Layout, type Span, corner, lapped, layoutFor, mitres, ruler } from './lay.ts';
import type { Dovetail } from './params.ts';

/** Everything drawn of one corner; also what rules and bench read. */
export function drawn(p: Place<Dovetail>, sizes: Dovetail): Drawn {
  const whole = corner(p.meeting);
  const c = whole && lapped(whole, sizes.lap);
  const l = c && layoutFor(c, sizes, p.set.half_pin !== undefined || p.set.pitch !== undefined);
  if (!c || !l) throw new Error(`no tails can be laid out for ${JSON.stringify(sizes)}: propose refuses this`);
  return { c, l };
}
/**
 * The shared corner is divided without rest: what is a pin is taken from the tail board, what is a tail from the pin board. Both cuts use the
 * same slanted lines, and run on to the ends of the boards where one, as measured, stands a little proud.
 */
export function make(p: Place<Dovetail>, sizes: Dovetail): Made {
  const d = drawn(p, sizes);
  return {
    features: {
      tails: [...pinSockets(d), ...mitreFeatures(d, 'tails'), ...trim(d)],
      pins: [...tailSockets(d), ...mitreFeatures(d, 'pins')],
    },
    extras: [],
    contacts: contacts(d),
    frees: [{ moves: ['tails'], along: [-d.c.inward, 0, 0] }],
    holds: 'glue',
  };
}
/** Distances along the width of the pins' two sides at the outer face: between the edge and the first tail, between tails, behind the last. */
export function pinSpans(l: Layout): Span[] {
  const marks = [l.edges[0], ...l.tails.flatMap((t) => [t.low, t.high]), l.edges[1]];
  return Array.from({ length: l.tails.length + 1 }, (_, k) => [marks[2 * k] ?? 0, marks[2 * k + 1] ?? 0]);
}
function pinSockets({ c, l }: Drawn): Feature[] {
  const { to } = ruler(c);
  // What a lapped tail board has beyond its tails is cut off whole.
  const [base, outer] = [c.z[0], c.lap > 0 ? c.z[1] : Math.max(c.tails.box.max[2], c.z[1])];
  const drift = (l.rise / (c.z[1] - c.z[0])) * (outer - c.z[1]);
  return pinSpans(l).map(([a, b], k) => {
    const lean = Math.min(drift, (b - a) / 2 - 0.1);
    // At the edges of the board, and beside a mitre, the half pin's outer side stands upright.
    const [first, last] = [k === 0, k === l.tails.length];
    const outline: Vec2[] = [
      [to(first ? a : a - l.rise), base],
      [to(last ? b : b + l.rise), base],
      [to(last ? b : b - lean), outer],
      [to(first ? a : a + lean), outer],
    ];
    return swept(`pin socket ${k + 1}`, 'remove', 'yz', outline, c.tails.box.min[0], c.tails.box.max[0], [
      'base',
      last ? (b < l.width ? 'side high' : null) : 'cheek high',
      null,
      first ? (a > 0 ? 'side low' : null) : 'cheek low',
    ]);
  });
}
function tailSockets({ c, l }: Drawn): Feature[] {
  const { to } = ruler(c);
  const [base, outer] = [c.pins.box.min[2], c.lap > 0 ? c.z[1] : c.pins.box.max[2]];
  const [low, high] = c.inward > 0 ? [c.pins.box.min[0], c.x[1]] : [c.x[0], c.pins.box.max[0]];
  // Where the tail board is a little short the slopes run on past its end.
  const lean = (l.rise / (c.z[1] - c.z[0])) * (outer - c.z[1]);
  return l.tails.map((t, i) => {
    const outline: Vec2[] = [
      [to(t.low + l.rise), base],
      [to(t.high - l.rise), base],
      [to(t.high + lean), outer],
      [to(t.low - lean), outer],
    ];
    return swept(
      `tail socket ${i + 1}`,
      'remove',
      'yz',
      outline,
      low,
      high,
      [null, 'cheek high', c.lap > 0 ? 'lap' : null, 'cheek low'],
      c.inward > 0 ? ['end', 'base'] : ['base', 'end'],
    );
  });
}

/** The mitre runs from the corner inside the case to the one outside: what lies on the other board's side of it is cut off. */
function mitreFeatures(d: Drawn, role: 'tails' | 'pins'): Feature[] {
  const { c } = d;
  const { to } = ruler(c);
  const [inX, outX] = c.inward > 0 ? [c.x[1], c.x[0]] : [c.x[0], c.x[1]];
  const outline: Vec2[] =
    role === 'tails'
      ? [[inX, c.z[0]], [outX, c.z[1]], ...beyondEnd(outX, c.z[1], outX, c.tails.box.max[2]), [inX, Math.max(c.tails.box.max[2], c.z[1])]]
      : [[outX, c.z[1]], [inX, c.z[0]], [pinEnd(c), c.z[0]], ...beyondEnd(outX, c.z[1], pinEnd(c), c.z[1])];
  const sides = ['mitre', ...outline.slice(1).map(() => null)];
  return mitres(d).map((m) => {
    const [a, b] = [to(m.span[0]), to(m.span[1])];
    // Its side is the end towards the half pin.
    const inner = (m.at === 'low') === a < b;
    return swept(m.name, 'remove', 'xz', outline, Math.min(a, b), Math.max(a, b), sides, inner ? ['edge', 'side'] : ['side', 'edge']);
  });
}
const pinEnd = (c: Corner): number => (c.inward > 0 ? Math.min(c.pins.box.min[0], c.x[0]) : Math.max(c.pins.box.max[0], c.x[1]));
/** A corner of the outline that exists only where a board, as measured, stands proud. */
const beyondEnd = (x0: number, z0: number, x: number, z: number): Vec2[] => (Math.abs(x - x0) + Math.max(0, z - z0) > 1e-6 ? [[x, z]] : []);
/** A tail board drawn longer than its lap allows is cut off there. */
function trim({ c }: Drawn): Feature[] {
  const { min, max } = c.tails.box;
  if (c.lap === 0 || max[2] <= c.z[1] + 1e-6) return [];
  const all = boxOf(min[0] - CLEAR, max[0] + CLEAR, min[1] - CLEAR, max[1] + CLEAR, c.z[1], max[2] + CLEAR);
  return [block('end', 'remove', all, { 'z-': 'end' })];
}
