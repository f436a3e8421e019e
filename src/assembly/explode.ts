/**
 * How far to draw each move apart: past what engages, past whatever stands on the way with its own parts drawn apart already,
 * plus a gap. Worked out from the leaves up; then every step is replayed and what still meets is given more room.
 */
import { type Box, sizeOf, unionBox } from '../geom/box.ts';
import { type Vec3, add, dot, length, scale, sub, unit } from '../geom/vec3.ts';
import { engagementAlong } from './contact.ts';
import { vecOf } from './directions.ts';
import { type Scene, contactOf, wayOut, wayOutAlong } from './scene.ts';
import type { Move, Tree } from './search.ts';
import { type Clash, type Distances, type Step, byOf, clashes, stepsOf, tidy } from './spread.ts';

/** A part that slides up to another stops short of it by this much, mm. */
const SHORT = 1;
/** Rounds of giving more room before a step is left undrawn. */
const ROUNDS = 12;

/** A gap that reads well at the size of the piece: 6 % of its diagonal, 20 to 80 mm (common practice). */
export function gapFor(parts: readonly { readonly box: Box }[]): number {
  const [first, ...others] = parts;
  if (!first) return 20;
  const size = sizeOf(others.reduce((b, p) => unionBox(b, p.box), first.box));
  return Math.min(80, Math.max(20, 0.06 * Math.hypot(...size)));
}
/** Distances at which no two parts meet, at full spread and along the way. */
export function drawApart(s: Scene, t: Tree, gap: number): { readonly far: Distances; readonly steps: readonly Step[] } {
  const far: Distances = new Map();
  layOut(s, t, gap, far);
  const most = stepsOf(s, t, far).length;
  for (let round = 0; round < ROUNDS + most; round++) {
    const steps = stepsOf(s, t, far);
    const met = clashes(s, steps);
    if (met.length === 0) return { far, steps };
    // Last resort: a step left undrawn, its parts stay together. The whole kept together is always clear, so this ends.
    if (round >= ROUNDS) for (const m of met[0]!.step.moves) far.set(m, 0);
    else {
      // All from the same state: two clashes of moves alike ask for room once.
      const before = new Map(far);
      for (const clash of met) giveRoom(s, t, clash, gap, before, far);
    }
  }
  return { far, steps: stepsOf(s, t, far) };
}

