/** The piece as the eye has it: every triangle in the frame of the paper, mm: x to the right, y up, z towards the eye. */
import { handed, outDir, outPoint } from '../geom/frame.ts';
import { type Vec3, add, axisIndex, axisVec, cross, dot, length, scale, sub } from '../geom/vec3.ts';
import type { DrawnPiece } from './record.ts';

/** Radians: `round` 0 from the front, positive from the right; `up` above the ground, below 0 from under it. */
export type Eye = { readonly round: number; readonly up: number };
/** A triangle that looks towards the eye or away from it; `corners` number the welded points of the scene. */
export type Tri = {
  readonly part: number;
  /** Face of its part, as an index into the mesh's names. */
  readonly face: number;
  readonly corners: readonly [number, number, number];
  /** In the frame of the paper, unit length. */
  readonly normal: Vec3;
};
export type Scene = {
  readonly piece: DrawnPiece;
  readonly points: readonly Vec3[];
  readonly tris: readonly Tri[];
  /** Those that look towards the eye: they alone hide anything. */
  readonly front: readonly Tri[];
  /** Direction of each part's grain in the frame of the paper. */
  readonly grain: readonly Vec3[];
  readonly axes: Axes;
};
export type Axes = { readonly right: Vec3; readonly up: Vec3; readonly toEye: Vec3 };

/** A face that the eye sees this edge-on counts as not seen: the sine of about a third of a degree. */
const EDGE_ON = 0.005;

export function axesOf(e: Eye): Axes {
  const toEye: Vec3 = [Math.sin(e.round) * Math.cos(e.up), -Math.cos(e.round) * Math.cos(e.up), Math.sin(e.up)];
  const right: Vec3 = [Math.cos(e.round), Math.sin(e.round), 0];
  return { right, up: cross(toEye, right), toEye };
}
export const onPaper = (a: Axes, v: Vec3): Vec3 => [dot(v, a.right), dot(v, a.up), dot(v, a.toEye)];

/** A part whose mesh is missing is left out. */
export function sceneOf(piece: DrawnPiece, eye: Eye): Scene {
  const axes = axesOf(eye);
  const points: Vec3[] = [];
  const tris: Tri[] = [];
  piece.parts.forEach((p, part) => {
    const mesh = piece.meshes.get(p.key);
    if (!mesh) return;
    const by = piece.apart.get(p.path) ?? [0, 0, 0];
    const known = new Map<string, number>();
    const corner = (i: number): number => {
      const own: Vec3 = [mesh.positions[3 * i] ?? 0, mesh.positions[3 * i + 1] ?? 0, mesh.positions[3 * i + 2] ?? 0];
      const name = own.map((n) => Math.round(n * 1e4)).join();
      let at = known.get(name);
      if (at === undefined) {
        at = points.length;
        known.set(name, at);
        points.push(onPaper(axes, add(outPoint(p.frame, own), by)));
      }
      return at;
    };
    const turned = handed(p.frame) < 0;
    mesh.triangleFace.forEach((face, t) => {
      const [a, b, c] = [0, 1, 2].map((k) => corner(mesh.indices[3 * t + k] ?? 0)) as [number, number, number];
      const corners = turned ? ([a, c, b] as const) : ([a, b, c] as const);
      const n = normalOf(corners.map((i) => points[i] as Vec3) as unknown as Triple);
      if (n) tris.push({ part, face, corners, normal: n });
    });
  });
  const grain = piece.parts.map((p) => onPaper(axes, outDir(p.frame, axisVec(p.grain))));
  return { piece, points, tris, front: tris.filter((t) => t.normal[2] > EDGE_ON), grain, axes };
}
export type Triple = readonly [Vec3, Vec3, Vec3];
export const cornersOf = (s: Scene, t: Tri): Triple => t.corners.map((i) => s.points[i] as Vec3) as unknown as Triple;
function normalOf([a, b, c]: Triple): Vec3 | null {
  const n = cross(sub(b, a), sub(c, a));
  const l = length(n);
  return l > 1e-9 ? scale(n, 1 / l) : null;
}
/** A face across the grain of a piece of wood shows its rings. */
export function isEndGrain(s: Scene, t: Tri): boolean {
  const p = s.piece.parts[t.part];
  const g = s.grain[t.part];
  return p !== undefined && g !== undefined && (p.kind === 'wood' || p.kind === 'extra') && Math.abs(dot(t.normal, g)) > 0.985;
}
/** The section across the grain as the rings lie in it: the wider way first, both as axes of the part's record. */
export function sectionOf(stock: { readonly min: Vec3; readonly max: Vec3 }, grain: 'x' | 'y' | 'z'): readonly [0 | 1 | 2, 0 | 1 | 2] {
  const [a, b] = ([0, 1, 2] as const).filter((k) => k !== axisIndex(grain)) as [0 | 1 | 2, 0 | 1 | 2];
  return stock.max[a] - stock.min[a] >= stock.max[b] - stock.min[b] ? [a, b] : [b, a];
}
