/** Short ways to write part records in tests. */
import type { Box } from '../../src/geom/box.ts';
import { type Frame, HOME } from '../../src/geom/frame.ts';
import { type Loop, circle, rectangle } from '../../src/geom/loop.ts';
import type { Vec3 } from '../../src/geom/vec3.ts';
import type { FaceRef, Feature, FeatureOp, PartRecord, Shape } from '../../src/model/record.ts';
import { cutPart } from '../../src/solids/cut.ts';
import type { Solid } from '../../src/solids/solid.ts';

const boxOfSize = (x: number, y: number, z: number): Box => ({ min: [0, 0, 0], max: [x, y, z] });
const record = (stock: Box, features: readonly Feature[] = [], key = 'test'): PartRecord => ({
  stock,
  grain: 'x',
  wood: 'ash',
  features,
  key,
});
export const board = (x: number, y: number, z: number, features: readonly Feature[] = []): PartRecord =>
  record(boxOfSize(x, y, z), features);
export const feature = (
  name: string,
  op: FeatureOp,
  solid: Shape,
  at: Frame = HOME,
  faces: Readonly<Record<string, FaceRef>> = {},
): Feature => ({
  name,
  op,
  solid,
  at,
  faces,
  why: op === 'shape' ? 'shape' : op === 'late' ? 'trim' : 'joint',
});
export const prism = (profile: Loop | readonly Loop[], from: number, to: number): Shape => ({
  kind: 'prism',
  profile: isLoop(profile) ? [profile] : profile,
  from,
  to,
});
const isLoop = (p: Loop | readonly Loop[]): p is Loop => !Array.isArray(p[0]);
/** A block from low to high corner, in the record frame. */
export const block = (name: string, op: FeatureOp, low: Vec3, high: Vec3): Feature =>
  feature(name, op, prism(rectangle(low[0], low[1], high[0], high[1]), low[2], high[2]));
/** A bore of radius r from z = from to z = to of its frame. */
export const bore = (name: string, op: FeatureOp, r: number, from: number, to: number, at: Frame): Feature =>
  feature(name, op, prism(circle(0, 0, r), from, to), at);
/** The solid of a record that is meant to be cuttable; belongs to the open scope. */
export function cutOf(rec: PartRecord, who = 'part'): Solid {
  const cut = cutPart(rec, { who });
  if (!cut.ok) throw new Error(cut.problem);
  return cut.solid;
}
