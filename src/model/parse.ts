/** From text to a document: size, depth and names are checked before anything is expanded. */
import type { z } from 'zod';
import { type Catalog, kindAndVersion } from './catalog.ts';
import { type Document, KNOWN_KEYS, LIMITS, VERSION, documentSchema } from './document.ts';
import { FACES, QUADS, RESERVED, RESERVED_FOR_SIZES, byCodePoint, isFace } from './ids.ts';
import { nearestWord } from './nearest.ts';
import { type Problem, problem, shown } from './problem.ts';
import { isWood } from '../wood/woods.ts';
import { type Seen, nothingSeen, unseenOf, wholeOf } from './seen.ts';
import { type Upgrade, UPGRADES, upgradeDocument } from './upgrade.ts';

export type Parsed = { readonly ok: true; readonly doc: Document } | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Reads a document from its text. Never throws: what cannot be read comes back as problems that say where, what and the
 * nearest valid name. `upgrades` is there for tests.
 */
export function parseDocument(source: string, catalog: Catalog, upgrades: readonly Upgrade[] = UPGRADES): Parsed {
  if (source.length > LIMITS.bytes)
    return fail(
      '',
      `the document is ${(source.length / 1e6).toFixed(1)} MB of text; at most ${LIMITS.bytes / 1024 / 1024} MB can be read. Split the piece, or take out what is not the piece.`,
    );
  let json: unknown;
  try {
    json = JSON.parse(source.charCodeAt(0) === 0xfeff ? source.slice(1) : source);
  } catch (e) {
    return fail('', `this is not readable JSON: ${shown(placeOf(source, e), 160)}`);
  }
  return readDocument(json, catalog, upgrades);
}

/** The same from JSON that is already in memory; with `seen`, entries that were read before are taken as they were found then. */
export function readDocument(json: unknown, catalog: Catalog, upgrades: readonly Upgrade[] = UPGRADES, seen: Seen = nothingSeen()): Parsed {
  if (json === null || typeof json !== 'object' || Array.isArray(json))
    return fail('', 'a document is a JSON object that begins { "dryfit": 1, "title": …');
  const bad = forbidden(json, '', 0, seen);
  if (bad) return { ok: false, problems: [bad] };
  const upgraded = upgradeDocument(json as Record<string, unknown>, catalog, VERSION, upgrades);
  if (!upgraded.ok) return { ok: false, problems: [upgraded.problem] };
  const read = documentSchema.safeParse(unseenOf(upgraded.json, seen));
  if (!read.success) return { ok: false, problems: dedupe(read.error.issues.flatMap((i) => issueProblems(i, []))).slice(0, 40) };
  const doc = wholeOf(read.data, upgraded.json, seen);
  const problems = checkDocument(doc, catalog);
  return problems.length ? { ok: false, problems: problems.slice(0, 40) } : { ok: true, doc };
}

const fail = (where: string, what: string): Parsed => ({ ok: false, problems: [problem(where, what)] });

function placeOf(source: string, e: unknown): string {
  const message = e instanceof Error ? e.message : String(e);
  const at = /position (\d+)/.exec(message)?.[1];
  if (at === undefined)
    return !source.trim() ? 'it is empty' : /end of JSON/.test(message) ? `line ${source.split('\n').length}: it ends too early` : message;
  const before = source.slice(0, Number(at));
  return `line ${before.split('\n').length}, column ${before.length - before.lastIndexOf('\n')}: ${message.replace(/ in JSON at position.*$/, '')}`;
}

/** Names that could reach into the language itself, nesting without end, and numbers that are none. */
function forbidden(json: unknown, where: string, depth: number, seen: Seen): Problem | null {
  if (typeof json === 'number' && !Number.isFinite(json)) return problem(where, 'a number must be finite.');
  if (json === null || typeof json !== 'object' || seen.has(json)) return null;
  if (depth > LIMITS.depth) return problem(where, `nested more than ${LIMITS.depth} deep.`);
  for (const key of Object.keys(json)) {
    if (key === '__proto__' || key === 'constructor' || key === 'prototype') return problem(where, `"${key}" cannot be a name here.`);
    const found = forbidden((json as Record<string, unknown>)[key], where ? `${where}/${shown(key, 40)}` : shown(key, 40), depth + 1, seen);
    if (found) return found;
  }
  return null;
}

