/** Ways to take a set of bodies apart in one go: one mover, or several alike (all legs out of a seat), and what each costs. */
import { type Box, boxesNear, sizeOf, unionBox } from '../geom/box.ts';
import { scale } from '../geom/vec3.ts';
import { type Bits, bitsOf, countOf, has, itemsOf, keyOf, meets, minus } from './bits.ts';
import { engagementAlong } from './contact.ts';
import { type Signed, lineOf, opposite, vecOf } from './directions.ts';
import { type Graph, type GraphLink, heldTogether, inTheWay, isExtra, engagedBy, ownDirections, pushedAlong } from './graph.ts';
import { contactOf, freeWay, stopsApart } from './scene.ts';

/**
 * A set that leaves along `dir`. `alike`: equal for sets of parts of equal weight and size. `joined`: something holds it, it has to be
 * moved. `reach`: how far it can go that way, mm; mostly without end.
 */
export type Mover = {
  readonly set: Bits;
  readonly dir: Signed;
  readonly cost: number;
  readonly alike: string;
  readonly joined: boolean;
  readonly reach: number;
};
/** The movers leave one after the other; `rest` is what stays. Costs: about 1 a step. */
export type Split = { readonly movers: readonly Mover[]; readonly rest: Bits; readonly cost: number };

/** What a choice costs, in steps; sliding by the way that surfaces are dragged, as a share of the whole's size. Habits of the bench, common practice. */
const COST = {
  step: 1,
  further: 0.5,
  alongside: 0.25,
  merge: 0.3,
  notItsJoint: 0.5,
  slides: 3,
  slidesMost: 2,
  up: 0.3,
  sideways: 0.1,
  heldApart: 0.5,
  heldApartMost: 1,
  heldByAlike: 0.4,
  unwieldy: 0.5,
};
/** Movers that are weighed further, the cheapest by their own way first. */
const MOST = 80;
/** A vertical motion is made by the upper side unless it is this many times heavier. */
const HEAVIER = 3;

/** Extras and hardware that can leave alone now: what is driven, screwed or turned in last. */
export function looseExtras(g: Graph, within: Bits, dirs: readonly Signed[]): Split | null {
  if (countOf(within) < 2) return null;
  const movers: Mover[] = [];
  for (const i of itemsOf(within)) {
    if (!g.bodies[i]!.every((p) => isExtra(g.scene.parts[p]!))) continue;
    const set = bitsOf(g.bodies.length, [i]);
    const own = ownDirections(g, i);
    const leaves = (along: readonly Signed[]): Mover | null =>
      cheapest(along.filter((d) => aloneAlong(g, i, d, within)).map((d) => moverOf(g, set, d, within)));
    const best = leaves(own) ?? slidesOut(g, i, own, dirs, within) ?? leaves(dirs);
    if (best) movers.push(best);
  }
  if (movers.length === 0) return null;
  if (movers.length === countOf(within)) movers.pop();
  return splitOf(g, movers.toSorted(byPlace), within);
}
/** What lies loose in the finished piece and can be taken out of it, as a drawer: it goes in last of all. */
export function looseBodies(g: Graph, within: Bits, dirs: readonly Signed[]): Split | null {
  const movers = itemsOf(within).flatMap((i): Mover[] => {
    const ties = g.ties.filter((t) => (t.a === i || t.b === i) && has(within, t.a) && has(within, t.b));
    if (ties.length === 0 || ties.some((t) => !t.link.loose)) return [];
    const own = ownDirections(g, i);
    const free = (own.length > 0 ? own : dirs).filter((d) => aloneAlong(g, i, d, within));
    const best = cheapest(free.map((d) => moverOf(g, bitsOf(g.bodies.length, [i]), d, within)));
    return best ? [best] : [];
  });
  if (movers.length === 0 || movers.length === countOf(within)) return null;
  return splitOf(g, movers.toSorted(byPlace), within);
}
function aloneAlong(g: Graph, i: number, dir: Signed, within: Bits): boolean {
  const set = pushedAlong(g, i, dir, within);
  return set !== null && countOf(set) === 1;
}
/** Clear of its joint by this much, a part can be turned another way, mm. */
const CLEAR = 5;
/**
 * A way out in two legs: body i slides clear of what engages it, then leaves another way (a button behind a rail, with the far rail
 * ahead). The mover is told by its first leg, which is what the joint is about.
 */
