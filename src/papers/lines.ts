/** The lines that a draughtsman would draw: outlines against what lies behind, edges between faces, and rings on end grain. */
import { type Vec2, type Vec3, add, dot, scale, sub } from '../geom/vec3.ts';
import { outPoint } from '../geom/frame.ts';
import { guessedPith, ringArcs } from '../wood/rings.ts';
import type { LineKind } from './record.ts';
import { type Scene, type Tri, cornersOf, isEndGrain, onPaper, sectionOf } from './space.ts';
import { type Blockers, type Stretch, seenOf } from './visible.ts';

export type Piece = { readonly part: number; readonly kind: LineKind; readonly a: Vec3; readonly b: Vec3 };

/** Faces that meet at less than this run into each other: no line between them. */
const SHARP = Math.cos((20 * Math.PI) / 180);
/** Rings stand at least this far apart on the paper, units. */
const RING_APART = 3.4;
const MOST_RINGS = 7;

/** Everything that is seen, in straight pieces, frame of the paper, mm. `scale`: units of the paper a mm. */
export function linesOf(s: Scene, perMm: number, blockers: Blockers): Piece[] {
  return [...edgesOf(s), ...ringsOf(s, perMm)].flatMap((line) => seen(line, blockers));
}
function seen(line: Piece, blockers: Blockers): Piece[] {
  const at = (t: number): Vec3 => add(line.a, scale(sub(line.b, line.a), t));
  return seenOf(line.a, line.b, blockers).map(([from, to]) => ({ ...line, a: at(from), b: at(to) }));
}
function edgesOf(s: Scene): Piece[] {
  const waiting = new Map<string, Tri>();
  const out: Piece[] = [];
  for (const t of s.tris)
    for (let k = 0; k < 3; k++) {
      const [i, j] = [t.corners[k] as number, t.corners[(k + 1) % 3] as number];
      const other = waiting.get(`${j} ${i}`);
      if (!other) {
        waiting.set(`${i} ${j}`, t);
        continue;
      }
      waiting.delete(`${j} ${i}`);
      const kind = kindOf(t, other);
      if (kind) out.push({ part: t.part, kind, a: s.points[Math.min(i, j)] as Vec3, b: s.points[Math.max(i, j)] as Vec3 });
    }
  return out;
}
function kindOf(t: Tri, u: Tri): LineKind | null {
  const [tSeen, uSeen] = [t.normal[2] > 0, u.normal[2] > 0];
  if (!tSeen && !uSeen) return null;
  if (tSeen !== uSeen) return 'outline';
  return dot(t.normal, u.normal) < SHARP ? 'edge' : null;
}

/** Growth rings as straight pieces, cut to the faces across the grain. */
function ringsOf(s: Scene, perMm: number): Piece[] {
  const faces = new Map<string, Tri[]>();
  for (const t of s.front) {
    if (!isEndGrain(s, t)) continue;
    const [a] = cornersOf(s, t);
    // One plane across the grain: faces of different cuts at one height share their rings.
    const key = `${t.part} ${Math.round(dot(a, s.grain[t.part] as Vec3) * 100)}`;
    faces.set(key, [...(faces.get(key) ?? []), t]);
  }
  return [...faces.values()].flatMap((tris) => ringsOn(s, tris, perMm));
}
function ringsOn(s: Scene, tris: readonly Tri[], perMm: number): Piece[] {
  const first = tris[0] as Tri;
  const part = s.piece.parts[first.part];
  if (!part) return [];
  const [across, through] = sectionOf(part.stock, part.grain);
  const { min, max } = part.stock;
  const [wide, thick] = [max[across] - min[across], max[through] - min[through]];
  if (!(wide > 0 && thick > 0) || thick * perMm < 2.5 * RING_APART) return [];
  const pith = guessedPith(wide, thick);
  const by = s.piece.apart.get(part.path) ?? [0, 0, 0];
  const level = dot(cornersOf(s, first)[0], s.grain[first.part] as Vec3);
  const place = ([x, y]: Vec2): Vec3 => {
    const own: [number, number, number] = [0, 0, 0];
    own[across] = min[across] + x;
    own[through] = min[through] + y;
    const p = onPaper(s.axes, add(outPoint(part.frame, own), by));
    // Along the grain into the plane of the face.
    return add(p, scale(s.grain[first.part] as Vec3, level - dot(p, s.grain[first.part] as Vec3)));
  };
  const arcs = ringArcs(wide, thick, pith, RING_APART / perMm, MOST_RINGS);
  return arcs.flatMap((arc) => {
    const n = Math.max(2, Math.ceil(((arc.to - arc.from) * arc.r * perMm) / 6));
    const points = Array.from({ length: n + 1 }, (_, i): Vec3 => {
      const a = arc.from + ((arc.to - arc.from) * i) / n;
      return place([pith[0] + arc.r * Math.cos(a), pith[1] + arc.r * Math.sin(a)]);
    });
    return points.slice(1).flatMap((b, i) => onFace(s, tris, points[i] as Vec3, b, first.part));
  });
}
/** What of a line lies on these triangles. */
function onFace(s: Scene, tris: readonly Tri[], a: Vec3, b: Vec3, part: number): Piece[] {
  const spans = tris.flatMap((t): Stretch[] => {
    let [from, to] = [0, 1];
    const at = cornersOf(s, t);
    for (let k = 0; k < 3; k++) {
      const [c, d] = [at[k] as Vec3, at[(k + 1) % 3] as Vec3];
      const side = (v: Vec3): number => (d[0] - c[0]) * (v[1] - c[1]) - (d[1] - c[1]) * (v[0] - c[0]);
      const [p, q] = [side(a), side(b)];
      if (p <= 0 && q <= 0) return [];
      if (p < 0) from = Math.max(from, p / (p - q));
      else if (q < 0) to = Math.min(to, p / (p - q));
    }
    return to - from > 1e-9 ? [[from, to]] : [];
  });
  const joined: [number, number][] = [];
  for (const [from, to] of spans.sort((x, y) => x[0] - y[0])) {
    const last = joined.at(-1);
    if (last && from <= last[1] + 1e-6) last[1] = Math.max(last[1], to);
    else joined.push([from, to]);
  }
  const at = (t: number): Vec3 => add(a, scale(sub(b, a), t));
  return joined.map(([from, to]) => ({ part, kind: 'ring', a: at(from), b: at(to) }));
}
