/** Refusals whose `nearest` is proved: with it set, nothing more is refused. */
import { type Reason, type Refusal, isRefusal } from './family.ts';

/** What a family answers when it is asked for its sizes. */
export type Answer<P> = { readonly sizes: P; readonly because: Readonly<Record<keyof P & string, Reason>> } | Refusal<P>;

/** How many faults in one set of parameters are cured together; more than a family has parameters is never needed. */
const MOST = 24;
/**
 * The answer to a set of parameters. Where it is a refusal, what is nearest to the first fault may leave another, whose own nearest is added,
 * until nothing is refused; where that never comes, it is refused without a cure.
 */
export function withNearest<P>(set: Partial<P>, ask: (set: Partial<P>) => Answer<P>): Answer<P> {
  const first = ask(set);
  if (!isRefusal<P>(first) || !first.nearest) return first;
  let nearest: Partial<P> = {};
  let now: Answer<P> = first;
  for (let i = 0; i < MOST && isRefusal<P>(now) && now.nearest; i++) {
    nearest = { ...nearest, ...now.nearest };
    now = ask({ ...set, ...nearest });
  }
  const { cannot, limit, asked } = first;
  return isRefusal<P>(now) ? { cannot, limit, asked } : { cannot, limit, asked, nearest };
}