function slidesOut(g: Graph, i: number, first: readonly Signed[], second: readonly Signed[], within: Bits): Mover | null {
  const s = g.scene;
  const others = itemsOf(within).filter((j) => j !== i);
  const pairs = others.flatMap((j) => g.bodies[i]!.flatMap((p) => g.bodies[j]!.map((q) => [p, q] as const)));
  const ways = first.flatMap((d): Mover[] => {
    const along = vecOf(s.lines, d);
    const clear = CLEAR + pairs.reduce((far, [p, q]) => Math.max(far, engagementAlong(contactOf(s, p, q), along)), 0);
    if (pairs.some(([p, q]) => stopsApart(s, p, q, d, [0, 0, 0], clear))) return [];
    const at = scale(along, clear);
    if (!second.some((e) => lineOf(e) !== lineOf(d) && !pairs.some(([p, q]) => stopsApart(s, p, q, e, at, Infinity)))) return [];
    const reach = pairs.reduce((far, [p, q]) => Math.min(far, freeWay(s, p, q, d)), Infinity);
    return [{ ...moverOf(g, bitsOf(g.bodies.length, [i]), d, within), reach }];
  });
  return cheapest(ways);
}
/** Single bodies that leave in two legs, for a set that no straight motion takes apart. */
export function slidesApart(g: Graph, within: Bits, dirs: readonly Signed[]): Split | null {
  const best = cheapest(itemsOf(within).flatMap((i) => slidesOut(g, i, ownDirections(g, i), dirs, within) ?? []));
  return best && splitOf(g, [best], within);
}
/**
 * What stands free of all else (after both rails are off, each slat of a bed) parts without a step: nothing holds or touches it.
 * The directions are kept for the case that something has to make room later.
 */
export function standingFree(g: Graph, within: Bits, dirs: readonly Signed[]): Split | null {
  const sets = heldTogether(g, within).map((items) => bitsOf(g.bodies.length, items));
  if (sets.length < 2) return null;
  const box = (b: Bits): Box =>
    itemsOf(b)
      .map((i) => g.boxes[i]!)
      .reduce(unionBox);
  const boxes = sets.map(box);
  const touched = new Set(
    g.touching
      .flatMap((t) => (has(within, t.a) && has(within, t.b) ? [[t.a, t.b]] : []))
      .filter(([a, b]) => !sets.some((s) => has(s, a!) && has(s, b!)))
      .flat(),
  );
  const movers: Mover[] = [];
  sets.forEach((set, k) => {
    const items = itemsOf(set);
    if (items.some((i) => touched.has(i)) || boxes.some((b, n) => n !== k && boxesNear(b, boxes[k]!, -0.5))) return;
    const dir = dirs.find((d) => items.every((i) => !inTheWay(g, i, d).some((w, n) => (w & within[n]! & ~set[n]!) !== 0)));
    if (dir !== undefined) movers.push({ set, dir, cost: 0, alike: alikeOf(g, set), joined: false, reach: Infinity });
  });
  if (movers.length === sets.length) movers.pop();
  if (movers.length === 0) return null;
  return { movers, rest: movers.reduce((left, m) => minus(left, m.set), within), cost: 0 };
}
/** All ways found, cheapest first: each set that some body pushes along, and sets alike at once. */
export function waysApart(g: Graph, within: Bits, dirsOf: (i: number) => readonly Signed[]): Split[] {
  const single = new Map<string, Mover>();
  for (const i of itemsOf(within))
    for (const d of dirsOf(i)) {
      const pushed = pushedAlong(g, i, d, within);
      if (!pushed) continue;
      const mover = lighterSide(g, pushed, d, within);
      const key = keyOf(mover.set);
      const before = single.get(key);
      if (!before || mover.cost < before.cost - 1e-9) single.set(key, mover);
    }
  const movers = [...single.values()].sort(byCost);
  const splits = movers.slice(0, MOST).map((m) => splitOf(g, [m], within));
  for (const set of alikeSets(movers, within)) splits.push(splitOf(g, set.toSorted(byPlace), within));
  return splits.sort(
    (a, b) => a.cost / a.movers.length - b.cost / b.movers.length || countOf(a.movers[0]!.set) - countOf(b.movers[0]!.set),
  );
}
const byCost = (a: Mover, b: Mover): number => a.cost - b.cost || countOf(a.set) - countOf(b.set) || byPlace(a, b);
const byPlace = (a: Mover, b: Mover): number =>
  a.dir - b.dir || (a.alike < b.alike ? -1 : a.alike > b.alike ? 1 : 0) || (itemsOf(a.set)[0] ?? 0) - (itemsOf(b.set)[0] ?? 0);
const cheapest = (all: readonly Mover[]): Mover | null =>
  all.reduce<Mover | null>((best, m) => (best && best.cost <= m.cost + 1e-9 ? best : m), null);

