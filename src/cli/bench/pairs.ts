/** What our door to the kernel costs: 200 parts, every pair that may touch, against the bare calls on the same pairs. */
import { buildPiece } from '../../build/build.ts';
import { boxesNear, outBox } from '../../geom/box.ts';
import { type Frame, moved } from '../../geom/frame.ts';
import type { Document } from '../../model/document.ts';
import { families } from '../../piece/catalog.ts';
import { cutPart } from '../../solids/cut.ts';
import { boxOf } from '../../solids/measure.ts';
import { overlap } from '../../solids/pair.ts';
import { withSolids } from '../../solids/scope.ts';
import type { Solid } from '../../solids/solid.ts';
import { type Figure, figure, median, timed } from './figure.ts';
import { shelving } from './shelving.ts';

type Stood = { readonly solid: Solid; readonly frame: Frame };
const MOST = 1.5;
/** Shelvings stand so far from each other, mm; every tenth part is pushed a little, so that some pairs really overlap. */
const APART = 2000;
const PUSH = 0.2;

export function pairs(parts = 200, rounds = 9): Figure[] {
  return withSolids(() => {
    const all = standing(parts);
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
/** As many parts as asked for, from as many shelvings as it takes. */
function standing(parts: number): Stood[] {
  const built = [...buildPiece(shelving() as unknown as Document, families).built.parts.values()];
  return Array.from({ length: parts }, (_, i): Stood => {
    const p = built[i % built.length];
    if (!p) throw new Error('the shelving has no parts');
    const cut = cutPart(p.record, { who: p.words });
    if (!cut.ok) throw new Error(cut.problem);
    return { solid: cut.solid, frame: moved(p.frame, [APART * Math.floor(i / built.length), i % 10 === 0 ? PUSH : 0, 0]) };
  });
}
function candidates(all: readonly Stood[]): [Stood, Stood][] {
  const boxes = all.map((p) => {
    const box = boxOf(p.solid);
    if (!box) throw new Error('a part without wood');
    return outBox(p.frame, box);
  });
  return all.flatMap((a, i) =>
    all.slice(i + 1).flatMap((b, k): [Stood, Stood][] => {
      const [p, q] = [boxes[i], boxes[i + 1 + k]];
      return p && q && boxesNear(p, q) ? [[a, b]] : [];
    }),
  );
}
/** The kernel's own calls and nothing else: each part stood up once, each pair intersected, its volume asked. */
function raw(all: readonly Stood[], near: readonly (readonly [Stood, Stood])[]): number {
  const bodies = new Map(all.map((p) => [p, p.solid.body.transform([...p.frame.x, 0, ...p.frame.y, 0, ...p.frame.z, 0, ...p.frame.o, 1])]));
  let found = 0;
  for (const [a, b] of near) {
    const [p, q] = [bodies.get(a), bodies.get(b)];
    if (!p || !q) throw new Error('a pair of parts that do not stand');
    const shared = p.intersect(q);
    if (shared.volume() > 1e-3) found++;
    shared.delete();
  }
  for (const body of bodies.values()) body.delete();
  return found;
}
