/**
 * Faces to be filled, from the back forwards. Triangles of one face and one shade go together; which of two lies behind is asked where
 * they overlap on the paper, and where each hides some of the other one is parted along the other's plane.
 */
import { type Vec2, type Vec3, add, dot, scale, sub, unit } from '../geom/vec3.ts';
import type { Fill } from './record.ts';
import type { Sheet } from './sheet.ts';
import { straightened } from './sheet.ts';
import { type Scene, type Tri, cornersOf, isEndGrain } from './space.ts';
import { type Blockers, isHidden, planeDepth, samplesOf } from './visible.ts';

/** From upper left, behind the eye: right, up, towards the eye. */
const LIGHT = unit([-0.35, 0.75, 0.55]);
const STEP = 0.035;
/** How much darker the ends of the fibres are. */
const END = 0.055;
const NEAR = 0.03;
/** Less than this of a face is not painted, square units of the paper. */
const SPECK = 0.2;

type Box2 = { readonly low: Vec2; readonly high: Vec2 };
type Convex = readonly Vec3[];
type Patch = Box2 & {
  readonly part: number;
  readonly shade: number;
  readonly shapes: readonly Convex[];
  readonly boxes: readonly Box2[];
  /** Normal of its plane; null where it bends. */
  readonly normal: Vec3 | null;
  readonly depth: number;
};

export function fillsOf(s: Scene, sheet: Sheet, blockers: Blockers): Fill[] {
  const hides = asked();
  return ordered(parted(patchesOf(s, blockers), hides), hides).map((p) => ({
    part: p.part,
    wood: s.piece.parts[p.part]?.wood ?? '',
    shade: p.shade,
    loops: outlineOf(p.shapes).flatMap((loop) => {
      const drawn = straightened([...loop, loop[0] as Vec3].map(sheet.put)).slice(0, -1);
      return Math.abs(areaOf(drawn)) > SPECK ? [drawn] : [];
    }),
  }));
}
const areaOf = (loop: readonly Vec2[]): number =>
  loop.reduce((sum, p, i) => {
    const q = loop[(i + 1) % loop.length] as Vec2;
    return sum + (p[0] * q[1] - q[0] * p[1]) / 2;
  }, 0);
/** As a sheet of paper in a north light: tops lightest, fronts as the wood is, sides darker; in few steps, so that round work is banded. */
function shadeOf(s: Scene, t: Tri): number {
  const k = dot(t.normal, LIGHT);
  const lit = k > 0.334 ? 0.094 * (k - 0.334) : 0.155 * (k - 0.334);
  const steps = Math.round((lit - (isEndGrain(s, t) ? END : 0)) / STEP);
  return steps === 0 ? 0 : Math.round(steps * STEP * 1000) / 1000;
}
/** Only what is seen somewhere: the insides of joints that are together need no paint. */
function patchesOf(s: Scene, blockers: Blockers): Patch[] {
  const groups = new Map<string, Tri[]>();
  for (const t of s.front) {
    const key = `${t.part} ${t.face} ${shadeOf(s, t)}`;
    const group = groups.get(key);
    if (group) group.push(t);
    else groups.set(key, [t]);
  }
  const seen = [...groups.values()].filter((tris) => tris.some((t) => samplesOf(cornersOf(s, t), 5).some((p) => !isHidden(p, blockers))));
  return seen.map((tris) => {
    const first = tris[0] as Tri;
    const flat = tris.every((t) => dot(t.normal, first.normal) > 0.99999);
    return patch(
      first.part,
      shadeOf(s, first),
      tris.map((t) => cornersOf(s, t)),
      flat ? first.normal : null,
    );
  });
}
function patch(part: number, shade: number, shapes: readonly Convex[], normal: Vec3 | null): Patch {
  const all = shapes.flat();
  const depth = all.reduce((sum, p) => sum + p[2], 0) / all.length;
  return { part, shade, shapes, normal, boxes: shapes.map(boxOf), ...boxOf(all), depth };
}
function boxOf(points: readonly Vec3[]): Box2 {
  const all = (k: 0 | 1): number[] => points.map((p) => p[k]);
  return { low: [Math.min(...all(0)), Math.min(...all(1))], high: [Math.max(...all(0)), Math.max(...all(1))] };
}
const aside = (a: Box2, b: Box2): boolean =>
  a.low[0] >= b.high[0] || b.low[0] >= a.high[0] || a.low[1] >= b.high[1] || b.low[1] >= a.high[1];

