/** The record that the page carries, unpacked into what the stage draws. */
import type { ClientData, ClientMesh } from '../../src/exports/client-data.ts';
import { woodWords } from '../../src/wood/woods.ts';
import type { MeshView, OrderView, PieceView } from '../../src/piece/view.ts';

export type Shown = {
  readonly piece: PieceView;
  readonly meshes: ReadonlyMap<string, MeshView>;
  readonly order: OrderView | null;
};

export function unpack(data: ClientData): Shown {
  const parts = data.parts.map((p) => ({ ...p, letter: '', group: null, finished: { length: 0, width: 0, thickness: 0 } }));
  const order = data.order && {
    ...data.order,
    steps: data.order.steps.map((s) => ({ words: s.words, move: [], along: [0, 0, 0] as const, distance: 0 })),
  };
  return {
    piece: { rev: '', title: data.title, units: data.units, box: data.box, parts, joints: [], sizes: [] },
    meshes: new Map(data.meshes.map((m) => [m.key, meshOf(m)])),
    order,
  };
}
/** What the drawing of a piece shows, for who hears it: 'Hall bench, ash'. */
export const spoken = (data: ClientData): string => [data.title, ...new Set(data.parts.map((p) => woodWords(p.wood)))].join(', ');

function meshOf(m: ClientMesh): MeshView {
  const indices = bytesOf(m.indices);
  return {
    key: m.key,
    positions: new Float32Array(bytesOf(m.positions)),
    normals: Float32Array.from(new Int16Array(bytesOf(m.normals)), (n) => n / 32767),
    indices: m.wide ? new Uint32Array(indices) : Uint32Array.from(new Uint16Array(indices)),
    triangleFace: new Uint16Array(),
    faces: [],
    edges: new Float32Array(),
    volume: 0,
    area: 0,
    centre: [0, 0, 0],
  };
}
function bytesOf(text: string): ArrayBuffer {
  const chars = atob(text);
  const bytes = new Uint8Array(chars.length);
  for (let i = 0; i < chars.length; i++) bytes[i] = chars.charCodeAt(i);
  return bytes.buffer;
}
