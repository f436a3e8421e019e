import type { Vec2 } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import type { Made, Place } from '../family.ts';
import { swept } from '../features.ts';
import { contacts } from './contacts.ts';
import { type Corner, type Layout, type Span, corner, layoutFor, ruler } from './lay.ts';
import type { Dovetail } from './params.ts';

/** Everything drawn of one corner; also what rules and bench read. */
export type Drawn = { readonly c: Corner; readonly l: Layout };
export function drawn(p: Place<Dovetail>, sizes: Dovetail): Drawn {
  const c = corner(p.meeting);
  const l = c && layoutFor(c, sizes, p.set.half_pin !== undefined);
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
    features: { tails: pinSockets(d), pins: tailSockets(d) },
    extras: [],
    contacts: contacts(d),
    frees: [{ moves: ['tails'], along: [-d.c.inward, 0, 0] }],
    holds: 'glue',
  };
}
/** Distances along the width of the pins' two sides at the outer face: between the edge and the first tail, between tails, behind the last. */
export function pinSpans(l: Layout): Span[] {
  const marks = [0, ...l.tails.flatMap((t) => [t.low, t.high]), l.width];
  return Array.from({ length: l.tails.length + 1 }, (_, k) => [marks[2 * k] ?? 0, marks[2 * k + 1] ?? 0]);
}
function pinSockets({ c, l }: Drawn): Feature[] {
  const { to } = ruler(c);
  const [base, outer] = [c.z[0], Math.max(c.tails.box.max[2], c.z[1])];
  const lean = (l.rise / (c.z[1] - c.z[0])) * (outer - c.z[1]);
  return pinSpans(l).map(([a, b], k) => {
    // At the edges of the board the half pin's outer side stands upright.
    const [first, last] = [k === 0, k === l.tails.length];
    const outline: Vec2[] = [
      [to(first ? 0 : a - l.rise), base],
      [to(last ? l.width : b + l.rise), base],
      [to(last ? l.width : b - lean), outer],
      [to(first ? 0 : a + lean), outer],
    ];
    return swept(`pin socket ${k + 1}`, 'remove', 'yz', outline, c.tails.box.min[0], c.tails.box.max[0], [
      'base',
      last ? null : 'cheek high',
      null,
      first ? null : 'cheek low',
    ]);
  });
}
function tailSockets({ c, l }: Drawn): Feature[] {
  const { to } = ruler(c);
  const [base, outer] = [c.pins.box.min[2], c.pins.box.max[2]];
  const [low, high] = c.inward > 0 ? [c.pins.box.min[0], c.x[1]] : [c.x[0], c.pins.box.max[0]];
  return l.tails.map((t, i) => {
    const outline: Vec2[] = [
      [to(t.low + l.rise), base],
      [to(t.high - l.rise), base],
      [to(t.high), outer],
      [to(t.low), outer],
    ];
    return swept(
      `tail socket ${i + 1}`,
      'remove',
      'yz',
      outline,
      low,
      high,
      [null, 'cheek high', null, 'cheek low'],
      c.inward > 0 ? ['end', 'base'] : ['base', 'end'],
    );
  });
}
