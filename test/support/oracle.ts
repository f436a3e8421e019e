/**
 * A second reader of part records, on an exact boundary-representation library: arcs are arcs, nothing is cut into chords. It
 * shares no code with the first but the types, so that what both agree on is more than one mistake.
 */
import {
  type Shape3D,
  assembleWire,
  basicFaceExtrusion,
  loft,
  makeFace,
  makeLine,
  makeThreePointArc,
  measureArea,
  measureShapeVolumeProperties,
  measureVolume,
  revolution,
  setOC,
  Vector,
} from 'replicad';
import type { Frame } from '../../src/geom/frame.ts';
import type { Loop } from '../../src/geom/loop.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import type { Feature, PartRecord, Shape } from '../../src/model/record.ts';

let ready: Promise<void> | null = null;
/** Loads the exact library; about half a second, once. */
export function loadOracle(): Promise<void> {
  ready ??= import('replicad-opencascadejs').then(async ({ default: start }) => setOC(await start()));
  return ready;
}

export type Exact = { readonly volume: number; readonly area: number; readonly centre: Vec3 };
const WORLD: Frame = { o: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] };

/** Volume, area and centre of mass of a record, exact; mm, seen from outside `frame`. */
export function exact(record: PartRecord, frame: Frame = WORLD): Exact {
  const shape = built(record, frame);
  const { centerOfMass } = measureShapeVolumeProperties(shape);
  const volume = measureVolume(shape);
  return { volume, area: measureArea(shape), centre: volume === 0 ? [0, 0, 0] : centerOfMass };
}
/** What two placed records both claim: mm³ of it, and mm² round it. */
export function exactOverlap(a: PartRecord, fa: Frame, b: PartRecord, fb: Frame): { readonly volume: number; readonly area: number } {
  const shared = built(a, fa).intersect(built(b, fb));
  return { volume: measureVolume(shared), area: measureArea(shared) };
}

type Map3 = (p: Vec3) => Vec3;
const mapOf =
  (f: Frame): Map3 =>
  (p) =>
    [0, 1, 2].map((i) => (f.o[i] ?? 0) + p[0] * (f.x[i] ?? 0) + p[1] * (f.y[i] ?? 0) + p[2] * (f.z[i] ?? 0)) as unknown as Vec3;
/** Axes rounded to six places made square again: z kept, x turned into its plane, y on the side where it was. */
function square(f: Frame): Frame {
  const norm = (v: Vec3): Vec3 => v.map((c) => c / Math.hypot(...v)) as unknown as Vec3;
  const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
  const less = (a: Vec3, b: Vec3, k: number): Vec3 => [a[0] - k * b[0], a[1] - k * b[1], a[2] - k * b[2]];
  const z = norm(f.z);
  const x = norm(less(f.x, z, dot(f.x, z)));
  return { o: f.o, x, y: norm(less(less(f.y, z, dot(f.y, z)), x, dot(f.y, x))), z };
}

/** The record's solid, built where it stands: corners are mapped, so that a mirrored frame needs no mirror. */
function built(record: PartRecord, frame: Frame): Shape3D {
  const stand = mapOf(frame);
  const { min, max } = record.stock;
  const block: Loop = [{ at: [min[0], min[1]] }, { at: [max[0], min[1]] }, { at: [max[0], max[1]] }, { at: [min[0], max[1]] }];
  let solid = prismOf([block], min[2], max[2], stand);
  const reach = Math.hypot(...min, ...max) + Math.max(0, ...record.features.map((f) => reachOf(f)));
  const pick = (op: Feature['op']): Shape3D[] =>
    record.features.filter((f) => f.op === op).map((f) => solidOf(f.solid, f.at, stand, reach));
  for (const s of pick('shape')) solid = solid.cut(s) as Shape3D;
  for (const s of pick('add')) solid = solid.fuse(s) as Shape3D;
  for (const s of pick('remove')) solid = solid.cut(s) as Shape3D;
  for (const s of pick('late')) solid = solid.cut(s) as Shape3D;
  return solid;
}
function reachOf({ solid: s, at }: Feature): number {
  if (s.kind === 'half') return 0;
  const loops = s.kind === 'prism' ? [...s.profile, ...(s.profileTo ?? [])] : [s.profile];
  const ends = s.kind === 'prism' ? [s.from, s.to] : [0];
  return (
    Math.hypot(...at.o) + Math.max(...loops.flat().flatMap((c) => [...c.at, ...(c.via ?? [])].map(Math.abs)), ...ends.map(Math.abs)) * 2
  );
}
function solidOf(s: Shape, at: Frame, stand: Map3, reach: number): Shape3D {
  const inner = mapOf(square(at));
  const map: Map3 = (p) => stand(inner(p));
  if (s.kind === 'half') return halfOf(s.normal, s.off, reach, map);
  if (s.kind === 'prism' && s.profileTo) {
    const [near, far] = [s.profile, s.profileTo].map((p, i) => wireOf(p[0] as Loop, (x, y) => map([x, y, i === 0 ? s.from : s.to])));
    return loft([near as ReturnType<typeof wireOf>, far as ReturnType<typeof wireOf>], { ruled: true });
  }
  if (s.kind === 'prism') return prismOf(s.profile, s.from, s.to, map);
  const [centre, tip] = [map([0, 0, 0]), map([0, 0, 1])];
  const face = makeFace(wireOf(s.profile, (r, h) => map([r, 0, h])));
  return revolution(face, [...centre], [tip[0] - centre[0], tip[1] - centre[1], tip[2] - centre[2]], 360);
}
/** Holes are cut from the full prism: the library is particular about which way round a hole in a face runs. */
function prismOf(profile: readonly Loop[], from: number, to: number, map: Map3): Shape3D {
  const [a, b] = [map([0, 0, from]), map([0, 0, to])];
  const full = profile.map((loop): Shape3D => {
    const face = makeFace(wireOf(loop, (x, y) => map([x, y, from])));
    return basicFaceExtrusion(face, new Vector([b[0] - a[0], b[1] - a[1], b[2] - a[2]]));
  });
  return full.reduce((outer, hole) => outer.cut(hole) as Shape3D);
}
/** A box on the plane, so large that it holds all that the record can. */
function halfOf(normal: Vec3, off: number, reach: number, map: Map3): Shape3D {
  const l = Math.hypot(...normal);
  const z = normal.map((c) => c / l) as unknown as Vec3;
  const side: Vec3 = Math.abs(z[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0];
  const x: Vec3 = [side[1] * z[2] - side[2] * z[1], side[2] * z[0] - side[0] * z[2], side[0] * z[1] - side[1] * z[0]];
  const f = square({
    o: [z[0] * (off / l), z[1] * (off / l), z[2] * (off / l)],
    x,
    y: [z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2], z[0] * x[1] - z[1] * x[0]],
    z,
  });
  const big = 4 * reach + 2 * Math.abs(off / l) + 100;
  const plate: Loop = [{ at: [-big, -big] }, { at: [big, -big] }, { at: [big, big] }, { at: [-big, big] }];
  const inner = mapOf(f);
  return prismOf([plate], 0, big, (p) => map(inner(p)));
}
function wireOf(loop: Loop, map: (x: number, y: number) => Vec3): ReturnType<typeof assembleWire> {
  return assembleWire(
    loop.map((c, i) => {
      const next = loop[(i + 1) % loop.length] ?? c;
      const [a, b] = [[...map(...c.at)] as [number, number, number], [...map(...next.at)] as [number, number, number]];
      return c.via ? makeThreePointArc(a, [...map(...c.via)] as [number, number, number], b) : makeLine(a, b);
    }),
  );
}