/** Offsets of all parts of `t` against what stays of it, with its moves' distances entered in `far`. */
function layOut(s: Scene, t: Tree, gap: number, far: Distances): Map<number, Vec3> {
  const still = t.rest ? layOut(s, t.rest, gap, far) : new Map(t.parts.map((p): [number, Vec3] => [p, [0, 0, 0]]));
  const apart = t.moves.map((m) => layOut(s, m.tree, gap, far));
  if (t.atOnce) spreadAtOnce(s, t, [...apart, still], gap, far);
  else t.moves.forEach((m, k) => far.set(m, tidy(farEnough(s, m, apart[k]!, still, gap))));
  level(t, far);
  const out = new Map(still);
  t.moves.forEach((m, k) => {
    const by = byOf(s, m, far);
    for (const [p, v] of apart[k]!) out.set(p, add(v, by));
  });
  return out;
}
/** Sets that part at once: as long as the slowest pair of them needs. */
function spreadAtOnce(s: Scene, t: Tree, sets: readonly ReadonlyMap<number, Vec3>[], gap: number, far: Distances): void {
  const v = sets.map((_, k): Vec3 => (t.moves[k] ? scale(vecOf(s.lines, t.moves[k].dir), t.moves[k].speed) : [0, 0, 0]));
  let time = 0;
  sets.forEach((mine, a) =>
    sets.slice(0, a).forEach((theirs, b) => {
      const way = sub(v[a]!, v[b]!);
      if (length(way) < 1e-9) return;
      const d = unit(way);
      for (const [i, vi] of mine)
        for (const [j, vj] of theirs) {
          const touching = contactOf(s, i, j);
          const out = wayOutAlong(s, i, j, way, sub(vi, vj));
          if (touching.length > 0 || out > 0) time = Math.max(time, (Math.max(out, engagementAlong(touching, d)) + gap) / length(way));
        }
    }),
  );
  for (const m of t.moves) far.set(m, time * m.speed);
}
/** Moves alike go equally far; those at once keep their speeds. */
function level(t: Tree, far: Distances): void {
  if (t.atOnce) {
    const time = Math.max(...t.moves.map((m) => (far.get(m) ?? 0) / m.speed));
    for (const m of t.moves) far.set(m, time * m.speed);
    return;
  }
  const most = new Map<string, number>();
  for (const m of t.moves) most.set(m.alike, Math.max(most.get(m.alike) ?? 0, far.get(m) ?? 0));
  for (const m of t.moves) far.set(m, Math.min(most.get(m.alike)!, Math.max(0, m.reach - SHORT)));
}
function farEnough(s: Scene, m: Move, moving: ReadonlyMap<number, Vec3>, still: ReadonlyMap<number, Vec3>, gap: number): number {
  const d = vecOf(s.lines, m.dir);
  let far = m.joined ? 0 : -Infinity;
  for (const [i, vi] of moving)
    for (const [j, vj] of still) {
      if (m.joined) far = Math.max(far, engagementAlong(contactOf(s, i, j), d));
      if (m.reach < Infinity) continue;
      const out = wayOut(s, i, j, m.dir, sub(vi, vj));
      if (m.joined || out > 0) far = Math.max(far, out);
    }
  return far === -Infinity ? 0 : far + gap;
}

/** The node where two parts part, with the moves that carry them (null: it stays). */
function partedAt(t: Tree, i: number, j: number): { node: Tree; a: Move | null; b: Move | null } | null {
  const of = (p: number): Move | null | undefined =>
    t.moves.find((m) => m.tree.parts.includes(p)) ?? (t.rest?.parts.includes(p) ? null : undefined);
  const [a, b] = [of(i), of(j)];
  if (a === undefined || b === undefined) return null;
  if (a !== b) return { node: t, a, b };
  const below = a ? a.tree : t.rest;
  return below ? partedAt(below, i, j) : null;
}
/** Moves what carries one of the two parts further out, until they pass each other. */
function giveRoom(s: Scene, t: Tree, c: Clash, gap: number, before: Distances, far: Distances): void {
  const at = partedAt(t, c.moving, c.other);
  if (!at) return;
  const busy = (m: Move | null): boolean => m === null || c.step.moves.includes(m);
  // What runs in this step anyway is moved further only if the other part does not move at all.
  const [move, i, j, apart] =
    busy(at.b) && at.a ? ([at.a, c.moving, c.other, c.apart] as const) : ([at.b, c.other, c.moving, scale(c.apart, -1)] as const);
  if (!move) return;
  const d = vecOf(s.lines, move.dir);
  const swept = scale(c.by, -1);
  const start = move === at.a ? add(apart, swept) : sub(apart, swept);
  let more = Math.max(wayOut(s, i, j, move.dir, apart), wayOut(s, i, j, move.dir, start));
  if (!(more > 0)) more = boxesPass(s.parts[i]!.box, s.parts[j]!.box, d, Math.max(dot(apart, d), dot(start, d)));
  far.set(move, Math.max(far.get(move)!, tidy(before.get(move)! + more + gap / 2)));
  level(at.node, far);
}
/** How much further along d the first box must go to lie ahead of the second. */
function boxesPass(a: Box, b: Box, d: Vec3, apart: number): number {
  const reach = (box: Box, sign: 1 | -1): number =>
    [0, 1, 2].reduce((sum, k) => sum + d[k]! * (d[k]! * sign > 0 ? box.max[k]! : box.min[k]!), 0);
  return Math.max(0, reach(b, 1) - reach(a, -1) - apart);
}
