/** Joints of the document as places: stars expanded, parts brought together, sizes proposed, geometry made. */
import { type Frame, HOME, compose, outDir, sameFrame, seenFrom, tidyFrame } from '../geom/frame.ts';
import { type Vec3, tidy } from '../geom/vec3.ts';
import type { Cutting, ExtraPart, Family, Made, Place } from '../joints/family.ts';
import { isRefusal } from '../joints/family.ts';
import { type MeetPart, meet } from '../joints/meet.ts';
import type { Meeting } from '../joints/meeting.ts';
import { kindAndVersion } from '../model/catalog.ts';
import { type Document, type JointDoc, LIMITS } from '../model/document.ts';
import { asAngle, asLength, asNumber } from '../model/expr/evaluate.ts';
import { type PathRef, parseExpr, parsePath, readsOf } from '../model/expr/parse.ts';
import { nearestWord } from '../model/nearest.ts';
import { type Signed, signed } from '../model/part-record.ts';
import { type Problem, problem, shown } from '../model/problem.ts';
import type { BuildCache, Core, JointRun, Met, PartCut, Pass, Placing, Standing } from './cache.ts';
import { type Bound, type Instance, type Instances, expandPlace, sorted } from './instances.ts';
import { type Extra, type JointPlace, type StockPart, placePath, roleKey } from './part.ts';
import type { Resolution } from './resolve.ts';

/** One place while its joint is worked out. */
type Try = {
  readonly joint: string;
  readonly doc: JointDoc;
  readonly family: Family;
  readonly place: number;
  readonly entry: number;
  readonly roles: readonly Bound[];
  readonly enter: StockPart;
  readonly met: Met;
  /** The parts of all roles but the first. */
  readonly into: readonly string[];
};
export type JoinInput = {
  readonly doc: Document;
  readonly families: Readonly<Record<string, Family>>;
  readonly instances: Instances;
  readonly resolution: Resolution;
  readonly stock: ReadonlyMap<string, StockPart>;
  readonly cutting: Cutting;
  readonly cache: BuildCache;
  readonly before: Pass;
};

/** Every place of every joint, made or refused. Problems are added for what cannot even be tried. */
export function joinAll(input: JoinInput, problems: Problem[]): Joined {
  const out = new Map<string, Placing>();
  const joints = new Map<string, JointRun>();
  const over = tooManyPlaces(input);
  if (over) {
    problems.push(over);
    return { placings: out, joints };
  }
  const cutting = input.cache.numbers.of(JSON.stringify(input.cutting), input.cache.next);
  for (const [id, joint] of sorted(input.doc.joints)) {
    const family = input.families[kindAndVersion(joint.as).id];
    if (!family) continue;
    const before = input.before.joints.get(id);
    const from = standingOf(id, joint, family, cutting, input);
    const run = before && from && isSameStanding(before.from, from) ? before : runJoint(id, joint, family, cutting, input, from);
    problems.push(...run.problems);
    joints.set(id, run);
    for (const p of run.placings) out.set(placePath(p.place), p);
  }
  return { placings: out, joints };
}
/** Counted before any is made; a single entry of very many says so itself. */
function tooManyPlaces({ doc, families, instances }: JoinInput): Problem | null {
  let all = 0;
  for (const [id, joint] of sorted(doc.joints)) {
    const family = families[kindAndVersion(joint.as).id];
    if (!family) continue;
    for (const [i, entry] of joint.places.entries()) {
      const where = `joints/${id}/places/${i}`;
      all += boundOf(entry, family, where, instances).places.length;
      if (all > LIMITS.places)
        return problem(
          where,
          `with this the piece has more than ${LIMITS.places} places where parts are joined; make fewer copies, or split the piece.`,
        );
    }
  }
  return null;
}
export type Joined = { readonly placings: ReadonlyMap<string, Placing>; readonly joints: ReadonlyMap<string, JointRun> };
function runJoint(id: string, joint: JointDoc, family: Family, cutting: number, input: JoinInput, from: Standing | null): JointRun {
  const problems: Problem[] = [];
  const tries = placesOf(id, joint, family, input, problems);
  const near = neighboursOf(tries, input.cache);
  return { from, placings: tries.map((t) => placed(t, near(t), cutting, input, problems)), problems };
}
/** All that a joint hangs on; null where it must be looked at each time: something is wrong with it, or its settings read faces of parts. */
function standingOf(id: string, joint: JointDoc, family: Family, cutting: number, input: JoinInput): Standing | null {
  const hangsOn: unknown[] = [joint, family, cutting];
  for (const [key, given] of Object.entries(joint.set ?? {})) {
    if (typeof given !== 'string') continue;
    const read = parseExpr(given, input.doc.units);
    const asks = read.ok ? readsOf(read.expr) : [];
    if (asks.some((a) => a.k !== 'size')) return null;
    if (asks.length === 0) continue;
    const v = input.resolution.evaluate(null, given, `joints/${id}/set/${key}`);
    if (!v.ok) return null;
    hangsOn.push(v.value.dim, v.value.v);
  }
  for (const [i, entry] of joint.places.entries()) {
    const { places, problems } = boundOf(entry, family, `joints/${id}/places/${i}`, input.instances);
    if (problems.length) return null;
    hangsOn.push(places);
    for (const bound of places)
      for (const role of bound) for (const inst of role.instances) hangsOn.push(input.stock.get(inst.path) ?? null);
  }
  return hangsOn.includes(null) ? null : hangsOn;
}
const isSameStanding = (a: Standing | null, b: Standing): boolean => a !== null && a.length === b.length && a.every((x, i) => x === b[i]);