function issueProblems(issue: z.core.$ZodIssue, prefix: readonly PropertyKey[]): Problem[] {
  const path = [...prefix, ...issue.path];
  const where = path.map((p) => shown(String(p), 40)).join('/');
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((k) => problem(where, `"${shown(k)}" is not a word that can stand here.`, nearestWord(k, KNOWN_KEYS)));
  if (issue.code === 'invalid_union') {
    // The branch that got furthest speaks: deepest path first, then fewest complaints.
    const kin = issue.errors.filter((e) => !e.some((i) => i.path.length === 0 && i.code === 'invalid_type'));
    const branches = kin.map((e) => e.flatMap((i) => issueProblems(i, path)));
    const best = branches.filter((b) => b.length).sort((a, b) => depthOf(b) - depthOf(a) || a.length - b.length)[0];
    if (best) return best;
    // Where it is of none of the kinds, no branch speaks for it: what may stand there is said instead.
    return [problem(where, UNION_WORDS.find(([key]) => key.test(where))?.[1] ?? 'a length or an expression is needed here.')];
  }
  if (issue.code === 'invalid_key') {
    const key = String(issue.path.at(-1) ?? '');
    const why = RESERVED.has(key)
      ? 'is a reserved word'
      : 'is not a name: names are small letters, digits and _, beginning with a letter, at most 40 long';
    return [problem(where, `"${shown(key)}" ${why}.`)];
  }
  return [problem(where, plain(issue))];
}
/** What may stand where one of several forms can, by place. */
const UNION_WORDS: readonly (readonly [RegExp, string])[] = [
  [/^(parts|spaces)\/[^/]+\/(left|right|front|back|bottom|top)$/, 'a length, an expression or { "meets": "part.face" } is needed here.'],
  [/\/copies\/\d+$/, 'a mirror, a row or a ring is needed here.'],
  [/\/made\/\d+$/, '"layers" or "staves" are needed here, and "along".'],
  [/\/(from|to)$/, 'a point [x, y, z] or { "on": part, "z": height } is needed here.'],
  [/\/places\/\d+\/[^/]+$/, 'the path of a part is needed here, or a list of such.'],
  [/\/set\/[^/]+$/, 'a length, an expression or a word is needed here.'],
];
const depthOf = (b: readonly Problem[]): number => Math.max(...b.map((p) => p.where.split('/').length));

const WANTED: Readonly<Record<string, string>> = {
  array: 'a list',
  object: 'an object in { }',
  record: 'an object in { }',
  boolean: 'true or false',
  int: 'a whole number',
};
function plain(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_type') {
    const wanted = WANTED[issue.expected] ?? `a ${issue.expected}`;
    return issue.input === undefined && /received undefined/.test(issue.message)
      ? `this is missing: ${wanted} is needed.`
      : `${wanted} is needed here.`;
  }
  if (issue.code === 'too_big') return `too much: at most ${String(issue.maximum)}.`;
  if (issue.code === 'too_small') return `too little: at least ${String(issue.minimum)}.`;
  if (issue.code === 'invalid_value') return `one of ${issue.values.map((v) => `"${String(v)}"`).join(', ')} is needed here.`;
  if (issue.code === 'invalid_format' && issue.path.at(-1) === 'as')
    return 'a name and its version are needed here, such as "mortise_tenon@1".';
  if (issue.code === 'invalid_format') return 'this is not written as it must be here.';
  return `${issue.message}.`;
}
function dedupe(list: readonly Problem[]): Problem[] {
  const seen = new Set<string>();
  return list.filter((p) => !seen.has(p.where + p.what) && seen.add(p.where + p.what));
}

/** What the schema cannot say: one namespace, two of four words an axis, limits, families, shapes, roles. */
function checkDocument(doc: Document, catalog: Catalog): Problem[] {
  const frames = checkFrames(doc);
  // Groups in a circle could not be counted.
  if (frames.length) return [...checkNames(doc), ...checkQuads(doc), ...frames];
  return [
    ...checkNames(doc),
    ...checkQuads(doc),
    ...checkFaces(doc),
    ...checkCounts(doc),
    ...checkShapes(doc, catalog),
    ...checkJoints(doc, catalog),
  ];
}

