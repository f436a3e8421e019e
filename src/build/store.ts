/**
 * Solids by content: a part is cut once for its record, two parts are tried against each other once for the way they stand.
 * The only place above `solids/` that keeps bodies alive; whoever opens a store closes it.
 */
import { type Box, boxesNear, outBox } from '../geom/box.ts';
import { type Frame, HOME, outPoint, seenFrom } from '../geom/frame.ts';
import { quantise3, tidy3 } from '../geom/vec3.ts';
import type { PartRecord } from '../model/record.ts';
import { cutPart } from '../solids/cut.ts';
import { type CutFact, factsOf } from '../solids/facts.ts';
import { type Facets, facetsOf } from '../solids/facets.ts';
import { type Measures, boxOf, measure } from '../solids/measure.ts';
import { type PartMesh, meshOf } from '../solids/mesh.ts';
import { type Bite, overlap } from '../solids/pair.ts';
import { dropSolid, withSolids } from '../solids/scope.ts';
import type { Solid } from '../solids/solid.ts';
import { type BuildCache, openBuildCache } from './cache.ts';

type Entry = {
  readonly solid: Solid;
  readonly box: Box | null;
  mesh?: PartMesh;
  facts?: CutFact[];
  measures?: Measures;
  facets?: Facets;
  used: number;
};
type Pair = { readonly bite: Bite | null; used: number };
export type Placed = { readonly record: PartRecord; readonly frame: Frame; readonly who: string };
export type Store = {
  /** What builds of the piece leave to each other: whoever judges with this store builds with it. */
  readonly builds: BuildCache;
  /** What is wrong with the record itself (a size of nothing, a profile that crosses itself); null when it can be cut. */
  readonly flaw: (p: Placed) => string | null;
  readonly mesh: (p: Placed) => PartMesh | null;
  readonly measures: (p: Placed) => Measures | null;
  readonly facts: (p: Placed) => readonly CutFact[];
  /** Triangles in the record frame. */
  readonly facets: (p: Placed) => Facets | null;
  /** Box of the finished wood in the record frame: the blank's. */
  readonly box: (p: Placed) => Box | null;
  /** What two placed parts both claim, in the world; null when they only touch or stand apart. */
  readonly bite: (a: Placed, b: Placed) => Bite | null;
  /** The same as triangles in the world, for the lens; not kept. */
  readonly biteFacets: (a: Placed, b: Placed) => Facets | null;
  /** Forgets solids and pairs that were not used since the last call, beyond twice those that were. */
  readonly prune: () => void;
  readonly size: () => { solids: number; pairs: number };
  readonly close: () => void;
};

/** Told of every call that reaches the kernel, for benches that repeat them bare. */
export type Watch = {
  readonly cut?: (record: PartRecord) => void;
  readonly pair?: (a: PartRecord, b: PartRecord, there: Frame) => void;
  readonly mesh?: (record: PartRecord) => void;
};

