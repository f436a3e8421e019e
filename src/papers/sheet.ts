/** From the eye's millimetres to tidy units of the paper: scale, lines joined end to end, and room for letters. */
import type { Vec2, Vec3 } from '../geom/vec3.ts';
import type { Piece } from './lines.ts';
import type { Line, LineKind } from './record.ts';
import { type Scene, cornersOf } from './space.ts';
import { type Blockers, isHidden, samplesOf } from './visible.ts';

export type Sheet = {
  /** Units of the paper a mm. */
  readonly scale: number;
  readonly width: number;
  readonly height: number;
  readonly put: (p: readonly [number, number, ...number[]]) => Vec2;
};
/** Round the drawing, units: half the widest line and a little air. */
const MARGIN = 4;
/** Corners that stand less than this off a line are not drawn, units. */
const FLAT = 0.12;

const tenth = (n: number): number => {
  const q = Math.round(n * 10) / 10;
  return q === 0 ? 0 : q;
};
export function sheetOf(s: Scene, room: Vec2): Sheet {
  const used = s.points.length ? s.points : [[0, 0, 0] as Vec3];
  const [x0, x1] = [Math.min(...used.map((p) => p[0])), Math.max(...used.map((p) => p[0]))];
  const [y0, y1] = [Math.min(...used.map((p) => p[1])), Math.max(...used.map((p) => p[1]))];
  const scale = Math.min((room[0] - 2 * MARGIN) / Math.max(1e-6, x1 - x0), (room[1] - 2 * MARGIN) / Math.max(1e-6, y1 - y0));
  return {
    scale,
    width: tenth((x1 - x0) * scale + 2 * MARGIN),
    height: tenth((y1 - y0) * scale + 2 * MARGIN),
    put: (p) => [tenth(MARGIN + (p[0] - x0) * scale), tenth(MARGIN + (y1 - p[1]) * scale)],
  };
}

/** Straight pieces joined where they meet, each drawn once, thick ones after thin ones. */
export function chained(pieces: readonly Piece[], sheet: Sheet): Line[] {
  const order: readonly LineKind[] = ['ring', 'edge', 'outline'];
  const drawn = new Set<string>();
  const out: Line[] = [];
  // What is an outline to one part may be an edge to another: the heavier line is the one that is drawn.
  for (const kind of [...order].reverse()) {
    const own = pieces.filter((p) => p.kind === kind).map((p) => [sheet.put(p.a), sheet.put(p.b)] as const);
    const fresh = own.filter(([a, b]) => {
      const key = a.join() < b.join() ? `${a.join()} ${b.join()}` : `${b.join()} ${a.join()}`;
      if (a.join() === b.join() || drawn.has(key)) return false;
      drawn.add(key);
      return true;
    });
    out.unshift(...runs(fresh).map((points): Line => ({ kind, points })));
  }
  return out;
}
function runs(pieces: readonly (readonly [Vec2, Vec2])[]): Vec2[][] {
  const at = new Map<string, number[]>();
  pieces.forEach(([a, b], i) => {
    for (const end of [a, b]) at.set(end.join(), [...(at.get(end.join()) ?? []), i]);
  });
  const used = new Set<number>();
  const follow = (from: Vec2): Vec2[] => {
    const run: Vec2[] = [];
    for (let end = from; ;) {
      const next = (at.get(end.join()) ?? []).find((i) => !used.has(i));
      if (next === undefined) return run;
      used.add(next);
      const [a, b] = pieces[next] as readonly [Vec2, Vec2];
      end = a.join() === end.join() ? b : a;
      run.push(end);
    }
  };
  return pieces.flatMap(([a], i) => {
    if (used.has(i)) return [];
    const forth = follow(a);
    const back = follow(a);
    return [straightened([...back.reverse(), a, ...forth])];
  });
}
/** The same run without the corners that hardly stand off it (after Douglas and Peucker). */
export function straightened(points: readonly Vec2[], flat = FLAT): Vec2[] {
  const [first, last] = [points[0] as Vec2, points.at(-1) as Vec2];
  if (points.length < 3) return [...points];
  const [dx, dy] = [last[0] - first[0], last[1] - first[1]];
  const long = Math.hypot(dx, dy);
  const off = (p: Vec2): number =>
    long < 1e-9
      ? Math.hypot(p[0] - first[0], p[1] - first[1])
      : Math.abs(dx * (p[1] - first[1]) - dy * (p[0] - first[0])) / long + beyond(p);
  // A run that turns back on itself stands off its chord along it, too.
  const beyond = (p: Vec2): number => {
    const t = ((p[0] - first[0]) * dx + (p[1] - first[1]) * dy) / (long * long);
    return t < 0 ? -t * long : t > 1 ? (t - 1) * long : 0;
  };
  let most = 0;
  let at = 0;
  points.forEach((p, i) => {
    const d = i > 0 && i < points.length - 1 ? off(p) : 0;
    if (d > most) [most, at] = [d, i];
  });
  if (most <= flat) return [first, last];
  return [...straightened(points.slice(0, at + 1), flat), ...straightened(points.slice(at), flat).slice(1)];
}

