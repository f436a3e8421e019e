/** What our door to the kernel costs: 200 parts, every pair that may touch, against the bare calls on the same pairs. */
import { boxesNear, outBox } from '../../src/geom/box.ts';
import type { Frame } from '../../src/geom/frame.ts';
import { boxOf } from '../../src/solids/measure.ts';
import { overlap } from '../../src/solids/pair.ts';
import { withSolids } from '../../src/solids/scope.ts';
import type { Solid } from '../../src/solids/solid.ts';
import { cutOf } from '../support/records.ts';
import { type Figure, figure, median } from './figure.ts';
import { rack } from './rack.ts';

type Part = { readonly solid: Solid; readonly frame: Frame };
const MOST = 1.5;

export function pairs(parts = 200, rounds = 9): Figure[] {
  return withSolids(() => {
    const all = rack(parts).map((p): Part => ({ solid: cutOf(p.record, p.who), frame: p.frame }));
    const near = candidates(all);
    const times: { ours: number[]; bare: number[] } = { ours: [], bare: [] };
    let found = { ours: 0, bare: 0 };
    for (let r = 0; r < rounds + 2; r++) {
      const [bare, bareTime] = timed(() => raw(all, near));
      const [ours, oursTime] = timed(() => near.reduce((n, [a, b]) => n + (overlap(a.solid, a.frame, b.solid, b.frame) ? 1 : 0), 0));
      found = { ours, bare };
      // The first rounds warm the engine up.
      if (r < 2) continue;
      times.bare.push(bareTime);
      times.ours.push(oursTime);
    }
    if (found.ours !== found.bare) throw new Error(`our door found ${found.ours} overlaps, the bare calls ${found.bare}`);
    return [
      figure('pairs', 'pairs tried', near.length, 'count'),
      figure('pairs', 'overlaps found', found.ours, 'count'),
      figure('pairs', 'bare calls', median(times.bare), 'ms'),
      figure('pairs', 'through our door', median(times.ours), 'ms'),
      figure('pairs', 'our door to bare calls', median(times.ours.map((t, i) => t / (times.bare[i] ?? Number.NaN))), 'ratio', MOST),
    ];
  });
}
function candidates(all: readonly Part[]): [Part, Part][] {
  const boxes = all.map((p) => {
    const box = boxOf(p.solid);
    return box && outBox(p.frame, box);
  });
  return all.flatMap((a, i) => all.slice(i + 1).flatMap((b, k): [Part, Part][] => (near(boxes[i], boxes[i + 1 + k]) ? [[a, b]] : [])));
}
const near = (a: ReturnType<typeof outBox> | null | undefined, b: ReturnType<typeof outBox> | null | undefined): boolean =>
  !!a && !!b && boxesNear(a, b);
/** The kernel's own calls and nothing else: each part stood up once, each pair intersected, its volume asked. */
function raw(all: readonly Part[], near: readonly (readonly [Part, Part])[]): number {
  const bodies = new Map(all.map((p) => [p, p.solid.body.transform([...p.frame.x, 0, ...p.frame.y, 0, ...p.frame.z, 0, ...p.frame.o, 1])]));
  let found = 0;
  for (const [a, b] of near) {
    const shared = (bodies.get(a) as Solid['body']).intersect(bodies.get(b) as Solid['body']);
    if (shared.volume() > 1e-3) found++;
    shared.delete();
  }
  for (const body of bodies.values()) body.delete();
  return found;
}
function timed<T>(work: () => T): [T, number] {
  const start = performance.now();
  const result = work();
  return [result, performance.now() - start];
}
