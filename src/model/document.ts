/** The document: what a maker writes down about one piece. Plain JSON; this schema is also published as JSON Schema. */
import { z } from 'zod';
import { COPY_NAME, FACES, ID, QUADS, QUAD_WORDS, type QuadWord, RESERVED } from './ids.ts';

// A strict content-security policy forbids the code generation that the library would try.
z.config({ jitless: true });

export const VERSION = 1;
export const LIMITS = {
  bytes: 4 * 1024 * 1024,
  depth: 24,
  copies: 5000,
  places: 20000,
  metres: 100,
  made: 2,
  entries: 10000,
  title: 200,
} as const;

const text = z.string().max(2000);
/** A length, angle or number as a maker types it, or an expression of such. */
const expr = z
  .union([z.string().min(1).max(1000), z.number()])
  .describe('a length as typed ("1-1/2 in", "20"), or an expression ("leg:left.right + 3")');
const point = z.tuple([expr, expr, expr]);
const axis = z.enum(['x', 'y', 'z']);
const path = z.string().min(1).max(300).describe('id and copy names: leg:left:front; * stands for every copy');
const meets = z.strictObject({ meets: z.string().min(1).max(300).describe('a face that trims this end: "seat.bottom"') });
const edge = z.union([expr, meets]);
const linePoint = z.union([point, z.strictObject({ on: path, z: expr })]);

const id = z
  .string()
  .regex(ID)
  .refine((s) => !RESERVED.has(s), { error: 'this word is reserved' });
const copyName = z.string().regex(COPY_NAME);
const copies = z
  .array(
    z.union([
      z.strictObject({ mirror: axis, at: expr.optional(), names: z.tuple([copyName, copyName]) }),
      z.strictObject({ row: axis, count: z.int().min(1).max(LIMITS.copies), step: expr, names: z.array(copyName).optional() }),
      z.strictObject({
        ring: axis,
        around: point.optional(),
        count: z.int().min(1).max(LIMITS.copies),
        names: z.array(copyName).optional(),
      }),
    ]),
  )
  .max(6);
const turn = z.array(z.tuple([axis, expr])).max(6);
const frameKeys = {
  in: id.optional(),
  at: point.optional(),
  turn: turn.optional(),
  from: linePoint.optional(),
  to: linePoint.optional(),
  copies: copies.optional(),
};
const quadKeys = Object.fromEntries(QUAD_WORDS.map((w) => [w, edge.optional()])) as Record<QuadWord, z.ZodOptional<typeof edge>>;

const settings = z.record(z.string().regex(/^[a-z][a-z0-9_]{0,39}$/), z.union([expr, z.boolean(), z.array(z.string().max(200)).max(20)]));
const shape = z.looseObject({ as: z.string().regex(/^[a-z][a-z0-9_]*@\d+$/) });
const made = z
  .array(
    z.union([
      z.strictObject({ layers: z.array(expr).min(1).max(40), along: z.enum(['width', 'depth', 'height']) }),
      z.strictObject({
        staves: z.strictObject({ widest: expr, alternate: z.boolean().optional() }),
        along: z.enum(['width', 'depth', 'height']),
      }),
    ]),
  )
  .max(LIMITS.made);

const part = z
  .strictObject({
    ...quadKeys,
    ...frameKeys,
    wood: z.string().min(1).max(60),
    grain: axis.optional().describe('which way the fibres run; may be left out only for stuff that is not wood'),
    name: z.string().min(1).max(80).optional(),
    marks: z.record(z.string().regex(ID), z.enum(FACES)).optional(),
    datum: z.array(z.enum(FACES)).max(3).optional(),
    shape: z.array(shape).max(60).optional(),
    made: made.optional(),
    loose: z.boolean().optional().describe('true when nothing need hold it: a shelf that lies, a tray'),
  })
  .describe('a piece of wood (or glass, metal …) as a box, with exactly two of the four words given on each axis');
const space = z.strictObject({ ...quadKeys, ...frameKeys }).describe('a box without wood: an opening, a niche, the floor');
const group = z
  .strictObject({
    ...frameKeys,
    name: z.string().min(1).max(80).optional(),
    opens: z.strictObject({ slide: axis.optional(), swing: axis.optional(), by: expr }).optional(),
  })
  .describe('a sub-assembly: parts that say "in" it move and are copied with it');
const joint = z.strictObject({
  as: z.string().regex(/^[a-z][a-z0-9_]*@\d+$/),
  places: z
    .array(z.record(z.string().max(40), z.union([path, z.array(path).min(1).max(40)])))
    .min(1)
    .max(LIMITS.places),
  set: settings.optional(),
});
const lengths = z.array(expr).min(1).max(60);
const measured = z.strictObject({
  of: z.string().min(1).max(300),
  is: expr,
  with: z.string().max(60).optional(),
  on: z.string().max(40).optional(),
  mc: z.number().min(0).max(200).optional(),
});

export const documentSchema = z.strictObject({
  dryfit: z.literal(VERSION),
  title: z.string().max(LIMITS.title),
  units: z.enum(['mm', 'in']),
  note: text.optional(),
  sizes: z.record(id, expr).optional(),
  spaces: z.record(id, space).optional(),
  groups: z.record(id, group).optional(),
  parts: z.record(id, part).optional(),
  joints: z.record(id, joint).optional(),
  cutters: z.strictObject({ mortises: lengths.optional(), bits: lengths.optional(), grooves: lengths.optional() }).optional(),
  bench: z
    .strictObject({
      measured: z.array(measured).max(2000).optional(),
      cut: z.record(path, z.strictObject({ on: z.string().max(40), record: z.json() })).optional(),
    })
    .optional(),
  placed: z.strictObject({ key: z.string().max(200), plan: z.json() }).optional(),
});

export type Document = z.infer<typeof documentSchema>;
export type Expression = string | number;
export type PartDoc = z.infer<typeof part>;
export type SpaceDoc = z.infer<typeof space>;
export type GroupDoc = z.infer<typeof group>;
export type JointDoc = z.infer<typeof joint>;
export type CopyDoc = z.infer<typeof copies>[number];
export type LinePointDoc = z.infer<typeof linePoint>;

/** Every key that an object of the document may have, by kind, for the nearest known name. */
export const KNOWN_KEYS: readonly string[] = [
  ...new Set([
    ...Object.keys(documentSchema.shape),
    ...Object.keys(part.shape),
    ...Object.keys(group.shape),
    ...Object.keys(joint.shape),
    ...QUADS.flatMap((q) => [q.low, q.high, q.size, q.mid]),
    'meets',
    'mirror',
    'names',
    'row',
    'ring',
    'count',
    'step',
    'around',
    'layers',
    'staves',
    'along',
    'widest',
    'alternate',
    'measured',
    'cut',
    'of',
    'is',
    'with',
    'record',
    'mortises',
    'bits',
    'grooves',
    'slide',
    'swing',
    'by',
    'key',
    'plan',
  ]),
];
