/**
 * Backwards search: an order of putting together is an order of taking apart, reversed. Each node takes a set of bodies apart by
 * motions of one direction each. Whatever parts of a set that comes apart are left, those come apart too (the same motions,
 * less what is gone), so a greedy choice never loses an order; the search below only looks for a better one.
 */
import { length } from '../geom/vec3.ts';
import { allAtOnce } from './at-once.ts';
import { type Bits, bitsOf, countOf, itemsOf, keyOf } from './bits.ts';
import { type Signed, enter, furtherLines } from './directions.ts';
import { type Body, type Graph, makeGraph, ownDirections } from './graph.ts';
import type { Scene } from './scene.ts';
import { type Split, looseBodies, looseExtras, slidesApart, standingFree, waysApart } from './split.ts';

/** How a set comes apart. No moves and no rest: one body, or a set that stays stuck. */
export type Tree = {
  readonly parts: readonly number[];
  /** In the order of taking apart. */
  readonly moves: readonly Move[];
  readonly rest: Tree | null;
  readonly stuck: boolean;
  readonly group: string | null;
  /** All moves are made at the same time, each at its own speed. */
  readonly atOnce: boolean;
};
export type Move = {
  readonly tree: Tree;
  readonly dir: Signed;
  readonly alike: string;
  readonly joined: boolean;
  readonly speed: number;
  readonly reach: number;
};
export type Run = { effort: number; readonly stop: () => boolean; stopped: boolean };

/** Sets of at most this many bodies are searched for the cheapest way, larger ones take the cheapest next step. */
const SEARCHED = 12;
/** Ways that are followed from each set. */
const TRIED = 5;
/** Bodies above which each one is tried only along its own joints and the piece's axes at first. */
const MANY = 40;
/** What a stuck set costs, and one that must be closed at once: taken only where nothing else goes. */
const STUCK = 100;
const AT_ONCE = 5;
type Best = { readonly tree: Tree; readonly cost: number };
/** `top`: what is left of the finished piece while only fixings and loose things have been taken off it. */
type Search = {
  readonly g: Graph;
  readonly run: Run;
  readonly memo: Map<string, Best>;
  readonly main: readonly Signed[];
  further: readonly Signed[] | null;
  top: Bits;
};

/** Takes the bodies apart as far as they go; groups are taken apart after the rest, each by itself. */
export function takeApart(scene: Scene, bodies: readonly Body[], group: string | null, run: Run): Tree {
  const g = makeGraph(scene, bodies);
  const s: Search = {
    g,
    run,
    memo: new Map(),
    main: Array.from({ length: 2 * scene.lines.lines.length }, (_, k) => k),
    further: null,
    top: g.all,
  };
  return { ...solve(s, g.all).tree, group };
}
const leaf = (s: Search, within: Bits, stuck: boolean): Best => ({
  tree: { parts: partsOf(s, within), moves: [], rest: null, stuck, group: null, atOnce: false },
  cost: stuck ? STUCK : 0,
});
const partsOf = (s: Search, b: Bits): number[] => itemsOf(b).flatMap((i) => s.g.bodies[i]!);

function solve(s: Search, within: Bits): Best {
  if (countOf(within) < 2) return leaf(s, within, false);
  const key = keyOf(within);
  const known = s.memo.get(key);
  if (known) return known;
  const best = decide(s, within);
  s.memo.set(key, best);
  return best;
}
function decide(s: Search, within: Bits): Best {
  if (s.run.stop()) {
    s.run.stopped = true;
    return leaf(s, within, true);
  }
  s.run.effort--;
  const top = keyOf(within) === keyOf(s.top);
  const plain = standingFree(s.g, within, s.main) ?? (top ? looseBodies(s.g, within, s.main) : null) ?? looseExtras(s.g, within, s.main);
  if (plain) {
    if (top) s.top = plain.rest;
    return follow(s, plain);
  }
  const ways = splitsOf(s, within);
  if (ways.length === 0) {
    const slide = slidesApart(s.g, within, s.main);
    return slide ? follow(s, slide) : (together(s, within) ?? leaf(s, within, true));
  }
  const tried = s.run.effort > 0 && countOf(within) <= SEARCHED ? TRIED : 1;
  let best: Best | null = null;
  for (const way of ways.slice(0, tried)) {
    const one = follow(s, way);
    if (!best || one.cost < best.cost - 1e-9) best = one;
    if (s.run.stopped) break;
  }
  return best!;
}
/** Ways along the main directions; where there are none, along every direction that the contacts suggest. */
function splitsOf(s: Search, within: Bits): Split[] {
  const many = countOf(within) > MANY;
  const axes = s.main.slice(0, 6);
  const own = (i: number): Signed[] => [...new Set([...axes, ...ownDirections(s.g, i)])];
  const ways = waysApart(s.g, within, many ? own : () => s.main);
  if (ways.length > 0) return ways;
  s.further ??= furtherLines(s.g.scene.lines, s.g.scene.parts, s.g.scene.contacts.values());
  const all = [...s.main, ...s.further];
  return waysApart(s.g, within, () => all);
}
function follow(s: Search, way: Split): Best {
  let cost = way.cost;
  const moves = way.movers.map((m): Move => {
    const below = solve(s, m.set);
    cost += below.cost;
    return { tree: below.tree, dir: m.dir, alike: m.alike, joined: m.joined, speed: 1, reach: m.reach };
  });
  const rest = solve(s, way.rest);
  const parts = [...moves.flatMap((m) => m.tree.parts), ...rest.tree.parts].sort((a, b) => a - b);
  return { tree: { parts, moves, rest: rest.tree, stuck: false, group: null, atOnce: false }, cost: cost + rest.cost };
}

/** The last way: everything at once. */
function together(s: Search, within: Bits): Best | null {
  const sets = allAtOnce(s.g, within);
  if (!sets) return null;
  const bits = (bodies: readonly number[]): Bits => bitsOf(s.g.bodies.length, bodies);
  const solved = sets.map((one) => ({ ...solve(s, bits(one.bodies)), v: one.v }));
  const still = solved.findIndex((one) => length(one.v) < 1e-9);
  const moves = solved
    .filter((_, k) => k !== still)
    .map((one): Move => ({
      tree: one.tree,
      dir: enter(s.g.scene.lines, one.v)!,
      alike: '',
      joined: true,
      speed: length(one.v),
      reach: Infinity,
    }));
  const tree: Tree = {
    parts: partsOf(s, within).sort((a, b) => a - b),
    moves,
    rest: solved[still]?.tree ?? null,
    stuck: false,
    group: null,
    atOnce: true,
  };
  return { tree, cost: AT_ONCE + solved.reduce((sum, one) => sum + one.cost, 0) };
}

/** All sets of the tree that stay stuck. */
export function stuckIn(t: Tree): readonly (readonly number[])[] {
  if (t.stuck) return [t.parts];
  return [...t.moves.flatMap((m) => stuckIn(m.tree)), ...(t.rest ? stuckIn(t.rest) : [])];
}