const COLLECTIONS = ['sizes', 'spaces', 'groups', 'parts'] as const;
function checkNames(doc: Document): Problem[] {
  const owner = new Map<string, string>();
  const out: Problem[] = [];
  for (const kind of COLLECTIONS)
    for (const id of Object.keys(doc[kind] ?? {}).sort(byCodePoint)) {
      if (kind === 'sizes' && RESERVED_FOR_SIZES.has(id))
        out.push(problem(`sizes/${id}`, `"${id}" is what faces and sizes of parts are called; take another word.`, `${id}_all`));
      const before = owner.get(id);
      if (before)
        out.push(
          problem(
            `${kind}/${id}`,
            `"${id}" is already the name of one of the ${before}; sizes, spaces, groups and parts share one set of names.`,
          ),
        );
      owner.set(id, kind);
    }
  return out;
}

function checkQuads(doc: Document): Problem[] {
  const out: Problem[] = [];
  for (const kind of ['spaces', 'parts'] as const)
    for (const [id, box] of Object.entries(doc[kind] ?? {}))
      for (const q of QUADS) {
        const words = [q.low, q.high, q.size, q.mid];
        const given = words.filter((w) => box[w] !== undefined);
        if (given.length !== 2)
          out.push(
            problem(
              `${kind}/${id}`,
              `exactly two of ${words.join(', ')} are needed; ${given.length ? `${given.join(', ')} ${given.length === 1 ? 'is' : 'are'} given` : 'none is given'}.`,
            ),
          );
        for (const w of [q.size, q.mid])
          if (typeof box[w] === 'object')
            out.push(problem(`${kind}/${id}/${w}`, 'only a face (left, right, front, back, bottom, top) can meet another.'));
      }
  return out;
}

/** Grain, marks and datum of parts. */
function checkFaces(doc: Document): Problem[] {
  const out: Problem[] = [];
  for (const [id, part] of Object.entries(doc.parts ?? {})) {
    if (part.grain === undefined && isWood(part.wood))
      out.push(problem(`parts/${id}`, `say which way the grain of the ${shown(part.wood)} runs: "grain": "x", "y" or "z".`));
    for (const mark of Object.keys(part.marks ?? {}))
      if (isFace(mark)) out.push(problem(`parts/${id}/marks/${mark}`, `"${mark}" is a face already; call the mark something else.`));
    for (const q of QUADS)
      if (part.datum?.includes(q.low) && part.datum.includes(q.high))
        out.push(problem(`parts/${id}/datum`, `sizes cannot count from ${q.low} and from ${q.high} at once; name one of them.`));
  }
  return out;
}

function checkFrames(doc: Document): Problem[] {
  const out: Problem[] = [];
  const groups = doc.groups ?? {};
  for (const kind of ['spaces', 'groups', 'parts'] as const)
    for (const [id, f] of Object.entries(doc[kind] ?? {})) {
      if ((f.from === undefined) !== (f.to === undefined)) out.push(problem(`${kind}/${id}`, '"from" and "to" go together.'));
      if (f.from !== undefined && (f.at !== undefined || f.turn !== undefined))
        out.push(problem(`${kind}/${id}`, 'either "at" and "turn", or "from" and "to", not both.'));
      if (f.in !== undefined && !(f.in in groups))
        out.push(problem(`${kind}/${id}/in`, `there is no group "${shown(f.in)}".`, nearestWord(f.in, Object.keys(groups))));
    }
  for (const id of Object.keys(groups)) {
    const chain = [id];
    for (let up = groups[id]?.in; up !== undefined; up = groups[up]?.in) {
      chain.push(up);
      if (up === id || chain.length > 50) {
        out.push(problem(`groups/${id}/in`, `the groups go round in a circle: ${chain.join(' in ')}.`));
        break;
      }
    }
  }
  return out;
}

/** Copies multiply; they are counted before any is made. */
export function copiesOf(
  doc: Document,
  box: { readonly in?: string | undefined; readonly copies?: readonly CopyCount[] | undefined },
): number {
  const own = (box.copies ?? []).reduce((n, c) => n * ('mirror' in c ? 2 : c.count), 1);
  const group = box.in === undefined ? undefined : doc.groups?.[box.in];
  return group ? own * copiesOf(doc, group) : own;
}
type CopyCount = { readonly mirror: unknown } | { readonly count: number };

