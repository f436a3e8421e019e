/** A reader of .glb files of its own, written from the glTF 2.0 specification and sharing nothing with the writer. */
import { type Vec3, cross, dot, sub } from '../../src/geom/vec3.ts';

type Accessor = { bufferView: number; componentType: number; count: number; type: string; min?: number[]; max?: number[] };
export type Gltf = {
  asset: { version: string };
  scenes: { name?: string; nodes?: number[] }[];
  nodes?: { name: string; mesh: number; matrix: number[] }[];
  meshes?: { name: string; primitives: { attributes: { POSITION: number; NORMAL: number }; indices: number; material: number }[] }[];
  materials?: { name: string; pbrMetallicRoughness: { baseColorFactor: number[]; metallicFactor: number; roughnessFactor: number } }[];
  accessors?: Accessor[];
  bufferViews?: { byteOffset: number; byteLength: number }[];
};
/** A node in the world of the file: metres, y up. */
export type Solid = {
  readonly name: string;
  readonly material: string;
  readonly triangles: readonly (readonly [Vec3, Vec3, Vec3])[];
  /** Signed: negative when the faces look inwards. */
  readonly volume: number;
  /** Of the node's matrix; negative when it mirrors. */
  readonly determinant: number;
  /** Lowest agreement of a corner's normal with the normal of its triangle. */
  readonly agreement: number;
};

export function readGlb(bytes: Uint8Array): { json: Gltf; solids: readonly Solid[] } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const word = (at: number): number => view.getUint32(at, true);
  if (word(0) !== 0x46546c67 || word(4) !== 2 || word(8) !== bytes.length || word(16) !== 0x4e4f534a)
    throw new Error('not a .glb of version 2');
  const size = word(12);
  const json = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(20, 20 + size))) as Gltf;
  const bin = 20 + size + 8;
  const numbers = (index: number): number[] => {
    const a = json.accessors?.[index];
    const from = bin + (json.bufferViews?.[a?.bufferView ?? -1]?.byteOffset ?? Number.NaN);
    const each = a?.type === 'VEC3' ? 3 : 1;
    return Array.from({ length: (a?.count ?? 0) * each }, (_, i) =>
      a?.componentType === 5126 ? view.getFloat32(from + i * 4, true) : view.getUint32(from + i * 4, true),
    );
  };
  const solids = (json.scenes[0]?.nodes ?? []).map((n) => solidOf(json, n, numbers));
  return { json, solids };
}

function solidOf(json: Gltf, index: number, numbers: (accessor: number) => number[]): Solid {
  const node = json.nodes?.[index];
  const primitive = json.meshes?.[node?.mesh ?? -1]?.primitives[0];
  if (!node || !primitive) throw new Error(`node ${index} has no mesh`);
  const p = numbers(primitive.attributes.POSITION);
  const n = numbers(primitive.attributes.NORMAL);
  const m = node.matrix;
  const put = (list: number[], at: number, w: number): Vec3 =>
    [0, 1, 2].map((row) =>
      [0, 1, 2].reduce((sum, col) => sum + (m[col * 4 + row] ?? 0) * (list[at * 3 + col] ?? 0), w * (m[12 + row] ?? 0)),
    ) as unknown as Vec3;
  const indices = numbers(primitive.indices);
  const triangles: [Vec3, Vec3, Vec3][] = [];
  let agreement = 1;
  for (let i = 0; i < indices.length; i += 3) {
    const ids = indices.slice(i, i + 3);
    const t = ids.map((id) => put(p, id, 1)) as [Vec3, Vec3, Vec3];
    triangles.push(t);
    const flat = cross(sub(t[1], t[0]), sub(t[2], t[0]));
    const length = Math.hypot(...flat);
    // A sliver's own direction says nothing.
    if (length > 1e-9) for (const id of ids) agreement = Math.min(agreement, dot(flat, put(n, id, 0)) / length);
  }
  const column = (i: number): Vec3 => [m[i * 4] ?? 0, m[i * 4 + 1] ?? 0, m[i * 4 + 2] ?? 0];
  return {
    name: node.name,
    material: json.materials?.[primitive.material]?.name ?? '',
    triangles,
    volume: triangles.reduce((v, [a, b, c]) => v + dot(a, cross(b, c)) / 6, 0),
    determinant: dot(column(0), cross(column(1), column(2))),
    agreement,
  };
}
/** Low and high corner of all that stands in the file. */
export function boundsOf(solids: readonly Solid[]): { min: number[]; max: number[] } {
  const all = solids.flatMap((s) => s.triangles.flat());
  const each = (pick: (...n: number[]) => number): number[] =>
    [0, 1, 2].map((i) => all.reduce((m, v) => pick(m, v[i] ?? 0), all[0]?.[i] ?? 0));
  return { min: each(Math.min), max: each(Math.max) };
}
