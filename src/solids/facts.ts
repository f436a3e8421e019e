/** What became of a part's features, as data for the checks: nothing here is an error. */
import type { Feature } from '../model/record.ts';
import { cutPart, roomOf } from './cut.ts';
import { LEAST_VOLUME, measure, shellsOf } from './measure.ts';
import { readSolid } from './read.ts';
import { own, withSolids } from './scope.ts';
import { bodyOf } from './shape.ts';
import type { Solid } from './solid.ts';

export type CutFact =
  /** The features leave no wood. */
  | { readonly fact: 'nothing left' }
  /** The wood falls into so many pieces, volumes in mm³, largest first. */
  | { readonly fact: 'in pieces'; readonly volumes: readonly number[] }
  /** What this feature adds hangs on nothing of the stock. */
  | { readonly fact: 'floats'; readonly feature: string }
  /** This feature takes no wood away (or adds none). */
  | { readonly fact: 'no effect'; readonly feature: string };

export function factsOf(solid: Solid): CutFact[] {
  const { volume, pieces } = measure(solid);
  if (volume <= LEAST_VOLUME) return [{ fact: 'nothing left' }];
  const facts: CutFact[] = idle(solid);
  if (pieces.length > 1) facts.push({ fact: 'in pieces', volumes: pieces }, ...floating(solid));
  return facts;
}

/** Adds that are on a piece of which no face is left of the stock or of a shape cut from it. */
function floating(solid: Solid): CutFact[] {
  const reading = readSolid(solid);
  const maker = (t: number): number | 'stock' | undefined =>
    solid.makers.get(reading.runs.find((r) => t >= r.start && t < r.end)?.original ?? -1);
  const features = solid.record.features;
  const names = new Set<string>();
  for (const shell of shellsOf(reading)) {
    if (shell.volume <= LEAST_VOLUME) continue;
    const makers = new Set(shell.triangles.map(maker));
    const rooted = [...makers].some((m) => m === 'stock' || (m !== undefined && features[m]?.op === 'shape'));
    if (!rooted) for (const m of makers) if (typeof m === 'number' && features[m]?.op === 'add') names.add(features[m].name);
  }
  return [...names].map((feature) => ({ fact: 'floats', feature }));
}
/** Only features that left no mark are suspected; whether they did anything is then tried. */
function idle(solid: Solid): CutFact[] {
  const marks = markedBy(solid);
  return solid.record.features.flatMap((f, i): CutFact[] =>
    marks.has(i) || matters(solid, f, i) ? [] : [{ fact: 'no effect', feature: f.name }],
  );
}
/** The features of which there are faces anywhere but flat on a side of the stock, where a cutter that only touches leaves some. */
function markedBy(solid: Solid): Set<number> {
  const { positions, triangles, runs } = readSolid(solid);
  const { min, max } = solid.record.stock;
  const left = new Set<number>();
  for (const run of runs) {
    const maker = solid.makers.get(run.original);
    if (typeof maker !== 'number') continue;
    const corners = triangles.subarray(3 * run.start, 3 * run.end);
    const on = (axis: 0 | 1 | 2, at: number): boolean => corners.every((c) => Math.abs((positions[3 * c + axis] ?? 0) - at) < 1e-6);
    if (corners.length > 0 && !([0, 1, 2] as const).some((k) => on(k, min[k]) || on(k, max[k]))) left.add(maker);
  }
  return left;
}
function matters(solid: Solid, feature: Feature, i: number): boolean {
  return withSolids(() => {
    const features = solid.record.features.filter((f) => order(f) < order(feature));
    const before = cutPart({ ...solid.record, features }, { who: solid.who });
    const cutter = solid.cutters[i];
    if (!before.ok || !cutter) return true;
    const made = bodyOf(cutter, roomOf(solid.record, solid.cutters));
    if (made === null) return false;
    if (typeof made === 'string') return true;
    const cut = feature.op === 'add' ? own(made.body.subtract(before.solid.body)) : own(made.body.intersect(before.solid.body));
    return cut.volume() > LEAST_VOLUME;
  });
}
const order = (f: Feature): number => ({ shape: 0, add: 1, remove: 2, late: 2 })[f.op];
