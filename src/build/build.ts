/** Document → parts in place with their joints, drawn or as built. No kernel: records only. */
import type { Box } from '../geom/box.ts';
import { compose, outDir, seenFrom } from '../geom/frame.ts';
import type { Vec3 } from '../geom/vec3.ts';
import { DEFAULT_CUTTING } from '../joints/cutters.ts';
import type { Cutting, Family } from '../joints/family.ts';
import type { Document } from '../model/document.ts';
import { asLength } from '../model/expr/evaluate.ts';
import { parseExpr } from '../model/expr/parse.ts';
import { QUADS, byCodePoint, partWords } from '../model/ids.ts';
import { featureOrder, partRecord } from '../model/part-record.ts';
import { type Problem, problem, shown } from '../model/problem.ts';
import type { Feature } from '../model/record.ts';
import { readFrozen } from './frozen.ts';
import { type Instances, expand, findFor } from './instances.ts';
import { joinAll } from './join.ts';
import { type Build, type Extra, type JointPlace, type Origin, type Part, roleKey } from './part.ts';
import { piecesOf } from './pieces.ts';
import { type Measured, type Overrides, type Resolution, resolve } from './resolve.ts';
import { type StockPart, stayingFace, stockPart } from './stock.ts';

export type Families = Readonly<Record<string, Family>>;
export type Pass = 'drawn' | 'built';
export type Built = { readonly drawn: Build; readonly built: Build; readonly problems: readonly Problem[] };

/**
 * The whole piece twice: as drawn (planning, originals of cut parts, 'same part') and as built (fits, lists). Without measurements and
 * cut parts both are the same object. Never throws for what the document says.
 */
export function buildPiece(doc: Document, families: Families): Built {
  const instances = expand(doc);
  const drawnSizes = resolve(doc, new Map(), instances);
  const drawn = buildPass(doc, families, instances, drawnSizes, false);
  const overrides = measurements(doc, drawnSizes, instances);
  const cut = Object.keys(doc.bench?.cut ?? {}).length > 0;
  if (overrides.problems.length) return { drawn, built: drawn, problems: [...drawn.problems, ...overrides.problems] };
  if (overrides.map.size === 0 && !cut) return { drawn, built: drawn, problems: drawn.problems };
  const builtSizes = overrides.map.size ? resolve(doc, overrides.map, instances) : drawnSizes;
  const built = buildPass(doc, families, instances, builtSizes, true);
  const seen = new Set(drawn.problems.map((p) => p.where + p.what));
  return { drawn, built, problems: [...drawn.problems, ...built.problems.filter((p) => !seen.has(p.where + p.what))] };
}

/** Measured sizes by path and word; what cannot be measured so is a problem. */
function measurements(doc: Document, sizes: Resolution, instances: Instances): { map: Overrides; problems: Problem[] } {
  const map = new Map<string, Map<'width' | 'depth' | 'height', Measured>>();
  const problems: Problem[] = [];
  for (const [i, m] of (doc.bench?.measured ?? []).entries()) {
    const where = `bench/measured/${i}`;
    const e = parseExpr(m.of, doc.units);
    const q = e.ok && e.expr.k === 'read' ? QUADS.find((k) => e.expr.k === 'read' && k.size === e.expr.of) : undefined;
    if (!e.ok || e.expr.k !== 'read' || !q) {
      problems.push(problem(`${where}/of`, `"${shown(m.of)}" cannot be measured: name a width, depth or height of one copy, such as "leg:left:front.width".`));
      continue;
    }
    const found = findFor(null, e.expr.path, `${where}/of`, instances);
    if (!found.ok) {
      problems.push(found.problem);
      continue;
    }
    const v = sizes.evaluate(null, m.is, `${where}/is`);
    const n = v.ok ? asLength(v.value, doc.units) : null;
    if (!v.ok) problems.push(...v.problems);
    else if (n && !(n.ok && n.v > 0)) problems.push(problem(`${where}/is`, n.ok ? 'a measured size must be above 0.' : n.problem));
    else if (n?.ok) {
      const list = map.get(found.instance.path) ?? new Map<'width' | 'depth' | 'height', Measured>();
      list.set(q.size, { is: n.v, stays: found.instance.kind === 'part' ? stayingFace(found.instance.doc as never, q.size) : q.low });
      map.set(found.instance.path, list);
    }
  }
  return { map, problems };
}

