/**
 * The wood program: one growth-time function of the place in the board draws every face, so rings run on round each edge.
 * The rings are circles round a guessed pith that leans a little, bent by slow noise; their tone is filtered over the width of
 * a pixel exactly, so that they fade to their mean instead of shimmering. The same program draws cut surfaces.
 */
import { GLSL3, Matrix4, ShaderMaterial, Vector3, Vector4, type IUniform } from 'three';

/** Most cuts across (staves less one) and through (layers less one) that one part shows; what lies beyond is one piece. */
export const MOST_CUTS = 12;
export const MOST_LAYERS = 4;
/** Stands where there is no cut. */
export const NO_CUT = 1e9;

/** Uniforms that all parts share: the same objects, changed in place. */
export type Shared = {
  readonly uClip: IUniform<Vector4>;
  readonly uClipped: IUniform<number>;
  readonly uKey: IUniform<Vector3>;
  readonly uSheet: IUniform<Vector3>;
  readonly uExposure: IUniform<number>;
  readonly uSize: IUniform<readonly [number, number]>;
  readonly uPixel: IUniform<number>;
};

const VERTEX = /* glsl */ `
uniform mat4 uToRecord;
uniform float uCap;
out vec3 vP;
out vec3 vN;
out vec3 vRecordN;
out vec3 vW;
void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  vW = world.xyz;
  vN = normalize((modelMatrix * vec4(normal, 0.0)).xyz);
  vP = uCap > 0.5 ? (uToRecord * world).xyz : position;
  vRecordN = uCap > 0.5 ? normalize((uToRecord * vec4(vN, 0.0)).xyz) : normal;
  gl_Position = projectionMatrix * viewMatrix * world;
}`;

