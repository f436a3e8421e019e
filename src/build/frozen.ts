/** Records of parts that are already cut, as the document keeps them: read back with care, since a person may have edited the file. */
import { z } from 'zod';
import { partRecord } from '../model/part-record.ts';
import { type Problem, problem } from '../model/problem.ts';
import type { Feature, PartRecord } from '../model/record.ts';

const num = z.number();
const vec3 = z.tuple([num, num, num]);
const vec2 = z.tuple([num, num]);
const loop = z.array(z.strictObject({ at: vec2, via: vec2.optional() })).min(2);
const solid = z.union([
  z.strictObject({ kind: z.literal('prism'), profile: z.array(loop).min(1), from: num, to: num, profileTo: z.array(loop).optional() }),
  z.strictObject({ kind: z.literal('turned'), profile: loop }),
  z.strictObject({ kind: z.literal('half'), normal: vec3, off: num }),
]);
const face = z.union([
  z.strictObject({ of: z.literal('side'), loop: z.int().optional(), corner: z.int() }),
  z.strictObject({ of: z.enum(['from', 'to', 'plane']) }),
]);
const frozen = z.strictObject({
  stock: z.strictObject({ min: vec3, max: vec3 }),
  grain: z.enum(['x', 'y', 'z']),
  wood: z.string(),
  features: z
    .array(
      z.strictObject({
        name: z.string().max(100),
        op: z.enum(['shape', 'add', 'remove', 'late']),
        solid,
        at: z.strictObject({ o: vec3, x: vec3, y: vec3, z: vec3 }),
        faces: z.record(z.string(), face),
        why: z.enum(['joint', 'shape', 'trim']),
      }),
    )
    .max(2000),
  key: z.string().optional(),
});

type Read = { readonly ok: true; readonly record: PartRecord } | { readonly ok: false; readonly problem: Problem };
const known = new WeakMap<object, PartRecord>();
/** The record with its key worked out afresh; once for the same entry of a document. */
export function readFrozen(json: unknown, where: string): Read {
  const before = json !== null && typeof json === 'object' ? known.get(json) : undefined;
  if (before) return { ok: true, record: before };
  const read = readRecord(json, where);
  if (read.ok) known.set(json as object, read.record);
  return read;
}
function readRecord(json: unknown, where: string): Read {
  const r = frozen.safeParse(json);
  if (!r.success) {
    const i = r.error.issues[0];
    return {
      ok: false,
      problem: problem(
        `${where}/${(i?.path ?? []).join('/')}`,
        'the record of this cut part cannot be read. Measure the part again, or take the entry out.',
      ),
    };
  }
  const d = r.data;
  return { ok: true, record: partRecord(d.stock, d.grain, d.wood, d.features as readonly Feature[]) };
}
