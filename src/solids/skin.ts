/**
 * Which face of the stock or of a feature a triangle lies on. The kernel only says from which original a triangle came; the
 * face is found from where it lies, in the feature's own numbers.
 */
import type { Box } from '../geom/box.ts';
import { inDir, inPoint, outDir } from '../geom/frame.ts';
import { type Loop, arcThrough } from '../geom/loop.ts';
import { type Vec2, type Vec3, cross, dot, length, scale, sub, unit } from '../geom/vec3.ts';
import type { FaceRef, Feature } from '../model/record.ts';
import type { Cutter } from './cutter.ts';
import type { Outline } from './outline.ts';

export type Triangle = readonly [Vec3, Vec3, Vec3];
/**
 * One face, seen from outside the wood, record frame. Flat: its unit normal. Round: the unit normal at a point of it.
 * Ruled: neither is known beforehand, take the triangle's own.
 */
export type Face = { readonly ref: FaceRef | { readonly of: 'stock'; readonly name: string } } & (
  | { readonly form: 'flat'; readonly normal: Vec3 }
  | { readonly form: 'round'; readonly normalAt: (p: Vec3) => Vec3 | null }
  | { readonly form: 'ruled' }
);
export type Skin = {
  readonly faces: readonly Face[];
  /** Index of the face this triangle lies on. */
  readonly find: (t: Triangle) => number;
  /** No two faces lie in one plane: what is found for one triangle holds for all in its plane. */
  readonly distinct: boolean;
};

const STOCK_FACES = ['left', 'right', 'front', 'back', 'bottom', 'top'] as const;

export function stockSkin(stock: Box): Skin {
  const planes = STOCK_FACES.map((name, i) => {
    const axis = (i >> 1) as 0 | 1 | 2;
    const high = i % 2 === 1;
    const normal: Vec3 = [axis === 0 ? (high ? 1 : -1) : 0, axis === 1 ? (high ? 1 : -1) : 0, axis === 2 ? (high ? 1 : -1) : 0];
    return { name, axis, at: (high ? stock.max : stock.min)[axis], normal };
  });
  return {
    faces: planes.map((p) => ({ ref: { of: 'stock', name: p.name }, form: 'flat', normal: p.normal })),
    distinct: true,
    find: (t) => best(planes, (p) => Math.max(...t.map((c) => Math.abs(c[p.axis] - p.at))) + tilt(p.normal, t)),
  };
}
const skins = new WeakMap<Feature, Skin>();
/** The skin of a feature, made once: many records take in the same feature. `cutter` is the feature, read. */
export function featureSkin(feature: Feature, cutter: Cutter): Skin {
  const known = skins.get(feature);
  if (known) return known;
  const skin = skinFor(feature, cutter);
  skins.set(feature, skin);
  return skin;
}
function skinFor(feature: Feature, cutter: Cutter): Skin {
  const way = feature.op === 'add' ? 1 : -1;
  // What lies beyond the plane is taken away, never added, so the wood left looks along the plane's normal.
  if (cutter.kind === 'half')
    return { faces: [{ ref: { of: 'plane' }, form: 'flat', normal: cutter.normal }], distinct: true, find: () => 0 };
  const profile = feature.solid.kind === 'prism' ? feature.solid.profile : feature.solid.kind === 'turned' ? [feature.solid.profile] : [];
  return cutter.kind === 'prism' ? prismSkin(cutter, profile, way) : turnedSkin(cutter, profile, way);
}

type Way = 1 | -1;
/** A hair's tilt only decides where distances are equal: for slivers along an edge. */
const tilt = (normal: Vec3, t: Triangle): number => 0.01 * (1 - Math.abs(dot(normal, triangleNormal(t))));
export function triangleNormal([a, b, c]: Triangle): Vec3 {
  const n = cross(sub(b, a), sub(c, a));
  const l = length(n);
  return l > 0 ? scale(n, 1 / l) : [0, 0, 0];
}
function best<T>(all: readonly T[], cost: (one: T) => number): number {
  let at = 0;
  let least = Infinity;
  all.forEach((one, i) => {
    const c = cost(one);
    if (c < least) [at, least] = [i, c];
  });
  return at;
}

