/** A body's triangles read out of the kernel, in full precision. */
import { type Body, warped } from './kernel.ts';
import type { Solid } from './solid.ts';

export type Reading = {
  /** xyz of each corner, mm, float64, each corner once. */
  readonly positions: Float64Array;
  /** Three corners a triangle, counter-clockwise from outside. */
  readonly triangles: Uint32Array;
  /** For each triangle the flat side of its original that it lies on; equal numbers mean one plane, within a run. */
  readonly sides: Uint32Array;
  /** Runs of triangles that come from one original body. */
  readonly runs: readonly { readonly original: number; readonly start: number; readonly end: number }[];
};

/**
 * The kernel's own mesh holds single precision (6e-5 mm at a metre), so the corners are read while it believes that they are
 * to be bent; corners come in the same order as in the mesh.
 */
export function readBody(body: Body): Reading {
  const mesh = body.getMesh();
  let positions: Float64Array = new Float64Array(0);
  if (mesh.numVert > 0)
    warped(body, (corners) => {
      positions = corners.slice();
    }).delete();
  if (positions.length !== 3 * mesh.numVert) throw new Error(`the kernel gave ${positions.length / 3} corners for ${mesh.numVert}`);
  const runs = Array.from(mesh.runOriginalID, (original, i) => ({
    original,
    start: (mesh.runIndex[i] ?? 0) / 3,
    end: (mesh.runIndex[i + 1] ?? mesh.triVerts.length) / 3,
  }));
  return { positions, triangles: mesh.triVerts, sides: mesh.faceID, runs };
}

const read = new WeakMap<Body, Reading>();
/** The triangles of a solid; read once. */
export function readSolid(solid: Solid): Reading {
  const known = read.get(solid.body);
  if (known) return known;
  const reading = readBody(solid.body);
  read.set(solid.body, reading);
  return reading;
}