function placesOf(id: string, joint: JointDoc, family: Family, input: JoinInput, problems: Problem[]): Try[] {
  const out: Try[] = [];
  const told = new Set<string>();
  joint.places.forEach((entry, i) => {
    const end = typeof entry['end'] === 'string' && !Object.hasOwn(family.roles, 'end') ? entry['end'] : undefined;
    const { places, problems: bad } = boundOf(entry, family, `joints/${id}/places/${i}`, input.instances);
    problems.push(...bad);
    for (const bound of places) {
      // Two entries that say the same would cut the same joint twice.
      const same = `${bound.map((b) => b.instances.map((inst) => inst.path).join(' ')).join('|')} ${end ?? ''}`;
      if (told.has(same)) {
        problems.push(
          problem(
            `joints/${id}/places/${i}`,
            `this joint is already told of: ${bound.map((b) => b.instances.map((inst) => inst.path).join(', ')).join(' and ')}.`,
          ),
        );
        continue;
      }
      told.add(same);
      const parts = bound.map((b) => b.instances.flatMap((inst) => input.stock.get(inst.path) ?? []));
      if (parts.some((list) => list.length === 0)) continue;
      const enter = parts[0]?.[0];
      if (!enter) continue;
      const into = bound.slice(1).flatMap((b) => b.instances.map((inst) => inst.path));
      out.push({
        joint: id,
        doc: joint,
        family,
        place: out.length + 1,
        entry: i,
        roles: bound,
        enter,
        into,
        met: met(bound, parts, enter, end, input.cache),
      });
    }
  });
  return out;
}
const twice = (paths: readonly string[]): string | null => paths.find((path, i) => paths.indexOf(path) !== i) ?? null;
type Entry = JointDoc['places'][number];
type Expanded = {
  readonly family: Family;
  readonly lists: readonly (readonly [string, readonly Instance[] | undefined])[];
  readonly where: string;
  readonly places: readonly Bound[][];
  readonly problems: readonly Problem[];
};
const expanded = new WeakMap<Entry, Expanded>();
/** The places that an entry stands for; worked out once for the same copies of the same parts. */
function boundOf(entry: Entry, family: Family, where: string, instances: Instances): Pick<Expanded, 'places' | 'problems'> {
  const known = expanded.get(entry);
  if (
    known &&
    known.family === family &&
    known.where === where &&
    known.problems.length === 0 &&
    known.lists.every(([id, list]) => instances.byId.get(id) === list)
  )
    return known;
  const problems: Problem[] = [];
  const roles: [string, PathRef[]][] = [];
  for (const role of Object.keys(family.roles)) {
    const given = entry[role];
    const refs: PathRef[] = [];
    for (const text of given === undefined ? [] : Array.isArray(given) ? given : [given]) {
      const p = parsePath(text);
      if (p.ok) refs.push(p.path);
      else problems.push(problem(`${where}/${role}`, `"${shown(text)}": ${p.problem}`, p.nearest));
    }
    roles.push([role, refs]);
  }
  const { places, problems: bad } = expandPlace(roles, where, instances);
  const selves = places.flatMap((bound) => twice(bound.flatMap((b) => b.instances.map((inst) => inst.path))) ?? []);
  for (const path of new Set(selves)) problems.push(problem(where, `"${path}" cannot be joined to itself.`));
  const lists = roles.flatMap(([, refs]) => refs.map((r) => [r.id, instances.byId.get(r.id)] as const));
  const all = { family, lists, where, places, problems: [...problems, ...bad] };
  expanded.set(entry, all);
  return all;
}

