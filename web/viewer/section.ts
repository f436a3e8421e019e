/** Where a plane cuts a mesh: line pieces in world coordinates, and points inside the cut. */
import { type Frame, inDir, outPoint } from '../../src/geom/frame.ts';
import { type Vec3, dot } from '../../src/geom/vec3.ts';
import type { MeshView } from '../../src/piece/view.ts';

/** Points p with normal · p = at; what lies beyond (above `at`) is taken away. */
export type Plane = { readonly normal: Vec3; readonly at: number };

/** xyz xyz of each line piece. */
export function sectionOf(mesh: MeshView, frame: Frame, plane: Plane): number[] {
  const n = inDir(frame, plane.normal);
  const d = plane.at - dot(plane.normal, frame.o);
  const p = mesh.positions;
  const side = (i: number): number => n[0] * (p[i * 3] ?? 0) + n[1] * (p[i * 3 + 1] ?? 0) + n[2] * (p[i * 3 + 2] ?? 0) - d;
  const out: number[] = [];
  for (let t = 0; t < mesh.indices.length; t += 3) {
    const ids = [mesh.indices[t] ?? 0, mesh.indices[t + 1] ?? 0, mesh.indices[t + 2] ?? 0] as const;
    const s = [side(ids[0]), side(ids[1]), side(ids[2])] as const;
    const ends: Vec3[] = [];
    for (const [i, j] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const) {
      // Zero counts as above, so that a corner on the plane is met once.
      if (s[i] >= 0 === s[j] >= 0) continue;
      const k = s[i] / (s[i] - s[j]);
      const at = (c: number): number => (p[ids[i] * 3 + c] ?? 0) + k * ((p[ids[j] * 3 + c] ?? 0) - (p[ids[i] * 3 + c] ?? 0));
      ends.push([at(0), at(1), at(2)]);
    }
    const [a, b] = ends;
    if (a && b) out.push(...outPoint(frame, a), ...outPoint(frame, b));
  }
  return out;
}
/** Is a point of the plane inside the section? Even-odd count along the plane's own axis `u`, both seen as numbers (u, v). */
export function insideSection(segments: readonly (readonly [number, number, number, number])[], u: number, v: number): boolean {
  let odd = false;
  for (const [u0, v0, u1, v1] of segments) if (v0 > v !== v1 > v && u < u0 + ((v - v0) / (v1 - v0)) * (u1 - u0)) odd = !odd;
  return odd;
}
