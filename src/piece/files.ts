/** Files made of the whole piece: the client's page, the exchange file, the cut list. */
import type { Built } from '../build/build.ts';
import type { Store } from '../build/store.ts';
import { type ClientOrder, clientData } from '../exports/client-data.ts';
import { clientPage } from '../exports/client-page.ts';
import { cutListCsv } from '../exports/cut-list.ts';
import { glb } from '../exports/glb.ts';
import { materialOf } from '../exports/materials.ts';
import { asPlaced } from '../fits/check.ts';
import { type Box, boxAround, unionBox } from '../geom/box.ts';
import { type Frame, outPoint } from '../geom/frame.ts';
import type { Vec3 } from '../geom/vec3.ts';
import type { Document } from '../model/document.ts';
import type { PartMesh } from '../solids/mesh.ts';
import { describePiece } from './describe.ts';
import { cutRows } from './list.ts';

/** Everything that has a solid, with its mesh; each mesh once by key. */
function meshesOf(built: Built, store: Store): ReadonlyMap<string, PartMesh> {
  const meshes = new Map<string, PartMesh>();
  for (const p of [...built.built.parts.values(), ...built.built.extras.values()]) {
    if (meshes.has(p.record.key)) continue;
    const mesh = store.mesh(asPlaced(p));
    if (mesh) meshes.set(p.record.key, mesh);
  }
  return meshes;
}
/** .glb bytes, metres. */
export function glbOf(doc: Document, built: Built, store: Store): Uint8Array<ArrayBuffer> {
  const b = built.built;
  const parts = [
    ...[...b.parts.values()].map((p) => ({ name: p.words, key: p.record.key, frame: p.frame, material: p.wood })),
    ...[...b.extras.values()].map((e) => ({ name: e.words, key: e.record.key, frame: e.frame, material: e.record.wood })),
  ];
  return glb(doc.title, parts, meshesOf(built, store), new Map(parts.map((p) => [p.material, materialOf(p.material)])));
}
/** The client's page; `viewer` is the text of dist/client.js, and without an order it does not come apart. */
export function clientPageOf(doc: Document, built: Built, store: Store, order: ClientOrder | null, viewer: string): string {
  const meshes = meshesOf(built, store);
  const piece = describePiece(doc, built);
  const there = piece.parts.filter((p) => meshes.has(p.key));
  const box = there
    .map((p) => boxOf(meshes.get(p.key) as PartMesh, p.frame))
    .reduce<Box | null>((a, c) => (a && c ? unionBox(a, c) : (a ?? c)), null);
  return clientPage(clientData({ ...piece, box, parts: there }, [...meshes.values()], order), cutRows(doc, built), viewer);
}
/** As a spreadsheet reads it. */
export const cutListOf = (doc: Document, built: Built): string =>
  cutListCsv(cutRows(doc, built), doc.units, doc.units === 'in' ? { system: 'in', denominator: 64 } : { system: 'mm', decimals: 1 });

/** As cut and placed: of leaning and turned parts smaller than the box of their blanks. */
const boxOf = (mesh: PartMesh, frame: Frame): Box | null => boxAround(cornersOf(mesh, frame));
function* cornersOf(mesh: PartMesh, frame: Frame): Generator<Vec3> {
  const p = mesh.positions;
  for (let i = 0; i < p.length; i += 3) yield outPoint(frame, [p[i] ?? 0, p[i + 1] ?? 0, p[i + 2] ?? 0]);
}