const FRAGMENT = /* glsl */ `
precision highp float;
in vec3 vP;
in vec3 vN;
in vec3 vRecordN;
in vec3 vW;
out vec4 outColour;
uniform vec4 uClip;
uniform float uClipped;
uniform vec3 uKey;
uniform vec3 uSheet;
uniform float uExposure;
uniform float uWood;
uniform float uCap;
uniform float uHeat;
uniform vec3 uEarly;
uniform vec3 uLate;
uniform vec3 uAlong;
uniform vec3 uAcross;
uniform vec3 uThrough;
uniform float uSeed;
uniform float uSpacing;
uniform float uSharp;
uniform float uRings;
uniform vec4 uCutsA0;
uniform vec4 uCutsA1;
uniform vec4 uCutsA2;
uniform vec4 uCutsB;
uniform vec4 uEnds;

uint mixed(uint v) {
  uint s = v * 747796405u + 2891336453u;
  uint w = ((s >> ((s >> 28u) + 4u)) ^ s) * 277803737u;
  return (w >> 22u) ^ w;
}
float hash1(float a) { return float(mixed(floatBitsToUint(a))) / 4294967295.0; }
float cell(ivec3 p) { return float(mixed(uint(p.x) * 73856093u ^ uint(p.y) * 19349663u ^ uint(p.z) * 83492791u)) / 4294967295.0; }
float noise(vec3 p) {
  vec3 f = floor(p);
  ivec3 i = ivec3(f);
  vec3 t = p - f;
  t = t * t * t * (t * (t * 6.0 - 15.0) + 10.0);
  vec4 near = vec4(cell(i), cell(i + ivec3(1,0,0)), cell(i + ivec3(0,1,0)), cell(i + ivec3(1,1,0)));
  vec4 far = vec4(cell(i + ivec3(0,0,1)), cell(i + ivec3(1,0,1)), cell(i + ivec3(0,1,1)), cell(i + ivec3(1,1,1)));
  vec4 z = mix(near, far, t.z);
  return mix(mix(z.x, z.y, t.x), mix(z.z, z.w, t.x), t.y);
}
float summed(float n) { float f = fract(n); return floor(n) / (uSharp + 1.0) + pow(f, uSharp + 1.0) / (uSharp + 1.0); }

vec3 toScreen(vec3 c) { return mix(c * 12.92, 1.055 * pow(max(c, vec3(0.0)), vec3(1.0 / 2.4)) - 0.055, step(0.0031308, c)); }

vec4 below(vec4 cuts, vec4 passed) { return mix(vec4(-1e9), cuts, passed); }
vec4 above(vec4 cuts, vec4 passed) { return mix(cuts, vec4(1e9), passed); }
float greatest(vec4 v) { return max(max(v.x, v.y), max(v.z, v.w)); }
float least(vec4 v) { return min(min(v.x, v.y), min(v.z, v.w)); }
// Slow and smooth, between -1 and 1 or so; cheap where true noise would be dear.
float wander(vec2 ray, float l, float id) {
  return 0.5 * sin(2.1 * ray.x + l / 151.0 + 6.3 * fract(id * 0.37)) + 0.33 * sin(3.3 * ray.y - l / 93.0 + 6.3 * fract(id * 0.71)) + 0.17 * sin(5.1 * ray.x * ray.y + l / 57.0 + id);
}

vec3 woodAt(vec3 p, vec3 n, out float seam) {
  float l = dot(p, uAlong);
  float a = dot(p, uAcross);
  float b = dot(p, uThrough);
  // Which piece of a glued-up part: without loops and lists, which software renderers take seconds to compile.
  vec4 s0 = step(uCutsA0, vec4(a)), s1 = step(uCutsA1, vec4(a)), s2 = step(uCutsA2, vec4(a)), s3 = step(uCutsB, vec4(b));
  float ia = dot(s0 + s1 + s2, vec4(1.0)), ib = dot(s3, vec4(1.0));
  float a0 = max(uEnds.x, greatest(max(max(below(uCutsA0, s0), below(uCutsA1, s1)), below(uCutsA2, s2))));
  float a1 = min(uEnds.y, least(min(min(above(uCutsA0, s0), above(uCutsA1, s1)), above(uCutsA2, s2))));
  float b0 = max(uEnds.z, greatest(below(uCutsB, s3)));
  float b1 = min(uEnds.w, least(above(uCutsB, s3)));
  float toCut = min(min(a0 > uEnds.x ? a - a0 : 1e6, a1 < uEnds.y ? a1 - a : 1e6), min(b0 > uEnds.z ? b - b0 : 1e6, b1 < uEnds.w ? b1 - b : 1e6));
  float px = max(length(dFdx(p)), length(dFdy(p)));
  seam = 1.0 - smoothstep(0.1, 1.1, toCut / max(px, 1e-4));

  float id = uSeed + ia * 17.31 + ib * 41.7;
  float h1 = hash1(id + 0.1), h2 = hash1(id + 1.3), h3 = hash1(id + 2.7), h4 = hash1(id + 3.9), h5 = hash1(id + 5.3);
  float wa = a1 - a0, wb = b1 - b0;
  bool square = wa < 1.6 * wb;
  float side = mod(ia, 2.0) < 0.5 ? 1.0 : -1.0;
  float offA = square ? (25.0 + 45.0 * h1) * (h3 < 0.5 ? 1.0 : -1.0) : (h1 - 0.5) * 0.55 * wa;
  float offB = (square ? 25.0 + 40.0 * h2 : wb * 0.5 + 14.0 + 60.0 * h2 * h2) * (square ? 1.0 : side * (h4 < 0.2 ? -1.0 : 1.0));
  float x = a - 0.5 * (a0 + a1) - offA - (h3 - 0.5) * 0.012 * l;
  float y = b - 0.5 * (b0 + b1) - offB - (h4 < 0.5 ? 1.0 : -1.0) * (0.006 + 0.016 * h5) * l;
  float r = length(vec2(x, y));
  vec2 ray = vec2(x, y) / max(r, 1e-3);
  float warp = 3.6 * wander(ray, l, id);
  vec3 fx = dFdx(p), fy = dFdy(p);
  vec2 gx = vec2(dot(fx, uAcross), dot(fx, uThrough)), gy = vec2(dot(fy, uAcross), dot(fy, uThrough));
  float width = (abs(dot(ray, gx)) + abs(dot(ray, gy))) / uSpacing * 1.2 + 1e-4;
  float fade = 1.0 - smoothstep(0.6, 1.6, width);
  warp += 0.5 * fade * sin(9.0 * ray.x + l / 31.0 + id);
  // Years differ: the spacing breathes slowly with the radius.
  float years = (r + warp + 1.6 * sin(r / 9.0 + id)) / uSpacing;
  float late = (summed(years + 0.5 * width) - summed(years - 0.5 * width)) / width;
  late *= 1.0 + fade * 0.5 * (hash1(floor(years) + id) - 0.5);
  // Good and lean years come in runs: what is left of the figure where single rings are too fine to see.
  late += (0.10 * sin(years * 0.83 + id) + 0.08 * sin(years * 0.31 + 2.0 * id)) * (1.0 - smoothstep(1.2, 3.4, width));
  float end = abs(dot(n, uAlong));
  float fibre = 1.0 - smoothstep(0.35, 1.4, px);
  float streak = fibre > 0.0 ? (noise(vec3(a * 1.9, b * 1.9, l / 26.0 + id)) - 0.5) * fibre * (1.0 - end) : 0.0;
  float broad = 0.5 * wander(vec2(a, b) / 40.0, l / 2.6, id + 0.5);
  vec3 c = mix(uEarly, uLate, clamp(late * 1.15 + 0.16 * streak + 0.16 * broad, 0.0, 1.15));
  c *= 1.0 + 0.10 * (h5 - 0.5) + 0.06 * broad;
  // The ends drink more light.
  c *= mix(1.0, 0.78, smoothstep(0.45, 0.9, end));
  return c;
}
void main() {
  if (uClipped > 0.5 && uCap < 0.5 && dot(vW, uClip.xyz) > uClip.w) discard;
  vec3 n = normalize(vN);
  float seam = 0.0;
  vec3 c = uRings > 0.5 ? woodAt(vP, normalize(vRecordN), seam) : uEarly;
  float facing = dot(n, uKey) * 0.5 + 0.5;
  float sky = n.z * 0.5 + 0.5;
  float light = uCap > 0.5 ? 0.98 : mix(0.5, 1.17, facing * facing * (3.0 - 2.0 * facing)) * mix(0.9, 1.06, sky);
  c = c * light * uExposure;
  c = mix(c, c * 0.72, seam * 0.55);
  vec3 wood = toScreen(c);
  vec3 paper = uSheet * mix(1.0, 0.955 + 0.06 * facing, 0.9);
  vec3 colour = mix(paper, wood, uWood);
  colour = mix(colour, colour * 1.08 + 0.03, uHeat);
  outColour = vec4(colour, 1.0);
}`;

export function woodMaterial(shared: Shared): ShaderMaterial {
  return new ShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: {
      ...shared,
      uToRecord: { value: new Matrix4() },
      uCap: { value: 0 },
      uWood: { value: 1 },
      uHeat: { value: 0 },
      uEarly: { value: new Vector3() },
      uLate: { value: new Vector3() },
      uAlong: { value: new Vector3(1, 0, 0) },
      uAcross: { value: new Vector3(0, 1, 0) },
      uThrough: { value: new Vector3(0, 0, 1) },
      uSeed: { value: 0 },
      uSpacing: { value: 3 },
      uSharp: { value: 2 },
      uRings: { value: 1 },
      uCutsA0: { value: new Vector4() },
      uCutsA1: { value: new Vector4() },
      uCutsA2: { value: new Vector4() },
      uCutsB: { value: new Vector4() },
      uEnds: { value: new Vector4() },
    },
  });
}