/** Cutters of the document, or the usual ones. */
function cuttingOf(doc: Document, sizes: Resolution, problems: Problem[]): Cutting {
  const read = (list: readonly (string | number)[] | undefined, usual: readonly number[], key: string): readonly number[] => {
    if (!list) return usual;
    return list.flatMap((t, i) => {
      const v = sizes.evaluate(null, t, `cutters/${key}/${i}`);
      const n = v.ok ? asLength(v.value, doc.units) : null;
      if (!v.ok) problems.push(...v.problems);
      else if (n && !n.ok) problems.push(problem(`cutters/${key}/${i}`, n.problem));
      return n?.ok && n.v > 0 ? [n.v] : [];
    });
  };
  const usual = DEFAULT_CUTTING[doc.units];
  const c = doc.cutters ?? {};
  return { mortiseWidths: read(c.mortises, usual.mortiseWidths, 'mortises'), bits: read(c.bits, usual.bits, 'bits'), grooveWidths: read(c.grooves, usual.grooveWidths, 'grooves') };
}

function buildPass(doc: Document, families: Families, instances: Instances, resolution: Resolution, asBuilt: boolean): Build {
  const problems: Problem[] = [...resolution.problems];
  const stock = new Map<string, StockPart>();
  for (const r of resolution.boxes.values()) if (r.instance.kind === 'part') stock.set(r.instance.path, stockPart(r, resolution, doc.units, problems));
  const places = joinAll({ doc, families, instances, resolution, stock, cutting: cuttingOf(doc, resolution, problems) }, problems);
  const cuts = new Map<string, { feature: Feature; origin: Origin }[]>();
  const extras = new Map<string, Extra>();
  for (const p of places) gather(p, stock, cuts, extras);
  const parts = new Map<string, Part>();
  for (const path of [...stock.keys()].sort(byCodePoint)) {
    const s = stock.get(path);
    if (s) parts.set(path, finishPart(s, cuts.get(path) ?? [], resolution, doc, problems, asBuilt));
  }
  return { parts, extras, places, resolution, instances, problems };
}

/** Features of one place, moved from the meeting frame into each part's record frame; its extras into the world. */
function gather(p: JointPlace, stock: ReadonlyMap<string, StockPart>, cuts: Map<string, { feature: Feature; origin: Origin }[]>, extras: Map<string, Extra>): void {
  if (!p.made) return;
  const origin = { joint: p.joint, place: p.place };
  for (const [role, paths] of Object.entries(p.roles))
    paths.forEach((path, i) => {
      const part = stock.get(path);
      if (!part || !p.made) return;
      const toRecord = seenFrom(part.frame, p.meeting.frame);
      const list = cuts.get(path) ?? [];
      for (const f of p.made.features[roleKey(p.family, role, i)] ?? []) list.push({ feature: { ...f, at: compose(toRecord, f.at) }, origin });
      cuts.set(path, list);
    });
  for (const e of p.made.extras) {
    const path = `${p.joint}/${p.place}/${e.name.replaceAll(' ', '_')}`;
    extras.set(path, { path, words: e.words, ...origin, record: e.record, frame: compose(p.meeting.frame, e.at), hardware: e.hardware ?? false, enters: outDir(p.meeting.frame, e.enters), part: e });
  }
}

function finishPart(s: StockPart, cuts: readonly { feature: Feature; origin: Origin }[], resolution: Resolution, doc: Document, problems: Problem[], asBuilt: boolean): Part {
  const inst = s.resolved.instance;
  const all: { feature: Feature; origin: Origin }[] = [...s.features.map((feature) => ({ feature, origin: null })), ...cuts];
  const features = all.map((a) => a.feature);
  const record = partRecord(s.stock, s.grain, s.doc.wood, features);
  const origins = featureOrder(features).map((i) => all[i]?.origin ?? null);
  const part: Part = {
    path: inst.path,
    id: inst.id,
    words: partWords(inst.id, inst.names, s.doc.name),
    wood: s.doc.wood,
    instance: inst,
    doc: s.doc,
    group: inst.parent?.path ?? null,
    resolved: s.resolved,
    record,
    frame: s.frame,
    origins,
    pieces: piecesOf(s.resolved, s.stock, resolution, doc.units, problems).map((p) => p.box),
  };
  const frozen = asBuilt ? doc.bench?.cut?.[inst.path] : undefined;
  if (!frozen) return part;
  const read = readFrozen(frozen.record, `bench/cut/${inst.path}/record`);
  if (!read.ok) {
    problems.push(read.problem);
    return part;
  }
  const from = read.record;
  return { ...part, record: from, origins: from.features.map(() => null), pieces: [from.stock], frozen: { on: frozen.on, now: record } };
}

/** Finished sizes over everything, adds included: along the grain, then the wider and the thinner way across; mm. */
export function finishedSize(record: { readonly stock: Box; readonly grain: 'x' | 'y' | 'z' }, blank: Box): { length: number; width: number; thickness: number } {
  const size: Vec3 = [blank.max[0] - blank.min[0], blank.max[1] - blank.min[1], blank.max[2] - blank.min[2]];
  const k = 'xyz'.indexOf(record.grain);
  const across = size.filter((_, i) => i !== k).sort((a, b) => b - a);
  return { length: size[k] ?? 0, width: across[0] ?? 0, thickness: across[1] ?? 0 };
}
