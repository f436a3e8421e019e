import { type Axis, type Vec2, AXES, axisVec, scale } from '../../geom/vec3.ts';
import type { Feature } from '../../model/record.ts';
import { type Looks, block, faceToward, looking } from '../blocks.ts';
import type { Made, Place } from '../family.ts';
import { type Sharer, type Span, flatPoint, reachAlong, sweptAlong } from '../shared-box.ts';
import { type Drawn, contacts, walls } from './contacts.ts';
import { type Ground, type MitreLine, type Tongue, cutAt, ground, lostSpan, mitreLine, notchBox, tongueOf } from './lay.ts';
import type { Lap } from './params.ts';

export function drawn(p: Place<Lap>, s: Lap): Drawn {
  const g = ground(p.meeting, s);
  if (!g) throw new Error('a lap needs a shared volume that opens at a face of both parts: propose refuses the others');
  const mitre = s.form === 'mitred' ? mitreLine(g) : null;
  const tongue = s.form === 'dovetailed' ? tongueOf(g, s.slope) : null;
  if ((s.form === 'mitred' && !mitre) || (s.form === 'dovetailed' && !tongue)) throw new Error(`a ${s.form} lap cannot be cut here`);
  return { g, s, cut: cutAt(g, s.share), mitre, tongue };
}
export function make(p: Place<Lap>, s: Lap): Made {
  const d = drawn(p, s);
  return {
    features: { over: overCuts(d), under: underCuts(d) },
    extras: [],
    contacts: contacts(d),
    frees: frees(d),
    holds: s.hold === 'glued' ? 'glue' : 'dry',
  };
}
function overCuts(d: Drawn): Feature[] {
  const { g, mitre, tongue } = d;
  if (g.full) return [];
  const notch = boxNotch(d, g.over);
  const rest: Span = keptSpan(d);
  if (mitre) return [notch, sweptAlong(g.c, 'mitre', 'remove', beyondLine(mitre, 1), rest, ['mitre', null, null, null])];
  if (tongue)
    return [notch, ...cheekCuts(g, tongue).map((c) => sweptAlong(g.c, c.name, 'remove', c.outline, rest, ['flank', 'shoulder', null]))];
  return [notch];
}
function underCuts(d: Drawn): Feature[] {
  const { g, mitre, tongue } = d;
  if (mitre) return [prismNotch(d, beyondLine(mitre, -1), ['mitre', null, null, null])];
  if (!tongue) return [boxNotch(d, g.under)];
  const name = (low: boolean): string => flankName(g, tongue, low);
  return [prismNotch(d, socket(g, tongue), [name(true), wallName(g.under, tongue.run.axis, -tongue.run.way as 1 | -1), name(false), null])];
}
/** What the first part keeps of the shared thickness, out to its own face. */
const keptSpan = ({ g, cut }: Drawn): Span => {
  const reach = reachAlong(g.over, g.s.box, g.c);
  return g.keep > 0 ? [cut, reach[1]] : [reach[0], cut];
};
const wallName = (p: Sharer, axis: Axis, sign: 1 | -1): string => `wall ${faceToward(p.side, axisVec(axis, sign))}`;
function boxNotch({ g, s, cut }: Drawn, p: Sharer): Feature {
  const faces: Partial<Record<Looks, string>> = {};
  for (const k of AXES)
    for (const sign of [-1, 1] as const) if (k !== g.c && p.on[k][sign > 0 ? 1 : 0]) faces[looking(k, sign)] = wallName(p, k, sign);
  faces[looking(g.c, p === g.over ? g.keep : (-g.keep as 1 | -1))] = 'cheek';
  return block('notch', 'remove', notchBox(g, p, cut, s.form === 'plain' ? s.play : 0), faces);
}
function prismNotch({ g, cut }: Drawn, outline: readonly Vec2[], sides: readonly (string | null)[]): Feature {
  return sweptAlong(g.c, 'notch', 'remove', outline, lostSpan(g, g.under, cut), sides, g.keep > 0 ? ['cheek', 'open'] : ['open', 'cheek']);
}
/** All on one side of the mitre line: 1 beyond the first part's wood, -1 beyond the second's. The line is the first side. */
function beyondLine(m: MitreLine, way: 1 | -1): Vec2[] {
  const along: Vec2 = [m.outer[0] - m.inner[0], m.outer[1] - m.inner[1]];
  const grow = m.far / Math.hypot(...along);
  const p: Vec2 = [m.inner[0] - along[0] * grow, m.inner[1] - along[1] * grow];
  const q: Vec2 = [m.outer[0] + along[0] * grow, m.outer[1] + along[1] * grow];
  const off = (v: Vec2): Vec2 => [v[0] + m.out[0] * m.far * way, v[1] + m.out[1] * m.far * way];
  return [p, q, off(q), off(p)];
}
const flankName = (g: Ground, t: Tongue, low: boolean): string => `flank ${faceToward(g.over.side, axisVec(t.across, low ? -1 : 1))}`;
/** The two slivers that leave the tongue of the first part narrow at its shoulder; the slanted side comes first. */
function cheekCuts(g: Ground, t: Tongue): { name: string; outline: Vec2[] }[] {
  const point = (along: number, across: number): Vec2 => flatPoint(g.c, t.run.axis, along, across);
  return ([true, false] as const).map((low) => {
    const [edge, inward] = low ? [t.width[0], 1] : [t.width[1], -1];
    const own = g.over.side.box;
    const rim = low ? Math.min(edge, own.min[AXES.indexOf(t.across) as 0]) : Math.max(edge, own.max[AXES.indexOf(t.across) as 0]);
    // Run out past the part's own edge, on the same slope.
    const past = t.inset > 0 ? ((edge - rim) * inward * (t.tip - t.shoulder)) / t.inset : 0;
    return {
      name: flankName(g, t, low),
      outline: [point(t.tip + past, rim), point(t.shoulder, edge + inward * t.inset), point(t.shoulder, rim)],
    };
  });
}
function socket(g: Ground, t: Tongue): Vec2[] {
  const point = (along: number, across: number): Vec2 => flatPoint(g.c, t.run.axis, along, across);
  const reach = reachAlong(g.under, g.s.box, t.run.axis);
  // From the second part's own near edge to the tip, or on to its far edge where it is flush with the tip.
  const [near, far] = t.run.way > 0 ? [reach[1], reach[0]] : [reach[0], reach[1]];
  const lean = t.inset / (t.tip - t.shoulder);
  const half = (along: number): number => t.inset - lean * (along - t.shoulder);
  return [
    point(near, t.width[0] + half(near)),
    point(far, t.width[0] + half(far)),
    point(far, t.width[1] - half(far)),
    point(near, t.width[1] - half(near)),
  ];
}
/** Off the way it was laid on; and sideways where no wall stands in the way. */
function frees(d: Drawn): Made['frees'] {
  const { g, mitre, tongue } = d;
  const off = { moves: ['over'], along: axisVec(g.c, g.keep) };
  if (tongue) return [off];
  const stops = walls(d).map((w) => scale(axisVec(w.axis, w.sign), w.p === g.under ? 1 : -1));
  const blocked = (k: Axis, sign: 1 | -1): boolean => {
    const i = AXES.indexOf(k) as 0 | 1 | 2;
    const into = mitre ? axisOfLine(g, mitre, k) * sign > 1e-9 : false;
    return into || stops.some((v) => v[i] * sign > 0.5);
  };
  const ways = AXES.filter((k) => k !== g.c).flatMap((k) =>
    ([-1, 1] as const).filter((sign) => !blocked(k, sign)).map((sign) => axisVec(k, sign)),
  );
  return [off, ...ways.map((along) => ({ moves: ['over'], along }))];
}
const axisOfLine = (g: Ground, m: MitreLine, k: Axis): number => {
  const rest = AXES.filter((x) => x !== g.c);
  return m.out[rest.indexOf(k) as 0 | 1];
};
