/** The line program: each edge a strip of given width on the screen; creases thin, outlines heavier, what is turned away not at all. */
import { BufferAttribute, DoubleSide, GLSL3, InstancedBufferAttribute, InstancedBufferGeometry, ShaderMaterial, Vector3 } from 'three';
import type { Edges } from './edges.ts';
import type { Shared } from './woodShader.ts';

const VERTEX = /* glsl */ `
in vec3 aA;
in vec3 aB;
in vec3 aN1;
in vec3 aN2;
in float aKind;
uniform vec2 uSize;
uniform float uPixel;
uniform float uHeavy;
uniform float uFine;
uniform float uHeavyAlpha;
uniform float uFineAlpha;
uniform float uNearer;
out float vAlpha;
out float vAcross;
out float vHalf;
out vec3 vW;
vec4 nearer(vec4 v) { return isOrthographic ? v + vec4(0.0, 0.0, 2000.0 * uNearer, 0.0) : vec4(v.xyz * (1.0 - uNearer), 1.0); }
void main() {
  vec4 wa = modelMatrix * vec4(aA, 1.0), wb = modelMatrix * vec4(aB, 1.0);
  vec4 va = viewMatrix * wa, vb = viewMatrix * wb;
  vec3 toEye = isOrthographic ? vec3(0.0, 0.0, 1.0) : normalize(-va.xyz);
  mat3 turn = mat3(viewMatrix) * mat3(modelMatrix);
  bool f1 = dot(turn * aN1, toEye) > 0.0, f2 = dot(turn * aN2, toEye) > 0.0;
  bool outline = f1 != f2;
  bool cut = aKind > 1.5;
  bool seen = cut || outline || (f1 && f2 && aKind > 0.5);
  // Drawn a little nearer to the eye, along the line of sight, so that the faces it lies on do not hide half of it.
  vec4 pa = projectionMatrix * nearer(va), pb = projectionMatrix * nearer(vb);
  if (!seen || pa.w <= 0.0 || pb.w <= 0.0) { gl_Position = vec4(2.0, 2.0, 2.0, 1.0); return; }
  float width = (cut || outline ? uHeavy : uFine) * uPixel;
  vAlpha = cut || outline ? uHeavyAlpha : uFineAlpha;
  // Thinner than a pixel cannot be drawn: it is drawn a pixel wide and fainter.
  if (width < 1.0) { vAlpha *= width; width = 1.0; }
  vec2 sa = pa.xy / pa.w * uSize, sb = pb.xy / pb.w * uSize;
  vec2 d = sb - sa;
  d = length(d) > 1e-4 ? normalize(d) : vec2(1.0, 0.0);
  vHalf = 0.5 * width;
  float grow = vHalf + 1.0;
  vec2 n = vec2(-d.y, d.x);
  vec4 p = position.x < 0.5 ? pa : pb;
  vec2 by = n * position.y * grow + d * (position.x < 0.5 ? -0.3 : 0.3) * width;
  vAcross = position.y * grow;
  p.xy += by * 2.0 / uSize * p.w * 0.5;
  vW = (position.x < 0.5 ? wa : wb).xyz;
  gl_Position = p;
}`;
const FRAGMENT = /* glsl */ `
precision highp float;
in float vAlpha;
in float vAcross;
in float vHalf;
in vec3 vW;
out vec4 outColour;
uniform vec3 uInk;
uniform vec4 uClip;
uniform float uClipped;
uniform float uBeyond;
void main() {
  if (uClipped > 0.5 && dot(vW, uClip.xyz) > uClip.w + uBeyond) discard;
  float edge = clamp(vHalf + 0.5 - abs(vAcross), 0.0, 1.0);
  outColour = vec4(uInk, vAlpha * edge);
}`;

export function lineMaterial(shared: Shared): ShaderMaterial {
  return new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    uniforms: {
      ...shared,
      uInk: { value: new Vector3() },
      uHeavy: { value: 1.15 },
      uFine: { value: 0.8 },
      uHeavyAlpha: { value: 0.8 },
      uFineAlpha: { value: 0.5 },
      uNearer: { value: 0.0022 },
      uBeyond: { value: 0 },
    },
  });
}
const QUAD = new Float32Array([0, -1, 0, 1, -1, 0, 0, 1, 0, 1, 1, 0]);
export function lineGeometry(e: Edges): InstancedBufferGeometry {
  const g = strips(e.count);
  g.setAttribute('aA', new InstancedBufferAttribute(e.a, 3));
  g.setAttribute('aB', new InstancedBufferAttribute(e.b, 3));
  g.setAttribute('aN1', new InstancedBufferAttribute(e.n1, 3));
  g.setAttribute('aN2', new InstancedBufferAttribute(e.n2, 3));
  g.setAttribute('aKind', new InstancedBufferAttribute(e.crease, 1));
  return g;
}
/** Line pieces that are always drawn, at the heavy width: the outline of a cut. */
export function cutGeometry(segments: readonly number[]): InstancedBufferGeometry {
  const count = segments.length / 6;
  const [a, b] = [new Float32Array(count * 3), new Float32Array(count * 3)];
  for (let i = 0; i < count; i++) {
    a.set(segments.slice(i * 6, i * 6 + 3), i * 3);
    b.set(segments.slice(i * 6 + 3, i * 6 + 6), i * 3);
  }
  return lineGeometry({
    a,
    b,
    n1: new Float32Array(count * 3),
    n2: new Float32Array(count * 3),
    crease: new Float32Array(count).fill(2),
    count,
  });
}
function strips(count: number): InstancedBufferGeometry {
  const g = new InstancedBufferGeometry();
  g.setAttribute('position', new BufferAttribute(QUAD, 3));
  g.setIndex([0, 2, 1, 1, 2, 3]);
  g.instanceCount = count;
  return g;
}
