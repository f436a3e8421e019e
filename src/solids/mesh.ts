/** A solid as the screen and the papers take it: triangles with named faces, and the lines along its creases. */
import type { Vec3 } from '../geom/vec3.ts';
import { creasesOf } from './crease.ts';
import { type Faced, facesOf, normalOf } from './faces.ts';
import { cornersAt, measure } from './measure.ts';
import type { Face } from './skin.ts';
import type { Solid } from './solid.ts';

/** Plain arrays, no kernel behind them: what `MeshView` of the piece wants, record frame, mm. */
export type PartMesh = {
  /** The record's. */
  readonly key: string;
  /** xyz triples; corners are not shared between faces. */
  readonly positions: Float32Array<ArrayBuffer>;
  /** Unit normals, one a corner. */
  readonly normals: Float32Array<ArrayBuffer>;
  /** Three corners a triangle, counter-clockwise from outside. */
  readonly indices: Uint32Array<ArrayBuffer>;
  /** For each triangle the index of its face in `faces`. */
  readonly triangleFace: Uint16Array<ArrayBuffer>;
  readonly faces: readonly string[];
  /** Line pieces, xyz xyz. */
  readonly edges: Float32Array<ArrayBuffer>;
  readonly volume: number;
  readonly area: number;
  readonly centre: Vec3;
};

/** Everything the viewer needs of one distinct part; record frame, mm. */
export function meshOf(solid: Solid): PartMesh {
  const faced = facesOf(solid);
  const { volume, area, centre } = measure(solid);
  return {
    key: solid.record.key,
    ...cornersOf(faced),
    triangleFace: faced.triangleFace,
    faces: faced.faces.map((f) => f.name),
    edges: creasesOf(faced),
    volume,
    area,
    centre,
  };
}

/** Corners are shared within a face that is flat or smooth, and with no other. */
function cornersOf({ reading, faces, triangleFace }: Faced): Pick<PartMesh, 'positions' | 'normals' | 'indices'> {
  const positions: number[] = [];
  const normals: number[] = [];
  const indices = new Uint32Array(reading.triangles.length);
  const corners = reading.positions.length / 3;
  const known = new Map<number, number>();
  const at = reading.positions;
  triangleFace.forEach((f, t) => {
    const face = faces[f]?.face as Face;
    for (let k = 0; k < 3; k++) {
      const corner = reading.triangles[3 * t + k] ?? 0;
      // On a ruled face each triangle has a normal, and so corners, of its own.
      const key = face.form === 'ruled' ? -3 * t - k - 1 : f * corners + corner;
      let i = known.get(key);
      if (i === undefined) {
        i = positions.length / 3;
        const p: Vec3 = [at[3 * corner] ?? 0, at[3 * corner + 1] ?? 0, at[3 * corner + 2] ?? 0];
        const n = face.form === 'flat' ? face.normal : normalOf(face, p, cornersAt(reading, t));
        positions.push(p[0], p[1], p[2]);
        normals.push(n[0], n[1], n[2]);
        known.set(key, i);
      }
      indices[3 * t + k] = i;
    }
  });
  return { positions: new Float32Array(positions), normals: new Float32Array(normals), indices };
}
