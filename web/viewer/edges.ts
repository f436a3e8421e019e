/** Edges of a mesh with the normals of both their faces, so that creases and outlines can be told apart while drawing. */
import type { MeshView } from '../../src/piece/view.ts';

export type Edges = {
  /** xyz of both ends. */
  readonly a: Float32Array;
  readonly b: Float32Array;
  /** Normals of the two faces that meet there. */
  readonly n1: Float32Array;
  readonly n2: Float32Array;
  /** 1 for a crease, 0 where a round face goes on and only an outline can show. */
  readonly crease: Float32Array;
  readonly count: number;
};
const COS_CREASE = Math.cos((20 * Math.PI) / 180);
/** Below this two faces are one plane: nothing to see there from anywhere, cosine of half a degree. */
const COS_FLAT = Math.cos((0.5 * Math.PI) / 180);

export function edgesOf(mesh: MeshView): Edges {
  const ids = weld(mesh.positions);
  const n = mesh.indices.length / 3;
  const normals = faceNormals(mesh);
  const half = new Map<number, number>();
  const found: number[] = [];
  const points = mesh.positions.length / 3;
  for (let t = 0; t < n; t++)
    for (let c = 0; c < 3; c++) {
      const i = ids[mesh.indices[t * 3 + c] ?? 0] ?? 0;
      const j = ids[mesh.indices[t * 3 + ((c + 1) % 3)] ?? 0] ?? 0;
      const other = half.get(j * points + i);
      if (other === undefined) half.set(i * points + j, t);
      else found.push(i, j, other, t);
    }
  const keep: number[] = [];
  for (let k = 0; k < found.length; k += 4) {
    const [f, g] = [found[k + 2] ?? 0, found[k + 3] ?? 0];
    const cos = dot3(normals, f, normals, g);
    if (cos < COS_FLAT) keep.push(k, cos < COS_CREASE ? 1 : 0);
  }
  const count = keep.length / 2;
  const out = {
    a: new Float32Array(count * 3),
    b: new Float32Array(count * 3),
    n1: new Float32Array(count * 3),
    n2: new Float32Array(count * 3),
    crease: new Float32Array(count),
    count,
  };
  for (let e = 0; e < count; e++) {
    const k = keep[e * 2] ?? 0;
    copy3(out.a, e, mesh.positions, found[k] ?? 0);
    copy3(out.b, e, mesh.positions, found[k + 1] ?? 0);
    copy3(out.n1, e, normals, found[k + 2] ?? 0);
    copy3(out.n2, e, normals, found[k + 3] ?? 0);
    out.crease[e] = keep[e * 2 + 1] ?? 0;
  }
  return out;
}
/** For each corner the first corner that stands in the same place. */
function weld(p: Float32Array): Uint32Array {
  const n = p.length / 3;
  const ids = new Uint32Array(n);
  const seen = new Map<string, number>();
  for (let i = 0; i < n; i++) {
    const key = `${Math.round((p[i * 3] ?? 0) * 2000)},${Math.round((p[i * 3 + 1] ?? 0) * 2000)},${Math.round((p[i * 3 + 2] ?? 0) * 2000)}`;
    const first = seen.get(key);
    if (first === undefined) seen.set(key, i);
    ids[i] = first ?? i;
  }
  return ids;
}
function faceNormals(mesh: MeshView): Float32Array {
  const n = mesh.indices.length / 3;
  const out = new Float32Array(n * 3);
  const p = mesh.positions;
  for (let t = 0; t < n; t++) {
    const [i, j, k] = [0, 1, 2].map((c) => (mesh.indices[t * 3 + c] ?? 0) * 3) as [number, number, number];
    const at = (v: number, c: number): number => p[v + c] ?? 0;
    const u = [at(j, 0) - at(i, 0), at(j, 1) - at(i, 1), at(j, 2) - at(i, 2)] as const;
    const v = [at(k, 0) - at(i, 0), at(k, 1) - at(i, 1), at(k, 2) - at(i, 2)] as const;
    const x = u[1] * v[2] - u[2] * v[1];
    const y = u[2] * v[0] - u[0] * v[2];
    const z = u[0] * v[1] - u[1] * v[0];
    const l = Math.hypot(x, y, z) || 1;
    out.set([x / l, y / l, z / l], t * 3);
  }
  return out;
}
const dot3 = (a: Float32Array, i: number, b: Float32Array, j: number): number =>
  (a[i * 3] ?? 0) * (b[j * 3] ?? 0) + (a[i * 3 + 1] ?? 0) * (b[j * 3 + 1] ?? 0) + (a[i * 3 + 2] ?? 0) * (b[j * 3 + 2] ?? 0);
function copy3(to: Float32Array, i: number, from: Float32Array, j: number): void {
  to[i * 3] = from[j * 3] ?? 0;
  to[i * 3 + 1] = from[j * 3 + 1] ?? 0;
  to[i * 3 + 2] = from[j * 3 + 2] ?? 0;
}
