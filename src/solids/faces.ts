/** Each triangle of a solid with the face it lies on, by name. */
import { type Vec3, cross, dot, length, sub } from '../geom/vec3.ts';
import type { FaceRef } from '../model/record.ts';
import { cornersAt } from './measure.ts';
import { type Reading, readSolid } from './read.ts';
import { type Face, type Skin, type Triangle, featureSkin, stockSkin, triangleNormal } from './skin.ts';
import type { Solid } from './solid.ts';

/** The triangles of a solid with, for each, its face. */
export type Faced = {
  readonly reading: Reading;
  readonly faces: readonly { readonly name: string; readonly face: Face }[];
  readonly triangleFace: Uint16Array<ArrayBuffer>;
};

/** Names each triangle's face: 'stock.left', 'mortise.cheek left', 'tenon.side3', 'taper.plane'. */
export function facesOf(solid: Solid): Faced {
  const reading = readSolid(solid);
  const prefix = prefixes(solid);
  const faces: { name: string; face: Face }[] = [];
  const triangleFace = new Uint16Array(reading.triangles.length / 3);
  const known = new Map<number | 'stock', Known>();
  for (const run of reading.runs) {
    const maker = solid.makers.get(run.original);
    if (maker === undefined) throw new Error(`${solid.who}: a face came from no feature (${run.original})`);
    const k = known.get(maker) ?? { skin: skinOf(solid, maker), bySide: new Map(), byFace: new Map() };
    known.set(maker, k);
    for (let t = run.start; t < run.end; t++) {
      const local = localFace(reading, t, k);
      let global = k.byFace.get(local);
      if (global === undefined) {
        const face = k.skin.faces[local] as Face;
        global = faces.push({ name: nameOf(solid, maker, prefix, face), face }) - 1;
        k.byFace.set(local, global);
      }
      triangleFace[t] = global;
    }
  }
  return { reading, faces, triangleFace };
}
/** What is known so far of one feature's faces. */
type Known = { readonly skin: Skin; readonly bySide: Map<number, number>; readonly byFace: Map<number, number> };
function localFace(reading: Reading, t: number, { skin, bySide }: Known): number {
  const side = reading.sides[t] ?? -1;
  const before = skin.distinct ? bySide.get(side) : undefined;
  if (before !== undefined) return before;
  const triangle = cornersAt(reading, t);
  const found = skin.find(triangle);
  // A sliver is a poor witness for its plane.
  if (!isSliver(triangle)) bySide.set(side, found);
  return found;
}
function isSliver([a, b, c]: Triangle): boolean {
  const [u, v] = [sub(b, a), sub(c, a)];
  return length(cross(u, v)) < 1e-3 * Math.max(dot(u, u), dot(v, v));
}
function skinOf(solid: Solid, maker: number | 'stock'): Skin {
  if (maker === 'stock') return stockSkin(solid.record.stock);
  const feature = solid.record.features[maker];
  const cutter = solid.cutters[maker];
  if (!feature || !cutter) throw new Error(`${solid.who}: there is no feature ${maker}`);
  return featureSkin(feature, cutter);
}
/** Names of features are unique within a joint only: the second of a name on one part is 'mortise#2'. */
function prefixes(solid: Solid): string[] {
  const seen = new Map<string, number>();
  return solid.record.features.map(({ name }) => {
    const n = (seen.get(name) ?? 0) + 1;
    seen.set(name, n);
    return n === 1 ? name : `${name}#${n}`;
  });
}
function nameOf(solid: Solid, maker: number | 'stock', prefix: readonly string[], { ref }: Face): string {
  if (ref.of === 'stock') return `stock.${ref.name}`;
  const feature = maker === 'stock' ? undefined : solid.record.features[maker];
  const named = feature && Object.keys(feature.faces).find((word) => sameRef(feature.faces[word] as FaceRef, ref));
  return `${maker === 'stock' ? 'stock' : prefix[maker]}.${named ?? plainName(ref)}`;
}
function sameRef(a: FaceRef, b: FaceRef): boolean {
  if (a.of !== 'side' || b.of !== 'side') return a.of === b.of;
  return a.corner === b.corner && (a.loop ?? 0) === (b.loop ?? 0);
}
function plainName(ref: FaceRef): string {
  if (ref.of !== 'side') return ref.of;
  return ref.loop ? `hole${ref.loop} side${ref.corner}` : `side${ref.corner}`;
}

/** The normal of a face at a corner of one of its triangles. */
export function normalOf(face: Face, at: Vec3, triangle: Triangle): Vec3 {
  if (face.form === 'flat') return face.normal;
  const own = triangleNormal(triangle);
  const round = face.form === 'round' ? face.normalAt(at) : null;
  return round && dot(round, own) > 0 ? round : own;
}