/**
 * How the parts of a place meet. All is told from the entering part's record frame, in numbers rounded far finer than a record's, so that
 * it does not matter where in the world, or in which hand, the place is: like places are one.
 */
function met(
  bound: readonly Bound[],
  parts: readonly (readonly StockPart[])[],
  enter: StockPart,
  end: string | undefined,
  cache: BuildCache,
): Met {
  const frames = parts.map((list) => list.map((p) => (p === enter ? HOME : tidyFrame(seenFrom(enter.frame, p.frame)))));
  const key =
    bound
      .map((b, r) => `${b.role}(${(parts[r] ?? []).map((p, i) => `${p.blank} ${frameText(frames[r]?.[i] ?? HOME)}`).join(';')})`)
      .join('') + (end ?? '');
  return cache.mets.of(key, () => {
    const roles = bound.map((b, r): [string, MeetPart[]] => [b.role, (parts[r] ?? []).map((p, i) => toMeet(p, frames[r]?.[i] ?? HOME))]);
    return { id: cache.next(), meeting: meet(Object.fromEntries(roles), end) };
  });
}
const frameText = (f: Frame): string => (f === HOME ? '' : `${f.o.join()},${f.x.join()},${f.y.join()},${f.z.join()}`);
/** No name: what two parts make of each other does not hang on what they are called. */
const toMeet = (p: StockPart, frame: Frame): MeetPart => ({
  path: '',
  wood: p.doc.wood,
  grain: p.grain,
  stock: p.stock,
  frame,
  marks: p.doc.marks ?? {},
  shapes: p.features,
});

/** Places of the same joint in one of the same receiving parts: a text that tells them apart, and their meetings seen from this one's. */
type Neighbours = { readonly key: string; readonly meetings: () => readonly Meeting[] };
function neighboursOf(tries: readonly Try[], cache: BuildCache): (t: Try) => Neighbours {
  const groups = new Map<string, { readonly all: Try[]; key?: string }>();
  for (const t of tries)
    for (const path of new Set(t.into)) {
      const g = groups.get(path);
      if (g) g.all.push(t);
      else groups.set(path, { all: [t] });
    }
  return (t) => {
    const mine = [...new Set(t.into)].flatMap((path) => groups.get(path) ?? []);
    const [only] = mine;
    const others = (): Try[] =>
      (mine.length === 1 ? (only?.all ?? []) : tries.filter((o) => mine.some((g) => g.all.includes(o)))).filter((o) => o !== t);
    const meetings = (): Meeting[] => others().map((o) => ({ ...o.met.meeting, frame: seenBy(t, o) }));
    if (only && mine.length === 1 && only.all.length === 1) return { key: '', meetings: () => [] };
    // In one part, how each meets it tells how they stand to each other.
    if (only && mine.length === 1 && only.all.every((o) => o.into.length === 1)) {
      only.key ??= String(cache.numbers.of(only.all.map((o) => o.met.id).join(), cache.next));
      return { key: only.key, meetings };
    }
    return {
      key: others()
        .map((o) => `${o.met.id} ${frameText(seenBy(t, o))}`)
        .join(';'),
      meetings,
    };
  };
}
/** The meeting frame of another place seen from this one's, by way of the part that both enter. */
function seenBy(t: Try, o: Try): Frame {
  const [mine, theirs] = [receivers(t), receivers(o)];
  for (const [path, frame] of mine) {
    const other = theirs.get(path);
    if (other) return tidyFrame(compose(frame, seenFrom(other, HOME)));
  }
  throw new Error(`places ${t.place} and ${o.place} of ${t.joint} enter no part together`);
}
function receivers(t: Try): Map<string, Frame> {
  return new Map(
    t.roles.slice(1).flatMap((r) =>
      r.instances.flatMap((inst, i): [string, Frame][] => {
        const side = t.met.meeting.sides[r.role]?.[i];
        return side ? [[inst.path, side.frame]] : [];
      }),
    ),
  );
}