/** Opens a store; the kernel must be loaded. */
export function openStore(watch: Watch = {}): Store {
  const solids = new Map<string, Entry | string>();
  const pairs = new Map<string, Pair>();
  let round = 1;

  const entry = (p: Placed): Entry | null => {
    let e = solids.get(p.record.key);
    if (e === undefined) {
      watch.cut?.(p.record);
      e = withSolids((scope): Entry | string => {
        const cut = cutPart(p.record, { who: p.who });
        return cut.ok ? { solid: scope.keep(cut.solid), box: boxOf(cut.solid), used: round } : cut.problem;
      });
      solids.set(p.record.key, e);
    }
    if (typeof e === 'string') return null;
    e.used = round;
    return e;
  };
  /** What is known of two parts as they stand; null when their boxes stand apart. */
  const pairOf = (a: Placed, b: Placed, ea: Entry, eb: Entry): Pair | null => {
    if (!ea.box || !eb.box) return null;
    const rel = steady(seenFrom(a.frame, b.frame));
    if (!boxesNear(ea.box, outBox(rel, eb.box))) return null;
    const key = `${a.record.key} ${b.record.key} ${frameKey(rel)}`;
    let known = pairs.get(key);
    if (!known) {
      watch.pair?.(a.record, b.record, rel);
      known = { bite: overlap(ea.solid, HOME, eb.solid, rel), used: round };
      pairs.set(key, known);
    }
    return known;
  };
  /** Parts that no edit has touched come with the very frames and records of the time before. */
  const sameAgain = new WeakMap<Frame, WeakMap<Frame, { readonly a: PartRecord; readonly b: PartRecord; readonly pair: Pair | null }>>();
  const bite = (a: Placed, b: Placed): Bite | null => {
    const ea = entry(a);
    const eb = entry(b);
    if (!ea || !eb) return null;
    let others = sameAgain.get(a.frame);
    if (!others) sameAgain.set(a.frame, (others = new WeakMap()));
    let met = others.get(b.frame);
    if (met?.a !== a.record || met.b !== b.record) others.set(b.frame, (met = { a: a.record, b: b.record, pair: pairOf(a, b, ea, eb) }));
    if (!met.pair) return null;
    met.pair.used = round;
    const found = met.pair.bite;
    return found && { ...found, box: outBox(a.frame, found.box), at: outPoint(a.frame, found.at) };
  };
  const drop = (key: string): void => {
    const e = solids.get(key);
    if (e && typeof e !== 'string') dropSolid(e.solid);
    solids.delete(key);
  };
  return {
    builds: openBuildCache(),
    flaw: (p) => {
      entry(p);
      const e = solids.get(p.record.key);
      return typeof e === 'string' ? e : null;
    },
    mesh: (p) => {
      const e = entry(p);
      if (e && !e.mesh) watch.mesh?.(p.record);
      return e ? (e.mesh ??= withSolids(() => meshOf(e.solid))) : null;
    },
    measures: (p) => {
      const e = entry(p);
      return e ? (e.measures ??= withSolids(() => measure(e.solid))) : null;
    },
    facts: (p) => {
      const e = entry(p);
      return e ? (e.facts ??= withSolids(() => factsOf(e.solid))) : [];
    },
    facets: (p) => {
      const e = entry(p);
      return e ? (e.facets ??= facetsOf(e.solid)) : null;
    },
    box: (p) => entry(p)?.box ?? null,
    bite,
    biteFacets: (a, b) => {
      const ea = entry(a);
      const eb = entry(b);
      return ea && eb ? (overlap(ea.solid, a.frame, eb.solid, b.frame, { facets: true })?.facets ?? null) : null;
    },
    prune: () => {
      pruneMap(solids, round, (e) => (typeof e === 'string' ? 0 : e.used), drop);
      pruneMap(
        pairs,
        round,
        (e) => e.used,
        (k) => pairs.delete(k),
      );
      round++;
    },
    size: () => ({ solids: solids.size, pairs: pairs.size }),
    close: () => {
      for (const key of solids.keys()) drop(key);
      pairs.clear();
    },
  };
}
/**
 * A relative frame as pairs are known by and tried in, so that it does not matter in which piece they were met first. Places are rounded as
 * records are: faces cut to lie on each other then do, where a last bit between them would leave slivers. Directions are kept far finer:
 * two parts a metre long, turned by what a record rounds to, would stand apart by microns.
 */
const steady = (f: Frame): Frame => ({ o: quantise3(f.o), x: tidy3(f.x, 1e12), y: tidy3(f.y, 1e12), z: tidy3(f.z, 1e12) });
const frameKey = (f: Frame): string => `${f.o.join()} ${f.x.join()} ${f.y.join()} ${f.z.join()}`;
/** Keeps at most twice what this round used, the longest unused go first. */
function pruneMap<T>(map: Map<string, T>, round: number, used: (e: T) => number, drop: (key: string) => void): void {
  const live = [...map.values()].filter((e) => used(e) === round).length;
  const spare = Math.max(64, 2 * live);
  if (map.size <= spare) return;
  const old = [...map].filter(([, e]) => used(e) < round).sort((a, b) => used(a[1]) - used(b[1]));
  for (const [key] of old.slice(0, map.size - spare)) drop(key);
}
