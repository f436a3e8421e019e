/** The steps of a tree in the order of putting together, and where every part stands while they run. World frame, mm. */
import { type Vec3, add, length, quantise, quantise3, scale, sub } from '../geom/vec3.ts';
import { type Signed, vecOf } from './directions.ts';
import { type Scene, runIntoOnWay, stopsApart } from './scene.ts';
import type { Move, Tree } from './search.ts';
import { SLIP } from './tolerance.ts';

/** How far each move is drawn apart. */
export type Distances = Map<Move, number>;
export type Step = {
  /** Alike, along one direction, moved as one. */
  readonly moves: readonly Move[];
  readonly parts: readonly number[];
  /** The direction of taking apart: of each move where they go at once, then this is the first one's. */
  readonly dir: Signed;
  readonly distance: number;
  /** Where each of `parts` goes, mm. */
  readonly by: readonly Vec3[];
  /** What they go to: the parts of the same tree that stand in their places by then. */
  readonly onto: readonly number[];
  readonly within: Tree;
};

/** Steps in the order of putting together: what stays first, then the sub-assemblies, then these onto it. */
export function stepsOf(s: Scene, t: Tree, far: Distances): Step[] {
  const out = t.rest ? stepsOf(s, t.rest, far) : [];
  const inward = [...t.moves].reverse();
  for (const m of inward) out.push(...stepsOf(s, m.tree, far));
  const home = new Set(t.rest?.parts ?? []);
  const joins = (m: Move, first: Move): boolean =>
    t.atOnce || (m.dir === first.dir && m.alike === first.alike && far.get(m) === far.get(first));
  for (let k = 0; k < inward.length;) {
    const first = inward[k]!;
    let end = k + 1;
    while (end < inward.length && joins(inward[end]!, first)) end++;
    const moves = inward.slice(k, end);
    const going = moves.flatMap((m) => m.tree.parts.map((p) => ({ p, by: byOf(s, m, far) }))).sort((a, b) => a.p - b.p);
    const distance = far.get(first) ?? 0;
    if (distance > 0)
      out.push({
        moves,
        parts: going.map((x) => x.p),
        dir: first.dir,
        distance,
        by: going.map((x) => x.by),
        onto: [...home].sort((a, b) => a - b),
        within: t,
      });
    for (const x of going) home.add(x.p);
    k = end;
  }
  return out;
}
/** Where a move takes its parts, mm. */
export const byOf = (s: Scene, m: Move, far: Distances): Vec3 => scale(vecOf(s.lines, m.dir), far.get(m) ?? 0);
/** By part, its offsets with the steps that take them back. */
export function apartOf(s: Scene, steps: readonly Step[]): { readonly step: number; readonly offset: Vec3 }[][] {
  const out: { step: number; offset: Vec3 }[][] = s.parts.map(() => []);
  steps.forEach((step, k) => step.parts.forEach((p, n) => out[p]!.push({ step: k, offset: quantise3(step.by[n]!) })));
  return out;
}
/** Two parts that meet on the way: `moving` in this step against `other`; where moving stands less where other stands at its end, and how far it went past it. */
export type Clash = { readonly step: Step; readonly moving: number; readonly other: number; readonly apart: Vec3; readonly by: Vec3 };

/** Replays every step with the exact pair test and returns whatever meets; empty when all is clear along the way and at full spread. */
export function clashes(s: Scene, steps: readonly Step[]): Clash[] {
  const off: Vec3[] = s.parts.map(() => [0, 0, 0]);
  const out: Clash[] = [];
  // Taking apart, so that each step starts from a state already known to be clear.
  for (let k = steps.length - 1; k >= 0; k--) {
    const step = steps[k]!;
    const going = new Map(step.parts.map((p, n) => [p, step.by[n]!]));
    for (const [i, mine] of going)
      for (let j = 0; j < s.parts.length; j++) {
        const theirs = going.get(j);
        // Of two that move in one step, at different speeds, one look is enough.
        if (theirs && (j >= i || !step.within.atOnce)) continue;
        const by = theirs ? sub(mine, theirs) : mine;
        if (length(by) < 1e-9) continue;
        const apart = sub(off[i]!, off[j]!);
        const met = step.within.atOnce ? runIntoOnWay(s, i, j, by, apart) : stopsApart(s, i, j, step.dir, apart, step.distance + SLIP);
        if (met) out.push({ step, moving: i, other: j, apart: add(apart, by), by });
      }
    for (const [i, by] of going) off[i] = add(off[i]!, by);
  }
  return out;
}
/** Rounded up to a tenth of a millimetre, so that equal moves get equal numbers. */
export const tidy = (far: number): number => quantise(Math.ceil(far * 10 - 1e-6) / 10);
