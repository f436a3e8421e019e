/** The one shadow: what stands near the ground, seen from below, blurred. Drawn anew only when model or pose rests. */
import {
  GLSL3,
  HalfFloatType,
  LinearFilter,
  Mesh,
  NoBlending,
  OrthographicCamera,
  PlaneGeometry,
  Scene,
  ShaderMaterial,
  Vector2,
  WebGLRenderTarget,
  type WebGLRenderer,
} from 'three';
import type { Box } from '../../src/geom/box.ts';
import { setNumbers, setUniform } from './uniforms.ts';

const SIZE = 256;
export type Shadow = {
  readonly mesh: Mesh;
  /** What is on layer 0 throws the shadow. */
  readonly draw: (renderer: WebGLRenderer, scene: Scene, box: Box) => void;
  readonly darken: (by: number) => void;
  readonly dispose: () => void;
};

export function makeShadow(layer: number): Shadow {
  const target = (): WebGLRenderTarget =>
    new WebGLRenderTarget(SIZE, SIZE, { depthBuffer: true, magFilter: LinearFilter, minFilter: LinearFilter, type: HalfFloatType });
  const [first, second] = [target(), target()];
  const height = new ShaderMaterial({
    glslVersion: GLSL3,
    blending: NoBlending,
    side: 2,
    uniforms: { uGround: { value: 0 } },
    vertexShader:
      'uniform float uGround; out float vUp; void main(){ vec4 w = modelMatrix * vec4(position,1.0); vUp = w.z - uGround; gl_Position = projectionMatrix * viewMatrix * w; }',
    fragmentShader: 'precision highp float; in float vUp; out vec4 o; void main(){ o = vec4(exp(-max(vUp,0.0)/26.0), 1.0, 0.0, 1.0); }',
  });
  const blur = new ShaderMaterial({
    glslVersion: GLSL3,
    blending: NoBlending,
    depthTest: false,
    uniforms: { uFrom: { value: first.texture }, uStep: { value: new Vector2() } },
    vertexShader: 'out vec2 vUv; void main(){ vUv = uv; gl_Position = vec4(position.xy, 0.0, 1.0); }',
    fragmentShader: `precision highp float; in vec2 vUv; out vec4 o; uniform sampler2D uFrom; uniform vec2 uStep;
      void main(){ vec2 s = vec2(0.0); float near = 0.0, far = 0.0;
        for (int i = -9; i <= 9; i++) { float t = float(i); vec4 c0 = texture(uFrom, vUv + uStep * t * 0.45); vec4 c1 = texture(uFrom, vUv + uStep * t * 1.5);
          float w = exp(-t * t / 26.0); s += vec2(c0.r, c1.g) * w; near += w; }
        o = vec4(s / near, 0.0, 1.0); }`,
  });
  const ground = new ShaderMaterial({
    glslVersion: GLSL3,
    transparent: true,
    depthWrite: false,
    side: 2,
    uniforms: { uFrom: { value: first.texture }, uDark: { value: 1 } },
    vertexShader: 'out vec2 vUv; void main(){ vUv = uv; gl_Position = projectionMatrix * viewMatrix * modelMatrix * vec4(position,1.0); }',
    fragmentShader:
      'precision highp float; in vec2 vUv; out vec4 o; uniform sampler2D uFrom; uniform float uDark; void main(){ vec4 c = texture(uFrom, vUv); o = vec4(0.05, 0.07, 0.09, uDark * min(0.62, 0.55 * c.r + 0.12 * c.g)); }',
  });
  const mesh = new Mesh(new PlaneGeometry(1, 1), ground);
  mesh.layers.set(layer);
  mesh.renderOrder = -10;
  const screen = new Scene();
  const quad = new Mesh(new PlaneGeometry(2, 2), blur);
  quad.frustumCulled = false;
  screen.add(quad);
  const flat = new OrthographicCamera(-1, 1, 1, -1, 0, 1);
  const below = new OrthographicCamera();
  return {
    mesh,
    draw(renderer, scene, box) {
      const margin = 40 + 0.12 * Math.max(box.max[0] - box.min[0], box.max[1] - box.min[1]);
      const [w, d] = [box.max[0] - box.min[0] + 2 * margin, box.max[1] - box.min[1] + 2 * margin];
      const [x, y, z] = [(box.min[0] + box.max[0]) / 2, (box.min[1] + box.max[1]) / 2, box.min[2]];
      mesh.position.set(x, y, z - 0.5);
      // Looking up with the back towards the top, left and right change places.
      mesh.scale.set(-w, d, 1);
      below.left = -w / 2;
      below.right = w / 2;
      below.top = d / 2;
      below.bottom = -d / 2;
      below.near = 0;
      below.far = box.max[2] - box.min[2] + 200;
      below.position.set(x, y, z - 100);
      below.up.set(0, 1, 0);
      below.lookAt(x, y, z);
      below.updateProjectionMatrix();
      below.layers.set(0);
      setUniform(height, 'uGround', z);
      scene.overrideMaterial = height;
      renderer.setRenderTarget(first);
      renderer.clear();
      renderer.render(scene, below);
      scene.overrideMaterial = null;
      for (const [from, to, dx, dy] of [
        [first, second, 1, 0],
        [second, first, 0, 1],
      ] as const) {
        setUniform(blur, 'uFrom', from.texture);
        setNumbers(blur, 'uStep', [(dx * 1200) / w / SIZE, (dy * 1200) / d / SIZE]);
        renderer.setRenderTarget(to);
        renderer.render(screen, flat);
      }
      renderer.setRenderTarget(null);
    },
    darken(by) {
      setUniform(ground, 'uDark', by);
    },
    dispose() {
      for (const t of [first, second]) t.dispose();
      for (const m of [height, blur, ground]) m.dispose();
      mesh.geometry.dispose();
      quad.geometry.dispose();
    },
  };
}
