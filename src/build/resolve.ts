/**
 * Sizes and places solved: every face of every copy as a number in its own frame, and every frame in the world. Nodes of the
 * graph are scalars (`leg:left.top`), never parts, so a taper may read an apron that reads the leg. Solved twice where something
 * was measured: as drawn and as built.
 */
import type { Box } from '../geom/box.ts';
import { type Frame, HOME, compose, inDir, inPoint, mirrored, outDir, outPoint, turned } from '../geom/frame.ts';
import { type Axis, type Vec3, add, axisIndex, axisVec, cross, dot, length, scale, sub, unit } from '../geom/vec3.ts';
import type { CopyDoc, Document, Expression, LinePointDoc, PartDoc, SpaceDoc } from '../model/document.ts';
import { LIMITS } from '../model/document.ts';
import { type Value, asAngle, asLength, evaluateExpr } from '../model/expr/evaluate.ts';
import { type Expr, type Parsed, type PathRef, readExpr } from '../model/expr/parse.ts';
import { parsePath, parseReading } from '../model/expr/path.ts';
import { FACES, type Face, QUADS, type Quad, faceSide, isFace } from '../model/ids.ts';
import { nearestWord } from '../model/nearest.ts';
import { type Problem, shown } from '../model/problem.ts';
import { type Instance, type Instances, expand, findFor, sorted } from './instances.ts';
import { type Ask, isControl, makeSolver, stop } from './solver.ts';

/** A measured size of one copy along one axis: mm; the face that stays. */
export type Measured = { readonly is: number; readonly stays: Face };
/** By path, then by size word (width, depth, height). Empty as drawn. */
export type Overrides = ReadonlyMap<string, ReadonlyMap<Quad['size'], Measured>>;

/** An end cut by a plane that is not square to it: its plane in the part's own frame, the normal out of the wood. */
export type Trim = { readonly face: Face; readonly normal: Vec3; readonly off: number };
export type Resolved = {
  readonly instance: Instance;
  /** The part's own frame, seen from the world. */
  readonly frame: Frame;
  /** Its box in its own frame, mm. */
  readonly box: Box;
  readonly trims: readonly Trim[];
  /** Sizes given by two faces and then measured: how much longer (+) or shorter (-) the wood is than its place. */
  readonly misfits: readonly { readonly size: Quad['size']; readonly by: number; readonly stays: Face }[];
};
export type Resolution = {
  readonly instances: Instances;
  readonly sizes: ReadonlyMap<string, Value>;
  readonly boxes: ReadonlyMap<string, Resolved>;
  readonly problems: readonly Problem[];
  /** An expression as a reader would see it: shapes, joint settings, measurements. */
  readonly evaluate: (
    reader: Instance | null,
    text: Expression,
    where: string,
  ) => { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly problems: readonly Problem[] };
};

type Ctx = { readonly reader: Instance | null; readonly frame: 'own' | 'outer' | 'world'; readonly where: string };

