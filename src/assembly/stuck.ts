/** Why something cannot be put together: the smallest set that stays stuck, and the circle of parts that stop each other. */
import { itemsOf } from './bits.ts';
import { type Signed, vecOf } from './directions.ts';
import { type Graph, inTheWay, makeGraph, ownDirections } from './graph.ts';
import { type Scene, freeWay } from './scene.ts';
import { type Run, stuckIn, takeApart } from './search.ts';
import { the, wayOf } from './words.ts';

/** Searches for a smaller stuck set that a piece of this many parts is worth. */
const SHRINK_UP_TO = 40;

/** Leaves parts out one by one as long as the rest stays stuck; what is left cannot be made smaller. */
export function smallestStuck(s: Scene, found: readonly (readonly number[])[], run: Run): readonly number[] {
  const bySize = (a: readonly number[], b: readonly number[]): number => a.length - b.length || (a[0] ?? 0) - (b[0] ?? 0);
  let best = [...found].sort(bySize)[0] ?? [];
  for (let k = 0; k < best.length && best.length <= SHRINK_UP_TO && !run.stop();) {
    const less = best.filter((_, n) => n !== k);
    const left = stuckIn(
      takeApart(
        s,
        less.map((p) => [p]),
        null,
        { ...run, effort: 0 },
      ),
    );
    const next = [...left].sort(bySize)[0];
    if (next) [best, k] = [next, 0];
    else k++;
  }
  return best;
}
/** 'the rail cannot go to the left: the left stile is in the way; the left stile cannot …', round to the first. */
export function whyStuck(s: Scene, parts: readonly number[]): string {
  const g = makeGraph(
    s,
    parts.map((p) => [p]),
  );
  const dirs = Array.from({ length: 2 * s.lines.lines.length }, (_, k) => k);
  const own = new Set(parts.flatMap((_, k) => ownDirections(g, k)));
  const tried = [...own, ...dirs.filter((d) => !own.has(d))];
  let best: { dir: Signed; circle: number[] } | null = null;
  for (const dir of tried) {
    const circle = shortestCircle(g, dir);
    if (circle && (!best || circle.length < best.circle.length)) best = { dir, circle };
  }
  if (!best) return 'no direction was found in which any of these parts can leave the others';
  const { dir, circle } = best;
  const name = (k: number): string => the(s.parts[parts[k]!]!.label);
  const way = wayOf(vecOf(s.lines, dir));
  const each = circle.map((k, n) => {
    const next = circle[(n + 1) % circle.length]!;
    const free = freeWay(s, parts[k]!, parts[next]!, dir);
    return `${name(k)} cannot go ${way}: ${name(next)} stops it${free > 0.05 ? ` after ${free.toFixed(1)} mm` : ''}`;
  });
  return each.join('; ');
}
/** The shortest way round among the bodies, each stopped by the next along `dir`. */
function shortestCircle(g: Graph, dir: Signed): number[] | null {
  let best: number[] | null = null;
  for (const start of itemsOf(g.all)) {
    const from = new Map<number, number>();
    const queue = [start];
    for (let i = queue.shift(); i !== undefined && !from.has(start); i = queue.shift())
      for (const j of itemsOf(inTheWay(g, i, dir)))
        if (!from.has(j)) {
          from.set(j, i);
          queue.push(j);
        }
    if (!from.has(start)) continue;
    const circle = [start];
    for (let i = from.get(start)!; i !== start; i = from.get(i)!) circle.unshift(i);
    const round = [start, ...circle.slice(0, -1)];
    if (!best || round.length < best.length) best = round;
  }
  return best;
}
