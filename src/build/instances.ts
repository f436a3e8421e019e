/** Parts, spaces and groups with all their copies, before anything is measured; and what a path means to a reader. */
import { type CopyDoc, type Document, type GroupDoc, LIMITS, type PartDoc, type SpaceDoc } from '../model/document.ts';
import type { PathRef } from '../model/expr/parse.ts';
import { byCodePoint, pathOf } from '../model/ids.ts';
import { nearestWord } from '../model/nearest.ts';
import { type Problem, problem, shown } from '../model/problem.ts';

export type InstanceKind = 'part' | 'space' | 'group';
export type Instance = {
  readonly path: string;
  readonly id: string;
  readonly names: readonly string[];
  readonly kind: InstanceKind;
  readonly doc: PartDoc | SpaceDoc | GroupDoc;
  /** The copy of the group that it lives in. */
  readonly parent: Instance | null;
  /** Which copy it is of each of its own copy entries; all 0: as drawn. */
  readonly index: readonly number[];
};
export type Instances = {
  readonly all: ReadonlyMap<string, Instance>;
  readonly byId: ReadonlyMap<string, readonly Instance[]>;
  /** The names that may stand after an id, one list for each ':' (the group's first). */
  readonly axes: ReadonlyMap<string, readonly (readonly string[])[]>;
};

const copyNames = (c: CopyDoc): readonly string[] =>
  'mirror' in c ? c.names : (c.names ?? Array.from({ length: c.count }, (_, i) => String(i + 1)));

/**
 * Expands the document's copies. The counts were checked when it was parsed. Of `before`, what was expanded from the very same
 * entries is taken over as it is.
 */
export function expand(doc: Document, before: Instances | null = null): Instances {
  const all = new Map<string, Instance>();
  const byId = new Map<string, readonly Instance[]>();
  const axes = new Map<string, readonly (readonly string[])[]>();
  let fresh = before === null;
  const place = (id: string, kind: InstanceKind, entry: PartDoc | SpaceDoc | GroupDoc): void => {
    if (byId.has(id)) return;
    const group = entry.in;
    if (group !== undefined && doc.groups?.[group]) place(group, 'group', doc.groups[group]);
    const parents: readonly (Instance | null)[] = group === undefined ? [null] : (byId.get(group) ?? []);
    const own = (entry.copies ?? []).map(copyNames);
    const old = before?.byId.get(id);
    const kept = old && isFrom(old, kind, entry, parents);
    const list = kept ? old : copiesOf(id, kind, entry, parents, own);
    if (!kept) fresh = true;
    axes.set(id, (kept && before?.axes.get(id)) || [...(group === undefined ? [] : (axes.get(group) ?? [])), ...own]);
    for (const inst of list) all.set(inst.path, inst);
    byId.set(id, list);
  };
  for (const [id, g] of sorted(doc.groups)) place(id, 'group', g);
  for (const [id, s] of sorted(doc.spaces)) place(id, 'space', s);
  for (const [id, p] of sorted(doc.parts)) place(id, 'part', p);
  return before && !fresh && before.byId.size === byId.size ? before : { all, byId, axes };
}
/** Are these the copies of this very entry in these very groups? */
function isFrom(list: readonly Instance[], kind: InstanceKind, entry: Instance['doc'], parents: readonly (Instance | null)[]): boolean {
  const first = list[0];
  if (!first || first.kind !== kind || first.doc !== entry) return false;
  const each = list.length / parents.length;
  return parents.every((p, i) => list[i * each]?.parent === p);
}
function copiesOf(
  id: string,
  kind: InstanceKind,
  entry: Instance['doc'],
  parents: readonly (Instance | null)[],
  own: readonly (readonly string[])[],
): Instance[] {
  return parents.flatMap((parent) =>
    product(own.map((n) => n.length)).map((index): Instance => {
      const names = [...(parent?.names ?? []), ...index.map((i, k) => own[k]?.[i] ?? '')];
      return { path: pathOf(id, names), id, names, kind, doc: entry, parent, index };
    }),
  );
}
export const sorted = <T>(record: Record<string, T> | undefined): [string, T][] =>
  Object.entries(record ?? {}).sort((a, b) => byCodePoint(a[0], b[0]));

/** All index vectors below the counts, the last running fastest. */
function product(counts: readonly number[]): number[][] {
  return counts.reduce<number[][]>((rows, n) => rows.flatMap((r) => Array.from({ length: n }, (_, i) => [...r, i])), [[]]);
}

export type Found = { readonly ok: true; readonly instance: Instance } | { readonly ok: false; readonly problem: Problem };

/**
 * The one copy that a path means to a reader. A star is the reader's own copy name: the one among its names that exists on
 * that axis of the other part ('*+1' the next, wrapping). The bare id of a part with copies is legal only for the reader itself.
 */
