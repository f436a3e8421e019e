/** Making a part's record: rounded, sorted and keyed, so that equal wood has equal keys whatever road its numbers took. */
import type { Box } from '../geom/box.ts';
import { type Frame, outDir, outPoint, quantiseFrame } from '../geom/frame.ts';
import type { Corner, Loop } from '../geom/loop.ts';
import { type Axis, type Vec2, type Vec3, dot, quantise, quantise3, tidy3 } from '../geom/vec3.ts';
import { hashText } from './hash.ts';
import { byCodePoint } from './ids.ts';
import type { Feature, PartRecord, Shape } from './record.ts';

/** The record of a part from its stock and features, all seen in its record frame, mm. Names do not enter the key. */
export function partRecord(stock: Box, grain: Axis, wood: string, features: readonly Feature[]): PartRecord {
  return recordOf(stock, grain, wood, features.map(signed)).record;
}

/** A feature as records keep it, rounded, with the text that tells what it cuts: worked out once, however many records take it in. */
export type Signed = { readonly feature: Feature; readonly sign: string };
export function signed(f: Feature): Signed {
  const feature = quantiseFeature(f);
  return { feature, sign: signature(feature) };
}
/** The record of a part from features that are signed already; and in which order it has put them, as indices into the list given. */
export function recordOf(
  stock: Box,
  grain: Axis,
  wood: string,
  features: readonly Signed[],
): { readonly record: PartRecord; readonly order: readonly number[] } {
  const box: Box = { min: quantise3(stock.min), max: quantise3(stock.max) };
  const sorted = features.map((s, i) => ({ ...s, i }));
  sorted.sort((a, b) => byCodePoint(a.sign, b.sign) || byCodePoint(a.feature.name, b.feature.name) || a.i - b.i);
  const key = hashText(JSON.stringify([box, grain, wood, sorted.map((s) => s.sign)]));
  return { record: { stock: box, grain, wood, features: sorted.map((s) => s.feature), key }, order: sorted.map((s) => s.i) };
}

function quantiseFeature(f: Feature): Feature {
  return { ...f, at: quantiseFrame(f.at), solid: quantiseShape(f.solid) };
}
function quantiseShape(s: Shape): Shape {
  // A direction is no length: rounded like one it would move a long slant by a thousandth of a millimetre.
  if (s.kind === 'half') return { kind: 'half', normal: tidy3(s.normal), off: quantise(s.off) };
  if (s.kind === 'turned') return { kind: 'turned', profile: quantiseLoop(s.profile) };
  const flat = { kind: 'prism' as const, profile: s.profile.map(quantiseLoop), from: quantise(s.from), to: quantise(s.to) };
  return s.profileTo ? { ...flat, profileTo: s.profileTo.map(quantiseLoop) } : flat;
}
const quantise2 = (p: Vec2): Vec2 => [quantise(p[0]), quantise(p[1])];
const quantiseLoop = (l: Loop): Loop =>
  l.map((c): Corner => (c.via ? { at: quantise2(c.at), via: quantise2(c.via) } : { at: quantise2(c.at) }));

/**
 * What a feature is, wherever its frame was put: its op and the spots that define its solid in the record frame, sorted. Two features
 * with one signature cut the same wood. `by` moves it first (a symmetry of the box).
 */
export function signature(f: Feature, by?: Frame): string {
  const spot = (p: Vec3): string => {
    const q = outPoint(f.at, p);
    return quantise3(by ? outPoint(by, q) : q).join(',');
  };
  return JSON.stringify([f.op, f.solid.kind, spots(f, spot, by)]);
}
function spots(f: Feature, spot: (p: Vec3) => string, by: Frame | undefined): unknown {
  const s = f.solid;
  if (s.kind === 'half') {
    const n = outDir(f.at, s.normal);
    const turned = by ? outDir(by, n) : n;
    const p = outPoint(f.at, [s.normal[0] * s.off, s.normal[1] * s.off, s.normal[2] * s.off]);
    return [quantise3(turned), quantise(dot(turned, by ? outPoint(by, p) : p))];
  }
  if (s.kind === 'turned') {
    const ends = s.profile.map((c) => [spot([0, 0, c.at[1]]), quantise(c.at[0]), c.via ? quantise2(c.via) : 0]);
    return ends.map((e) => JSON.stringify(e)).sort();
  }
  const ring = (loop: Loop, z: number): string => {
    const all: string[] = [];
    for (const c of loop) {
      all.push(`p${spot([c.at[0], c.at[1], z])}`);
      if (c.via) all.push(`v${spot([c.via[0], c.via[1], z])}`);
    }
    // As JSON would have it: there is nothing in these texts to escape.
    return `["${all.sort().join('","')}"]`;
  };
  const rings = (profile: readonly Loop[], z: number): string[] => profile.map((l) => ring(l, z));
  return [...rings(s.profile, s.from), ...rings(s.profileTo ?? s.profile, s.to)].sort();
}