/** Solves the whole document. Never throws for what the document says; see `problems`. */
export function resolve(doc: Document, overrides: Overrides = new Map(), known: Instances = expand(doc)): Resolution {
  const parsed = new Map<string, Parsed>();
  const units = doc.units;
  const free = new Map<string, { reader: Instance | null; text: Expression; where: string }>();
  const { solve, problems } = makeSolver(compute, words);
  const sizes = new Map<string, Value>();
  for (const [id] of sorted(doc.sizes)) {
    const r = solve<Value>(`size ${id}`);
    if (r.ok) sizes.set(id, r.value);
  }
  const boxes = new Map<string, Resolved>();
  for (const inst of known.all.values()) {
    const r = solve<Resolved>(`box ${inst.path}`);
    if (r.ok) boxes.set(inst.path, r.value);
  }
  let asked = 0;
  const evaluate: Resolution['evaluate'] = (reader, text, where) => {
    const before = problems().length;
    const key = `free ${asked++}`;
    free.set(key, { reader, text, where });
    const r = solve<Value>(key);
    free.delete(key);
    return r.ok ? { ok: true, value: r.value } : { ok: false, problems: problems().slice(before) };
  };
  return { instances: known, sizes, boxes, problems: [...problems()], evaluate };

  function compute(node: string, ask: Ask): unknown {
    const space = node.indexOf(' ');
    const kind = node.slice(0, space);
    const rest = node.slice(space + 1);
    if (kind === 'size') return value(doc.sizes?.[rest] ?? '0', { reader: null, frame: 'world', where: `sizes/${rest}` }, ask);
    if (kind === 'free') return freeValue(node, ask);
    const dot = rest.lastIndexOf('.');
    const inst = known.all.get(dot > 0 && kind === 'v' ? rest.slice(0, dot) : rest);
    if (!inst) throw new Error(`no node ${node}`);
    if (kind === 'v') return scalar(inst, rest.slice(dot + 1), ask);
    if (kind === 'local') return localFrame(inst, ask);
    if (kind === 'axes') return worldFrame(inst, ask, true);
    if (kind === 'frame') return worldFrame(inst, ask, false);
    if (kind === 'run') return line(inst, ask).run;
    return finish(inst, ask);
  }

  function freeValue(node: string, ask: Ask): Value {
    const f = free.get(node);
    if (!f) throw new Error(`no node ${node}`);
    return value(f.text, { reader: f.reader, frame: 'own', where: f.where }, ask);
  }

  function parse(text: Expression, where: string): Expr {
    const s = String(text);
    const r = parsed.get(s) ?? readExpr(text, units);
    parsed.set(s, r);
    if (!r.ok) return stop(where, `"${shown(s)}": ${r.problem}`, r.nearest);
    return r.expr;
  }

  function value(text: Expression, ctx: Ctx, ask: Ask): Value {
    let control: unknown;
    const r = evaluateExpr(parse(text, ctx.where), units, (n) => {
      try {
        if (n.k === 'size') return { ok: true, value: named(n.id, ctx, ask) };
        if (n.k === 'read') return { ok: true, value: { dim: 'length', v: reading(n.path, n.of, ctx, ask) } };
        const at = (e: Expr): number => lengthOf(evaluateIn(e, ctx, ask), ctx.where);
        return { ok: true, value: { dim: 'length', v: onPlane(n.axis, n.path, n.mark, at(n.a), at(n.b), ctx, ask) } };
      } catch (e) {
        if (!isControl(e)) throw e;
        control = e;
        return { ok: false, problem: 'later' };
      }
    });
    if (control) throw control as Error;
    return r.ok ? r.value : stop(ctx.where, `"${shown(String(text))}": ${r.problem}`);
  }
  function evaluateIn(e: Expr, ctx: Ctx, ask: Ask): Value {
    let control: unknown;
    const r = evaluateExpr(e, units, (n) => {
      try {
        if (n.k === 'size') return { ok: true, value: named(n.id, ctx, ask) };
        if (n.k === 'read') return { ok: true, value: { dim: 'length', v: reading(n.path, n.of, ctx, ask) } };
        return { ok: false, problem: 'xon, yon and zon cannot stand inside each other' };
      } catch (x) {
        if (!isControl(x)) throw x;
        control = x;
        return { ok: false, problem: 'later' };
      }
    });
    if (control) throw control as Error;
    return r.ok ? r.value : stop(ctx.where, r.problem);
  }

  function named(id: string, ctx: Ctx, ask: Ask): Value {
    if (doc.sizes && Object.hasOwn(doc.sizes, id)) return ask<Value>(`size ${id}`);
    const axes = known.axes.get(id);
    if (axes)
      return stop(
        ctx.where,
        `"${id}" is a part or space: say which of its faces or sizes.`,
        `${[id, ...axes.map((a) => a[0] ?? '')].join(':')}.width`,
      );
    return stop(
      ctx.where,
      `no size or part is named "${shown(id)}".`,
      nearestWord(id, [...Object.keys(doc.sizes ?? {}), ...known.axes.keys()]),
    );
  }
  function lengthOf(v: Value, where: string): number {
    const r = asLength(v, units);
    return r.ok ? r.v : stop(where, r.problem);
  }
  function mm(text: Expression, ctx: Ctx, ask: Ask): number {
    const n = lengthOf(value(text, ctx, ask), ctx.where);
    if (Number.isFinite(n) && Math.abs(n) <= LIMITS.metres * 1000) return n;
    return stop(
      ctx.where,
      `${shown(String(text))} comes to ${Math.abs(n) < 1e12 ? `${Math.round(n)} mm` : 'no usable length'}; at most ${LIMITS.metres} m is allowed.`,
    );
  }

  function find(path: PathRef, ctx: Ctx): Instance {
    const r = findFor(ctx.reader, path, ctx.where, known);
    return r.ok ? r.instance : stop(r.problem.where, r.problem.what, r.problem.nearest);
  }
  /** The same for what is read: a group has no box. */
  function findBox(path: PathRef, ctx: Ctx): Instance {
    const inst = find(path, ctx);
    if (inst.kind !== 'group') return inst;
    const inside = [...known.byId.values()].flat().find((i) => i.parent === inst);
    return stop(ctx.where, `"${inst.path}" is a group: it has no faces of its own; read one of its parts.`, inside?.path);
  }
  /** All copies of a line are of one length, so its bare id will do. */
  function runOf(path: PathRef, ctx: Ctx): Instance {
    const first = path.names.length === 0 && ctx.reader?.id !== path.id ? known.byId.get(path.id)?.[0] : undefined;
    return first ?? find(path, ctx);
  }
  /** The frame that readings are taken in. */
  function seer(ctx: Ctx, ask: Ask, onlyAxes: boolean): Frame {
    const what = onlyAxes ? 'axes' : 'frame';
    if (ctx.frame === 'world' || !ctx.reader) return HOME;
    if (ctx.frame === 'own') return ask<Frame>(`${what} ${ctx.reader.path}`);
    return ctx.reader.parent ? ask<Frame>(`${what} ${ctx.reader.parent.path}`) : HOME;
  }

  function reading(path: PathRef, of: string, ctx: Ctx, ask: Ask): number {
    if (of === 'run') return ask<number>(`run ${runOf(path, ctx).path}`);
    const inst = findBox(path, ctx);
    const q = QUADS.find((k) => k.low === of || k.high === of || k.size === of || k.mid === of);
    if (!q) return stop(ctx.where, `"${shown(of)}" is no reading.`);
    if (inst === ctx.reader && ctx.frame === 'own') return ask<number>(`v ${inst.path}.${of}`);
    const isSize = q.size === of;
    const from = seer(ctx, ask, isSize);
    const to = ask<Frame>(`${isSize ? 'axes' : 'frame'} ${inst.path}`);
    const along = axisVec(q.axis);
    const world = outDir(from, along);
    const own = inDir(to, world);
    const k = ([0, 1, 2] as const).find((i) => Math.abs(Math.abs(own[i]) - 1) < 1e-9);
    if (k === undefined)
      return stop(ctx.where, `"${inst.path}" leans as seen from here, so it has no plain "${of}". ${leanCure(inst, of, q)}`);
    const theirs = QUADS[k] as Quad;
    if (isSize) return ask<number>(`v ${inst.path}.${theirs.size}`);
    const sign = (own[k] ?? 0) > 0 ? 1 : -1;
    const word = of === q.mid ? theirs.mid : (of === q.low) === sign > 0 ? theirs.low : theirs.high;
    const v = ask<number>(`v ${inst.path}.${word}`);
    // The other box's origin, seen along the reader's axis, and from there the face.
    return dot(sub(to.o, from.o), world) + sign * v;
  }

  function leanCure(inst: Instance, of: string, q: Quad): string {
    if (of === q.size) return `Write its ${of} as a size with a name, and read that in both.`;
    const face = isFace(of) ? of : q.low;
    return `Let the end meet it ({ "meets": "${inst.path}.${face}" }, or one of its marks), or read one spot with ${q.axis}on(${inst.path}.${face}, …).`;
  }

  /** The face of a box that a word names: a face, or a mark that stands for one. */
  function faceOf(inst: Instance, word: string, where: string): Face {
    const marks = (inst.doc as PartDoc).marks ?? {};
    const face = isFace(word) ? word : Object.hasOwn(marks, word) ? (marks[word] as Face) : undefined;
    return (
      face ?? stop(where, `"${inst.path}" has no mark or face "${shown(word)}".`, nearestWord(word, [...Object.keys(marks), ...FACES]))
    );
  }

  /** Where the plane of a marked face stands at one spot, in the reader's frame. */
  function onPlane(axis: Axis, path: PathRef, mark: string, a: number, b: number, ctx: Ctx, ask: Ask): number {
    const inst = findBox(path, ctx);
    const face = faceOf(inst, mark, ctx.where);
    const from = seer(ctx, ask, false);
    const to = ask<Frame>(`frame ${inst.path}`);
    const side = faceSide(face);
    const off = ask<number>(`v ${inst.path}.${face}`);
    const n = inDir(from, outDir(to, axisVec(side.quad.axis)));
    const p = inPoint(from, outPoint(to, scale(axisVec(side.quad.axis), off)));
    const i = axisIndex(axis);
    if (Math.abs(n[i]) < 1e-9)
      return stop(ctx.where, `the face "${shown(mark)}" of "${inst.path}" runs along ${axis} here: it has no single place on it.`);
    const [j, k] = ([0, 1, 2] as const).filter((m) => m !== i) as [0 | 1 | 2, 0 | 1 | 2];
    return p[i] + (n[j] * (p[j] - a) + n[k] * (p[k] - b)) / n[i];
  }

  /** One of the twelve words of a box in its own frame, from the two that are given; a measured size replaces the drawn one. */
  function scalar(inst: Instance, word: string, ask: Ask): number {
    const q = QUADS.find((k) => k.low === word || k.high === word || k.size === word || k.mid === word) as Quad;
    const m = overrides.get(inst.path)?.get(q.size);
    const box = inst.doc as SpaceDoc;
    const twoFaces = box[q.low] !== undefined && box[q.high] !== undefined;
    if (!m || twoFaces) return given(inst, q, word, ask);
    if (word === q.size) return m.is;
    const kept = given(inst, q, m.stays, ask);
    const low = m.stays === q.low ? kept : kept - m.is;
    return word === q.low ? low : word === q.high ? low + m.is : low + m.is / 2;
  }
  function given(inst: Instance, q: Quad, word: string, ask: Ask): number {
    const box = inst.doc as SpaceDoc;
    const own = (w: string): boolean => box[w as keyof SpaceDoc] !== undefined;
    const v = (w: string): number => edge(inst, w, ask);
    if (own(word)) return v(word);
    if (word === q.low) return own(q.size) ? (own(q.high) ? v(q.high) - v(q.size) : v(q.mid) - v(q.size) / 2) : 2 * v(q.mid) - v(q.high);
    if (word === q.high) return own(q.size) ? (own(q.low) ? v(q.low) + v(q.size) : v(q.mid) + v(q.size) / 2) : 2 * v(q.mid) - v(q.low);
    if (word === q.size) return own(q.low) ? (own(q.high) ? v(q.high) - v(q.low) : 2 * (v(q.mid) - v(q.low))) : 2 * (v(q.high) - v(q.mid));
    return own(q.low) ? (own(q.high) ? (v(q.low) + v(q.high)) / 2 : v(q.low) + v(q.size) / 2) : v(q.high) - v(q.size) / 2;
  }
  function edge(inst: Instance, word: string, ask: Ask): number {
    const where = `${inst.kind}s/${inst.id}/${word}`;
    const e = (inst.doc as SpaceDoc)[word as 'left'];
    if (e === undefined) throw new Error(`${inst.path} has no ${word}`);
    if (typeof e !== 'object') return mm(e, { reader: inst, frame: 'own', where }, ask);
    const plane = meeting(inst, word as Face, e.meets, ask);
    const ends = corners(inst, word as Face, ask).map((c) => along(plane, word as Face, c));
    return faceSide(word as Face).high ? Math.max(...ends) : Math.min(...ends);
  }

  /** The plane that an end meets, in the part's own frame, its normal out of the wood. */
  function meeting(inst: Instance, face: Face, meets: string, ask: Ask): { normal: Vec3; off: number } {
    const ctx: Ctx = { reader: inst, frame: 'own', where: `${inst.kind}s/${inst.id}/${face}` };
    const r = parseReading(meets);
    if (!r.ok)
      return stop(
        ctx.where,
        `"meets" names one face or mark, such as "seat.bottom"; "${shown(meets)}" is not one: ${r.problem}.`,
        r.nearest,
      );
    const other = findBox(r.path, ctx);
    const of = faceOf(other, r.of, ctx.where);
    const to = ask<Frame>(`frame ${other.path}`);
    const from = ask<Frame>(`frame ${inst.path}`);
    const theirs = faceSide(of);
    const off = ask<number>(`v ${other.path}.${of}`);
    const outward = axisVec(theirs.quad.axis);
    const n = inDir(from, outDir(to, outward));
    const p = inPoint(from, outPoint(to, scale(outward, off)));
    const side = faceSide(face);
    const lean = n[side.axis];
    if (Math.abs(lean) < 0.05) return stop(ctx.where, `"${inst.path}" runs along "${shown(meets)}" and never meets it.`);
    const sign = lean > 0 === side.high ? 1 : -1;
    const normal = scale(n, sign);
    return { normal, off: dot(normal, p) };
  }
  /** The four long edges that run to this face: their lateral spots. */
  function corners(inst: Instance, face: Face, ask: Ask): { at: Vec3 }[] {
    const { axis } = faceSide(face);
    const [j, k] = ([0, 1, 2] as const).filter((m) => m !== axis) as [0 | 1 | 2, 0 | 1 | 2];
    const qj = QUADS[j] as Quad;
    const qk = QUADS[k] as Quad;
    const spots = (q: Quad): number[] => [ask<number>(`v ${inst.path}.${q.low}`), ask<number>(`v ${inst.path}.${q.high}`)];
    return spots(qj).flatMap((a) =>
      spots(qk).map((b) => {
        const at: [number, number, number] = [0, 0, 0];
        at[j] = a;
        at[k] = b;
        return { at };
      }),
    );
  }
  function along(plane: { normal: Vec3; off: number }, face: Face, spot: { at: Vec3 }): number {
    const { axis } = faceSide(face);
    return (plane.off - dot(plane.normal, spot.at)) / plane.normal[axis];
  }

  /** A part's frame as drawn, seen from its group: by `at` and `turn`, or along a line. */
  function localFrame(inst: Instance, ask: Ask): Frame {
    const d = inst.doc;
    const ctx: Ctx = { reader: inst, frame: 'outer', where: `${inst.kind}s/${inst.id}` };
    if (d.from !== undefined) return line(inst, ask).frame;
    let f: Frame = axesOf(inst, ask);
    if (d.at) f = { ...f, o: d.at.map((e, i) => mm(e, { ...ctx, where: `${ctx.where}/at/${i}` }, ask)) as unknown as Vec3 };
    return f;
  }
  function axesOf(inst: Instance, ask: Ask): Frame {
    const ctx: Ctx = { reader: inst, frame: 'outer', where: `${inst.kind}s/${inst.id}/turn` };
    let f = HOME;
    for (const [axis, angle] of inst.doc.turn ?? []) {
      const a = asAngle(value(angle, ctx, ask));
      f = compose(f, turned(axis, a.ok ? a.v : stop(ctx.where, a.problem)));
    }
    return f;
  }
  function line(inst: Instance, ask: Ask): { frame: Frame; run: number } {
    const where = `${inst.kind}s/${inst.id}`;
    if (inst.doc.from === undefined || inst.doc.to === undefined)
      return stop(where, `"${inst.id}" is not given by "from" and "to", so it has no run.`);
    const a = linePoint(inst, inst.doc.from, `${where}/from`, ask);
    const b = linePoint(inst, inst.doc.to, `${where}/to`, ask);
    const run = length(sub(b, a));
    if (run < 1e-6) return stop(where, '"from" and "to" are the same point.');
    const x = unit(sub(b, a));
    // z as near up as it can be; a line that stands upright takes the back as its up.
    const up: Vec3 = Math.abs(x[2]) > 1 - 1e-9 ? [0, 1, 0] : [0, 0, 1];
    const z = unit(sub(up, scale(x, dot(up, x))));
    return { frame: { o: a, x, y: cross(z, x), z }, run };
  }
  function linePoint(inst: Instance, p: LinePointDoc, where: string, ask: Ask): Vec3 {
    const ctx: Ctx = { reader: inst, frame: 'outer', where };
    if (!('on' in p)) return p.map((e) => mm(e, ctx, ask)) as unknown as Vec3;
    const r = parsePath(p.on);
    if (!r.ok) return stop(where, `"${shown(p.on)}": ${r.problem}.`, r.nearest);
    const other = findBox(r.path, ctx);
    const grain = (other.doc as PartDoc).grain ?? 'z';
    const from = seer(ctx, ask, false);
    const to = ask<Frame>(`frame ${other.path}`);
    const mids = QUADS.map((q) => (q.axis === grain ? 0 : ask<number>(`v ${other.path}.${q.mid}`))) as unknown as Vec3;
    const start = inPoint(from, outPoint(to, mids));
    const dir = inDir(from, outDir(to, axisVec(grain)));
    if (Math.abs(dir[2]) < 1e-9) return stop(where, `"${other.path}" lies level: its centre line has no single spot at one height.`);
    const z = mm(p.z, ctx, ask);
    return add(start, scale(dir, (z - start[2]) / dir[2]));
  }

  function worldFrame(inst: Instance, ask: Ask, onlyAxes: boolean): Frame {
    const d = inst.doc;
    const local = onlyAxes && d.from === undefined ? axesOf(inst, ask) : ask<Frame>(`local ${inst.path}`);
    let f = local;
    for (const [i, c] of (d.copies ?? []).entries()) f = compose(copyFrame(inst, c, inst.index[i] ?? 0, i, ask, onlyAxes), f);
    if (!inst.parent) return f;
    return compose(ask<Frame>(`${onlyAxes ? 'axes' : 'frame'} ${inst.parent.path}`), f);
  }
  function copyFrame(inst: Instance, c: CopyDoc, index: number, i: number, ask: Ask, onlyAxes: boolean): Frame {
    const ctx: Ctx = { reader: inst, frame: 'outer', where: `${inst.kind}s/${inst.id}/copies/${i}` };
    if (index === 0) return HOME;
    if ('mirror' in c) return mirrored(c.mirror, onlyAxes || c.at === undefined ? 0 : mm(c.at, ctx, ask));
    if ('row' in c) return onlyAxes ? HOME : { ...HOME, o: scale(axisVec(c.row), index * mm(c.step, ctx, ask)) };
    const turn = turned(c.ring, (2 * Math.PI * index) / c.count);
    if (onlyAxes || !c.around) return turn;
    const o = c.around.map((e) => mm(e, ctx, ask)) as unknown as Vec3;
    return { ...turn, o: sub(o, outDir(turn, o)) };
  }

  function finish(inst: Instance, ask: Ask): Resolved {
    const frame = ask<Frame>(`frame ${inst.path}`);
    if (inst.kind === 'group') return { instance: inst, frame, box: { min: [0, 0, 0], max: [0, 0, 0] }, trims: [], misfits: [] };
    const min: [number, number, number] = [0, 0, 0];
    const max: [number, number, number] = [0, 0, 0];
    const misfits: { size: Quad['size']; by: number; stays: Face }[] = [];
    QUADS.forEach((q, i) => {
      min[i] = ask<number>(`v ${inst.path}.${q.low}`);
      max[i] = ask<number>(`v ${inst.path}.${q.high}`);
      const m = overrides.get(inst.path)?.get(q.size);
      const box = inst.doc as SpaceDoc;
      if (m && box[q.low] !== undefined && box[q.high] !== undefined) {
        misfits.push({ size: q.size, by: m.is - ((max[i] ?? 0) - (min[i] ?? 0)), stays: m.stays });
        if (m.stays === q.low) max[i] = (min[i] ?? 0) + m.is;
        else min[i] = (max[i] ?? 0) - m.is;
      }
      const s = (max[i] ?? 0) - (min[i] ?? 0);
      if (!(s > 1e-6))
        stop(
          `${inst.kind}s/${inst.id}`,
          `the ${q.size} of "${inst.path}" comes to ${s.toFixed(2)} mm. A ${q.size} must be above 0: look at its ${[q.low, q.high, q.size, q.mid].filter((w) => box[w as 'left'] !== undefined).join(' and ')}.`,
        );
    });
    return { instance: inst, frame, box: { min, max }, trims: trimsOf(inst, ask), misfits };
  }
  function trimsOf(inst: Instance, ask: Ask): Trim[] {
    const out: Trim[] = [];
    for (const q of QUADS)
      for (const face of [q.low, q.high]) {
        const e = (inst.doc as SpaceDoc)[face];
        if (typeof e !== 'object') continue;
        const plane = meeting(inst, face, e.meets, ask);
        if (Math.abs(Math.abs(plane.normal[faceSide(face).axis]) - 1) > 1e-12) out.push({ face, ...plane });
      }
    return out;
  }
}

/** How a node reads in a circle: only readings and sizes have words. */
function words(node: string): string | null {
  const [kind, rest] = [node.slice(0, node.indexOf(' ')), node.slice(node.indexOf(' ') + 1)];
  if (kind === 'size' || kind === 'v') return rest;
  if (kind === 'run') return `${rest}.run`;
  return kind === 'frame' ? `where ${rest} stands` : null;
}