/** Radius of a letter's circle, units; and the room that it likes to have round its middle. */
export const DISC = 9.5;
const ROOMY = 13;
/** On less than this a letter would hide what it names, units. */
const NARROW = 2;
type Clear = { readonly part: number; readonly at: Vec2; readonly clear: number };
/**
 * For each part the place on its seen faces that is clear of every line and as near to its middle as may be: where its letter goes. Null
 * where too little of it is seen, or where the letters of larger parts stand.
 */
export function clearPlaces(s: Scene, sheet: Sheet, lines: readonly Line[], blockers: Blockers): (Vec2 | null)[] {
  const out: (Vec2 | null)[] = s.piece.parts.map(() => null);
  const all = s.piece.parts.flatMap((p, part) => (p.letter === '' ? [] : (clearPlace(s, part, sheet, lines, blockers) ?? [])));
  for (const { part, at } of all.sort((a, b) => b.clear - a.clear || a.part - b.part))
    if (!out.some((o) => o && Math.hypot(o[0] - at[0], o[1] - at[1]) < 2 * DISC + 1)) out[part] = at;
  return out;
}
function clearPlace(s: Scene, part: number, sheet: Sheet, lines: readonly Line[], blockers: Blockers): Clear | null {
  const own = s.front.filter((t) => t.part === part);
  // Bent faces are of many small triangles: few places on each are enough.
  const places = own
    .flatMap((t) => samplesOf(cornersOf(s, t), own.length > 60 ? 2 : 7))
    .filter((p) => !isHidden(p, blockers))
    .map(sheet.put);
  if (places.length === 0) return null;
  const middle = (k: 0 | 1): number => (Math.min(...places.map((p) => p[k])) + Math.max(...places.map((p) => p[k]))) / 2;
  const [x, y] = [middle(0), middle(1)];
  let best: Clear | null = null;
  let most = -Infinity;
  for (const at of places) {
    const clear = Math.min(ROOMY, ...lines.map((l) => (l.kind === 'ring' ? ROOMY : nearest(l.points, at))));
    const worth = clear - 0.02 * Math.hypot(at[0] - x, at[1] - y);
    if (worth > most + 0.05 && clear > NARROW) [best, most] = [{ part, at: inside(at, sheet), clear }, worth];
  }
  return best;
}
/** The whole circle lies on the paper. */
const inside = ([x, y]: Vec2, sheet: Sheet): Vec2 => {
  const within = (n: number, size: number): number => tenth(Math.min(size - DISC - 1, Math.max(DISC + 1, n)));
  return [within(x, sheet.width), within(y, sheet.height)];
};
function nearest(points: readonly Vec2[], p: Vec2): number {
  let least = Infinity;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as Vec2, points[i] as Vec2];
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)));
    least = Math.min(least, Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy));
  }
  return least;
}
