/** Blocking graphs over bodies: a body is a part, or parts that move as one. */
import { type Box, sizeOf, unionBox } from '../geom/box.ts';
import { type Bits, bitsOf, countOf, emptyBits, has, itemsOf, put } from './bits.ts';
import { engagementAlong } from './contact.ts';
import { type Signed, enter, lineOf, opposite, vecOf } from './directions.ts';
import type { PlanPart } from './part.ts';
import { type Scene, contactOf, stops } from './scene.ts';

export type Body = readonly number[];
export type Graph = {
  readonly scene: Scene;
  readonly bodies: readonly Body[];
  readonly all: Bits;
  /** Joints between bodies. */
  readonly links: readonly GraphLink[];
  /** Pairs of bodies that a joint holds together. */
  readonly ties: readonly Tie[];
  /** Pairs of bodies that touch; by line, how far they slide along each other, as it is asked for. */
  readonly touching: readonly Touch[];
  readonly boxes: readonly Box[];
  readonly weights: readonly number[];
  /** Equal for bodies of parts of equal weight and size. */
  readonly alike: readonly string[];
  /** Diagonal of the box round all bodies, mm. */
  readonly size: number;
  readonly rows: Map<number, Bits>;
};
/** `loose`: it lets its parts lie or run free, and nothing is driven in to hold them. */
export type GraphLink = {
  readonly loose: boolean;
  readonly bodies: Bits;
  readonly frees: readonly { readonly moves: readonly number[]; readonly dir: Signed }[];
};
export type Tie = { readonly a: number; readonly b: number; readonly link: GraphLink };
export type Touch = { readonly a: number; readonly b: number; readonly engaged: Map<number, number> };

export const isExtra = (p: PlanPart): boolean => p.kind === 'extra' || p.kind === 'hardware';
export function makeGraph(scene: Scene, bodies: readonly Body[]): Graph {
  const n = bodies.length;
  const home = new Map<number, number>();
  bodies.forEach((body, k) => body.forEach((i) => home.set(i, k)));
  const bodiesOf = (parts: readonly number[]): number[] => [...new Set(parts.flatMap((i) => home.get(i) ?? []))];
  const links = scene.links
    .map((l) => ({
      loose: l.loose && !l.parts.some((p) => isExtra(scene.parts[p]!)),
      bodies: bitsOf(n, bodiesOf(l.parts)),
      frees: l.frees.map((f) => ({ moves: bodiesOf(f.moves), dir: enter(scene.lines, f.along)! })),
    }))
    .filter((l) => countOf(l.bodies) > 1);
  const touching: Touch[] = [];
  for (let a = 0; a < n; a++)
    for (let b = 0; b < a; b++) {
      if (bodies[a]!.some((i) => bodies[b]!.some((j) => contactOf(scene, i, j).length > 0))) touching.push({ a, b, engaged: new Map() });
    }
  const boxes = bodies.map((b) => boxOfBody(scene, b));
  return {
    scene,
    bodies,
    boxes,
    weights: bodies.map((b) => b.reduce((w, p) => w + scene.parts[p]!.weight, 0)),
    alike: bodies.map((b) =>
      b
        .map((p) => likeness(scene.parts[p]!))
        .sort()
        .join(' '),
    ),
    all: bitsOf(n, bodies.keys()),
    links,
    ties: tiesOf(n, links, touching),
    touching,
    size: boxes.length > 0 ? Math.hypot(...sizeOf(boxes.reduce(unionBox))) : 0,
    rows: new Map(),
  };
}
const boxOfBody = (scene: Scene, body: Body): Box => body.map((p) => scene.parts[p]!.box).reduce(unionBox);
/** Equal for parts of equal weight and size, whichever way round they stand. */
function likeness(p: PlanPart): string {
  const sizes = sizeOf(p.box).toSorted((a, b) => a - b);
  return [p.weight.toPrecision(5), ...sizes.map((s) => s.toFixed(2))].join('/');
}
/** A joint of many ties those of its parts that touch; a part of it that touches none of the others is tied to all. */
function tiesOf(n: number, links: readonly GraphLink[], touching: readonly Touch[]): Tie[] {
  const touch = new Set(touching.flatMap((t) => [t.a * n + t.b, t.b * n + t.a]));
  return links.flatMap((link) => {
    const held = itemsOf(link.bodies);
    const lone = new Set(held.filter((a) => !held.some((b) => touch.has(a * n + b))));
    return held.flatMap((a, k) =>
      held
        .slice(0, k)
        .filter((b) => touch.has(a * n + b) || lone.has(a) || lone.has(b))
        .map((b) => ({ a, b, link })),
    );
  });
}
/** How far two touching bodies slide along each other until they part along `dir`, mm. */
export function engagedBy(g: Graph, t: Touch, dir: Signed): number {
  const known = t.engaged.get(lineOf(dir));
  if (known !== undefined) return known;
  const d = vecOf(g.scene.lines, dir);
  let far = 0;
  for (const i of g.bodies[t.a]!) for (const j of g.bodies[t.b]!) far = Math.max(far, engagementAlong(contactOf(g.scene, i, j), d));
  t.engaged.set(lineOf(dir), far);
  return far;
}
/** The bodies that stand in the way of body `i` along `dir`, among all. */
export function inTheWay(g: Graph, i: number, dir: Signed): Bits {
  const n = g.bodies.length;
  const key = dir * n + i;
  let row = g.rows.get(key);
  if (row) return row;
  row = emptyBits(n);
  for (let j = 0; j < n; j++) if (j !== i && g.bodies[i]!.some((p) => g.bodies[j]!.some((q) => stops(g.scene, p, q, dir)))) put(row, j);
  g.rows.set(key, row);
  return row;
}
/** The smallest set with `seed` that can leave `within` along `dir`: the seed and all that is pushed along. Null: everything is. */
export function pushedAlong(g: Graph, seed: number, dir: Signed, within: Bits): Bits | null {
  const out = bitsOf(g.bodies.length, [seed]);
  const open = [seed];
  let left = countOf(within) - 1;
  for (let i = open.pop(); i !== undefined; i = open.pop()) {
    const row = inTheWay(g, i, dir);
    for (let w = 0; w < out.length; w++) {
      const fresh = row[w]! & within[w]! & ~out[w]!;
      for (let bit = fresh; bit !== 0; bit &= bit - 1) {
        open.push((w << 5) + 31 - Math.clz32(bit & -bit));
        left--;
      }
      out[w] = out[w]! | fresh;
    }
    if (left === 0) return null;
  }
  return out;
}
/** Directions in which the joints of body i let it go: those declared for it, and the opposite of those declared for its mates. */
export function ownDirections(g: Graph, i: number): Signed[] {
  const out = new Set<Signed>();
  for (const l of g.links) {
    if (!has(l.bodies, i)) continue;
    for (const f of l.frees) out.add(f.moves.includes(i) ? f.dir : opposite(f.dir));
  }
  return [...out];
}

/** The sets of `within` that joints hold together. */
export function heldTogether(g: Graph, within: Bits): number[][] {
  const root = new Map(itemsOf(within).map((i) => [i, i]));
  const find = (i: number): number => {
    let r = i;
    while (root.get(r) !== r) r = root.get(r)!;
    root.set(i, r);
    return r;
  };
  for (const t of g.ties) if (has(within, t.a) && has(within, t.b)) root.set(find(t.a), find(t.b));
  const sets = new Map<number, number[]>();
  for (const i of root.keys()) sets.set(find(i), [...(sets.get(find(i)) ?? []), i]);
  return [...sets.values()];
}