function placed(t: Try, near: Neighbours, cutting: number, input: JoinInput, problems: Problem[]): Placing {
  const { cache } = input;
  const set = settings(t, input, `joints/${t.joint}/set`, problems);
  const core = cache.cores.of(
    `${t.family.id}@${t.family.version} ${t.met.id} ${cutting} (${near.key}) ${set === null ? '' : JSON.stringify(set)}`,
    () => makeCore(t, near, set, input),
  );
  const frame = worldFrame(compose(t.enter.frame, t.met.meeting.frame));
  const before = input.before.places.get(`${t.joint}/${t.place}`);
  if (before && before.core === core && isSame(before.place, t, frame)) return before;
  const roles = Object.fromEntries(t.roles.map((r) => [r.role, r.instances.map((i) => i.path)]));
  const sides = Object.fromEntries(
    Object.entries(t.met.meeting.sides).map(([role, list]) => [role, list.map((s, i) => ({ ...s, path: roles[role]?.[i] ?? '' }))]),
  );
  const { sizes, because, made, refused } = core;
  const place: JointPlace = {
    joint: t.joint,
    place: t.place,
    entry: t.entry,
    family: t.family,
    roles,
    meeting: { ...t.met.meeting, frame, sides },
    input: core.input,
    sizes,
    because,
    made,
    refused,
  };
  return { place, core, extras: (made?.extras ?? []).map((e) => extraOf(place, e)), cuts: made ? partCuts(place, core) : [] };
}
/** Minus zero made zero. */
const worldFrame = (f: Frame): Frame => ({ o: plus(f.o), x: plus(f.x), y: plus(f.y), z: plus(f.z) });
const plus = (v: Vec3): Vec3 => [v[0] + 0, v[1] + 0, v[2] + 0];
function isSame(p: JointPlace, t: Try, frame: Frame): boolean {
  return (
    p.entry === t.entry &&
    p.family === t.family &&
    sameFrame(p.meeting.frame, frame) &&
    t.roles.every(
      (r) => r.instances.every((inst, i) => p.roles[r.role]?.[i] === inst.path) && p.roles[r.role]?.length === r.instances.length,
    )
  );
}
function partCuts(p: JointPlace, core: Core): [string, PartCut][] {
  const origin = { joint: p.joint, place: p.place };
  return Object.entries(p.roles).flatMap(([role, paths]) =>
    paths.map((path, i): [string, PartCut] => [path, { core, key: roleKey(p.family, role, i), origin }]),
  );
}
function extraOf(p: JointPlace, e: ExtraPart): Extra {
  const { frame } = p.meeting;
  const path = `${placePath(p)}/${e.name.replaceAll(' ', '_')}`;
  return {
    path,
    words: e.words,
    joint: p.joint,
    place: p.place,
    record: e.record,
    frame: compose(frame, e.at),
    hardware: e.hardware ?? false,
    enters: outDir(frame, e.enters),
    part: e,
  };
}

/** The joint as its family makes it for this way of meeting, and what it cuts from each part. */
function makeCore(t: Try, near: Neighbours, set: Record<string, unknown> | null, { cache, cutting }: JoinInput): Core {
  const { family } = t;
  const { meeting } = t.met;
  const input = placeOf(meeting, near, set ?? {});
  const base = { id: cache.next(), input, sizes: null, because: null, made: null, cuts: {} };
  if (set === null) return { ...base, refused: null };
  if (meeting.kind === 'none' || meeting.kind === 'point' || isAstray(family, meeting)) return { ...base, refused: { apart: meeting.gap } };
  const proposed = family.propose(input, cutting);
  if (isRefusal<Record<string, unknown>>(proposed)) return { ...base, refused: proposed };
  const made = family.make(input, proposed.sizes);
  return { ...base, sizes: proposed.sizes, because: proposed.because, made, refused: null, cuts: cutsOf(family, meeting, made) };
}
/** Farther open or deeper in than this, mm, parts are not where a joint of theirs could be judged: it is not made, and that alone is told. */
const ASTRAY = 5;
const isAstray = (f: Family, m: Meeting): boolean => {
  // A joint that divides shared wood takes a thin board drawn in a thick one too: that board only seems to bite by its face.
  const divides = m.touch === 'share' || (m.gap < 0 && f.touch.includes('share'));
  return !divides && Math.abs(m.gap) > ASTRAY && !f.touch.includes('gap');
};

