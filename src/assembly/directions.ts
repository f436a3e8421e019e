/** Directions worth trying, in the order in which a maker would think of them. A direction and its opposite are one line. */
import { AXES, type Vec3, axisVec, cross, dot, length, quantise3, scale, unit } from '../geom/vec3.ts';
import type { PlanLink, PlanPart } from './part.ts';
import type { Patch } from './contact.ts';
import { SAME_DIRECTION } from './tolerance.ts';

/** Lines through space as unit vectors; a signed direction is 2·line, or 2·line + 1 for the opposite. */
export type Lines = { readonly lines: Vec3[] };
export type Signed = number;
export const opposite = (s: Signed): Signed => s ^ 1;
export const lineOf = (s: Signed): number => s >> 1;
export function vecOf(l: Lines, s: Signed): Vec3 {
  const v = l.lines[s >> 1];
  if (!v) throw new Error(`there is no direction ${s} among ${l.lines.length} lines`);
  return s & 1 ? scale(v, -1) : v;
}
/** Most lines kept of one sort: beyond these the search would cost more than the directions are worth. */
const MOST = 40;

/** The signed number of a direction, entered when new; null when it is new and there is no more room. */
export function enter(l: Lines, along: Vec3, room = Infinity): Signed | null {
  const d = unit(along);
  for (let k = 0; k < l.lines.length; k++) {
    const c = dot(l.lines[k]!, d);
    if (Math.abs(c) > SAME_DIRECTION) return 2 * k + (c < 0 ? 1 : 0);
  }
  if (l.lines.length >= room) return null;
  const first = d.find((n) => Math.abs(n) > 1e-9) ?? 1;
  l.lines.push(snapped(first < 0 ? scale(d, -1) : d));
  return 2 * (l.lines.length - 1) + (first < 0 ? 1 : 0);
}
/** An axis that comes out of reckoning is made exact, so that flush faces stay flush. */
function snapped(d: Vec3): Vec3 {
  const r: Vec3 = [Math.round(d[0]), Math.round(d[1]), Math.round(d[2])];
  return length(r) === 1 && dot(r, d) > SAME_DIRECTION ? r : d;
}

/** The piece's axes, then the joints' own directions. Every joint's direction is entered, however many there are. */
export function mainLines(links: readonly PlanLink[]): Lines {
  const l: Lines = { lines: AXES.map((a) => axisVec(a)) };
  const all = links.flatMap((k) => k.frees.map((f) => f.along)).filter((v) => length(v) > 0);
  for (const v of sortedVecs(all)) enter(l, v);
  return l;
}
/** Further lines for what the main ones cannot part: own axes of the parts, and edges that two contact planes share. */
export function furtherLines(l: Lines, parts: readonly PlanPart[], contacts: Iterable<readonly Patch[]>): Signed[] {
  const before = l.lines.length;
  for (const v of sortedVecs(parts.flatMap((p) => p.axes ?? []))) enter(l, v, before + MOST);
  const rays: Vec3[] = [];
  for (const patches of contacts) {
    const normals = distinct(patches.map((p) => p.normal));
    for (let i = 0; i < normals.length && i < 12; i++)
      for (let j = 0; j < i; j++) {
        const ray = cross(normals[i]!, normals[j]!);
        if (length(ray) > 0.05) rays.push(unit(ray));
      }
  }
  for (const v of sortedVecs(rays)) enter(l, v, before + 2 * MOST);
  return l.lines.slice(before).flatMap((_, k) => [2 * (before + k), 2 * (before + k) + 1]);
}
/** The same order whatever the order of the parts. */
const sortedVecs = (all: readonly Vec3[]): Vec3[] =>
  all
    .map((v) => ({ v, q: quantise3(v) }))
    .filter(({ q }) => length(q) > 0)
    .sort((a, b) => b.q[0] - a.q[0] || b.q[1] - a.q[1] || b.q[2] - a.q[2])
    .map(({ v }) => v);
function distinct(all: readonly Vec3[]): Vec3[] {
  const out: Vec3[] = [];
  for (const v of sortedVecs(all)) if (!out.some((w) => Math.abs(dot(v, w)) > SAME_DIRECTION)) out.push(v);
  return out;
}
