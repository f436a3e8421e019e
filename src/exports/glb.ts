/** The piece as binary glTF 2.0 (Khronos specification): metres, +y up, one mesh a distinct part, mirrored parts with turned triangles. */
import { strToU8 } from 'fflate';
import { type Frame, handed, outDir, outPoint } from '../geom/frame.ts';
import type { Vec3 } from '../geom/vec3.ts';

export type GlbMesh = { readonly key: string; readonly positions: Float32Array; readonly normals: Float32Array; readonly indices: Uint32Array };
export type GlbPart = { readonly name: string; readonly key: string; readonly frame: Frame; readonly material: string };
/** Linear colour 0…1 and roughness. */
export type GlbMaterial = { readonly colour: readonly [number, number, number]; readonly rough: number };

const FLOAT = 5126;
const UINT = 5125;
const ARRAY = 34962;
const ELEMENT = 34963;

/** Bytes of a .glb file. Lengths in mm become metres. Parts whose mesh is missing are left out; no parts give a valid empty scene. */
export function glb(title: string, parts: readonly GlbPart[], meshes: ReadonlyMap<string, GlbMesh>, materials: ReadonlyMap<string, GlbMaterial>): Uint8Array<ArrayBuffer> {
  const bin: Uint8Array[] = [];
  let length = 0;
  const views: object[] = [];
  const accessors: object[] = [];
  const put = (data: Float32Array | Uint32Array, target: number): number => {
    const bytes = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
    views.push({ buffer: 0, byteOffset: length, byteLength: bytes.length, target });
    bin.push(bytes);
    length += bytes.length;
    return views.length - 1;
  };
  const names = [...materials.keys()].filter((m) => parts.some((p) => p.material === m));
  const gltfMeshes: object[] = [];
  const made = new Map<string, number>();
  const geometry = new Map<string, object>();
  const meshOf = (p: GlbPart): number | null => {
    const mesh = meshes.get(p.key);
    if (!mesh || mesh.indices.length === 0) return null;
    const hand = handed(p.frame);
    const id = `${p.key} ${hand} ${p.material}`;
    const known = made.get(id);
    if (known !== undefined) return known;
    const shape = `${p.key} ${hand}`;
    const attributes = geometry.get(shape) ?? writeGeometry(mesh, hand, put, accessors);
    geometry.set(shape, attributes);
    gltfMeshes.push({ name: p.name, primitives: [{ ...attributes, material: names.indexOf(p.material) }] });
    made.set(id, gltfMeshes.length - 1);
    return gltfMeshes.length - 1;
  };
  const nodes = parts.flatMap((p) => {
    const mesh = meshOf(p);
    return mesh === null ? [] : [{ name: p.name, mesh, matrix: matrixOf(p.frame) }];
  });
  const json = {
    asset: { version: '2.0', generator: 'Dryfit' },
    scene: 0,
    scenes: [{ name: title, ...(nodes.length ? { nodes: nodes.map((_, i) => i) } : {}) }],
    ...(nodes.length
      ? {
          nodes,
          meshes: gltfMeshes,
          accessors,
          bufferViews: views,
          buffers: [{ byteLength: length }],
          materials: names.map((name) => {
            const m = materials.get(name) as GlbMaterial;
            return { name, pbrMetallicRoughness: { baseColorFactor: [...m.colour, 1], metallicFactor: 0, roughnessFactor: m.rough } };
          }),
        }
      : {}),
  };
  return container(json, bin, length);
}

/** Our +z up and +y back become +y up and -z back. */
const upright = (v: Vec3): Vec3 => [v[0], v[2], -v[1]];

/** A mirrored part's mesh is turned inside its own frame (x → -x) and its triangles with it, so that no node has a negative scale. */
function writeGeometry(mesh: GlbMesh, hand: 1 | -1, put: (d: Float32Array | Uint32Array, target: number) => number, accessors: object[]): object {
  const flip = (source: Float32Array, k: number): Float32Array => source.map((n, i) => n * k * (hand < 0 && i % 3 === 0 ? -1 : 1));
  const positions = flip(mesh.positions, 1e-3);
  const normals = flip(mesh.normals, 1);
  const indices = mesh.indices.slice();
  if (hand < 0)
    for (let i = 0; i < indices.length; i += 3) [indices[i + 1], indices[i + 2]] = [indices[i + 2] ?? 0, indices[i + 1] ?? 0];
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  positions.forEach((n, i) => {
    min[i % 3] = Math.min(min[i % 3] ?? n, n);
    max[i % 3] = Math.max(max[i % 3] ?? n, n);
  });
  const accessor = (a: object): number => accessors.push(a) - 1;
  const count = positions.length / 3;
  return {
    attributes: {
      POSITION: accessor({ bufferView: put(positions, ARRAY), componentType: FLOAT, count, type: 'VEC3', min, max }),
      NORMAL: accessor({ bufferView: put(normals, ARRAY), componentType: FLOAT, count, type: 'VEC3' }),
    },
    indices: accessor({ bufferView: put(indices, ELEMENT), componentType: UINT, count: indices.length, type: 'SCALAR' }),
  };
}
/** Column-major matrix in metres, always a proper turn. */
function matrixOf(f: Frame): number[] {
  const x = handed(f) < 0 ? outDir(f, [-1, 0, 0]) : f.x;
  const col = (v: Vec3, w: number): number[] => [...upright(v).map((n) => (n === 0 ? 0 : n)), w];
  const o = outPoint(f, [0, 0, 0]);
  return [...col(x, 0), ...col(f.y, 0), ...col(f.z, 0), ...col([o[0] / 1000, o[1] / 1000, o[2] / 1000], 1)];
}

function container(json: object, bin: readonly Uint8Array[], length: number): Uint8Array<ArrayBuffer> {
  const text = strToU8(JSON.stringify(json));
  const jsonSize = Math.ceil(text.length / 4) * 4;
  const binSize = Math.ceil(length / 4) * 4;
  const total = 12 + 8 + jsonSize + (length ? 8 + binSize : 0);
  const out = new Uint8Array(new ArrayBuffer(total)).fill(0x20, 20, 20 + jsonSize);
  const view = new DataView(out.buffer);
  view.setUint32(0, 0x46546c67, true);
  view.setUint32(4, 2, true);
  view.setUint32(8, total, true);
  view.setUint32(12, jsonSize, true);
  view.setUint32(16, 0x4e4f534a, true);
  out.set(text, 20);
  if (!length) return out;
  let at = 20 + jsonSize;
  view.setUint32(at, binSize, true);
  view.setUint32(at + 4, 0x004e4942, true);
  at += 8;
  for (const b of bin) {
    out.set(b, at);
    at += b.length;
  }
  return out;
}