/**
 * Are two records the same part: equal under a proper turn of the box that keeps the grain ('same'), only under a mirroring ('handed'),
 * or neither (null)? A square section has 8 turns, any other 4.
 */
export function samePart(a: PartRecord, b: PartRecord): 'same' | 'handed' | null {
  if (a.wood !== b.wood || a.features.length !== b.features.length) return null;
  if (a.key === b.key) return 'same';
  const target = signs(b);
  let handed = false;
  for (const t of boxSymmetries(a, b)) {
    const mine = a.features.map((f) => signature(f, t.frame)).sort();
    if (mine.every((s, i) => s === target[i])) {
      if (t.proper) return 'same';
      handed = true;
    }
  }
  return handed ? 'handed' : null;
}
const signs = (r: PartRecord): string[] => r.features.map((f) => signature(f)).sort();
/** Is a part its own mirror image, up to a turn: then left and right copies of it are one part. */
export function isOwnMirror(r: PartRecord): boolean {
  const target = signs(r);
  return boxSymmetries(r, r).some(
    (t) =>
      !t.proper &&
      r.features
        .map((f) => signature(f, t.frame))
        .sort()
        .every((s, i) => s === target[i]),
  );
}

/** The turns, but for none at all, that put a part's box back where it was with the grain along the grain: three, or seven when square. */
export const turnsOf = (r: PartRecord): readonly Frame[] =>
  boxSymmetries(r, r).flatMap((t) => (t.proper && !(t.frame.x[0] === 1 && t.frame.y[1] === 1) ? [t.frame] : []));

const PERMUTATIONS: readonly (readonly [0 | 1 | 2, 0 | 1 | 2, 0 | 1 | 2])[] = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
];
/** Moves that carry a's stock onto b's with the grain on the grain. */
function boxSymmetries(a: PartRecord, b: PartRecord): { frame: Frame; proper: boolean }[] {
  const size = (r: PartRecord): Vec3 => [0, 1, 2].map((i) => (r.stock.max[i] ?? 0) - (r.stock.min[i] ?? 0)) as unknown as Vec3;
  const [sa, sb] = [size(a), size(b)];
  const [ga, gb] = [a.grain, b.grain].map((g) => 'xyz'.indexOf(g));
  const out: { frame: Frame; proper: boolean }[] = [];
  for (const p of PERMUTATIONS) {
    // a's axis i lands on b's axis p[i]
    if (p[ga as 0] !== gb || [0, 1, 2].some((i) => Math.abs((sa[i] ?? 0) - (sb[p[i as 0]] ?? 0)) > 2e-6)) continue;
    for (let m = 0; m < 8; m++) {
      const sign = (i: number): 1 | -1 => (m & (1 << i) ? -1 : 1);
      const col = (i: 0 | 1 | 2): Vec3 => [0, 1, 2].map((k) => (k === p[i] ? sign(i) : 0)) as unknown as Vec3;
      const mid = (r: PartRecord): Vec3 => [0, 1, 2].map((i) => ((r.stock.max[i] ?? 0) + (r.stock.min[i] ?? 0)) / 2) as unknown as Vec3;
      const turn: Frame = { o: [0, 0, 0], x: col(0), y: col(1), z: col(2) };
      const moved = outDir(turn, mid(a));
      const to = mid(b);
      const even = [
        [0, 1, 2],
        [1, 2, 0],
        [2, 0, 1],
      ].some((e) => e.every((v, i) => v === p[i as 0]));
      out.push({
        frame: { ...turn, o: [to[0] - moved[0], to[1] - moved[1], to[2] - moved[2]] },
        proper: sign(0) * sign(1) * sign(2) > 0 === even,
      });
    }
  }
  return out;
}