type Hides = (a: Patch, b: Patch) => readonly [boolean, boolean];
/** Each pair is tried once. */
function asked(): Hides {
  const known = new Map<Patch, Map<Patch, readonly [boolean, boolean]>>();
  const note = (a: Patch, b: Patch, both: readonly [boolean, boolean]): void => {
    const others = known.get(a) ?? new Map<Patch, readonly [boolean, boolean]>();
    known.set(a, others.set(b, both));
  };
  return (a, b) => {
    const had = known.get(a)?.get(b);
    if (had) return had;
    const [first, second] = hiding(a, b);
    note(a, b, [first, second]);
    note(b, a, [second, first]);
    return [first, second];
  };
}
/** Whether the first hides some of the second, and the second some of the first. */
function hiding(a: Patch, b: Patch): readonly [boolean, boolean] {
  if (aside(a, b)) return [false, false];
  let [first, second] = [false, false];
  for (const [i, p] of a.shapes.entries())
    for (const [j, q] of b.shapes.entries()) {
      if (aside(a.boxes[i] as Box2, b.boxes[j] as Box2)) continue;
      const both = overlap(p, q);
      if (!both) continue;
      const [dp, dq] = [depthOn(p, both), depthOn(q, both)];
      if (dp > dq + NEAR) first = true;
      else if (dq > dp + NEAR) second = true;
      if (first && second) return [true, true];
    }
  return [first, second];
}
const depthOn = (shape: Convex, at: Vec2): number => planeDepth(shape[0] as Vec3, shape[1] as Vec3, shape[2] as Vec3)?.(at) ?? 0;
/** Whether a side of the first has all of the second beyond it. */
const isBeside = (p: Convex, q: Convex): boolean =>
  p.some((c, i) => {
    const d = p[(i + 1) % p.length] as Vec3;
    return q.every((v) => (d[0] - c[0]) * (v[1] - c[1]) - (d[1] - c[1]) * (v[0] - c[0]) <= 1e-9);
  });
/** A place where two convex shapes overlap on the paper; null where they only touch. */
function overlap(p: Convex, q: Convex): Vec2 | null {
  if (isBeside(p, q) || isBeside(q, p)) return null;
  let left: Vec2[] = p.map((v) => [v[0], v[1]]);
  for (let k = 0; k < q.length && left.length; k++) {
    const [c, d] = [q[k] as Vec3, q[(k + 1) % q.length] as Vec3];
    const side = (v: Vec2): number => (d[0] - c[0]) * (v[1] - c[1]) - (d[1] - c[1]) * (v[0] - c[0]);
    left = left.flatMap((v, i) => {
      const w = left[(i + 1) % left.length] as Vec2;
      const [sv, sw] = [side(v), side(w)];
      const cut: Vec2[] = sv > 0 !== sw > 0 ? [[v[0] + ((w[0] - v[0]) * sv) / (sv - sw), v[1] + ((w[1] - v[1]) * sv) / (sv - sw)]] : [];
      return sv > 0 ? [v, ...cut] : cut;
    });
  }
  if (left.length < 3) return null;
  let area = 0;
  for (let i = 1; i + 1 < left.length; i++) {
    const [o, v, w] = [left[0] as Vec2, left[i] as Vec2, left[i + 1] as Vec2];
    area += (v[0] - o[0]) * (w[1] - o[1]) - (v[1] - o[1]) * (w[0] - o[0]);
  }
  if (area < 0.02) return null;
  return [left.reduce((n, v) => n + v[0], 0) / left.length, left.reduce((n, v) => n + v[1], 0) / left.length];
}

/** Patches of which no two hide each other, as far as a flat one of the two can part the other. */
function parted(patches: readonly Patch[], hides: Hides): Patch[] {
  const out = [...patches];
  for (let i = 0; i < out.length; i++)
    for (let j = 0; j < i; j++) {
      const [a, b] = [out[i] as Patch, out[j] as Patch];
      const [first, second] = hides(a, b);
      if (!first || !second) continue;
      const [cut, by, at] = a.normal ? ([b, a, j] as const) : ([a, b, i] as const);
      if (!by.normal) continue;
      const [front, back] = split(cut, by.normal, by.shapes[0]?.[0] as Vec3);
      if (!front || !back) continue;
      out[at] = front;
      out.push(back);
    }
  return out;
}
function split(p: Patch, normal: Vec3, on: Vec3): readonly [Patch | null, Patch | null] {
  const part = (sign: 1 | -1): Patch | null => {
    const shapes = p.shapes.flatMap((shape): Convex[] => {
      const kept = shape.flatMap((v, i): Vec3[] => {
        const w = shape[(i + 1) % shape.length] as Vec3;
        const [sv, sw] = [sign * dot(sub(v, on), normal), sign * dot(sub(w, on), normal)];
        const cut = sv > 1e-6 !== sw > 1e-6 && Math.abs(sv - sw) > 1e-9 ? [add(v, scale(sub(w, v), sv / (sv - sw)))] : [];
        return sv > 1e-6 ? [v, ...cut] : cut;
      });
      return kept.length > 2 ? [kept] : [];
    });
    return shapes.length ? patch(p.part, p.shade, shapes, p.normal) : null;
  };
  return [part(1), part(-1)];
}

