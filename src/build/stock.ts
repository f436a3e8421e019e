/** Parts before any joint: stock, trims and shapes as a record, the record's frame at the part's datum corner. */
import { type Box, sizeOf } from '../geom/box.ts';
import { type Frame, HOME, moved, outDir } from '../geom/frame.ts';
import { type Vec3, axisIndex, dot, sub } from '../geom/vec3.ts';
import { kindAndVersion } from '../model/catalog.ts';
import type { PartDoc } from '../model/document.ts';
import { asAngle, asLength, asNumber } from '../model/expr/evaluate.ts';
import { type Face, QUADS, isFace } from '../model/ids.ts';
import { nearestWord } from '../model/nearest.ts';
import { type Problem, problem, shown } from '../model/problem.ts';
import type { Feature } from '../model/record.ts';
import type { ShapeSet } from '../shapes/shape.ts';
import { shapes } from '../shapes/shapes.ts';
import type { Resolution, Resolved } from './resolve.ts';

export type StockPart = { readonly resolved: Resolved; readonly doc: PartDoc; readonly stock: Box; readonly frame: Frame; readonly datum: Vec3; readonly grain: 'x' | 'y' | 'z'; readonly features: readonly Feature[] };

/** The corner of the box that the record counts from: the low corner, but for the faces that the part names as its datum. */
export function datumCorner(r: Resolved, doc: PartDoc): Vec3 {
  const datum = (doc.datum ?? []) as readonly Face[];
  return QUADS.map((q, i) => (datum.includes(q.high) && !datum.includes(q.low) ? r.box.max[i] : r.box.min[i])) as unknown as Vec3;
}

/** Stock, trims and shapes of one copy. `unit` of the document decides what bare numbers in shapes mean. */
export function stockPart(r: Resolved, resolution: Resolution, unit: 'mm' | 'in', problems: Problem[]): StockPart {
  const doc = r.instance.doc as PartDoc;
  const datum = datumCorner(r, doc);
  const frame = moved(r.frame, outDir(r.frame, datum));
  const stock: Box = { min: sub(r.box.min, datum), max: sub(r.box.max, datum) };
  const grain = doc.grain ?? longest(stock);
  const features: Feature[] = r.trims.map((t) => ({
    name: 'trim',
    op: 'shape',
    solid: { kind: 'half', normal: t.normal, off: t.off - dot(t.normal, datum) },
    at: HOME,
    faces: { [t.face]: { of: 'plane' } },
    why: 'trim',
  }));
  for (const [i, s] of (doc.shape ?? []).entries()) {
    const where = `parts/${r.instance.id}/shape/${i}`;
    const kind = shapes[kindAndVersion(s.as).id];
    if (!kind) continue;
    const set = shapeSet(s, kind.params, r, resolution, unit, where, datum[axisIndex(grain)], problems);
    if (!set) continue;
    const made = kind.make({ stock, grain }, set);
    if (made.ok) features.push(...made.features);
    else problems.push(problem(where, made.problem));
  }
  return { resolved: r, doc, stock, frame, datum, grain, features };
}
function longest(b: Box): 'x' | 'y' | 'z' {
  const s = sizeOf(b);
  return (['x', 'y', 'z'] as const)[s.indexOf(Math.max(...s))] ?? 'x';
}

type Params = (typeof shapes)[string]['params'];
function shapeSet(s: Readonly<Record<string, unknown>>, params: Params, r: Resolved, resolution: Resolution, unit: 'mm' | 'in', where: string, datum: number, problems: Problem[]): ShapeSet | null {
  const out: Record<string, number | string | readonly Face[]> = {};
  for (const [key, field] of Object.entries(params)) {
    const given = s[key];
    if (given === undefined) continue;
    if (field.kind === 'faces') {
      const faces = faceList(given, r.instance.doc as PartDoc, `${where}/${key}`, problems);
      if (!faces) return null;
      out[key] = faces;
      continue;
    }
    if (field.kind === 'choice') {
      out[key] = String(given);
      continue;
    }
    if (typeof given !== 'string' && typeof given !== 'number') {
      problems.push(problem(`${where}/${key}`, 'a length or an expression is needed here.'));
      return null;
    }
    const v = resolution.evaluate(r.instance, given, `${where}/${key}`);
    if (!v.ok) {
      problems.push(...v.problems);
      return null;
    }
    const n = field.kind === 'angle' ? asAngle(v.value) : field.kind === 'count' || field.kind === 'ratio' ? asNumber(v.value) : asLength(v.value, unit);
    if (!n.ok) {
      problems.push(problem(`${where}/${key}`, n.problem));
      return null;
    }
    out[key] = field.kind === 'place' ? n.v - datum : n.v;
  }
  return out;
}
function faceList(given: unknown, doc: PartDoc, where: string, problems: Problem[]): Face[] | null {
  const words = Array.isArray(given) ? given : [given];
  const out: Face[] = [];
  for (const w of words) {
    const face = typeof w === 'string' ? (isFace(w) ? w : doc.marks?.[w]) : undefined;
    if (face === undefined) {
      problems.push(problem(where, `"${shown(w)}" is neither a face nor a mark of this part.`, nearestWord(String(w), [...Object.keys(doc.marks ?? {}), 'left', 'right', 'front', 'back', 'bottom', 'top'])));
      return null;
    }
    out.push(face as Face);
  }
  return out;
}
/** Faces that stay when a size is measured: the datum, else the face that is given, else the low one. */
export function stayingFace(doc: PartDoc, size: string): Face {
  const q = QUADS.find((k) => k.size === size);
  if (!q) throw new Error(`no size ${size}`);
  const datum = (doc.datum ?? []) as readonly Face[];
  if (datum.includes(q.low)) return q.low;
  if (datum.includes(q.high)) return q.high;
  return doc[q.high] !== undefined && doc[q.low] === undefined ? q.high : q.low;
}
export const facesOf = (axis: 0 | 1 | 2): readonly [Face, Face] => {
  const q = QUADS[axis];
  return [q.low, q.high];
};
