/**
 * Where fibres run out of a curved part, and where they are short. Wood splits along its grain: a tongue that stands out across the grain
 * holds only by the fibres at its root.
 *
 *        ───────────────      u runs along the grain, v across it
 *        ┌─┐         ┌─┐      the two feet are short grain: longer (h) than the fibres at their root (l)
 *        └─┘         └─┘
 */
import { edgesOf } from '../geom/crossing.ts';
import { polygonArea } from '../geom/loop.ts';
import type { Vec2 } from '../geom/vec3.ts';

/** At the middle of a side of an outline: how steeply the grain runs out there (0 along the side, radians), and how long the fibre is that does. */
export type RunOut = { readonly at: Vec2; readonly angle: number; readonly left: number };

/** Run-out at every side of a closed outline (chords of arcs included); `grain` is a unit vector in its plane. */
export function runOutAlong(outline: readonly Vec2[], grain: Vec2): RunOut[] {
  const turned = outline.map((p): Vec2 => [p[0] * grain[0] + p[1] * grain[1], p[1] * grain[0] - p[0] * grain[1]]);
  const way = polygonArea(outline) >= 0 ? 1 : -1;
  return turned.map((a, i) => {
    const b = turned[(i + 1) % turned.length] ?? a;
    const [du, dv] = [b[0] - a[0], b[1] - a[1]];
    const long = Math.hypot(du, dv);
    const [p, q] = [outline[i] ?? a, outline[(i + 1) % outline.length] ?? b];
    // A hair inside, so that a side along the grain is told by the fibres just within it.
    const inside: Vec2 = [(a[0] + b[0]) / 2 - (way * dv * HAIR) / long, (a[1] + b[1]) / 2 + (way * du * HAIR) / long];
    const hit = spansAt(turned, inside[1]).find(([low, high]) => low <= inside[0] + HAIR && inside[0] <= high + HAIR);
    return { at: [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2], angle: Math.atan2(Math.abs(dv), Math.abs(du)), left: hit ? hit[1] - hit[0] : 0 };
  });
}
const HAIR = 1e-5;

type Span = readonly [number, number];
/** The stretches of the line v = const inside a polygon. */
function spansAt(points: readonly Vec2[], v: number): Span[] {
  const us = edgesOf(points)
    .filter(({ a, b }) => a[1] > v !== b[1] > v)
    .map(({ a, b }) => a[0] + ((v - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
    .sort((x, y) => x - y);
  return us.flatMap((u, i): Span[] => (i % 2 === 0 && us[i + 1] !== undefined ? [[u, us[i + 1] as number]] : []));
}

/** A flat part: its rectangle, u along the grain, and what is cut from it, each a list of rings (outline, holes) in any direction. */
export type FlatWood = { readonly low: Vec2; readonly high: Vec2; readonly cuts: readonly (readonly (readonly Vec2[])[])[] };
/** A tongue or neck held by short fibres: their length at its weakest spot, and how far it stands out beyond, or how long the neck is. */
export type ShortGrain = { readonly at: Vec2; readonly fibre: number; readonly out: number };

/** Wood whose fibres are longer than this is not short, mm. */
export const SHORT = 40;
const LINES = 400;

/** Where a tongue stands out across the grain farther than the fibres at its root are long, or a neck is as short; the worst of each. */
export function shortGrain(wood: FlatWood, short: number = SHORT): ShortGrain[] {
  if (wood.high[0] - wood.low[0] <= short) return [];
  const tall = wood.high[1] - wood.low[1];
  const step = tall / Math.min(LINES, Math.max(20, Math.ceil(2 * tall)));
  const open: Chain[] = [];
  const done: Chain[] = [];
  let before: Span[] = [];
  for (let v = wood.low[1] + step / 2; v < wood.high[1] + step; v += step) {
    const spans = v < wood.high[1] ? woodAt(wood, v) : [];
    for (const chain of open.splice(0)) {
      const next = spans.filter((s) => overlap(s, chain.last));
      const one = next[0];
      if (next.length === 1 && one && length(one) <= short && before.filter((s) => overlap(s, one)).length === 1)
        open.push(grown(chain, one, v));
      else done.push({ ...chain, tipHigh: next.length === 0 });
    }
    for (const s of spans)
      if (length(s) <= short && !open.some((c) => c.last === s))
        open.push({ last: s, rows: [{ v, span: s }], tipLow: !before.some((b) => overlap(b, s)), tipHigh: false });
    before = spans;
  }
  return [...done, ...open].flatMap((c) => weakest(c, step));
}
type Chain = {
  readonly last: Span;
  readonly rows: readonly { readonly v: number; readonly span: Span }[];
  readonly tipLow: boolean;
  readonly tipHigh: boolean;
};
const grown = (c: Chain, span: Span, v: number): Chain => ({ ...c, last: span, rows: [...c.rows, { v, span }] });
const length = (s: Span): number => s[1] - s[0];
const overlap = (a: Span, b: Span): boolean => a[0] < b[1] - 1e-9 && b[0] < a[1] - 1e-9;

/** The spot of a chain with the least fibre for what stands beyond it; [] where what stands beyond is shorter than its root. */
function weakest(c: Chain, step: number): ShortGrain[] {
  const n = c.rows.length;
  let worst: ShortGrain | null = null;
  for (const [i, { v, span }] of c.rows.entries()) {
    // Beyond a tip there is nothing; beyond an end that goes over into wide wood there is all of that.
    const ends = [c.tipLow ? (i + 0.5) * step : Infinity, c.tipHigh ? (n - i - 0.5) * step : Infinity];
    const out = Math.min(...ends, ...(ends.includes(Infinity) && !c.tipLow && !c.tipHigh ? [n * step] : []));
    const at: Vec2 = [(span[0] + span[1]) / 2, v];
    if (out >= length(span) && (!worst || out / length(span) > worst.out / worst.fibre)) worst = { at, fibre: length(span), out };
  }
  return worst ? [worst] : [];
}
function woodAt(wood: FlatWood, v: number): Span[] {
  let left: Span[] = [[wood.low[0], wood.high[0]]];
  for (const rings of wood.cuts)
    for (const [a, b] of evenOdd(rings, v))
      left = left.flatMap(([x, y]): Span[] => [[x, Math.min(y, a)] as Span, [Math.max(x, b), y] as Span].filter(([p, q]) => q - p > 1e-9));
  return left;
}
/** Inside an odd number of rings. */
function evenOdd(rings: readonly (readonly Vec2[])[], v: number): Span[] {
  const us = rings.flatMap((r) => spansAt(r, v).flat()).sort((x, y) => x - y);
  return us.flatMap((u, i): Span[] =>
    i % 2 === 0 && us[i + 1] !== undefined && (us[i + 1] as number) > u ? [[u, us[i + 1] as number]] : [],
  );
}