export function findFor(reader: Instance | null, path: PathRef, where: string, instances: Instances): Found {
  const axes = instances.axes.get(path.id);
  if (!axes)
    return missing(where, `no part, space or group is named "${shown(path.id)}".`, nearestWord(path.id, [...instances.axes.keys()]));
  if (reader && path.names.length === 0 && reader.id === path.id) return { ok: true, instance: reader };
  if (path.names.length !== axes.length) {
    const example = pathOf(
      path.id,
      axes.map((a) => a[0] ?? ''),
    );
    return missing(
      where,
      axes.length === 0
        ? `"${path.id}" has no copies.`
        : `"${path.id}" has copies: say which, with ${axes.length} name${axes.length === 1 ? '' : 's'} after it.`,
      example,
    );
  }
  const names: string[] = [];
  for (const [i, ref] of path.names.entries()) {
    const axis = axes[i] ?? [];
    const name = ref === '*' || ref === '*+1' ? starName(reader, axis, i, ref) : ref;
    if (name === null && !reader)
      return missing(
        where,
        `"*" cannot stand here: name one copy of "${path.id}".`,
        pathOf(
          path.id,
          axes.map((a) => a[0] ?? ''),
        ),
      );
    if (name === null)
      return missing(
        where,
        `"*" after "${path.id}" is unclear here: the reader's own copies are ${(reader?.names ?? []).join(', ') || 'none'}, the choices ${axis.slice(0, 6).join(', ')}.`,
        axis[0],
      );
    if (!axis.includes(name)) return missing(where, `"${path.id}" has no copy "${shown(name)}" there.`, nearestWord(name, axis) ?? axis[0]);
    names.push(name);
  }
  const instance = instances.all.get(pathOf(path.id, names));
  return instance ? { ok: true, instance } : missing(where, `there is no "${pathOf(path.id, names)}".`);
}
const missing = (where: string, what: string, nearest?: string | null): Found => ({ ok: false, problem: problem(where, what, nearest) });

function starName(reader: Instance | null, axis: readonly string[], at: number, star: '*' | '*+1'): string | null {
  const own = (reader?.names ?? []).filter((n) => axis.includes(n));
  const same = reader?.names[at];
  const name = new Set(own).size === 1 ? own[0] : same !== undefined && axis.includes(same) ? same : undefined;
  if (name === undefined) return null;
  return star === '*' ? name : (axis[(axis.indexOf(name) + 1) % axis.length] ?? null);
}

export type Bound = { readonly role: string; readonly instances: readonly Instance[] };
/**
 * The places that one entry of a joint stands for. Stars on axes with the same names go together (the first such star of each
 * path, the second, …); axes with different names multiply. '*+1' is the next copy, wrapping.
 */
export function expandPlace(
  roles: readonly (readonly [string, readonly PathRef[]])[],
  where: string,
  instances: Instances,
): { places: Bound[][]; problems: Problem[] } {
  const variables = new Map<string, readonly string[]>();
  const problems: Problem[] = [];
  for (const [role, paths] of roles) for (const p of paths) starVariables(p, `${where}/${role}`, instances, variables, problems);
  if (problems.length) return { places: [], problems };
  const keys = [...variables.keys()];
  // Counted before any is made: stars with different names multiply.
  const count = keys.reduce((n, k) => n * (variables.get(k)?.length ?? 0), 1);
  if (count > LIMITS.places)
    return { places: [], problems: [problem(where, `this stands for ${count} places; at most ${LIMITS.places} are allowed.`)] };
  const places = product(keys.map((k) => variables.get(k)?.length ?? 0)).map((choice) => {
    const chosen = new Map(keys.map((k, i) => [k, variables.get(k)?.[choice[i] ?? 0] ?? '']));
    return roles.map(([role, paths]) => ({ role, instances: paths.flatMap((p) => bind(p, instances, chosen) ?? []) }));
  });
  return { places, problems };
}
function starVariables(
  p: PathRef,
  where: string,
  instances: Instances,
  variables: Map<string, readonly string[]>,
  problems: Problem[],
): void {
  const axes = instances.axes.get(p.id);
  if (!axes || !instances.byId.get(p.id)?.some((i) => i.kind === 'part')) {
    const parts = [...instances.byId].filter(([, l]) => l[0]?.kind === 'part').map(([id]) => id);
    problems.push(
      problem(
        where,
        axes ? `"${p.id}" is not a part; only parts are joined.` : `no part is named "${shown(p.id)}".`,
        nearestWord(p.id, parts),
      ),
    );
    return;
  }
  if (axes.length !== p.names.length) {
    problems.push(
      problem(
        where,
        `"${p.id}" has ${axes.length ? `copies: ${axes.length} name${axes.length === 1 ? '' : 's'} must follow it` : 'no copies'}.`,
        pathOf(
          p.id,
          axes.map(() => '*'),
        ),
      ),
    );
    return;
  }
  p.names.forEach((n, i) => {
    const axis = axes[i] ?? [];
    if (n === '*' || n === '*+1') variables.set(variableOf(p, i, axes), axis);
    else if (!axis.includes(n)) problems.push(problem(where, `"${p.id}" has no copy "${shown(n)}".`, nearestWord(n, axis) ?? axis[0]));
  });
}
/** Same names, same variable; a second star on an axis of the same names within one path is another one. */
function variableOf(p: PathRef, i: number, axes: readonly (readonly string[])[]): string {
  const key = (axes[i] ?? []).join(' ');
  const before = p.names.slice(0, i).filter((n, k) => (n === '*' || n === '*+1') && (axes[k] ?? []).join(' ') === key).length;
  return `${key}#${before}`;
}
function bind(p: PathRef, instances: Instances, chosen: ReadonlyMap<string, string>): Instance | undefined {
  const axes = instances.axes.get(p.id) ?? [];
  const names = p.names.map((n, i) => {
    const axis = axes[i] ?? [];
    if (n !== '*' && n !== '*+1') return n;
    const name = chosen.get(variableOf(p, i, axes)) ?? '';
    return n === '*' ? name : (axis[(axis.indexOf(name) + 1) % axis.length] ?? name);
  });
  return instances.all.get(pathOf(p.id, names));
}