type Chord = {
  readonly a: Vec2;
  readonly b: Vec2;
  /** Out of the wood. */ readonly out: Vec2;
  readonly face: number;
  readonly a2: Vec2;
  readonly b2: Vec2;
};
/** The chords of an outline, each with its face: one face a corner, counted from `first`. */
function chordsOf(outline: Outline, to: Outline | null, first: number): { chords: Chord[]; refs: { loop: number; corner: number }[] } {
  const refs: { loop: number; corner: number }[] = [];
  const chords: Chord[] = [];
  outline.forEach((ring, loop) => {
    const base = first + refs.length;
    const corners = 1 + Math.max(...ring.corner);
    for (let corner = 0; corner < corners; corner++) refs.push({ loop, corner });
    const n = ring.points.length;
    const far = to?.[loop]?.points ?? ring.points;
    ring.points.forEach((a, i) => {
      const j = (i + 1) % n;
      const b = ring.points[j] ?? a;
      chords.push({ a, b, out: outOf(a, b), a2: far[i] ?? a, b2: far[j] ?? a, face: base + (ring.corner[i] ?? 0) });
    });
  });
  return { chords, refs };
}
/** Do no two sides run along one line? Chords of arcs are left out: they lie on no other's line but by chance of 1e-6. */
function apart(chords: readonly Chord[]): boolean {
  const times = new Map<number, number>();
  for (const c of chords) times.set(c.face, (times.get(c.face) ?? 0) + 1);
  const straight = chords.filter((c) => times.get(c.face) === 1);
  const off = (p: Vec2, c: Chord): number => {
    const o = c.out;
    return Math.abs((p[0] - c.a[0]) * o[0] + (p[1] - c.a[1]) * o[1]);
  };
  return straight.every((c, i) => straight.slice(i + 1).every((d) => off(d.a, c) > 1e-4 || off(d.b, c) > 1e-4));
}
/** Outward from a chord whose wood lies on its left. */
function outOf(a: Vec2, b: Vec2): Vec2 {
  const l = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return [(b[1] - a[1]) / l, (a[0] - b[0]) / l];
}
function distance(p: Vec2, a: Vec2, b: Vec2): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const s = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(p[0] - a[0] - s * dx, p[1] - a[1] - s * dy);
}
const mean = (a: number, b: number, c: number): number => (a + b + c) / 3;
/** The middle of the arc that starts at a corner, and whether the wood lies inside it; null on a straight side. */
function arcOf(loop: Loop | undefined, corner: number, chord: Chord): { readonly centre: Vec2; readonly out: Way } | null {
  const c = loop?.[corner];
  const next = loop?.[(corner + 1) % (loop?.length ?? 1)];
  const arc = c?.via && next ? arcThrough(c.at, c.via, next.at) : null;
  if (!arc) return null;
  const o = chord.out;
  const bulges = (chord.a[0] - arc.centre[0]) * o[0] + (chord.a[1] - arc.centre[1]) * o[1] > 0;
  return { centre: arc.centre, out: bulges ? 1 : -1 };
}