/** So often a ring of faces that hide each other is cut open; then the farthest goes first. */
const MOST_CUTS = 60;
/** From the back forwards. Where faces hide each other in a ring, one of them is parted along the plane of one that it hides. */
function ordered(patches: readonly Patch[], hides: Hides, cuts = 0): Patch[] {
  const { above, below } = relations(patches, hides);
  const left = new Set(patches.keys());
  const out: Patch[] = [];
  // What has nothing left beneath it may come in any order: those alike follow each other, so that they can be painted at once.
  const worse = (i: number, than: number): number =>
    (below[i] ?? 0) - (below[than] ?? 0) ||
    Number(unlike(out.at(-1), patches[i] as Patch)) - Number(unlike(out.at(-1), patches[than] as Patch)) ||
    (patches[i] as Patch).depth - (patches[than] as Patch).depth;
  while (left.size) {
    let next = -1;
    for (const i of left) if (next < 0 || worse(i, next) < -1e-9) next = i;
    if ((below[next] ?? 0) > 0 && cuts < MOST_CUTS) {
      const opened = openRing(
        [...left].map((i) => patches[i] as Patch),
        hides,
      );
      if (opened) return [...out, ...ordered(opened, hides, cuts + 1)];
    }
    left.delete(next);
    out.push(patches[next] as Patch);
    for (const i of above[next] ?? []) below[i] = (below[i] ?? 0) - 1;
  }
  return out;
}
function relations(patches: readonly Patch[], hides: Hides): { readonly above: number[][]; readonly below: number[] } {
  const above: number[][] = patches.map(() => []);
  const below = patches.map(() => 0);
  for (let i = 0; i < patches.length; i++)
    for (let j = 0; j < i; j++) {
      const [first, second] = hides(patches[i] as Patch, patches[j] as Patch);
      if (first === second) continue;
      const [low, high] = first ? [j, i] : [i, j];
      above[low]?.push(high);
      below[high] = (below[high] ?? 0) + 1;
    }
  return { above, below };
}
/** The same patches with one more: two that follow each other in a ring, one parted along the plane of the other. Null when none can be. */
function openRing(patches: readonly Patch[], hides: Hides): Patch[] | null {
  const ring = ringIn(patches, hides);
  for (const [k, high] of ring.entries()) {
    const low = ring[(k + 1) % ring.length] as Patch;
    for (const [cut, by] of [
      [high, low],
      [low, high],
    ] as const) {
      const [front, back] = by.normal ? split(cut, by.normal, by.shapes[0]?.[0] as Vec3) : [null, null];
      if (front && back) return patches.flatMap((p) => (p === cut ? [front, back] : [p]));
    }
  }
  return null;
}
/** From each patch to one that it hides, until one comes again; every patch hides one here, or none would be left. */
function ringIn(patches: readonly Patch[], hides: Hides): Patch[] {
  const way: Patch[] = [];
  let next = patches.find((p) => patches.some((q) => p !== q && hidesOnly(p, q, hides)));
  while (next && !way.includes(next)) {
    const here = next;
    way.push(here);
    next = patches.find((q) => q !== here && hidesOnly(here, q, hides));
  }
  return next ? way.slice(way.indexOf(next)) : [];
}
const hidesOnly = (p: Patch, q: Patch, hides: Hides): boolean => {
  const [first, second] = hides(p, q);
  return first && !second;
};
const unlike = (a: Patch | undefined, b: Patch): boolean => a?.part !== b.part || a.shade !== b.shade;

/** The rims of shapes that lie side by side: sides that two of them share go away. */
function outlineOf(shapes: readonly Convex[]): Vec3[][] {
  const name = (v: Vec3): string => v.map((n) => Math.round(n * 1e3)).join();
  const sides = new Map<string, readonly [Vec3, Vec3]>();
  for (const shape of shapes)
    shape.forEach((a, i) => {
      const b = shape[(i + 1) % shape.length] as Vec3;
      if (!sides.delete(`${name(b)} ${name(a)}`)) sides.set(`${name(a)} ${name(b)}`, [a, b]);
    });
  const from = new Map<string, (readonly [Vec3, Vec3])[]>();
  for (const side of sides.values()) from.set(name(side[0]), [...(from.get(name(side[0])) ?? []), side]);
  const loops: Vec3[][] = [];
  for (const start of sides.values()) {
    const loop: Vec3[] = [];
    for (let at = name(start[0]); ;) {
      const side = from.get(at)?.shift();
      if (!side) break;
      loop.push(side[0]);
      at = name(side[1]);
    }
    if (loop.length > 2) loops.push(loop);
  }
  return loops;
}
