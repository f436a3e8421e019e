/** The order of putting a piece together and how to draw it apart, from facets and joints alone. */
import { type Vec3, add, length, quantise, quantise3, scale, unit } from '../geom/vec3.ts';
import { vecOf } from './directions.ts';
import { drawApart, gapFor } from './explode.ts';
import type { Order, PlanLink, PlanPart, PlanStage } from './part.ts';
import { type Scene, makeScene } from './scene.ts';
import { type Run, type Tree, stuckIn, takeApart } from './search.ts';
import { type Step, apartOf } from './spread.ts';
import { smallestStuck, whyStuck } from './stuck.ts';
import { assemblyName, stepWords } from './words.ts';

export type OrderOptions = {
  /** Sets that may be taken apart in more than one way before the search takes the next best step; counted, so that runs repeat. */
  readonly effort?: number;
  /** Gap between parts drawn apart, mm. */
  readonly gap?: number;
  /** Asked often; true ends the work. */
  readonly stop?: () => boolean;
};
const EFFORT = 1000;

/**
 * Plans the order. The same parts and links, in whatever order, give the same answer. Null when `stop` said so. Throws on numbers
 * that are not finite and on links to parts that are not there, which is our fault and not the maker's.
 */
export function planOrder(parts: readonly PlanPart[], links: readonly PlanLink[], options: OrderOptions = {}): Order | null {
  const s = makeScene(parts, links);
  const run: Run = { effort: options.effort ?? EFFORT, stop: options.stop ?? (() => false), stopped: false };
  const tree = wholeTree(s, run);
  if (run.stopped) return null;
  const { steps } = drawApart(s, tree, options.gap ?? gapFor(parts));
  const spots = apartOf(s, steps);
  const found = stuckIn(tree);
  const stuck = found.length > 0 ? smallestStuck(s, found, run) : [];
  if (run.stop()) return null;
  return {
    possible: found.length === 0,
    steps: steps.map((step) => ({
      move: step.parts.map((p) => s.parts[p]!.path),
      ...travelOf(s, step),
      words: stepWords(s, step),
    })),
    stages: stagesOf(s, steps, tree),
    ...(found.length > 0 ? { stuck: stuck.map((p) => s.parts[p]!.path), why: whyStuck(s, stuck) } : {}),
    apart: Object.fromEntries(s.parts.map((p, i) => [p.path, spots[i]!])),
  };
}
/** One direction and way for a step; where parts go different ways at once, their middle way, or the first one's where that is none. */
function travelOf(s: Scene, step: Step): { along: Vec3; distance: number } {
  if (!step.within.atOnce) return { along: inward(vecOf(s.lines, step.dir)), distance: step.distance };
  const middle = scale(step.by.reduce(add), 1 / step.by.length);
  const way = length(middle) > 1 ? middle : step.by[0]!;
  return { along: inward(unit(way)), distance: quantise(length(way)) };
}
const inward = (d: Vec3): Vec3 => quantise3(scale(d, -1));

/** Groups as one body first; if that stays stuck, all parts for themselves. */
function wholeTree(s: Scene, run: Run): Tree {
  const groups = new Map<string, number[]>();
  const single: number[][] = [];
  s.parts.forEach((_, i) => {
    const g = groupOf(s, i);
    if (g === null) single.push([i]);
    else groups.set(g, [...(groups.get(g) ?? []), i]);
  });
  const flat = (): Tree =>
    takeApart(
      s,
      s.parts.map((_, i) => [i]),
      null,
      run,
    );
  if (groups.size === 0) return flat();
  const outer = takeApart(s, [...single, ...groups.values()], null, run);
  if (stuckIn(outer).length > 0) return flat();
  return openGroups(s, outer, groups, run);
}
/** A peg or a screw that holds only parts of one group belongs to it. */
function groupOf(s: Scene, i: number): string | null {
  const part = s.parts[i]!;
  if (part.kind !== 'extra' && part.kind !== 'hardware') return part.group;
  const held = new Set(
    s.links.filter((l) => l.parts.includes(i)).flatMap((l) => l.parts.filter((p) => p !== i).map((p) => s.parts[p]!.group)),
  );
  return held.size === 1 ? ([...held][0] ?? null) : held.size === 0 ? part.group : null;
}
function openGroups(s: Scene, t: Tree, groups: ReadonlyMap<string, readonly number[]>, run: Run): Tree {
  if (t.moves.length > 0 || t.rest) {
    const moves = t.moves.map((m) => ({ ...m, tree: openGroups(s, m.tree, groups, run) }));
    return { ...t, moves, rest: t.rest ? openGroups(s, t.rest, groups, run) : null };
  }
  const name = [...groups].find(([, parts]) => parts.includes(t.parts[0] ?? -1))?.[0];
  return name === undefined || t.stuck
    ? t
    : takeApart(
        s,
        t.parts.map((p) => [p]),
        name,
        run,
      );
}

/** Steps under the sub-assembly that they build; what is left builds the piece itself. */
function stagesOf(s: Scene, steps: readonly Step[], tree: Tree): PlanStage[] {
  const names = new Map<Tree, string>();
  const name = (t: Tree, above: string): void => {
    names.set(t, above);
    const inside = (sub: Tree, isRest: boolean): void => {
      const own = sub.group !== null || (!isRest && sub.moves.some((m) => m.joined));
      name(sub, own ? assemblyName(s, sub.parts, sub.group) : above);
    };
    for (const m of t.moves) inside(m.tree, false);
    // Where nothing joins the sets that part here, what stays is a sub-assembly like the others.
    if (t.rest)
      inside(
        t.rest,
        t.moves.some((m) => m.joined),
      );
  };
  name(tree, 'the whole piece');
  const out: { name: string; steps: number[] }[] = [];
  steps.forEach((step, k) => {
    const at = names.get(step.within) ?? 'the whole piece';
    const last = out.at(-1);
    if (last?.name === at) last.steps.push(k);
    else out.push({ name: at, steps: [k] });
  });
  return out;
}
