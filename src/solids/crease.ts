/** The lines that a draughtsman would draw: where two faces meet at more than 20°, each once and as long as it is straight. */
import { type Vec3, add, dot, length, sub, unit } from '../geom/vec3.ts';
import { type Faced, normalOf } from './faces.ts';
import { cornersAt } from './measure.ts';
import type { Face } from './skin.ts';

const SHARP = Math.cos((20 * Math.PI) / 180);
type Line = { readonly a: number; readonly b: number };

/** Line pieces, xyz xyz each, record frame. Faces of different cuts that lie in one plane have no line between them. */
export function creasesOf(faced: Faced): Float32Array<ArrayBuffer> {
  const { positions } = faced.reading;
  const at = (i: number): Vec3 => [positions[3 * i] ?? 0, positions[3 * i + 1] ?? 0, positions[3 * i + 2] ?? 0];
  const lines = straightened(sharpLines(faced, at), at);
  return new Float32Array(lines.flatMap(({ a, b }) => [...at(a), ...at(b)]));
}

function sharpLines(faced: Faced, at: (i: number) => Vec3): Line[] {
  const { triangles, positions } = faced.reading;
  const corners = positions.length / 3;
  const waiting = new Map<number, number>();
  const out: Line[] = [];
  for (let i = 0; i < triangles.length; i++) {
    const t = Math.floor(i / 3);
    const [a, b] = [triangles[i] ?? 0, triangles[i % 3 === 2 ? i - 2 : i + 1] ?? 0];
    const other = waiting.get(b * corners + a);
    if (other === undefined) {
      waiting.set(a * corners + b, t);
      continue;
    }
    waiting.delete(b * corners + a);
    if (isSharp(faced, t, other, a, b, at)) out.push(a < b ? { a, b } : { a: b, b: a });
  }
  return out;
}
function isSharp(faced: Faced, t: number, u: number, i: number, k: number, at: (i: number) => Vec3): boolean {
  const [f, g] = [faced.triangleFace[t] ?? 0, faced.triangleFace[u] ?? 0];
  const [one, other] = [faced.faces[f]?.face as Face, faced.faces[g]?.face as Face];
  if (f === g && one.form !== 'ruled') return false;
  if (one.form === 'flat' && other.form === 'flat') return dot(one.normal, other.normal) < SHARP;
  const [a, b] = [at(i), at(k)];
  const n = (tri: number, face: Face): Vec3 => {
    const corners = cornersAt(faced.reading, tri);
    return normalised(add(normalOf(face, a, corners), normalOf(face, b, corners)));
  };
  return dot(n(t, one), n(u, other)) < SHARP;
}
const normalised = (v: Vec3): Vec3 => (length(v) > 0 ? unit(v) : v);

/** Pieces that go on in one line through a shared corner become one. */
function straightened(lines: readonly Line[], at: (i: number) => Vec3): Line[] {
  const ends = new Map<number, { line: number; way: Vec3 }[]>();
  const group = lines.map((_, i) => i);
  const root = (i: number): number => (group[i] === i ? i : root(group[i] ?? i));
  lines.forEach(({ a, b }, i) => {
    const way = normalised(sub(at(b), at(a)));
    for (const [corner, out] of [
      [a, way],
      [b, [-way[0], -way[1], -way[2]] as Vec3],
    ] as const) {
      const here = ends.get(corner) ?? [];
      for (const h of here) if (dot(h.way, out) < -1 + 1e-9) group[root(i)] = root(h.line);
      here.push({ line: i, way: out });
      ends.set(corner, here);
    }
  });
  const runs = new Map<number, Line[]>();
  lines.forEach((l, i) => {
    const run = runs.get(root(i));
    if (run) run.push(l);
    else runs.set(root(i), [l]);
  });
  return [...runs.values()].map((run) => wholeOf(run, at));
}
function wholeOf(run: readonly Line[], at: (i: number) => Vec3): Line {
  const first = run[0] as Line;
  if (run.length === 1) return first;
  const way = sub(at(first.b), at(first.a));
  const along = run.flatMap((l) => [l.a, l.b]).toSorted((p, q) => dot(way, at(p)) - dot(way, at(q)));
  return { a: along[0] as number, b: along.at(-1) as number };
}
