/** What the client's page carries: the piece as plain records, its meshes as compact text. Read by web/client/data.ts. */
import type { Box } from '../geom/box.ts';
import type { Frame } from '../geom/frame.ts';
import type { Axis, Vec3 } from '../geom/vec3.ts';
import { base64 } from './base64.ts';
import { plainName } from './names.ts';

export type ClientPart = {
  readonly path: string;
  readonly label: string;
  readonly wood: string;
  readonly kind: 'wood' | 'other' | 'extra' | 'hardware';
  /** Of its mesh. */
  readonly key: string;
  /** Record frame seen from the world, mm; may be left-handed. */
  readonly frame: Frame;
  readonly stock: Box;
  readonly grain: Axis;
  readonly pieces: readonly Box[];
};
/** Positions float32, normals int16 of 32767, indices uint16 or, where `wide`, uint32; little-endian, base64. */
export type ClientMesh = {
  readonly key: string;
  readonly positions: string;
  readonly normals: string;
  readonly indices: string;
  readonly wide: boolean;
};
/** How it comes apart: steps in words, and offsets as in the order of assembly. */
export type ClientOrder = {
  readonly possible: boolean;
  readonly steps: readonly { readonly words: string }[];
  readonly stages: readonly { readonly name: string; readonly steps: readonly number[] }[];
  readonly apart: Readonly<Record<string, readonly { readonly step: number; readonly offset: Vec3 }[]>>;
};
export type ClientData = {
  readonly title: string;
  readonly units: 'mm' | 'in';
  readonly box: Box | null;
  readonly parts: readonly ClientPart[];
  readonly meshes: readonly ClientMesh[];
  readonly order: ClientOrder | null;
};
type Triangles = { readonly key: string; readonly positions: Float32Array; readonly normals: Float32Array; readonly indices: Uint32Array };
type Piece = { readonly title: string; readonly units: 'mm' | 'in'; readonly box: Box | null; readonly parts: readonly ClientPart[] };

/** Takes from each record no more than the page shows: no sizes of parts, no joints, no findings. */
export function clientData(piece: Piece, meshes: readonly Triangles[], order: ClientOrder | null): ClientData {
  const parts = piece.parts.map(({ path, label, wood, kind, key, frame, stock, grain, pieces }) => ({
    path,
    label: plainName(label),
    wood: plainName(wood),
    kind,
    key,
    frame,
    stock,
    grain,
    pieces,
  }));
  return {
    title: plainName(piece.title),
    units: piece.units,
    box: piece.box,
    parts,
    meshes: meshes.map(packMesh),
    order: order && packOrder(order),
  };
}
function packMesh(m: Triangles): ClientMesh {
  const wide = m.positions.length / 3 > 0xffff;
  return {
    key: m.key,
    positions: base64(m.positions),
    normals: base64(Int16Array.from(m.normals, (n) => Math.round(n * 32767))),
    indices: base64(wide ? m.indices : Uint16Array.from(m.indices)),
    wide,
  };
}
const packOrder = (o: ClientOrder): ClientOrder => ({
  possible: o.possible,
  steps: o.steps.map((s) => ({ words: plainName(s.words, 400) })),
  stages: o.stages.map((s) => ({ name: plainName(s.name), steps: s.steps })),
  apart: o.apart,
});