function prismSkin(c: Extract<Cutter, { kind: 'prism' }>, profile: readonly Loop[], way: Way): Skin {
  const { chords, refs } = chordsOf(c.outline, c.to, 2);
  const facing = (v: Vec3): Vec3 => outDir(c.at, scale(v, way));
  const side = (ref: { loop: number; corner: number }, i: number): Face => {
    const of = { ref: { of: 'side', ...ref } } as const;
    const own = chords.filter((ch) => ch.face === i + 2);
    const chord = own[0];
    if (!chord) return { ...of, form: 'ruled' };
    if (c.to) {
      const normal = own.length === 1 ? planeOf(chord, c.from, c.end) : null;
      return normal ? { ...of, form: 'flat', normal: facing(normal) } : { ...of, form: 'ruled' };
    }
    const arc = arcOf(profile[ref.loop], ref.corner, chord);
    if (!arc) return { ...of, form: 'flat', normal: facing([...chord.out, 0]) };
    return { ...of, form: 'round', normalAt: (p) => radial(inPoint(c.at, p), arc, facing) };
  };
  const faces: Face[] = [
    { ref: { of: 'from' }, form: 'flat', normal: facing([0, 0, -1]) },
    { ref: { of: 'to' }, form: 'flat', normal: facing([0, 0, 1]) },
    ...refs.map(side),
  ];
  return {
    faces,
    distinct: !c.to && apart(chords),
    find: (t) => findOnPrism(c, chords, t.map((p) => inPoint(c.at, p)) as unknown as Triangle),
  };
}
function radial(p: Vec3, { centre, out }: { readonly centre: Vec2; readonly out: Way }, facing: (v: Vec3) => Vec3): Vec3 | null {
  const [x, y] = [p[0] - centre[0], p[1] - centre[1]];
  const l = Math.hypot(x, y);
  return l > 1e-9 ? facing([(out * x) / l, (out * y) / l, 0]) : null;
}
/** The normal of a side of a loft when it is flat; local frame. */
function planeOf(ch: Chord, from: number, to: number): Vec3 | null {
  const [a, b, d, e]: Vec3[] = [
    [...ch.a, from],
    [...ch.b, from],
    [...ch.b2, to],
    [...ch.a2, to],
  ] as [Vec3, Vec3, Vec3, Vec3];
  if (!a || !b || !d || !e) return null;
  const n = cross(sub(b, a), sub(d, a));
  const flat = length(n) > 0 ? unit(n) : unit(cross(sub(d, a), sub(e, a)));
  return Math.abs(dot(flat, sub(e, a))) < 1e-5 ? flat : null;
}
function findOnPrism(c: Extract<Cutter, { kind: 'prism' }>, chords: readonly Chord[], t: Triangle): number {
  const n = triangleNormal(t);
  const off = (z: number): number => Math.max(...t.map((p) => Math.abs(p[2] - z)));
  const ends = [off(c.from) + 0.01 * (1 - Math.abs(n[2])), off(c.end) + 0.01 * (1 - Math.abs(n[2]))] as const;
  if (Math.min(...ends) < 1e-5) return ends[0] < ends[1] ? 0 : 1;
  const middle: Vec3 = [mean(t[0][0], t[1][0], t[2][0]), mean(t[0][1], t[1][1], t[2][1]), mean(t[0][2], t[1][2], t[2][2])];
  const s = (middle[2] - c.from) / (c.end - c.from);
  const at = (p: Vec2, q: Vec2): Vec2 => (c.to ? [p[0] + s * (q[0] - p[0]), p[1] + s * (q[1] - p[1])] : p);
  const k = best(chords, (ch) => {
    const [a, b] = [at(ch.a, ch.a2), at(ch.b, ch.b2)];
    const o = c.to ? outOf(a, b) : ch.out;
    return distance([middle[0], middle[1]], a, b) + 0.01 * (1 - Math.abs(o[0] * n[0] + o[1] * n[1]));
  });
  const d = chords[k];
  if (!d) return 0;
  const cost = distance([middle[0], middle[1]], at(d.a, d.a2), at(d.b, d.b2));
  return Math.min(...ends) < cost ? (ends[0] < ends[1] ? 0 : 1) : d.face;
}

function turnedSkin(c: Extract<Cutter, { kind: 'turned' }>, profile: readonly Loop[], way: Way): Skin {
  const { chords, refs } = chordsOf(c.outline, null, 0);
  const facing = (v: Vec3): Vec3 => outDir(c.at, scale(v, way));
  const faces = refs.map((ref, i): Face => {
    const of = { ref: { of: 'side', corner: ref.corner } } as const;
    const chord = chords.find((ch) => ch.face === i);
    if (!chord) return { ...of, form: 'ruled' };
    const arc = arcOf(profile[0], ref.corner, chord);
    const [r, z] = chord.out;
    if (!arc && Math.abs(r) < 1e-9) return { ...of, form: 'flat', normal: facing([0, 0, z]) };
    return { ...of, form: 'round', normalAt: (p) => aroundAxis(inPoint(c.at, p), arc, [r, z], facing) };
  });
  const find = (t: Triangle): number => {
    const local = t.map((p) => inPoint(c.at, p)) as unknown as Triangle;
    const n = inDir(c.at, triangleNormal(t));
    const [r0, r1, r2] = local.map((p) => Math.hypot(p[0], p[1])) as [number, number, number];
    const spot: Vec2 = [mean(r0, r1, r2), mean(local[0][2], local[1][2], local[2][2])];
    const k = best(chords, (ch) => {
      const o = ch.out;
      return distance(spot, ch.a, ch.b) + 0.01 * Math.abs(Math.abs(o[1]) - Math.abs(n[2]));
    });
    return chords[k]?.face ?? 0;
  };
  return { faces, distinct: apart(chords), find };
}
function aroundAxis(
  p: Vec3,
  arc: { readonly centre: Vec2; readonly out: Way } | null,
  straight: Vec2,
  facing: (v: Vec3) => Vec3,
): Vec3 | null {
  const r = Math.hypot(p[0], p[1]);
  if (r < 1e-9) return null;
  const [x, z] = arc ? [arc.out * (r - arc.centre[0]), arc.out * (p[2] - arc.centre[1])] : straight;
  const l = Math.hypot(x, z);
  return l > 1e-9 ? facing([((x / l) * p[0]) / r, ((x / l) * p[1]) / r, z / l]) : null;
}
