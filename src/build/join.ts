/** Joints of the document as places: stars expanded, parts brought together, sizes proposed, geometry made. */
import type { Frame } from '../geom/frame.ts';
import { seenFrom } from '../geom/frame.ts';
import type { Cutting, Family, Place } from '../joints/family.ts';
import { isRefusal } from '../joints/family.ts';
import { type MeetPart, meet } from '../joints/meet.ts';
import type { Meeting } from '../joints/meeting.ts';
import { kindAndVersion } from '../model/catalog.ts';
import type { Document, JointDoc } from '../model/document.ts';
import { asAngle, asLength, asNumber } from '../model/expr/evaluate.ts';
import { type PathRef, parsePath } from '../model/expr/parse.ts';

import { nearestWord } from '../model/nearest.ts';
import { type Problem, problem, shown } from '../model/problem.ts';
import { type Bound, type Instances, expandPlace, sorted } from './instances.ts';
import type { JointPlace } from './part.ts';
import type { Resolution } from './resolve.ts';
import type { StockPart } from './stock.ts';

type Met = { readonly joint: string; readonly doc: JointDoc; readonly family: Family; readonly place: number; readonly entry: number; readonly roles: readonly Bound[]; readonly meeting: Meeting };
export type JoinInput = {
  readonly doc: Document;
  readonly families: Readonly<Record<string, Family>>;
  readonly instances: Instances;
  readonly resolution: Resolution;
  readonly stock: ReadonlyMap<string, StockPart>;
  readonly cutting: Cutting;
};

/** Every place of every joint, made or refused. Problems are added for what cannot even be tried. */
export function joinAll(input: JoinInput, problems: Problem[]): JointPlace[] {
  const out: JointPlace[] = [];
  for (const [id, joint] of sorted(input.doc.joints)) {
    const family = input.families[kindAndVersion(joint.as).id];
    if (!family) continue;
    const met = meetings(id, joint, family, input, problems);
    for (const m of met) out.push(makePlace(m, met, input, problems));
  }
  return out;
}

function meetings(id: string, joint: JointDoc, family: Family, input: JoinInput, problems: Problem[]): Met[] {
  const out: Met[] = [];
  joint.places.forEach((entry, i) => {
    const where = `joints/${id}/places/${i}`;
    const end = typeof entry['end'] === 'string' ? entry['end'] : undefined;
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
    const { places, problems: bad } = expandPlace(roles, where, input.instances);
    problems.push(...bad);
    for (const bound of places) {
      const parts = bound.map((b) => [b.role, b.instances.flatMap((inst) => toMeet(input.stock.get(inst.path)) ?? [])] as const);
      if (parts.some(([role, list]) => list.length === 0 && family.roles[role])) continue;
      out.push({ joint: id, doc: joint, family, place: out.length + 1, entry: i, roles: bound, meeting: meet(Object.fromEntries(parts), end) });
    }
  });
  return out;
}
export function toMeet(p: StockPart | undefined): MeetPart | null {
  if (!p) return null;
  return { path: p.resolved.instance.path, wood: p.doc.wood, grain: p.grain, stock: p.stock, frame: p.frame, marks: p.doc.marks ?? {}, shapes: p.features };
}

function makePlace(m: Met, all: readonly Met[], input: JoinInput, problems: Problem[]): JointPlace {
  const where = `joints/${m.joint}`;
  const set = settings(m, input, `${where}/set`, problems);
  const place: Place<Record<string, unknown>> = { meeting: m.meeting, siblings: siblingsOf(m, all), set: set ?? {} };
  const roles = Object.fromEntries(m.roles.map((r) => [r.role, r.instances.map((i) => i.path)]));
  const base = { joint: m.joint, place: m.place, entry: m.entry, family: m.family, roles, meeting: m.meeting, input: place, sizes: null, because: null, made: null };
  if (set === null) return { ...base, refused: null };
  if (m.meeting.kind === 'none' || m.meeting.kind === 'point' || astray(m)) return { ...base, refused: { apart: m.meeting.gap } };
  const proposed = m.family.propose(place, input.cutting);
  if (isRefusal<Record<string, unknown>>(proposed)) return { ...base, refused: proposed };
  return { ...base, sizes: proposed.sizes, because: proposed.because, made: m.family.make(place, proposed.sizes), refused: null };
}

/** Farther open or deeper in than this, mm, the parts are not where a joint of theirs could be judged: it is not made, and that alone is told. */
const ASTRAY = 5;
const astray = (m: Met): boolean => m.meeting.touch !== 'share' && Math.abs(m.meeting.gap) > ASTRAY && !m.family.touch.includes('gap');

/** Places of the same joint in one of the same receiving parts; their meetings with `frame` seen from this one's. */
function siblingsOf(m: Met, all: readonly Met[]): Meeting[] {
  const into = receiving(m);
  return all.filter((o) => o !== m && receiving(o).some((p) => into.includes(p))).map((o) => ({ ...o.meeting, frame: seenFrom(m.meeting.frame, o.meeting.frame) }));
}
const receiving = (m: Met): string[] => m.roles.slice(1).flatMap((r) => r.instances.map((i) => i.path));

/** The joint's own settings as numbers and choices; expressions are read as the entering part sees them. */
function settings(m: Met, input: JoinInput, where: string, problems: Problem[]): Record<string, unknown> | null {
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
      if (known.length && !known.includes(word)) bad(key, `"${shown(word)}" is no ${field.words}: ${known.join(', ')}.`, nearestWord(word, known));
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
    const n = field.kind === 'angle' ? asAngle(v.value) : field.kind === 'length' || field.kind === 'place' ? asLength(v.value, input.doc.units) : asNumber(v.value);
    if (!n.ok) bad(key, n.problem);
    else out[key] = field.kind === 'place' ? placeInMeeting(m, n.v, input) : n.v;
  }
  return good ? out : null;
}

/** A coordinate that the entering part reads on its own axes, as the meeting's y: along the entering part's width. */
function placeInMeeting(m: Met, value: number, input: JoinInput): number {
  const path = m.roles[0]?.instances[0]?.path ?? '';
  const part = input.stock.get(path);
  const side = m.meeting.sides[Object.keys(m.family.roles)[0] ?? '']?.[0];
  if (!part || !side) return value;
  const f: Frame = side.frame;
  const axis = ([0, 1, 2] as const).find((i) => Math.abs([f.x, f.y, f.z][i]?.[1] ?? 0) > 0.99);
  if (axis === undefined) return value;
  const along = [f.x, f.y, f.z][axis]?.[1] ?? 1;
  return f.o[1] + along * (value - part.datum[axis]);
}
