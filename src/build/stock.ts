/** Parts before any joint: stock, trims and shapes as a record, the record's frame at the part's datum corner. */
import { type Box, sizeOf } from '../geom/box.ts';
import { HOME, moved, outDir, sameFrame } from '../geom/frame.ts';
import { type Axis, type Vec2, type Vec3, axisIndex, dot, sameVec, sub, tidy, tidy3 } from '../geom/vec3.ts';
import { kindAndVersion } from '../model/catalog.ts';
import type { PartDoc } from '../model/document.ts';
import { asAngle, asLength, asNumber } from '../model/expr/evaluate.ts';
import { type Face, QUADS, isFace } from '../model/ids.ts';
import { nearestWord } from '../model/nearest.ts';
import { type Problem, problem, shown } from '../model/problem.ts';
import type { Feature } from '../model/record.ts';
import { pointAxes } from '../shapes/flat.ts';
import type { Edge, ShapePart, ShapeSays, ShapeSet, Spot } from '../shapes/shape.ts';
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
      ? shapeSet(s, kind.params, r, { stock: box, grain }, resolution, unit, `parts/${r.instance.id}/shape/${i}`, datum, problems)
      : null;
  });
  const key = JSON.stringify([box, grain, doc.wood, doc.marks ?? 0, trims, doc.shape?.map((s) => s.as) ?? 0, sets]);
  const blank = cache.blanks.of(key, () => makeBlank(cache.next(), box, grain, trims, doc, sets));
  for (const p of blank.problems) {
    const params = shapes[kindAndVersion(doc.shape?.[p.shape]?.as ?? '').id]?.params ?? {};
    problems.push(
      problem(`parts/${r.instance.id}/shape/${p.shape}`, p.what, p.nearest && nearestText(p.nearest, params, datum, { stock: box, grain })),
    );
  }
  if (same && before.blank === blank.id) return before;
  return {
    resolved: r,
    doc,
    frame: moved(r.frame, outDir(r.frame, datum)),
    datum,
    grain,
    stock: blank.stock,
    features: blank.features,
    says: blank.says,
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
  const problems: Blank['problems'][number][] = [];
  const says: ShapeSays[] = [];
  for (const [i, set] of sets.entries()) {
    const kind = shapes[kindAndVersion(doc.shape?.[i]?.as ?? '').id];
    if (!set || !kind) continue;
    const made = kind.make({ stock, grain }, set);
    if (made.ok) {
      features.push(...made.features);
      says.push(...(made.says ?? []));
    } else problems.push({ shape: i, what: made.problem, ...(made.nearest ? { nearest: made.nearest } : {}) });
  }
  return { id, stock, features, says, problems };
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
  part: ShapePart,
  resolution: Resolution,
  unit: 'mm' | 'in',
  where: string,
  datum: Vec3,
  problems: Problem[],
): ShapeSet | null {
  const out: Record<string, ShapeSet[string]> = {};
  const length = (given: unknown, at: string, kind: string = 'length'): number | null =>
    sizeIn(given, kind, r, resolution, unit, at, problems);
  // Points last: on which axes they are read may hang on another setting.
  const fields = Object.entries(params).sort(([, a], [, b]) => Number(a.kind === 'points') - Number(b.kind === 'points'));
  for (const [key, field] of fields) {
    const given = s[key];
    if (given === undefined) continue;
    const at = `${where}/${key}`;
    if (field.kind === 'faces' || field.kind === 'edges') {
      const list =
        field.kind === 'faces'
          ? faceList(given, r.instance.doc as PartDoc, at, problems)
          : edgeList(given, r.instance.doc as PartDoc, at, problems);
      if (!list) return null;
      out[key] = list;
      continue;
    }
    if (field.kind === 'points') {
      const [a, b] = pointAxes(field.on, part, out);
      const off: Vec2 = [datum[axisIndex(a)], b ? datum[axisIndex(b)] : 0];
      const list = pointList(
        given,
        (v, w, k) => {
          const n = length(v, w);
          return n === null ? null : tidy(n - off[k]);
        },
        at,
        problems,
      );
      if (!list) return null;
      out[key] = list;
      continue;
    }
    if (field.kind === 'choice') {
      out[key] = typeof given === 'string' ? given : shown(given);
      continue;
    }
    const n = length(given, at, field.kind);
    if (n === null) return null;
    out[key] = field.kind === 'place' ? tidy(n - datum[axisIndex(part.grain)]) : n;
  }
  return out;
}
/** A size as a number of mm, radians or a plain one; null with a problem where it is none. */
function sizeIn(
  given: unknown,
  kind: string,
  r: Resolved,
  resolution: Resolution,
  unit: 'mm' | 'in',
  where: string,
  problems: Problem[],
): number | null {
  if (typeof given !== 'string' && typeof given !== 'number') {
    problems.push(problem(where, 'a length or an expression is needed here.'));
    return null;
  }
  const v = resolution.evaluate(r.instance, given, where);
  if (!v.ok) {
    problems.push(...v.problems);
    return null;
  }
  const n = kind === 'angle' ? asAngle(v.value) : kind === 'count' || kind === 'ratio' ? asNumber(v.value) : asLength(v.value, unit);
  if (!n.ok) {
    problems.push(problem(where, n.problem));
    return null;
  }
  return n.v;
}
/** Edges as "top front", each two faces or marks that may meet. */
function edgeList(given: unknown, doc: PartDoc, where: string, problems: Problem[]): Edge[] | null {
  const out: Edge[] = [];
  for (const w of Array.isArray(given) ? given : [given]) {
    const words = typeof w === 'string' ? w.trim().split(/\s+/) : [];
    if (words.length !== 2) {
      problems.push(problem(where, `"${shown(w)}" is no edge: name its two faces or marks.`, 'top front'));
      return null;
    }
    const faces = faceList(words, doc, where, problems);
    if (!faces) return null;
    out.push([faces[0] as Face, faces[1] as Face]);
  }
  return out;
}
const MOST_POINTS = 200;
/** Points as [a, b] or { at: [a, b], via, by }. */
function pointList(
  given: unknown,
  coordinate: (v: unknown, where: string, k: 0 | 1) => number | null,
  where: string,
  problems: Problem[],
): Spot[] | null {
  const wrong = (at: string, what: string): null => {
    problems.push(problem(at, what));
    return null;
  };
  if (!Array.isArray(given) || given.length === 0 || given.length > MOST_POINTS)
    return wrong(where, `a list of 1 to ${MOST_POINTS} points is needed here: [a, b] or { "at": [a, b], … } each.`);
  const pair = (v: unknown, at: string): Vec2 | null => {
    if (!Array.isArray(v) || v.length !== 2) return wrong(at, 'a point is two lengths: [a, b].');
    const [a, b] = [coordinate(v[0], `${at}/0`, 0), coordinate(v[1], `${at}/1`, 1)];
    return a === null || b === null ? null : [a, b];
  };
  const out: Spot[] = [];
  for (const [i, p] of (given as readonly unknown[]).entries()) {
    const at = `${where}/${i}`;
    const long = p !== null && typeof p === 'object' && !Array.isArray(p) ? (p as Readonly<Record<string, unknown>>) : { at: p };
    const strange = Object.keys(long).find((k) => !['at', 'via', 'by'].includes(k));
    if (strange !== undefined) return wrong(at, `a point has no "${shown(strange)}"; it has at, via and by.`);
    if (long['by'] !== undefined && typeof long['by'] !== 'string') return wrong(`${at}/by`, 'a word is needed here.');
    const spot = pair(long['at'], at);
    const via = long['via'] === undefined ? undefined : pair(long['via'], `${at}/via`);
    if (!spot || via === null) return null;
    out.push({ at: spot, ...(via ? { via } : {}), ...(typeof long['by'] === 'string' ? { by: long['by'] } : {}) });
  }
  return out;
}
/** Settings that would do, as a maker writes them. */
function nearestText(set: ShapeSet, params: Params, datum: Vec3, part: ShapePart): string {
  const mm = (n: number): string => `${Number(n.toFixed(3))} mm`;
  const off = (k: Axis | null): number => (k ? datum[axisIndex(k)] : 0);
  const one = (key: string, v: ShapeSet[string]): string => {
    const field = params[key];
    if (typeof v === 'string') return v;
    if (typeof v === 'number') {
      if (field?.kind === 'angle') return `${Number(((v * 180) / Math.PI).toFixed(3))} deg`;
      if (field?.kind === 'count' || field?.kind === 'ratio') return String(v);
      return mm(field?.kind === 'place' ? v + off(part.grain) : v);
    }
    if (field?.kind !== 'points') return (v as readonly (Face | Edge)[]).map((e) => (typeof e === 'string' ? e : e.join(' '))).join(', ');
    const [a, b] = pointAxes(field.on, part, set);
    return (v as readonly Spot[]).map((p) => `[${mm(p.at[0] + off(a))}, ${mm(p.at[1] + off(b))}]`).join(', ');
  };
  return shown(
    Object.entries(set)
      .map(([k, v]) => `${k}: ${one(k, v)}`)
      .join('; '),
    200,
  );
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