function checkCounts(doc: Document): Problem[] {
  const out: Problem[] = [];
  let all = 0;
  for (const kind of ['spaces', 'groups', 'parts'] as const)
    for (const [id, box] of Object.entries(doc[kind] ?? {})) {
      all += copiesOf(doc, box);
      for (const [i, c] of (box.copies ?? []).entries()) {
        const n = 'mirror' in c ? 2 : c.count;
        const where = `${kind}/${id}/copies/${i}`;
        if (c.names && c.names.length !== n) out.push(problem(where, `${n} copies need ${n} names; ${c.names.length} are given.`));
        if (c.names && new Set(c.names).size !== c.names.length) out.push(problem(where, 'two copies have the same name.'));
      }
    }
  if (all > LIMITS.copies)
    out.push(
      problem(
        '',
        `${all} parts, spaces and groups with their copies; at most ${LIMITS.copies} are allowed. Make fewer copies, or split the piece.`,
      ),
    );
  return out;
}

function checkShapes(doc: Document, catalog: Catalog): Problem[] {
  const out: Problem[] = [];
  for (const [id, part] of Object.entries(doc.parts ?? {}))
    for (const [i, s] of (part.shape ?? []).entries()) {
      const where = `parts/${id}/shape/${i}`;
      const { id: kind, version } = kindAndVersion(s.as);
      const facts = Object.hasOwn(catalog.shapes, kind) ? catalog.shapes[kind] : undefined;
      if (!facts) {
        out.push(problem(where, `no shape is called "${shown(kind)}".`, nearestWord(kind, Object.keys(catalog.shapes))));
        continue;
      }
      if (version !== facts.version) {
        out.push(
          problem(
            where,
            version > facts.version
              ? `${kind}@${version} comes from a newer Dryfit; this one knows ${kind} up to @${facts.version}.`
              : `nothing leads from ${kind}@${version} to @${facts.version}.`,
            `${kind}@${facts.version}`,
          ),
        );
        continue;
      }
      const known = Object.keys(facts.params);
      for (const key of Object.keys(s))
        if (key !== 'as' && !known.includes(key)) out.push(problem(where, `${kind} has no "${shown(key)}".`, nearestWord(key, known)));
      for (const key of facts.required) if (s[key] === undefined) out.push(problem(where, `${kind} needs "${key}".`));
    }
  return out;
}

function checkJoints(doc: Document, catalog: Catalog): Problem[] {
  const out: Problem[] = [];
  const families = Object.keys(catalog.families);
  for (const [id, joint] of Object.entries(doc.joints ?? {})) {
    const kind = kindAndVersion(joint.as).id;
    const facts = Object.hasOwn(catalog.families, kind) ? catalog.families[kind] : undefined;
    if (!facts) {
      const near = nearestWord(kind, families);
      out.push(problem(`joints/${id}/as`, `no joint is called "${shown(kind)}"${near ? '' : `; there are ${families.join(', ')}`}.`, near));
      continue;
    }
    const roles = Object.keys(facts.roles);
    for (const [i, place] of joint.places.entries()) {
      const where = `joints/${id}/places/${i}`;
      for (const role of roles) if (place[role] === undefined) out.push(problem(where, `a ${kind} needs the part that is "${role}".`));
      for (const [role, value] of Object.entries(place)) {
        if (role === 'end' && !roles.includes('end')) {
          if (typeof value !== 'string' || !isFace(value))
            out.push(
              problem(
                `${where}/end`,
                `the end is one of ${FACES.join(', ')} of the part that enters.`,
                typeof value === 'string' ? nearestWord(value, FACES) : null,
              ),
            );
        } else if (!roles.includes(role))
          out.push(problem(where, `a ${kind} has no "${shown(role)}".`, nearestWord(role, [...roles, 'end'])));
        else if (Array.isArray(value) && facts.roles[role]?.count !== 'many')
          out.push(problem(`${where}/${role}`, 'one part is needed here, not a list.'));
      }
    }
    const known = Object.keys(facts.params);
    for (const key of Object.keys(joint.set ?? {}))
      if (!known.includes(key)) out.push(problem(`joints/${id}/set`, `${kind} has no "${shown(key)}".`, nearestWord(key, known)));
  }
  return out;
}
