/**
 * A dependency graph of scalars that is solved on demand without recursion: thousands of parts may read each other in one
 * long chain, and a circle comes back as the chain of its readings.
 */
import { type Problem, problem } from '../model/problem.ts';

export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false };
/** Gives the value of another node, or leaves the computation to be taken up again when that node is known. */
export type Ask = <T>(node: string) => T;
/** How a node gets its value; throws `stop(...)` for what the document got wrong. */
export type Compute = (node: string, ask: Ask) => unknown;
export type Solver = {
  readonly solve: <T>(node: string) => Outcome<T>;
  readonly problems: () => readonly Problem[];
};

class Pending {
  node = '';
}
class Stop {
  problem: Problem | null;
  constructor(p: Problem | null) {
    this.problem = p;
  }
}
const pending = new Pending();
/** Ends the computation of a node with a problem (or, without one, because something that it needs has failed already). */
export function stop(where: string, what: string, nearest?: string | null): never {
  throw new Stop(problem(where, what, nearest));
}
/** Is this what `ask` throws to be taken up again? Code between `ask` and the solver must let it through. */
export const isControl = (e: unknown): boolean => e instanceof Pending || e instanceof Stop;

/** So many computations may stand inside each other before one is left and taken up again: far from what a stack of calls holds. */
const DEEPEST = 40;

export function makeSolver(compute: Compute, words: (node: string) => string | null): Solver {
  const done = new Map<string, Outcome<unknown>>();
  const problems: Problem[] = [];
  /** The nodes that wait for each other now, the goal first. */
  const stack: string[] = [];
  const on = new Set<string>();
  let depth = 0;
  const enter = (node: string): void => {
    stack.push(node);
    on.add(node);
  };
  const ask: Ask = <T>(node: string): T => {
    let known = done.get(node);
    if (!known) {
      if (on.has(node)) circle(node);
      if (depth >= DEEPEST) {
        pending.node = node;
        throw pending;
      }
      enter(node);
      attempt(node);
      known = done.get(node) as Outcome<unknown>;
    }
    if (!known.ok) throw new Stop(null);
    return known.value as T;
  };
  /** Works the topmost node out and takes it off the stack; leaves it there, and throws `pending`, when it must wait for another. */
  function attempt(node: string): void {
    depth++;
    try {
      done.set(node, { ok: true, value: compute(node, ask) });
    } catch (e) {
      if (!(e instanceof Stop)) throw e;
      // Two nodes may trip over the same thing: it is said once.
      const p = e.problem;
      if (p && !problems.some((q) => q.where === p.where && q.what === p.what)) problems.push(p);
      done.set(node, { ok: false });
    } finally {
      depth--;
    }
    on.delete(node);
    stack.pop();
  }
  function circle(node: string): never {
    const round = [...stack.slice(stack.indexOf(node)), node];
    problems.push(circleProblem(round, words));
    for (const n of round) done.set(n, { ok: false });
    throw new Stop(null);
  }
  const solve = <T>(goal: string): Outcome<T> => {
    if (!done.has(goal)) enter(goal);
    while (stack.length) {
      const node = stack[stack.length - 1] as string;
      if (done.has(node)) {
        on.delete(node);
        stack.pop();
        continue;
      }
      try {
        attempt(node);
      } catch (e) {
        if (!(e instanceof Pending)) throw e;
        enter(e.node);
      }
    }
    return done.get(goal) as Outcome<T>;
  };
  return { solve, problems: () => problems };
}

function circleProblem(circle: readonly string[], words: (node: string) => string | null): Problem {
  const chain = circle.map(words).filter((w): w is string => w !== null);
  const closed = chain[0] === chain[chain.length - 1] ? chain : [...chain, chain[0] ?? ''];
  return problem(closed[0] ?? '', `these sizes go round in a circle: ${closed.join(' reads ')}. Give one of them a length of its own.`);
}
