/** One wood: thickness by thickness, and what finds no room in its own thickness tried in thicker boards. */
import { type Blank } from './blank.ts';
import { lowerBound } from './bound.ts';
import { type Open, type Packing } from './pack.ts';
import { type Class, type WoodJob, classesOf, countsOf, packingOf } from './packing.ts';
import { type Aim, type Plan, TASTE, compareScores, fill, judged, search } from './search.ts';
import { type Shop } from './shop.ts';

/** `effort`: how often boards are emptied and filled anew, over the whole job. `stop` keeps the best plan so far. */
export type Run = {
  readonly effort?: number;
  readonly seed?: number;
  readonly report?: (done: { readonly done: number; readonly of: number; readonly boards: number }) => void;
  readonly stop?: () => boolean;
};
const DEFAULT_EFFORT = 2000;

export type WoodPlan = {
  readonly job: WoodJob;
  readonly packing: Packing;
  readonly classes: readonly Class[];
  readonly boards: readonly Open[];
  readonly left: readonly Blank[];
  /** Some blanks lie on boards thicker than they need. */
  readonly thicker: boolean;
};

export function layWood(job: WoodJob, shop: Shop, aim: Aim, whole: { readonly run: Run; readonly all: number }): WoodPlan {
  const p = packingOf(job, shop);
  const { classes, homeless } = classesOf(p, job);
  const { run } = whole;
  const effort = run.effort ?? DEFAULT_EFFORT;
  const found = classes
    .filter((c) => c.items.length > 0)
    .map((cls) => {
      const bound = lowerBound(p, countsOf(p, cls.items), cls.lines);
      const { best, first } = search(p, cls.items, cls.lines, {
        effort: Math.ceil((effort * cls.items.length) / Math.max(1, whole.all)),
        seed: run.seed ?? 1,
        aim,
        enough: (s) =>
          s.left === 0 &&
          (aim === 'fewest boards' || s.cost <= bound.cost * (1 + 1e-9)) &&
          (s.boards <= bound.boards || aim === 'least wood'),
        stop: run.stop ?? (() => false),
        report: (now, done) => run.report?.({ done, of: effort, boards: now.score.boards }),
      });
      return { cls, best, first };
    });
  const spill = (plan: 'best' | 'first'): Spilled =>
    spillOver(
      p,
      classes,
      found.map((f) => ({ cls: f.cls, plan: f[plan] })),
    );
  // A tidier plan of thick boards may leave less room in them for what spills over: then the first one is the better.
  const spills = found.some((f) => f.best.left.length > 0);
  const spilled = spills ? bestSpill(p, aim, spill('best'), spill('first')) : spill('best');
  const boards = spilled.plans.flatMap((x) => x.boards);
  const left = [...homeless, ...spilled.left].sort((a, b) => a - b).map((i) => job.blanks[i] as Blank);
  return { job, packing: p, classes, boards, left, thicker: spilled.thicker };
}

type Spilled = { readonly plans: Plan[]; readonly left: number[]; readonly thicker: boolean };
/** The better of two as plans for the whole wood; the first where they are equal. */
function bestSpill(p: Packing, aim: Aim, one: Spilled, other: Spilled): Spilled {
  const score = (s: Spilled): Plan['score'] =>
    judged(
      p,
      s.plans.flatMap((x) => x.boards),
      s.left,
    ).score;
  return compareScores(score(other), score(one), aim) < 0 ? other : one;
}
/** What found no room in its own thickness is tried in the next thicker ones. */
function spillOver(p: Packing, classes: readonly Class[], plans: readonly { cls: Class; plan: Plan }[]): Spilled {
  const now = new Map<Class, Plan>(plans.map((x) => [x.cls, x.plan]));
  let thicker = false;
  const left: number[] = [];
  for (const cls of classes) {
    let rest = [...(now.get(cls)?.left ?? [])];
    for (const other of classes.filter((c) => c.thickness > cls.thickness)) {
      if (rest.length === 0) break;
      const at = now.get(other) ?? judged(p, [], []);
      const opens = [...other.lines].sort((a, b) => (p.lines[a]?.cost ?? 0) - (p.lines[b]?.cost ?? 0) || a - b);
      const done = fill(p, at.boards, { order: rest, taste: TASTE, opens });
      if (done.left.length === rest.length) continue;
      thicker = true;
      now.set(other, judged(p, done.boards, at.left));
      rest = done.left;
    }
    left.push(...rest);
  }
  return { plans: classes.flatMap((c) => now.get(c) ?? []), left, thicker };
}
