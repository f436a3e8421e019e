/** All parts of a piece with what was found out about them: shadows, contacts and verdicts of pairs, each worked out once. */
import { boxesNear } from '../geom/box.ts';
import { type Vec3, dot, length, unit } from '../geom/vec3.ts';
import { type Flat, type Patch, contactPatches, flatsOf } from './contact.ts';
import { type Lines, type Signed, mainLines } from './directions.ts';
import type { PlanLink, PlanPart } from './part.ts';
import { type Shift, exitTravel, freeTravel, runsInto } from './pair-test.ts';
import { type Basis, type Shadow, basisAlong, shadowOf } from './shadow.ts';
import { CONTACT_REACH, SLIP } from './tolerance.ts';

export type Scene = {
  /** Sorted by path: nothing below depends on the order in which the parts came. */
  readonly parts: readonly PlanPart[];
  readonly index: ReadonlyMap<string, number>;
  readonly links: readonly SceneLink[];
  readonly lines: Lines;
  readonly shadows: Map<number, Shadow>;
  readonly bases: Map<number, Basis>;
  /** By line, one byte a pair: 0 not known, 1 free, 2 runs into. */
  readonly known: Map<number, Uint8Array>;
  readonly flats: Map<number, readonly Flat[]>;
  readonly contacts: Map<number, readonly Patch[]>;
};
export type SceneLink = {
  readonly joint: string;
  readonly parts: readonly number[];
  readonly frees: readonly { readonly moves: readonly number[]; readonly along: Vec3 }[];
  readonly loose: boolean;
};

/** Throws when two parts have one path, when a link names a part that is not there, or when a number is not one. */
export function makeScene(given: readonly PlanPart[], links: readonly PlanLink[]): Scene {
  const parts = [...given].sort((a, b) => byPath(a.path, b.path));
  const index = new Map(parts.map((p, i) => [p.path, i]));
  if (index.size !== parts.length) throw new Error(`${parts.length} parts have only ${index.size} paths among them`);
  for (const p of parts) {
    if (p.triangles.length % 9 !== 0) throw new Error(`'${p.path}' has ${p.triangles.length} numbers, not nine a triangle`);
    if (!p.triangles.every(Number.isFinite) || !Number.isFinite(p.weight)) throw new Error(`'${p.path}' has a number that is not finite`);
  }
  const at = (path: string): number => {
    const i = index.get(path);
    if (i === undefined) throw new Error(`a link names '${path}', which is no part of the plan`);
    return i;
  };
  const name = (l: PlanLink): string => [l.joint, ...l.parts].join(' ');
  const sorted = [...links].sort((a, b) => byPath(name(a), name(b)));
  return {
    parts,
    index,
    links: sorted.map((l) => ({
      joint: l.joint,
      parts: l.parts.map(at),
      frees: l.frees.map((f) => ({ moves: f.moves.map(at), along: f.along })),
      loose: l.loose ?? false,
    })),
    lines: mainLines(links),
    shadows: new Map(),
    bases: new Map(),
    known: new Map(),
    flats: new Map(),
    contacts: new Map(),
  };
}
const byPath = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

function basisOf(s: Scene, line: number): Basis {
  let b = s.bases.get(line);
  if (!b) s.bases.set(line, (b = basisAlong(s.lines.lines[line]!)));
  return b;
}
function shadow(s: Scene, i: number, line: number): Shadow {
  const key = line * s.parts.length + i;
  let out = s.shadows.get(key);
  if (!out) s.shadows.set(key, (out = shadowOf(s.parts[i]!.triangles, basisOf(s, line))));
  return out;
}
/** Does part i, moving along `dir` from its place, run into part j in its place? */
export function stops(s: Scene, i: number, j: number, dir: Signed): boolean {
  // Against a direction the two change places: i runs into j along -d when j runs into i along d.
  if (dir & 1) return stops(s, j, i, dir ^ 1);
  const line = dir >> 1;
  const n = s.parts.length;
  let known = s.known.get(line);
  if (!known) s.known.set(line, (known = new Uint8Array(n * n)));
  const k = i * n + j;
  if (known[k] === 0) known[k] = runsInto(shadow(s, i, line), shadow(s, j, line)) ? 2 : 1;
  return known[k] === 2;
}
function shiftOf(s: Scene, line: number, apart: Vec3): Shift {
  const [u, v, w] = basisOf(s, line);
  return [dot(apart, u), dot(apart, v), dot(apart, w)];
}
/** The same for parts that stand off their places: `apart` is where i stands less where j stands; i goes `travel` far. */
export function stopsApart(s: Scene, i: number, j: number, dir: Signed, apart: Vec3, travel: number): boolean {
  const line = dir >> 1;
  const [a, b] = [shadow(s, i, line), shadow(s, j, line)];
  const shift = shiftOf(s, line, apart);
  return dir & 1 ? runsInto(b, a, [-shift[0], -shift[1], -shift[2]], travel) : runsInto(a, b, shift, travel);
}
/** Does part i, going the way `by` from where it stands off j by `apart`, run into j? Any direction; mm, or without end where `apart` is left out. */
export function runIntoOnWay(s: Scene, i: number, j: number, by: Vec3, apart?: Vec3): boolean {
  const basis = basisAlong(unit(by));
  const [a, b] = [i, j].map((k) => shadowOf(s.parts[k]!.triangles, basis)) as [Shadow, Shadow];
  return apart ? runsInto(a, b, [dot(apart, basis[0]), dot(apart, basis[1]), dot(apart, basis[2])], length(by) + SLIP) : runsInto(a, b);
}
/** How far part i can go along `dir` from its place until it touches j. */
export function freeWay(s: Scene, i: number, j: number, dir: Signed): number {
  const line = dir >> 1;
  return dir & 1 ? freeTravel(shadow(s, j, line), shadow(s, i, line)) : freeTravel(shadow(s, i, line), shadow(s, j, line));
}
/** The same along any direction. */
export function wayOutAlong(s: Scene, i: number, j: number, by: Vec3, apart: Vec3): number {
  const basis = basisAlong(unit(by));
  const [a, b] = [i, j].map((k) => shadowOf(s.parts[k]!.triangles, basis)) as [Shadow, Shadow];
  return exitTravel(a, b, [dot(apart, basis[0]), dot(apart, basis[1]), dot(apart, basis[2])]);
}
/** How much further i must go along `dir` to lie wholly ahead of j; `apart` as above. -Infinity where their shadows miss each other. */
export function wayOut(s: Scene, i: number, j: number, dir: Signed, apart: Vec3): number {
  const line = dir >> 1;
  const [a, b] = [shadow(s, i, line), shadow(s, j, line)];
  const shift = shiftOf(s, line, apart);
  return dir & 1 ? exitTravel(b, a, [-shift[0], -shift[1], -shift[2]]) : exitTravel(a, b, shift);
}
function flats(s: Scene, i: number): readonly Flat[] {
  let out = s.flats.get(i);
  if (!out) s.flats.set(i, (out = flatsOf(s.parts[i]!.triangles)));
  return out;
}
/** Contact of two parts in their places; normals out of the one that comes first by path. */
export function contactOf(s: Scene, i: number, j: number): readonly Patch[] {
  const [a, b] = i < j ? [i, j] : [j, i];
  const key = a * s.parts.length + b;
  let out = s.contacts.get(key);
  if (!out) {
    const [p, q] = [s.parts[a]!, s.parts[b]!];
    out = boxesNear(p.box, q.box, CONTACT_REACH) ? contactPatches(flats(s, a), p.box, flats(s, b), q.box) : [];
    s.contacts.set(key, out);
  }
  return out;
}
