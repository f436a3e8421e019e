/** Parts before any joint: stock, trims and shapes as a record, the record's frame at the part's datum corner. */
import { type Box, sizeOf } from '../geom/box.ts';
import { HOME, moved, outDir, sameFrame } from '../geom/frame.ts';
import { type Axis, type Vec3, axisIndex, dot, sameVec, sub, tidy, tidy3 } from '../geom/vec3.ts';
import { kindAndVersion } from '../model/catalog.ts';
import type { PartDoc } from '../model/document.ts';
import { asAngle, asLength, asNumber } from '../model/expr/evaluate.ts';
import { type Face, QUADS, isFace } from '../model/ids.ts';
import { nearestWord } from '../model/nearest.ts';
import { type Problem, problem, shown } from '../model/problem.ts';
import type { Feature } from '../model/record.ts';
import type { ShapeSet } from '../shapes/shape.ts';
import { shapes } from '../shapes/shapes.ts';
import type { Blank, BuildCache } from './cache.ts';
import type { StockPart } from './part.ts';
import type { Resolution, Resolved } from './resolve.ts';

/** The corner of the box that the record counts from: the low corner, but for the faces that the part names as its datum. */
function datumCorner(r: Resolved, doc: PartDoc): Vec3 {
  const datum = (doc.datum ?? []) as readonly Face[];
  return QUADS.map((q, i) => (datum.includes(q.high) && !datum.includes(q.low) ? r.box.max[i] : r.box.min[i])) as unknown as Vec3;
}

/** Stock, trims and shapes of one copy: `before` itself when nothing about it has changed. */
export function stockPart(
  r: Resolved,
  resolution: Resolution,
  unit: 'mm' | 'in',
  cache: BuildCache,
  before: StockPart | undefined,
  problems: Problem[],
): StockPart {
  const doc = r.instance.doc as PartDoc;
  const same = before && sameResolved(before.resolved, r);
  if (same && !doc.shape) return before;
  const datum = datumCorner(r, doc);
  const box: Box = { min: tidy3(sub(r.box.min, datum)), max: tidy3(sub(r.box.max, datum)) };
  const grain = doc.grain ?? longest(box);
  const trims = r.trims.map((t) => ({ face: t.face, normal: tidy3(t.normal, 1e12), off: tidy(t.off - dot(t.normal, datum)) }));
  const sets = (doc.shape ?? []).map((s, i) => {
    const kind = shapes[kindAndVersion(s.as).id];
    return kind
      ? shapeSet(s, kind.params, r, resolution, unit, `parts/${r.instance.id}/shape/${i}`, datum[axisIndex(grain)], problems)
      : null;
  });
  const key = JSON.stringify([box, grain, doc.wood, doc.marks ?? 0, trims, doc.shape?.map((s) => s.as) ?? 0, sets]);
  const blank = cache.blanks.of(key, () => makeBlank(cache.next(), box, grain, trims, doc, sets));
  for (const p of blank.problems) problems.push(problem(`parts/${r.instance.id}/shape/${p.shape}`, p.what));
  if (same && before.blank === blank.id) return before;
  return {
    resolved: r,
    doc,
    frame: moved(r.frame, outDir(r.frame, datum)),
    datum,
    grain,
    stock: blank.stock,
    features: blank.features,
    blank: blank.id,
  };
}
function makeBlank(id: number, stock: Box, grain: Axis, trims: Resolved['trims'], doc: PartDoc, sets: readonly (ShapeSet | null)[]): Blank {
  const features: Feature[] = trims.map((t) => ({
    name: 'trim',
    op: 'shape',
    solid: { kind: 'half', normal: t.normal, off: t.off },
    at: HOME,
    faces: { [t.face]: { of: 'plane' } },
    why: 'trim',
  }));
  const problems: { shape: number; what: string }[] = [];
  for (const [i, set] of sets.entries()) {
    const kind = shapes[kindAndVersion(doc.shape?.[i]?.as ?? '').id];
    if (!set || !kind) continue;
    const made = kind.make({ stock, grain }, set);
    if (made.ok) features.push(...made.features);
    else problems.push({ shape: i, what: made.problem });
  }
  return { id, stock, features, problems };
}
/** Nothing that the resolution says of a copy is different. */
function sameResolved(a: Resolved, b: Resolved): boolean {
  return (
    a.instance === b.instance &&
    sameFrame(a.frame, b.frame) &&
    sameVec(a.box.min, b.box.min) &&
    sameVec(a.box.max, b.box.max) &&
    a.trims.length === b.trims.length &&
    a.trims.every((t, i) => t.face === b.trims[i]?.face && t.off === b.trims[i]?.off && sameVec(t.normal, b.trims[i].normal)) &&
    a.misfits.length === b.misfits.length &&
    a.misfits.every((m, i) => m.size === b.misfits[i]?.size && m.by === b.misfits[i]?.by && m.stays === b.misfits[i]?.stays)
  );
}
function longest(b: Box): Axis {
  const s = sizeOf(b);
  return (['x', 'y', 'z'] as const)[s.indexOf(Math.max(...s))] ?? 'x';
}

type Params = (typeof shapes)[string]['params'];
function shapeSet(
  s: Readonly<Record<string, unknown>>,
  params: Params,
  r: Resolved,
  resolution: Resolution,
  unit: 'mm' | 'in',
  where: string,
  datum: number,
  problems: Problem[],
): ShapeSet | null {
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
      out[key] = typeof given === 'string' ? given : shown(given);
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
    const n =
      field.kind === 'angle'
        ? asAngle(v.value)
        : field.kind === 'count' || field.kind === 'ratio'
          ? asNumber(v.value)
          : asLength(v.value, unit);
    if (!n.ok) {
      problems.push(problem(`${where}/${key}`, n.problem));
      return null;
    }
    out[key] = field.kind === 'place' ? tidy(n.v - datum) : n.v;
  }
  return out;
}
function faceList(given: unknown, doc: PartDoc, where: string, problems: Problem[]): Face[] | null {
  const words = Array.isArray(given) ? given : [given];
  const out: Face[] = [];
  for (const w of words) {
    const face = typeof w === 'string' ? (isFace(w) ? w : doc.marks?.[w]) : undefined;
    if (face === undefined) {
      problems.push(
        problem(
          where,
          `"${shown(w)}" is neither a face nor a mark of this part.`,
          nearestWord(String(w), [...Object.keys(doc.marks ?? {}), 'left', 'right', 'front', 'back', 'bottom', 'top']),
        ),
      );
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
