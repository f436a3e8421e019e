/** The parts as things to draw: one geometry a mesh key, one fill and one line object a part, freed when no part needs them. */
import { Box3, BufferAttribute, BufferGeometry, Group, Matrix4, Mesh, type InstancedBufferGeometry, type ShaderMaterial } from 'three';
import type { Box } from '../../src/geom/box.ts';
import type { Frame } from '../../src/geom/frame.ts';
import type { MeshView, PartView } from '../../src/piece/view.ts';
import { edgesOf } from './edges.ts';
import { lineGeometry, lineMaterial } from './lineShader.ts';
import { describeWood } from './logs.ts';
import { type Shared, woodMaterial } from './woodShader.ts';

/** Layers of the scene: fills throw the shadow and are picked, lines lie on them. */
export const FILL = 0;
export const LINE = 1;
export const GROUND = 2;
export const CUT = 3;
/** What is chosen is drawn once more in front of the rest. */
export const FRONT_FILL = 4;
export const FRONT_LINE = 5;

export type Thing = {
  part: PartView;
  mesh: MeshView;
  frame: Frame;
  readonly fill: Mesh<BufferGeometry, ShaderMaterial>;
  readonly line: Mesh<InstancedBufferGeometry, ShaderMaterial>;
};
type Shape = { readonly fill: BufferGeometry; readonly line: InstancedBufferGeometry; uses: number };
export type Parts = {
  readonly group: Group;
  readonly things: ReadonlyMap<string, Thing>;
  readonly set: (parts: readonly PartView[], meshes: ReadonlyMap<string, MeshView>) => void;
  readonly dispose: () => void;
};

export function makeParts(shared: Shared): Parts {
  const group = new Group();
  const things = new Map<string, Thing>();
  const shapes = new Map<string, Shape>();
  const shapeOf = (mesh: MeshView): Shape => {
    const had = shapes.get(mesh.key);
    if (had) return had;
    const fill = new BufferGeometry();
    fill.setAttribute('position', new BufferAttribute(mesh.positions, 3));
    fill.setAttribute('normal', new BufferAttribute(mesh.normals, 3));
    fill.setIndex(new BufferAttribute(mesh.indices, 1));
    const made = { fill, line: lineGeometry(edgesOf(mesh)), uses: 0 };
    shapes.set(mesh.key, made);
    return made;
  };
  const letGo = (key: string): void => {
    const shape = shapes.get(key);
    if (!shape || --shape.uses > 0) return;
    shape.fill.dispose();
    shape.line.dispose();
    shapes.delete(key);
  };
  const remove = (path: string, t: Thing): void => {
    group.remove(t.fill, t.line);
    t.fill.material.dispose();
    t.line.material.dispose();
    letGo(t.mesh.key);
    things.delete(path);
  };
  const make = (part: PartView, mesh: MeshView): Thing => {
    const shape = shapeOf(mesh);
    shape.uses++;
    const fill = new Mesh(shape.fill, woodMaterial(shared));
    const line = new Mesh(shape.line, lineMaterial(shared));
    for (const o of [fill, line]) {
      o.matrixAutoUpdate = false;
      o.frustumCulled = false;
    }
    fill.layers.set(FILL);
    line.layers.set(LINE);
    line.renderOrder = 5;
    describeWood(fill.material, part);
    group.add(fill, line);
    return { part, mesh, frame: part.frame, fill, line };
  };
  return {
    group,
    things,
    set(parts, meshes) {
      const kept = new Set(parts.map((p) => p.path));
      for (const [path, t] of things) if (!kept.has(path)) remove(path, t);
      for (const part of parts) {
        const mesh = meshes.get(part.key);
        if (!mesh) continue;
        const t = things.get(part.path);
        if (!t) {
          things.set(part.path, make(part, mesh));
          continue;
        }
        if (t.mesh.key !== mesh.key) {
          const shape = shapeOf(mesh);
          shape.uses++;
          t.fill.geometry = shape.fill;
          t.line.geometry = shape.line;
          letGo(t.mesh.key);
          t.mesh = mesh;
        }
        t.part = part;
        t.frame = part.frame;
        describeWood(t.fill.material, part);
      }
    },
    dispose() {
      for (const [path, t] of things) remove(path, t);
    },
  };
}
/** All of a part in its own frame, its tenons too, which stand beyond its stock. */
export function wholeOf({ fill: { geometry } }: Thing): Box {
  if (!geometry.boundingBox) geometry.computeBoundingBox();
  const { min, max } = geometry.boundingBox ?? new Box3();
  return { min: [min.x, min.y, min.z], max: [max.x, max.y, max.z] };
}
export const matrixOf = (f: Frame, into = new Matrix4()): Matrix4 =>
  into.set(f.x[0], f.y[0], f.z[0], f.o[0], f.x[1], f.y[1], f.z[1], f.o[1], f.x[2], f.y[2], f.z[2], f.o[2], 0, 0, 0, 1);
