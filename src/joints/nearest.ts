/** Refusals whose cure is proved: with `nearest` set, nothing more is refused, whatever else the document sets. */
import { type Reason, type Refusal, isRefusal } from './family.ts';

/** What a family answers when it is asked for its sizes. */
export type Answer<P> = { readonly sizes: P; readonly because: Readonly<Record<keyof P & string, Reason>> } | Refusal<P>;

/** How many faults in one set of parameters are cured together; more than a family has parameters is never needed. */
const MOST = 24;

/**
 * What `ask` says of the sizes set; a refusal carries a cure that was put to it again. First the nearest that the family names, with what is
 * nearest to each fault that this leaves; else one setting given back to the proposal; else all of them. A meeting that takes no such joint
 * at all is refused without a cure.
 */
export function withNearest<P extends object>(set: Partial<P>, ask: (set: Partial<P>) => Answer<P>): Answer<P> {
  const first = ask(set);
  if (!isRefusal<P>(first)) return first;
  const { nearest: _named, ...bare } = first;
  const nearest = oneAfterAnother(set, first, ask) ?? givenBack(set, ask);
  return nearest ? { ...bare, nearest } : bare;
}

function oneAfterAnother<P extends object>(set: Partial<P>, first: Refusal<P>, ask: (set: Partial<P>) => Answer<P>): Partial<P> | null {
  let nearest: Partial<P> = {};
  let now: Answer<P> = first;
  for (let i = 0; i < MOST && isRefusal<P>(now) && now.nearest; i++) {
    nearest = { ...nearest, ...now.nearest };
    now = ask({ ...set, ...nearest });
  }
  return isRefusal<P>(now) ? null : nearest;
}

function givenBack<P extends object>(set: Partial<P>, ask: (set: Partial<P>) => Answer<P>): Partial<P> | null {
  const free = ask({});
  if (isRefusal<P>(free)) return null;
  const keys = (Object.keys(set) as (keyof P)[]).filter((k) => set[k] !== undefined && set[k] !== free.sizes[k]);
  const back = (some: readonly (keyof P)[]): Partial<P> => Object.fromEntries(some.map((k) => [k, free.sizes[k]])) as Partial<P>;
  const works = (fix: Partial<P>): boolean => !isRefusal(ask({ ...set, ...fix }));
  return keys.map((k) => back([k])).find(works) ?? (works(back(keys)) ? back(keys) : null);
}