/** Groups of two and more movers alike that share no body and leave something behind. */
function alikeSets(movers: readonly Mover[], within: Bits): Mover[][] {
  const byKind = new Map<string, Mover[]>();
  for (const m of movers) byKind.set(m.alike, [...(byKind.get(m.alike) ?? []), m]);
  const out: Mover[][] = [];
  for (const all of byKind.values()) {
    const chosen: Mover[] = [];
    let left = within;
    for (const m of all)
      if (m.joined === all[0]!.joined && !chosen.some((c) => meets(c.set, m.set)) && countOf(left) > countOf(m.set)) {
        chosen.push(m);
        left = minus(left, m.set);
      }
    if (chosen.length > 1) out.push(chosen);
  }
  return out;
}
function splitOf(g: Graph, movers: readonly Mover[], within: Bits): Split {
  const rest = movers.reduce((left, m) => minus(left, m.set), within);
  const merges = movers.filter((m) => m.joined && countOf(m.set) > 1 && countOf(rest) > 1).length;
  const joined = movers.filter((m) => m.joined);
  const seen = new Set<string>();
  let steps = 0;
  for (const m of joined) {
    const together = `${m.alike} ${m.dir}`;
    steps += seen.size === 0 ? COST.step : seen.has(together) ? COST.alongside : COST.further;
    seen.add(together);
  }
  const pieces = (b: Bits): number => (countOf(b) === 0 ? 0 : heldTogether(g, b).length - 1);
  const extra = pieces(rest) + movers.reduce((n, m) => n + pieces(m.set), 0) - pieces(within);
  const apart =
    joined.length === 0
      ? 0
      : Math.min(COST.heldApartMost, Math.max(0, extra) * COST.heldApart) * (joined.length > 1 ? COST.heldByAlike : 1);
  return { movers, rest, cost: steps + merges * COST.merge + apart + movers.reduce((sum, m) => sum + m.cost, 0) };
}

const weightOf = (g: Graph, set: Bits): number => itemsOf(set).reduce((w, i) => w + g.weights[i]!, 0);
/** Either side of a split may do the moving: the lighter, but along the plumb line rather the upper. */
function lighterSide(g: Graph, set: Bits, dir: Signed, within: Bits): Mover {
  const other = minus(within, set);
  const [mine, theirs] = [weightOf(g, set), weightOf(g, other)];
  const up = vecOf(g.scene.lines, dir)[2];
  const handicap = up > 0.7 ? 1 / HEAVIER : up < -0.7 ? HEAVIER : 1;
  const even = Math.abs(mine * handicap - theirs) < 1e-6 * (mine + theirs);
  const first = even
    ? countOf(set) < countOf(other) || (countOf(set) === countOf(other) && (itemsOf(set)[0] ?? 0) > (itemsOf(other)[0] ?? 0))
    : mine * handicap < theirs;
  return first ? moverOf(g, set, dir, within) : moverOf(g, other, opposite(dir), within);
}
/** The mover with what its way costs: not along its joints, surfaces dragged along each other, pushed in from below. */
function moverOf(g: Graph, set: Bits, dir: Signed, within: Bits): Mover {
  const d = vecOf(g.scene.lines, dir);
  const crossing = new Set(
    g.ties.filter((t) => has(set, t.a) !== has(set, t.b) && has(within, t.a) && has(within, t.b)).map((t) => t.link),
  );
  const strange = [...crossing].filter((l) => !letsGo(l, set, within, dir)).length;
  let touched = false;
  let slides = 0;
  for (const t of g.touching) {
    if (has(set, t.a) === has(set, t.b) || !has(within, t.a) || !has(within, t.b)) continue;
    touched = true;
    slides = Math.max(slides, engagedBy(g, t, dir));
  }
  const joined = crossing.size > 0 || touched || insideEachOther(g, set, minus(within, set));
  const into = -d[2];
  const gravity = into > 0.5 ? COST.up : into > -0.5 ? COST.sideways : 0;
  const cost =
    (crossing.size > 0 ? (COST.notItsJoint * strange) / crossing.size : 0) +
    Math.min(COST.slidesMost, (COST.slides * slides) / g.size) +
    gravity +
    COST.unwieldy * unwieldy(g, set, within);
  return { set, dir, cost: joined ? cost : gravity * 0.01, alike: alikeOf(g, set), joined, reach: Infinity };
}
/** Do the joint's own words allow this: its mover goes along, or all else goes the other way? */
function letsGo(link: GraphLink, set: Bits, within: Bits, dir: Signed): boolean {
  return link.frees.some((f) => {
    const here = f.moves.filter((i) => has(within, i));
    return (
      here.length > 0 && ((f.dir === dir && here.every((i) => has(set, i))) || (f.dir === opposite(dir) && !here.some((i) => has(set, i))))
    );
  });
}
/** Do boxes of the two sets share a volume? Then one lies in the other, touching or not. */
function insideEachOther(g: Graph, a: Bits, b: Bits): boolean {
  const boxes = (s: Bits): Box[] => itemsOf(s).map((i) => g.boxes[i]!);
  const theirs = boxes(b);
  return boxes(a).some((p) => theirs.some((q) => boxesNear(p, q, -0.5)));
}
/** A sub-assembly's size by that of the whole: end frames are closed before the long way round. */
function unwieldy(g: Graph, set: Bits, within: Bits): number {
  if (countOf(set) < 2) return 0;
  const size = (b: Bits): number =>
    Math.hypot(
      ...sizeOf(
        itemsOf(b)
          .map((i) => g.boxes[i]!)
          .reduce(unionBox),
      ),
    );
  return size(set) / size(within);
}
/** Equal for sets whose parts have equal weights and sizes. */
const alikeOf = (g: Graph, set: Bits): string =>
  itemsOf(set)
    .map((i) => g.alike[i]!)
    .sort()
    .join(' ');