/** Neighbours are worked out for those families only that look at them: a row of slats in one rail has very many. */
function placeOf(meeting: Meeting, near: Neighbours, set: Record<string, unknown>): Place<Record<string, unknown>> {
  let known: readonly Meeting[] | null = null;
  return {
    meeting,
    get siblings() {
      return (known ??= near.meetings());
    },
    set,
  };
}
/** The features of each part, moved from the meeting frame into its record frame. */
function cutsOf(family: Family, meeting: Meeting, made: Made): Record<string, readonly Signed[]> {
  const out: Record<string, readonly Signed[]> = {};
  for (const [role, sides] of Object.entries(meeting.sides))
    sides.forEach((side, i) => {
      const key = roleKey(family, role, i);
      const toRecord = seenFrom(side.frame, HOME);
      out[key] = (made.features[key] ?? []).map((f) => signed({ ...f, at: compose(toRecord, f.at) }));
    });
  return out;
}

/** The joint's own settings as numbers and choices; expressions are read as the entering part sees them. */
function settings(m: Try, input: JoinInput, where: string, problems: Problem[]): Record<string, unknown> | null {
  const reader = m.roles[0]?.instances[0] ?? null;
  const out: Record<string, unknown> = {};
  let good = true;
  const bad = (key: string, what: string, nearest?: string | null): void => {
    good = false;
    // The same words for every place of the joint: said once.
    if (!problems.some((p) => p.where === `${where}/${key}` && p.what === what)) problems.push(problem(`${where}/${key}`, what, nearest));
  };
  for (const [key, given] of Object.entries(m.doc.set ?? {})) {
    const field = m.family.params[key];
    if (!field) continue;
    if (field.kind === 'choice') {
      const word = given === true ? 'yes' : given === false ? 'no' : String(given);
      const known = Object.keys(field.options ?? {});
      // A choice may also be a mark or a face of the part where the family lists none of its own.
      if (known.length && !known.includes(word))
        bad(key, `"${shown(word)}" is no ${field.words}: ${known.join(', ')}.`, nearestWord(word, known));
      else out[key] = word;
      continue;
    }
    if (typeof given !== 'string' && typeof given !== 'number') {
      bad(key, `a ${field.kind} is needed here.`);
      continue;
    }
    const v = input.resolution.evaluate(reader, given, `${where}/${key}`);
    if (!v.ok) {
      for (const p of v.problems) bad(key, p.what, p.nearest);
      if (!v.problems.length) good = false;
      continue;
    }
    const n =
      field.kind === 'angle'
        ? asAngle(v.value)
        : field.kind === 'length' || field.kind === 'place'
          ? asLength(v.value, input.doc.units)
          : asNumber(v.value);
    if (!n.ok) bad(key, n.problem);
    else out[key] = field.kind === 'place' ? placeInMeeting(m, n.v, input) : n.v;
  }
  return good ? out : null;
}

/** A coordinate that the entering part reads on its own axes, as the meeting's y: along the entering part's width. */
function placeInMeeting(m: Try, value: number, input: JoinInput): number {
  const path = m.roles[0]?.instances[0]?.path ?? '';
  const part = input.stock.get(path);
  const side = m.met.meeting.sides[Object.keys(m.family.roles)[0] ?? '']?.[0];
  if (!part || !side) return value;
  const f: Frame = side.frame;
  const axis = ([0, 1, 2] as const).find((i) => Math.abs([f.x, f.y, f.z][i]?.[1] ?? 0) > 0.99);
  if (axis === undefined) return value;
  const along = [f.x, f.y, f.z][axis]?.[1] ?? 1;
  return tidy(f.o[1] + along * (value - part.datum[axis]));
}
