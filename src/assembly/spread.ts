/** The steps of a tree in the order of putting together, and where every part stands while they run. World frame, mm. */
import { type Vec3, add, quantise, quantise3, scale, sub } from '../geom/vec3.ts';
import { type Signed, vecOf } from './directions.ts';
import { type Scene, stopsApart } from './scene.ts';
import type { Move, Tree } from './search.ts';
import { SLIP } from './tolerance.ts';

/** How far each move is drawn apart. */
export type Distances = Map<Move, number>;
export type Step = {
  /** Alike, along one direction, moved as one. */
  readonly moves: readonly Move[];
  readonly parts: readonly number[];
  /** The direction of taking apart. */
  readonly dir: Signed;
  readonly distance: number;
  /** What they go to: the parts of the same tree that stand in their places by then. */
  readonly onto: readonly number[];
  readonly within: Tree;
};

/** Steps in the order of putting together: what stays first, then the sub-assemblies, then these onto it. */
export function stepsOf(t: Tree, far: Distances): Step[] {
  const out = t.rest ? stepsOf(t.rest, far) : [];
  const inward = [...t.moves].reverse();
  for (const m of inward) out.push(...stepsOf(m.tree, far));
  const home = new Set(t.rest?.parts ?? []);
  for (let k = 0; k < inward.length; ) {
    const first = inward[k]!;
    const distance = far.get(first) ?? 0;
    let end = k + 1;
    while (end < inward.length && inward[end]!.dir === first.dir && inward[end]!.alike === first.alike && far.get(inward[end]!) === distance) end++;
    const moves = inward.slice(k, end);
    const parts = moves.flatMap((m) => m.tree.parts).sort((a, b) => a - b);
    if (distance > 0) out.push({ moves, parts, dir: first.dir, distance, onto: [...home].sort((a, b) => a - b), within: t });
    for (const p of parts) home.add(p);
    k = end;
  }
  return out;
}
/** By part, its offsets with the steps that take them back. */
export function apartOf(s: Scene, steps: readonly Step[]): { readonly step: number; readonly offset: Vec3 }[][] {
  const out: { step: number; offset: Vec3 }[][] = s.parts.map(() => []);
  steps.forEach((step, k) => {
    const offset = quantise3(scale(vecOf(s.lines, step.dir), step.distance));
    for (const p of step.parts) out[p]!.push({ step: k, offset });
  });
  return out;
}
/** Two parts that meet on the way: `moving` in this step against `other`, with where moving stands less where other stands at its end. */
export type Clash = { readonly step: Step; readonly moving: number; readonly other: number; readonly apart: Vec3 };

/** Replays every step with the exact pair test and returns whatever meets; empty when all is clear along the way and at full spread. */
export function clashes(s: Scene, steps: readonly Step[]): Clash[] {
  const off: Vec3[] = s.parts.map(() => [0, 0, 0]);
  const out: Clash[] = [];
  // Taking apart, so that each step starts from a state already known to be clear.
  for (let k = steps.length - 1; k >= 0; k--) {
    const step = steps[k]!;
    const moving = new Set(step.parts);
    const by = scale(vecOf(s.lines, step.dir), step.distance);
    for (const i of step.parts)
      for (let j = 0; j < s.parts.length; j++)
        if (!moving.has(j)) {
          const apart = sub(off[i]!, off[j]!);
          if (stopsApart(s, i, j, step.dir, apart, step.distance + SLIP)) out.push({ step, moving: i, other: j, apart: add(apart, by) });
        }
    for (const i of step.parts) off[i] = add(off[i]!, by);
  }
  return out;
}
/** Rounded up to a tenth of a millimetre, so that equal moves get equal numbers. */
export const tidy = (far: number): number => quantise(Math.ceil(far * 10 - 1e-6) / 10);
