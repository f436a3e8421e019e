/**
 * The kernel's own calls and nothing else: what any program would have to spend that cuts these parts from these records, tries these
 * pairs and reads these meshes. Our door to it is measured against this.
 */
import type { Frame } from '../../geom/frame.ts';
import { type Loop, loopPoints, polygonArea } from '../../geom/loop.ts';
import type { Vec3 } from '../../geom/vec3.ts';
import type { Feature, PartRecord } from '../../model/record.ts';
import { type Body, CHORDS_PER_CIRCLE, kernel } from '../../solids/kernel.ts';

/** A half-space as a block so large that it cuts any part of a piece of furniture, mm. */
const FAR = 10_000;

/** The part of a record; the caller deletes it. */
export function bareCut(record: PartRecord): Body {
  const { Manifold } = kernel();
  const { min, max } = record.stock;
  const cube = Manifold.cube([max[0] - min[0], max[1] - min[1], max[2] - min[2]]);
  const stock = cube.translate([...min]);
  cube.delete();
  const made = record.features.map((f) => ({ op: f.op, body: bareCutter(f) }));
  const of = (...ops: readonly Feature['op'][]): Body[] => made.filter((m) => ops.includes(m.op)).map((m) => m.body);
  const step = (from: Body, more: readonly Body[], how: (all: Body[]) => Body): Body => {
    if (more.length === 0) return from;
    const next = how([from, ...more]);
    from.delete();
    return next;
  };
  const shaped = step(stock, of('shape'), (all) => Manifold.difference(all));
  const grown = step(shaped, of('add'), (all) => Manifold.union(all));
  const body = step(grown, of('remove', 'late'), (all) => Manifold.difference(all));
  // The kernel puts work off until something is asked.
  if (body.status() !== 'NoError') throw new Error(`the bare calls could not cut a part: ${body.status()}`);
  for (const m of made) m.body.delete();
  return body;
}
function bareCutter(f: Feature): Body {
  const { Manifold } = kernel();
  const s = f.solid;
  if (s.kind === 'half') return slab(f, s);
  if (s.kind === 'turned') return placed(Manifold.revolve([flat(s.profile)], CHORDS_PER_CIRCLE), f.at);
  if (s.profileTo) return goneOver(f, s, s.profileTo);
  // Holes run the other way round.
  const loops = s.profile.map((l, i) => ((i === 0) === polygonArea(flat(l)) > 0 ? flat(l) : flat(l).toReversed()));
  const [outline, ...holes] = loops;
  const low: Vec3 = [f.at.o[0] + f.at.z[0] * s.from, f.at.o[1] + f.at.z[1] * s.from, f.at.o[2] + f.at.z[2] * s.from];
  const r = outline && holes.length === 0 ? rectangle(outline) : null;
  if (!r) return placed(Manifold.extrude(loops, s.to - s.from), { ...f.at, o: low });
  const { x, y } = f.at;
  const o: Vec3 = [0, 1, 2].map((i) => (low[i] ?? 0) + (x[i] ?? 0) * r[0] + (y[i] ?? 0) * r[1]) as unknown as Vec3;
  return placed(Manifold.cube([r[2] - r[0], r[3] - r[1], s.to - s.from]), { ...f.at, o });
}
/** A profile gone over straight into another of as many corners: extruded, then the far corners moved. */
function goneOver(
  f: Feature,
  s: { readonly profile: readonly Loop[]; readonly from: number; readonly to: number },
  to: readonly Loop[],
): Body {
  const height = s.to - s.from;
  const straight = kernel().Manifold.extrude(s.profile.map(flat), height);
  const goal = new Map(s.profile.flatMap((l, i) => flat(l).map((p, k) => [p.join(), flat(to[i] as Loop)[k] ?? p] as const)));
  const gone = straight.warp((v) => {
    if (v[2] === height) [v[0], v[1]] = goal.get(`${v[0]},${v[1]}`) ?? [v[0], v[1]];
  });
  straight.delete();
  const { at } = f;
  return placed(gone, { ...at, o: [0, 1, 2].map((i) => (at.o[i] ?? 0) + (at.z[i] ?? 0) * s.from) as unknown as Vec3 });
}
const flat = (loop: Parameters<typeof loopPoints>[0]): [number, number][] =>
  loopPoints(loop, CHORDS_PER_CIRCLE).points.map(([x, y]): [number, number] => [x, y]);
function rectangle(p: readonly (readonly [number, number])[]): readonly [number, number, number, number] | null {
  const [xs, ys] = [p.map((q) => q[0]), p.map((q) => q[1])];
  if (p.length !== 4 || new Set(xs).size !== 2 || new Set(ys).size !== 2) return null;
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}
function slab(f: Feature, s: { readonly normal: Vec3; readonly off: number }): Body {
  const [a, b, c] = s.normal;
  const across: Vec3 = Math.abs(a) < 0.7 ? [0, -c, b] : [c, 0, -a];
  const l = Math.hypot(...across);
  const x: Vec3 = [across[0] / l, across[1] / l, across[2] / l];
  const y: Vec3 = [b * x[2] - c * x[1], c * x[0] - a * x[2], a * x[1] - b * x[0]];
  const block = kernel().Manifold.cube([FAR, FAR, FAR]);
  const o: Vec3 = [0, 1, 2].map((i) => (s.normal[i] ?? 0) * s.off - ((x[i] ?? 0) + (y[i] ?? 0)) * (FAR / 2)) as unknown as Vec3;
  return placed(placed(block, { o, x, y, z: s.normal }), f.at);
}
function placed(body: Body, f: Frame): Body {
  const there = stood(body, f);
  body.delete();
  return there;
}
const stood = (body: Body, f: Frame): Body => body.transform([...f.x, 0, ...f.y, 0, ...f.z, 0, ...f.o, 1]);

/** mm³ that two bodies share, the second one standing in `there`. */
export function barePair(a: Body, b: Body, there: Frame): number {
  const moved = stood(b, there);
  const shared = a.intersect(moved);
  const volume = shared.volume();
  shared.delete();
  moved.delete();
  return volume;
}
/** Triangles of a body, read out; returns their number. */
export const bareMesh = (body: Body): number => body.getMesh().triVerts.length / 3;
