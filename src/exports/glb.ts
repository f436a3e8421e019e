/** The piece as binary glTF 2.0 (Khronos specification): metres, +y up, one mesh a distinct part, mirrored parts with turned triangles. */
import { strToU8 } from 'fflate';
import { type Frame, handed, outDir } from '../geom/frame.ts';
import type { Vec3 } from '../geom/vec3.ts';
import type { Material } from './materials.ts';
import { plainName } from './names.ts';

/** mm, in the record frame; `normals` of unit length. */
export type GlbMesh = { readonly positions: Float32Array; readonly normals: Float32Array; readonly indices: Uint32Array };
/** `key` names its mesh, `material` its surface; `frame` is its place in the world, mm, and may be left-handed. */
export type GlbPart = { readonly name: string; readonly key: string; readonly frame: Frame; readonly material: string };

const FLOAT = 5126;
const UINT = 5125;
const ARRAY = 34962;
const ELEMENT = 34963;

/** What is gathered for the JSON chunk, and the bytes of the binary chunk. */
type Draft = {
  readonly views: object[];
  readonly accessors: object[];
  readonly meshes: object[];
  readonly bytes: Uint8Array[];
  length: number;
};

/**
 * The bytes of a .glb file. Lengths in mm become metres. A part whose mesh is missing or empty is left out; no parts give a valid
 * empty scene. A material that is not listed throws.
 */
export function glb(
  title: string,
  parts: readonly GlbPart[],
  meshes: ReadonlyMap<string, GlbMesh>,
  materials: ReadonlyMap<string, Material>,
): Uint8Array<ArrayBuffer> {
  const there = parts.filter((p) => (meshes.get(p.key)?.indices.length ?? 0) > 0);
  const used = [...new Set(there.map((p) => p.material))];
  const draft: Draft = { views: [], accessors: [], meshes: [], bytes: [], length: 0 };
  const meshOf = meshWriter(draft, meshes, used);
  const nodes = there.map((p) => ({ name: plainName(p.name), mesh: meshOf(p), matrix: matrixOf(p.frame) }));
  const content = {
    nodes,
    meshes: draft.meshes,
    materials: used.map((name) => materialRecord(name, materials)),
    accessors: draft.accessors,
    bufferViews: draft.views,
    buffers: [{ byteLength: draft.length }],
  };
  const json = {
    asset: { version: '2.0', generator: 'Dryfit' },
    scene: 0,
    scenes: [{ name: plainName(title), ...(nodes.length ? { nodes: nodes.map((_, i) => i) } : {}) }],
    ...(nodes.length ? content : {}),
  };
  return container(json, draft);
}

function materialRecord(name: string, materials: ReadonlyMap<string, Material>): object {
  const m = materials.get(name);
  if (!m) throw new Error(`The material '${name}' is not listed.`);
  const factors = { baseColorFactor: [...m.colour.map(six), 1], metallicFactor: m.metal, roughnessFactor: m.rough };
  return { name: plainName(name), pbrMetallicRoughness: factors };
}
const six = (n: number): number => Math.round(n * 1e6) / 1e6;

/** One glTF mesh for each geometry, hand and material; its numbers are written once for each geometry and hand. */
function meshWriter(draft: Draft, meshes: ReadonlyMap<string, GlbMesh>, materials: readonly string[]): (p: GlbPart) => number {
  const made = new Map<string, number>();
  const geometry = new Map<string, object>();
  return (p) => {
    const hand = handed(p.frame);
    const shape = `${hand} ${p.key}`;
    const id = `${materials.indexOf(p.material)} ${shape}`;
    const known = made.get(id);
    if (known !== undefined) return known;
    const attributes = geometry.get(shape) ?? writeGeometry(meshes.get(p.key) as GlbMesh, hand, draft);
    geometry.set(shape, attributes);
    draft.meshes.push({ name: plainName(p.name), primitives: [{ ...attributes, material: materials.indexOf(p.material) }] });
    made.set(id, draft.meshes.length - 1);
    return draft.meshes.length - 1;
  };
}

/** A mirrored part's mesh is turned inside its own frame (x to -x) and its triangles with it, so that no node has a negative scale. */
function writeGeometry(mesh: GlbMesh, hand: 1 | -1, draft: Draft): object {
  const scaled = (source: Float32Array, k: number): Float32Array => source.map((n, i) => n * k * (hand < 0 && i % 3 === 0 ? -1 : 1));
  const positions = scaled(mesh.positions, 1e-3);
  const normals = scaled(mesh.normals, 1);
  const indices = mesh.indices.slice();
  if (hand < 0) for (let i = 0; i < indices.length; i += 3) [indices[i + 1], indices[i + 2]] = [indices[i + 2] ?? 0, indices[i + 1] ?? 0];
  const accessor = (a: object): number => draft.accessors.push(a) - 1;
  const count = positions.length / 3;
  return {
    attributes: {
      POSITION: accessor({ bufferView: put(draft, positions, ARRAY), componentType: FLOAT, count, type: 'VEC3', ...bounds(positions) }),
      NORMAL: accessor({ bufferView: put(draft, normals, ARRAY), componentType: FLOAT, count, type: 'VEC3' }),
    },
    indices: accessor({ bufferView: put(draft, indices, ELEMENT), componentType: UINT, count: indices.length, type: 'SCALAR' }),
  };
}
function put(draft: Draft, data: Float32Array | Uint32Array, target: number): number {
  const bytes = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
  draft.bytes.push(bytes);
  draft.views.push({ buffer: 0, byteOffset: draft.length, byteLength: bytes.length, target });
  draft.length += bytes.length;
  return draft.views.length - 1;
}
function bounds(positions: Float32Array): { min: number[]; max: number[] } {
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  positions.forEach((n, i) => {
    min[i % 3] = Math.min(min[i % 3] ?? n, n);
    max[i % 3] = Math.max(max[i % 3] ?? n, n);
  });
  return { min, max };
}

/** Our +z up and +y back become +y up and -z back. */
const upright = (v: Vec3): number[] => [v[0], v[2], -v[1]].map((n) => (n === 0 ? 0 : n));
/** Column-major, metres, always a proper turn. */
function matrixOf(f: Frame): number[] {
  const x = handed(f) < 0 ? outDir(f, [-1, 0, 0]) : f.x;
  const o: Vec3 = [f.o[0] / 1000, f.o[1] / 1000, f.o[2] / 1000];
  return [...upright(x), 0, ...upright(f.y), 0, ...upright(f.z), 0, ...upright(o), 1];
}

/** Header, JSON chunk padded with blanks, binary chunk (glTF 2.0, section 4.4). */
function container(json: object, draft: Draft): Uint8Array<ArrayBuffer> {
  const text = strToU8(JSON.stringify(json));
  const jsonSize = Math.ceil(text.length / 4) * 4;
  const total = 12 + 8 + jsonSize + (draft.length ? 8 + draft.length : 0);
  const out = new Uint8Array(new ArrayBuffer(total));
  const view = new DataView(out.buffer);
  [0x46546c67, 2, total, jsonSize, 0x4e4f534a].forEach((n, i) => view.setUint32(i * 4, n, true));
  out.fill(0x20, 20, 20 + jsonSize);
  out.set(text, 20);
  if (draft.length === 0) return out;
  let at = 20 + jsonSize;
  view.setUint32(at, draft.length, true);
  view.setUint32(at + 4, 0x004e4942, true);
  at += 8;
  for (const bytes of draft.bytes) {
    out.set(bytes, at);
    at += bytes.length;
  }
  return out;
}
