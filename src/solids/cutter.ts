/** Features read and checked before the kernel sees them: what is wrong is said in words. */
import { type Frame, handed, outDir } from '../geom/frame.ts';
import type { Loop } from '../geom/loop.ts';
import { type Vec3, cross, dot, length, quantise, scale, sub, unit } from '../geom/vec3.ts';
import type { Feature, Shape } from '../model/record.ts';
import { type Outline, outlineOf } from './outline.ts';

/** A feature read and found sound: everything in numbers that the kernel and the naming of faces need. */
export type Cutter =
  | {
      readonly kind: 'prism';
      readonly at: Frame;
      readonly outline: Outline;
      readonly to: Outline | null;
      readonly from: number;
      readonly end: number;
    }
  | { readonly kind: 'turned'; readonly at: Frame; readonly outline: Outline }
  | { readonly kind: 'half'; readonly normal: Vec3; readonly off: number };

const known = new WeakMap<Feature, Cutter | string>();
/** The feature, checked, or what is wrong with it in words that follow its name; read once, since many records take in the same one. */
export function cutterOf(feature: Feature): Cutter | string {
  const before = known.get(feature);
  if (before !== undefined) return before;
  const cutter = readFeature(feature);
  known.set(feature, cutter);
  return cutter;
}
function readFeature(feature: Feature): Cutter | string {
  const at = squared(feature.at);
  if (typeof at === 'string') return at;
  const s = feature.solid;
  if (s.kind === 'half') return feature.op === 'add' ? 'adds a half-space, which has no end' : half(s, at);
  return s.kind === 'prism' ? prism(s, at) : turnedShape(s.profile, at);
}

/**
 * The frame with its axes at right angles and of length 1 exactly: they come rounded to 1e-6, which a metre off is a
 * thousandth. z is kept, then x.
 */
function squared(f: Frame): Frame | string {
  const all = [...f.o, ...f.x, ...f.y, ...f.z];
  if (!all.every(Number.isFinite)) return `has a frame that is not all numbers (${all.join(', ')})`;
  const skew = Math.max(...[dot(f.x, f.y), dot(f.y, f.z), dot(f.z, f.x)].map(Math.abs));
  const stretch = Math.max(...[f.x, f.y, f.z].map((a) => Math.abs(length(a) - 1)));
  if (skew > 1e-4 || stretch > 1e-4) return 'has a frame whose axes are not square to each other and of length 1';
  const z = unit(f.z);
  const x = unit(sub(f.x, scale(z, dot(f.x, z))));
  return { o: f.o, x, y: scale(cross(z, x), handed(f)), z };
}

function half(s: Extract<Shape, { kind: 'half' }>, at: Frame): Cutter | string {
  const l = length(s.normal);
  if (!(l > 0) || !Number.isFinite(l) || !Number.isFinite(s.off))
    return `is bounded by no plane (normal ${s.normal.join(', ')}, off ${s.off})`;
  const normal = clean(outDir(at, scale(s.normal, 1 / l)));
  return { kind: 'half', normal, off: quantise(s.off / l + dot(normal, at.o)) };
}
/** An axis that is one but for the last bit of a sine, as that axis. */
const clean = (n: Vec3): Vec3 => {
  const k = n.findIndex((c) => Math.abs(Math.abs(c) - 1) < 1e-12);
  return k < 0 ? n : [k === 0 ? Math.sign(n[0]) : 0, k === 1 ? Math.sign(n[1]) : 0, k === 2 ? Math.sign(n[2]) : 0];
};

function prism(s: Extract<Shape, { kind: 'prism' }>, at: Frame): Cutter | string {
  if (!Number.isFinite(s.from) || !Number.isFinite(s.to)) return `runs from ${s.from} to ${s.to}, which are not both numbers`;
  if (!(s.to - s.from > 1e-6)) return `has no depth: it runs from ${s.from} to ${s.to}`;
  const outline = outlineOf(s.profile);
  if (typeof outline === 'string') return outline;
  if (!s.profileTo) return { kind: 'prism', at, outline, to: null, from: s.from, end: s.to };
  const to = outlineOf(s.profileTo);
  if (typeof to === 'string') return `at its far end: ${to}`;
  const alike = to.length === outline.length && to.every((r, i) => r.points.length === outline[i]?.points.length);
  return alike ? { kind: 'prism', at, outline, to, from: s.from, end: s.to } : 'has profiles of different corners at its two ends';
}

function turnedShape(profile: Loop, at: Frame): Cutter | string {
  const outline = outlineOf([profile]);
  if (typeof outline === 'string') return outline;
  const least = Math.min(...(outline[0]?.points ?? []).map((p) => p[0]));
  return least < 0 ? `is turned with a radius below zero (${least})` : { kind: 'turned', at, outline };
}
