/** Document → parts in place with their joints, drawn or as built. No kernel: records only. */
import type { Box } from '../geom/box.ts';
import { type Vec3, sameVec } from '../geom/vec3.ts';
import { DEFAULT_CUTTING } from '../joints/cutters.ts';
import type { Cutting, Family } from '../joints/family.ts';
import type { Document } from '../model/document.ts';
import { asLength } from '../model/expr/evaluate.ts';
import { parseExpr } from '../model/expr/parse.ts';
import { QUADS, byCodePoint, partWords } from '../model/ids.ts';
import { nearestWord } from '../model/nearest.ts';
import { recordOf, signed } from '../model/part-record.ts';
import { type Problem, problem, shown } from '../model/problem.ts';
import { type BuildCache, type Finished, type PartCut, type Pass, type Placing, openBuildCache, sweepBuildCache } from './cache.ts';
import { readFrozen } from './frozen.ts';
import { type Instances, expand, findFor } from './instances.ts';
import { joinAll } from './join.ts';
import { type Build, type Extra, type Part, type StockPart } from './part.ts';
import { piecesOf } from './pieces.ts';
import { type Measured, type Overrides, type Resolution, resolve } from './resolve.ts';
import { stayingFace, stockPart } from './stock.ts';

export type Families = Readonly<Record<string, Family>>;
export type Built = { readonly drawn: Build; readonly built: Build; readonly problems: readonly Problem[] };

/**
 * The whole piece twice: as drawn (planning, originals of cut parts, 'same part') and as built (fits, lists). Without measurements and
 * cut parts both are the same object. Never throws for what the document says. With the cache of earlier builds only what is different
 * is worked out, and the rest handed on as the same objects; the numbers are those of a build without.
 */
