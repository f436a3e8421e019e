/** Which part a ray meets first. */
import { type Frame, inDir, inPoint } from '../../src/geom/frame.ts';
import { type Vec3, dot } from '../../src/geom/vec3.ts';
import type { MeshView, PartView } from '../../src/piece/view.ts';
import type { Plane } from './section.ts';

export type Ray = { readonly from: Vec3; readonly along: Vec3 };
export type Pickable = { readonly part: PartView; readonly mesh: MeshView; readonly frame: Frame };

/** `clip`: what it takes away is not met. */
export function pickPart(ray: Ray, things: Iterable<Pickable>, clip: Plane | null): string | null {
  let best = Infinity;
  let found: string | null = null;
  for (const { part, mesh, frame } of things) {
    const from = inPoint(frame, ray.from);
    const along = inDir(frame, ray.along);
    if (!meetsBox(from, along, part.stock.min, part.stock.max, 60)) continue;
    const t = firstHit(mesh, from, along, best, clip, ray);
    if (t < best) [best, found] = [t, part.path];
  }
  return found;
}
/** The stock may be longer by its tenons: `grow` mm on all sides are searched too. */
function meetsBox(from: Vec3, along: Vec3, min: Vec3, max: Vec3, grow: number): boolean {
  let [near, far] = [0, Infinity];
  for (const i of [0, 1, 2] as const) {
    const k = 1 / (along[i] || 1e-12);
    const a = (min[i] - grow - from[i]) * k;
    const b = (max[i] + grow - from[i]) * k;
    near = Math.max(near, Math.min(a, b));
    far = Math.min(far, Math.max(a, b));
  }
  return near <= far;
}
/** Distance to the first triangle, nearer than `best` (Möller and Trumbore's test, from memory). */
function firstHit(mesh: MeshView, o: Vec3, d: Vec3, best: number, clip: Plane | null, ray: Ray): number {
  const p = mesh.positions;
  let near = best;
  for (let t = 0; t < mesh.indices.length; t += 3) {
    const [i, j, k] = [(mesh.indices[t] ?? 0) * 3, (mesh.indices[t + 1] ?? 0) * 3, (mesh.indices[t + 2] ?? 0) * 3];
    const ax = p[i] ?? 0, ay = p[i + 1] ?? 0, az = p[i + 2] ?? 0; // prettier-ignore
    const e1x = (p[j] ?? 0) - ax, e1y = (p[j + 1] ?? 0) - ay, e1z = (p[j + 2] ?? 0) - az; // prettier-ignore
    const e2x = (p[k] ?? 0) - ax, e2y = (p[k + 1] ?? 0) - ay, e2z = (p[k + 2] ?? 0) - az; // prettier-ignore
    const px = d[1] * e2z - d[2] * e2y, py = d[2] * e2x - d[0] * e2z, pz = d[0] * e2y - d[1] * e2x; // prettier-ignore
    const det = e1x * px + e1y * py + e1z * pz;
    if (Math.abs(det) < 1e-12) continue;
    const tx = o[0] - ax, ty = o[1] - ay, tz = o[2] - az; // prettier-ignore
    const u = (tx * px + ty * py + tz * pz) / det;
    if (u < 0 || u > 1) continue;
    const qx = ty * e1z - tz * e1y, qy = tz * e1x - tx * e1z, qz = tx * e1y - ty * e1x; // prettier-ignore
    const v = (d[0] * qx + d[1] * qy + d[2] * qz) / det;
    if (v < 0 || u + v > 1) continue;
    const s = (e2x * qx + e2y * qy + e2z * qz) / det;
    if (s <= 0 || s >= near) continue;
    if (clip && dot(clip.normal, ray.from) + s * dot(clip.normal, ray.along) > clip.at) continue;
    near = s;
  }
  return near;
}
