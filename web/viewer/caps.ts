/** Cut surfaces: for each part that the plane goes through, the places where its inside shows are marked in the stencil and filled with its own rings. */
import {
  AlwaysStencilFunc,
  BackSide,
  DecrementWrapStencilOp,
  FrontSide,
  GLSL3,
  Group,
  IncrementWrapStencilOp,
  KeepStencilOp,
  type Matrix4,
  Mesh,
  NotEqualStencilFunc,
  PlaneGeometry,
  ShaderMaterial,
  Vector3,
  ZeroStencilOp,
  type InstancedBufferGeometry,
  type WebGLRenderer,
} from 'three';
import { cornersOf } from '../../src/geom/box.ts';
import { outPoint } from '../../src/geom/frame.ts';
import { dot } from '../../src/geom/vec3.ts';
import { cutGeometry, lineMaterial } from './lineShader.ts';
import { CUT, type Thing } from './parts.ts';
import { type Plane, sectionOf } from './section.ts';
import { setNumbers, setUniform } from './uniforms.ts';
import type { Shared } from './woodShader.ts';

export type Caps = {
  readonly group: Group;
  /** Builds the caps of all parts that `plane` goes through; null takes them away. */
  readonly set: (things: Iterable<Thing>, plane: Plane | null) => void;
  /** Line pieces of the last cut, by part. */
  readonly sections: ReadonlyMap<string, readonly number[]>;
  readonly ink: (colour: readonly [number, number, number]) => void;
  readonly dispose: () => void;
};
const MARK_VERTEX =
  'out vec3 vW; void main(){ vec4 w = modelMatrix * vec4(position,1.0); vW = w.xyz; gl_Position = projectionMatrix * viewMatrix * w; }';
const MARK_FRAGMENT =
  'precision highp float; in vec3 vW; out vec4 o; uniform vec4 uClip; void main(){ if (dot(vW, uClip.xyz) > uClip.w) discard; o = vec4(1.0); }';

/** Counts walls behind the plane: a part is cut where more backs than fronts lie behind it. */
export function markMaterial(shared: Shared, side: typeof BackSide | typeof FrontSide): ShaderMaterial {
  const op = side === BackSide ? IncrementWrapStencilOp : DecrementWrapStencilOp;
  return new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: MARK_VERTEX,
    fragmentShader: MARK_FRAGMENT,
    uniforms: { uClip: shared.uClip },
    side,
    colorWrite: false,
    depthWrite: false,
    depthTest: false,
    stencilWrite: true,
    stencilFunc: AlwaysStencilFunc,
    stencilFail: op,
    stencilZFail: op,
    stencilZPass: op,
  });
}
export function makeCaps(shared: Shared, renderer: WebGLRenderer): Caps {
  const group = new Group();
  const backs = markMaterial(shared, BackSide);
  const fronts = markMaterial(shared, FrontSide);
  const plane = new PlaneGeometry(1, 1);
  const outline = new Mesh<InstancedBufferGeometry, ShaderMaterial>(cutGeometry([]), lineMaterial(shared));
  outline.frustumCulled = false;
  outline.layers.set(CUT);
  outline.renderOrder = 100_000;
  setUniform(outline.material, 'uHeavy', 1.6);
  setUniform(outline.material, 'uHeavyAlpha', 0.9);
  setUniform(outline.material, 'uBeyond', 1);
  const sections = new Map<string, readonly number[]>();
  const clear = (): void => {
    for (const o of group.children) if (o instanceof Mesh && o.userData['cap']) (o.material as ShaderMaterial).dispose();
    group.clear();
    sections.clear();
  };
  return {
    group,
    sections,
    set(things, cut) {
      clear();
      if (!cut) return;
      const all: number[] = [];
      let order = 20;
      for (const t of things) {
        if (!crosses(t, cut)) continue;
        const segments = sectionOf(t.mesh, t.frame, cut);
        if (!segments.length) continue;
        sections.set(t.part.path, segments);
        for (const s of segments) all.push(s);
        for (const material of [backs, fronts]) {
          const mark = new Mesh(t.fill.geometry, material);
          mark.matrixAutoUpdate = false;
          mark.matrix.copy(t.fill.matrix);
          mark.frustumCulled = false;
          mark.layers.set(CUT);
          mark.renderOrder = order;
          group.add(mark);
        }
        group.add(capOf(t, cut, segments, plane, order + 1, renderer));
        order += 2;
      }
      outline.geometry.dispose();
      outline.geometry = cutGeometry(all);
      group.add(outline);
    },
    ink: (colour) => setNumbers(outline.material, 'uInk', colour),
    dispose() {
      clear();
      for (const m of [backs, fronts, outline.material]) m.dispose();
      outline.geometry.dispose();
      plane.dispose();
    },
  };
}
/** Does the plane go through the part's box, tenons included? */
function crosses(t: Thing, cut: Plane): boolean {
  const { min, max } = t.part.stock;
  const grown = { min: [min[0] - 80, min[1] - 80, min[2] - 80] as const, max: [max[0] + 80, max[1] + 80, max[2] + 80] as const };
  const d = cornersOf(grown).map((p) => dot(cut.normal, outPoint(t.frame, p)) - cut.at);
  return Math.min(...d) < 0 && Math.max(...d) > 0;
}
function capOf(t: Thing, cut: Plane, segments: readonly number[], plane: PlaneGeometry, order: number, renderer: WebGLRenderer): Mesh {
  const material = t.fill.material.clone();
  // The clone has its own uniforms; those that all parts share are put back.
  for (const key of Object.keys(t.fill.material.uniforms)) {
    const own = t.fill.material.uniforms[key];
    if (own && key !== 'uToRecord' && key !== 'uCap') material.uniforms[key] = own;
  }
  material.uniforms['uCap'] = { value: 1 };
  material.uniforms['uToRecord'] = { value: t.fill.matrix.clone().invert() };
  material.stencilWrite = true;
  material.stencilRef = 0;
  material.stencilFunc = NotEqualStencilFunc;
  material.stencilFail = KeepStencilOp;
  material.stencilZFail = ZeroStencilOp;
  material.stencilZPass = ZeroStencilOp;
  const cap = new Mesh(plane, material);
  cap.userData['cap'] = true;
  cap.matrixAutoUpdate = false;
  cap.frustumCulled = false;
  cap.layers.set(CUT);
  cap.renderOrder = order;
  placePlane(cap.matrix, cut, segments);
  cap.onAfterRender = () => renderer.clearStencil();
  return cap;
}
/** A square on the plane that covers the line pieces. */
export function placePlane(into: Matrix4, cut: Plane, segments: readonly number[]): void {
  const n = new Vector3(...cut.normal);
  const u = new Vector3(Math.abs(n.z) > 0.9 ? 1 : 0, 0, Math.abs(n.z) > 0.9 ? 0 : 1).cross(n).normalize();
  const v = n.clone().cross(u);
  let [u0, v0, u1, v1] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let i = 0; i < segments.length; i += 3) {
    const p = new Vector3(segments[i], segments[i + 1], segments[i + 2]);
    const [a, b] = [p.dot(u), p.dot(v)];
    [u0, v0, u1, v1] = [Math.min(u0, a), Math.min(v0, b), Math.max(u1, a), Math.max(v1, b)];
  }
  const at = n
    .clone()
    .multiplyScalar(cut.at)
    .addScaledVector(u, (u0 + u1) / 2)
    .addScaledVector(v, (v0 + v1) / 2);
  into.makeBasis(u.multiplyScalar(u1 - u0 + 2), v.multiplyScalar(v1 - v0 + 2), n).setPosition(at);
}