export function buildPiece(doc: Document, families: Families, cache: BuildCache = openBuildCache()): Built {
  const instances = expand(doc, cache.instances);
  cache.instances = instances;
  const drawnSizes = resolve(doc, new Map(), instances);
  const drawn = buildPass(doc, families, instances, drawnSizes, cache, cache.drawn, false);
  const overrides = measurements(doc, drawnSizes, instances);
  overrides.problems.push(...cutProblems(doc, instances));
  const cut = Object.keys(doc.bench?.cut ?? {}).length > 0;
  const asDrawn = overrides.problems.length > 0 || (overrides.map.size === 0 && !cut);
  const builtSizes = !asDrawn && overrides.map.size ? resolve(doc, overrides.map, instances) : drawnSizes;
  const built = asDrawn ? drawn : buildPass(doc, families, instances, builtSizes, cache, cache.built, true);
  sweepBuildCache(cache);
  if (asDrawn) return { drawn, built, problems: [...drawn.problems, ...overrides.problems] };
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
      problems.push(
        problem(
          `${where}/of`,
          `"${shown(m.of)}" cannot be measured: name a width, depth or height of one copy, such as "leg:left:front.width".`,
        ),
      );
      continue;
    }
    const found = findFor(null, e.expr.path, `${where}/of`, instances);
    if (!found.ok) {
      problems.push(found.problem);
      continue;
    }
    if (found.instance.kind === 'group') {
      problems.push(problem(`${where}/of`, `"${shown(m.of)}" is a group: it has no size of its own; measure one of its parts.`));
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

/** Parts that are said to be cut must be there: one copy each, by its path. */
function cutProblems(doc: Document, instances: Instances): Problem[] {
  return Object.keys(doc.bench?.cut ?? {})
    .sort(byCodePoint)
    .flatMap((path) => {
      if (instances.all.get(path)?.kind === 'part') return [];
      const parts = [...instances.all.values()].filter((i) => i.kind === 'part').map((i) => i.path);
      return problem(`bench/cut/${shown(path)}`, `no part "${shown(path)}" is there to be cut already.`, nearestWord(path, parts));
    });
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
  return {
    mortiseWidths: read(c.mortises, usual.mortiseWidths, 'mortises'),
    bits: read(c.bits, usual.bits, 'bits'),
    grooveWidths: read(c.grooves, usual.grooveWidths, 'grooves'),
  };
}

function buildPass(
  doc: Document,
  families: Families,
  instances: Instances,
  resolution: Resolution,
  cache: BuildCache,
  pass: Pass,
  asBuilt: boolean,
): Build {
  const problems: Problem[] = [...resolution.problems];
  const stock = new Map<string, StockPart>();
  for (const r of resolution.boxes.values())
    if (r.instance.kind === 'part')
      stock.set(r.instance.path, stockPart(r, resolution, doc.units, cache, pass.stock.get(r.instance.path), problems));
  const { placings, joints } = joinAll(
    { doc, families, instances, resolution, stock, cutting: cuttingOf(doc, resolution, problems), cache, before: pass },
    problems,
  );
  const cuts = cutsByPart(placings);
  const finished: Mutable<Pass['parts']> = new Map();
  const context = { doc, resolution, cache, pass, asBuilt, problems };
  for (const path of [...stock.keys()].sort(byCodePoint)) {
    const s = stock.get(path);
    if (s) finished.set(path, finishPart(s, cuts.get(path) ?? [], context));
  }
  Object.assign(pass, { stock, places: placings, joints, parts: finished } satisfies Pass);
  return {
    parts: new Map([...finished].map(([path, f]) => [path, f.part])),
    extras: new Map([...placings.values()].flatMap((p) => p.extras.map((e): [string, Extra] => [e.path, e]))),
    places: [...placings.values()].map((p) => p.place),
    resolution,
    instances,
    problems: once(problems),
  };
}
/** What is wrong with an entry is told once, not for each of its copies. */
function once(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string>();
  return problems.filter((p) => !seen.has(p.where + p.what) && seen.add(p.where + p.what));
}
type Mutable<M> = M extends ReadonlyMap<infer K, infer V> ? Map<K, V> : never;

/** What is cut from each part, in the order of the places. */
function cutsByPart(placings: ReadonlyMap<string, Placing>): Map<string, PartCut[]> {
  const out = new Map<string, PartCut[]>();
  for (const { cuts } of placings.values())
    for (const [path, cut] of cuts) {
      const list = out.get(path);
      if (list) list.push(cut);
      else out.set(path, [cut]);
    }
  return out;
}

type Context = {
  readonly doc: Document;
  readonly resolution: Resolution;
  readonly cache: BuildCache;
  readonly pass: Pass;
  readonly asBuilt: boolean;
  readonly problems: Problem[];
};

function finishPart(s: StockPart, cuts: readonly PartCut[], { doc, resolution, cache, pass, asBuilt, problems }: Context): Finished {
  const inst = s.resolved.instance;
  const frozen = asBuilt ? doc.bench?.cut?.[inst.path] : undefined;
  const before = pass.parts.get(inst.path);
  const same = before !== undefined && before.stock === s && !frozen && !before.part.frozen && sameCuts(before.cuts, cuts);
  if (same && !s.doc.made) return before;
  // The pieces that it is glued up from are read from expressions of their own.
  const pieces = piecesOf(s.resolved, s.stock, resolution, doc.units, asBuilt, problems).map((p) => p.box);
  if (same && samePieces(before.part.pieces, pieces)) return before;
  const wood = `${s.blank} ${cuts.map((c) => `${c.core.id}${c.key}`).join()}`;
  const { record, order } = cache.records.of(wood, () =>
    recordOf(s.stock, s.grain, s.doc.wood, [...s.features.map(signed), ...cuts.flatMap((c) => c.core.cuts[c.key] ?? [])]),
  );
  const origins = [...s.features.map(() => null), ...cuts.flatMap((c) => (c.core.cuts[c.key] ?? []).map(() => c.origin))];
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
    origins: order.map((i) => origins[i] ?? null),
    pieces,
    says: s.says,
  };
  return { part: frozen ? asCut(part, frozen, problems) : part, stock: s, cuts };
}
const sameCuts = (a: readonly PartCut[], b: readonly PartCut[]): boolean => a.length === b.length && a.every((c, i) => c === b[i]);
const samePieces = (a: readonly Box[], b: readonly Box[]): boolean =>
  a.length === b.length && a.every((x, i) => sameVec(x.min, b[i]?.min ?? x.max) && sameVec(x.max, b[i]?.max ?? x.min));
/** The part as it was when it was cut, whatever the document says of it now. */
function asCut(part: Part, frozen: { readonly on: string; readonly record: unknown }, problems: Problem[]): Part {
  const read = readFrozen(frozen.record, `bench/cut/${part.path}/record`);
  if (!read.ok) {
    problems.push(read.problem);
    return part;
  }
  const { record } = read;
  return { ...part, record, origins: record.features.map(() => null), pieces: [record.stock], frozen: { on: frozen.on, now: part.record } };
}

/** Finished sizes over everything, adds included: along the grain, then the wider and the thinner way across; mm. */
export function finishedSize(
  record: { readonly stock: Box; readonly grain: 'x' | 'y' | 'z' },
  blank: Box,
): { length: number; width: number; thickness: number } {
  const size: Vec3 = [blank.max[0] - blank.min[0], blank.max[1] - blank.min[1], blank.max[2] - blank.min[2]];
  const k = 'xyz'.indexOf(record.grain);
  const across = size.filter((_, i) => i !== k).sort((a, b) => b - a);
  return { length: size[k] ?? 0, width: across[0] ?? 0, thickness: across[1] ?? 0 };
}
