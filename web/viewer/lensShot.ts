/** The lens: one place cut open and enlarged, drawn once into pixels, with the letters' places beside. */
import {
  DoubleSide,
  GLSL3,
  LessStencilFunc,
  KeepStencilOp,
  Mesh,
  OrthographicCamera,
  PlaneGeometry,
  ShaderMaterial,
  UnsignedByteType,
  Vector3,
  WebGLRenderTarget,
  BackSide,
  FrontSide,
  type Object3D,
  type Scene,
  type WebGLRenderer,
} from 'three';
import { growBox, outBox } from '../../src/geom/box.ts';
import { type Vec3, add, cross, dot, scale, unit } from '../../src/geom/vec3.ts';
import { type Caps, makeCaps, markMaterial, placePlane } from './caps.ts';
import { CUT, FILL, LINE, type Parts, matrixOf } from './parts.ts';
import { type Plane, insideSection } from './section.ts';
import type { Colour } from '../../src/wood/shade.ts';
import { setNumbers, setUniform } from './uniforms.ts';
import type { Shared } from './woodShader.ts';

export type ShotAsk = {
  readonly at: Vec3;
  readonly reach: number;
  readonly cut: Vec3;
  /** Parts the finding speaks of: only where these are asked to be in one place is red. */
  readonly parts: readonly string[];
  readonly bite: boolean;
  /** Side of the picture, px of the screen. */
  readonly px: number;
};
export type Letter = { readonly path: string; readonly x: number; readonly y: number };
export type Shot = {
  readonly image: ImageData;
  /** Places for letters, 0…1 from the upper left. */
  readonly letters: readonly Letter[];
  /** Middle of the red place, 0…1, where there is one. */
  readonly red: readonly [number, number] | null;
};
type On = {
  readonly renderer: WebGLRenderer;
  readonly scene: Scene;
  readonly parts: Parts;
  readonly shared: Shared;
  readonly mainCaps: Caps;
  readonly shadow: Object3D;
  readonly well: Colour;
};
/** Sizes and directions of the lens: `half` mm from its middle to its rim. */
export function lensFrame(ask: Pick<ShotAsk, 'at' | 'reach' | 'cut'>) {
  const n = unit(ask.cut);
  const right: Vec3 = Math.abs(n[2]) > 0.9 ? [1, 0, 0] : unit(cross([0, 0, 1], n));
  const up = cross(n, right);
  // A hair off the grid of the pixels: flush faces then never fall between two of them.
  const at = add(ask.at, add(scale(right, 0.0137), scale(up, 0.0171)));
  return { n, right, up, at, half: Math.min(400, Math.max(22, ask.reach * 1.9)) };
}
/** Leaves poses and looks of the scene as the lens needed them: the caller puts its own back. */
export function shoot(on: On, ask: ShotAsk): Shot | null {
  const f = lensFrame(ask);
  const plane: Plane = { normal: f.n, at: dot(f.n, f.at) };
  const near = {
    min: add(f.at, [-f.half * 1.5, -f.half * 1.5, -f.half * 1.5]),
    max: add(f.at, [f.half * 1.5, f.half * 1.5, f.half * 1.5]),
  };
  const touching = [...on.parts.things.values()].filter((t) => {
    const b = growBox(outBox(t.part.frame, t.part.stock), 40);
    return [0, 1, 2].every((i) => (b.min[i] ?? 0) < (near.max[i] ?? 0) && (b.max[i] ?? 0) > (near.min[i] ?? 0));
  });
  if (!touching.length) return null;
  for (const t of on.parts.things.values()) {
    t.fill.visible = t.line.visible = touching.includes(t);
    for (const o of [t.fill, t.line]) {
      matrixOf(t.part.frame, o.matrix);
      o.matrixWorldNeedsUpdate = true;
    }
    t.frame = t.part.frame;
    setUniform(t.fill.material, 'uWood', 1);
    setNumbers(t.line.material, 'uInk', [0.1, 0.07, 0.05]);
  }
  const caps = makeCaps(on.shared, on.renderer);
  caps.ink([0.09, 0.07, 0.06]);
  on.shared.uClipped.value = 1;
  on.shared.uClip.value.set(...f.n, plane.at);
  on.shared.uKey.value.set(...unit(add(f.n, add(scale(f.right, -0.4), scale(f.up, 0.5)))));
  caps.set(touching, plane);
  const red = ask.bite
    ? biteMarks(
        on,
        caps,
        touching.filter((t) => ask.parts.includes(t.part.path)).map((t) => t.fill),
        plane,
      )
    : null;
  if (red) caps.group.add(...red.things);
  const [mainShown, shadowShown] = [on.mainCaps.group.visible, on.shadow.visible];
  on.mainCaps.group.visible = on.shadow.visible = false;
  on.scene.add(caps.group);
  const pixels = render(on, f, ask.px);
  const letters = lettersIn(
    caps.sections,
    f,
    touching.map((t) => t.part.path),
  );
  on.scene.remove(caps.group);
  on.mainCaps.group.visible = mainShown;
  on.shadow.visible = shadowShown;
  red?.dispose();
  caps.dispose();
  const found = paintBite(pixels, red !== null);
  return { image: pixels, letters, red: found };
}
/** Drawn where two solids fill one point of the plane; found again in the pixels by a colour that no wood has. */
const MARK: Colour = [1, 0, 1];
function biteMarks(on: On, caps: Caps, fills: readonly Mesh[], plane: Plane): { things: Mesh[]; dispose: () => void } {
  const [backs, fronts] = [markMaterial(on.shared, BackSide), markMaterial(on.shared, FrontSide)];
  const flat = new ShaderMaterial({
    glslVersion: GLSL3,
    side: DoubleSide,
    vertexShader: 'void main(){ gl_Position = projectionMatrix * viewMatrix * modelMatrix * vec4(position,1.0); }',
    fragmentShader: `precision highp float; out vec4 o; void main(){ o = vec4(${MARK.map((c) => c.toFixed(1)).join(',')},1.0); }`,
    depthTest: false,
    depthWrite: false,
    stencilWrite: true,
    stencilFunc: LessStencilFunc,
    stencilRef: 1,
    stencilFail: KeepStencilOp,
    stencilZFail: KeepStencilOp,
    stencilZPass: KeepStencilOp,
  });
  const square = new PlaneGeometry(1, 1);
  const things: Mesh[] = [];
  for (const fill of fills)
    for (const material of [backs, fronts]) {
      const m = new Mesh(fill.geometry, material);
      m.matrix.copy(fill.matrix);
      things.push(m);
    }
  const quad = new Mesh(square, flat);
  const all = [...caps.sections.values()].flat();
  placePlane(quad.matrix, plane, all.length ? all : [0, 0, 0]);
  quad.onAfterRender = () => on.renderer.clearStencil();
  things.push(quad);
  things.forEach((m, i) => {
    m.matrixAutoUpdate = false;
    m.frustumCulled = false;
    m.layers.set(CUT);
    m.renderOrder = 90_000 + i;
  });
  return { things, dispose: () => [backs, fronts, flat, square].forEach((d) => d.dispose()) };
}
function render(on: On, f: ReturnType<typeof lensFrame>, px: number): ImageData {
  const { renderer } = on;
  const side = Math.min(1024, Math.round(px * Math.min(2, devicePixelRatio || 1)));
  const target = new WebGLRenderTarget(side, side, { samples: 4, stencilBuffer: true, depthBuffer: true, type: UnsignedByteType });
  const eye = new OrthographicCamera(-f.half, f.half, f.half, -f.half, 0, f.half * 4 + 4000);
  eye.matrixAutoUpdate = false;
  eye.matrix
    .makeBasis(new Vector3(...f.right), new Vector3(...f.up), new Vector3(...f.n))
    .setPosition(new Vector3(...add(f.at, scale(f.n, f.half * 2))));
  eye.updateMatrixWorld(true);
  eye.updateProjectionMatrix();
  eye.layers.set(FILL);
  eye.layers.enable(LINE);
  eye.layers.enable(CUT);
  on.shared.uSize.value = [side, side];
  on.shared.uPixel.value = side / px;
  renderer.setRenderTarget(target);
  renderer.setClearColor(0x000000, 0);
  renderer.clear();
  renderer.render(on.scene, eye);
  const bytes = new Uint8Array(side * side * 4);
  renderer.readRenderTargetPixels(target, 0, 0, side, side, bytes);
  renderer.setRenderTarget(null);
  target.dispose();
  const image = new ImageData(side, side);
  // Upside down, and over the ground of the lens.
  for (let y = 0; y < side; y++)
    for (let x = 0; x < side; x++) {
      const [from, to] = [((side - 1 - y) * side + x) * 4, (y * side + x) * 4];
      const a = (bytes[from + 3] ?? 0) / 255;
      for (let c = 0; c < 3; c++) image.data[to + c] = Math.min(255, (bytes[from + c] ?? 0) + (1 - a) * 255 * (on.well[c] ?? 0));
      image.data[to + 3] = 255;
    }
  return image;
}
/** The marked pixels in solid red with a chalk casing, never under three wide; specks where faces only touch are taken out. */
function paintBite(image: ImageData, wanted: boolean): readonly [number, number] | null {
  const { width: w, height: h, data } = image;
  const mask = new Uint8Array(w * h);
  for (let i = 0; i < w * h; i++) if ((data[i * 4] ?? 0) > 170 && (data[i * 4 + 1] ?? 0) < 110 && (data[i * 4 + 2] ?? 0) > 150) mask[i] = 1;
  const core = wanted ? opened(mask, w, h) : new Uint8Array(w * h);
  const red = grown(core, w, h, 2);
  const chalk = grown(red, w, h, 4);
  let [sx, sy, n] = [0, 0, 0];
  for (let i = 0; i < w * h; i++) {
    if (core[i]) [sx, sy, n] = [sx + (i % w), sy + Math.floor(i / w), n + 1];
    const c = red[i] ? [190, 28, 31] : chalk[i] ? [251, 253, 253] : mask[i] ? [150, 110, 80] : null;
    if (c) for (let k = 0; k < 3; k++) data[i * 4 + k] = c[k] ?? 0;
  }
  if (!n) return null;
  // The line to the measure begins on red, so at the marked pixel nearest to the middle of all.
  let best = { d: Infinity, x: 0, y: 0 };
  for (let i = 0; i < w * h; i++) {
    const [x, y] = [i % w, Math.floor(i / w)];
    const d = core[i] ? Math.hypot(x - sx / n, y - sy / n) : Infinity;
    if (d < best.d) best = { d, x, y };
  }
  return [best.x / w, best.y / h];
}
/** What remains of a mask when everything under two pixels wide is taken away. */
function opened(mask: Uint8Array, w: number, h: number): Uint8Array {
  const out = new Uint8Array(w * h);
  for (let y = 0; y < h - 1; y++)
    for (let x = 0; x < w - 1; x++) {
      const i = y * w + x;
      if (mask[i] && mask[i + 1] && mask[i + w] && mask[i + w + 1]) out[i] = out[i + 1] = out[i + w] = out[i + w + 1] = 1;
    }
  return out;
}
function grown(mask: Uint8Array, w: number, h: number, by: number): Uint8Array {
  const wide = new Uint8Array(w * h);
  const out = new Uint8Array(w * h);
  for (let i = 0; i < w * h; i++) {
    if (!mask[i]) continue;
    const x = i % w;
    for (let k = -by; k <= by; k++) if (x + k >= 0 && x + k < w) wide[i + k] = 1;
  }
  for (let i = 0; i < w * h; i++) if (wide[i]) for (let k = -by; k <= by; k++) if (i + k * w >= 0 && i + k * w < w * h) out[i + k * w] = 1;
  return out;
}
/** One letter in the largest free stretch of each part's section within the lens. */
function lettersIn(sections: ReadonlyMap<string, readonly number[]>, f: ReturnType<typeof lensFrame>, paths: readonly string[]): Letter[] {
  const out: Letter[] = [];
  const GRID = 26;
  for (const path of paths) {
    const flat = sections.get(path);
    if (!flat) continue;
    const lines: [number, number, number, number][] = [];
    for (let i = 0; i < flat.length; i += 6) {
      const p = (k: number): readonly [number, number] => {
        const q: Vec3 = [(flat[i + k] ?? 0) - f.at[0], (flat[i + k + 1] ?? 0) - f.at[1], (flat[i + k + 2] ?? 0) - f.at[2]];
        return [dot(q, f.right) / f.half, dot(q, f.up) / f.half];
      };
      lines.push([...p(0), ...p(3)]);
    }
    let best = { room: 0.06, x: 0, y: 0 };
    for (let gy = 0; gy < GRID; gy++)
      for (let gx = 0; gx < GRID; gx++) {
        const [x, y] = [((gx + 0.5) / GRID) * 2 - 1, ((gy + 0.5) / GRID) * 2 - 1];
        const room = Math.min(0.86 - Math.hypot(x, y), Math.hypot(x, y) - 0.16);
        if (room <= best.room || !insideSection(lines, x, y)) continue;
        const clear = lines.reduce((d, l) => Math.min(d, toLine(x, y, l)), room);
        if (clear > best.room) best = { room: clear, x, y };
      }
    if (best.room > 0.06) out.push({ path, x: (best.x + 1) / 2, y: (1 - best.y) / 2 });
  }
  return out.slice(0, 8);
}
function toLine(x: number, y: number, [x0, y0, x1, y1]: readonly [number, number, number, number]): number {
  const [dx, dy] = [x1 - x0, y1 - y0];
  const t = Math.max(0, Math.min(1, ((x - x0) * dx + (y - y0) * dy) / (dx * dx + dy * dy || 1)));
  return Math.hypot(x - x0 - t * dx, y - y0 - t * dy);
}
