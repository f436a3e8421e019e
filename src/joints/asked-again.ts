/** Refusals whose cure has been tried: what a family names as the nearest that goes does go, whatever else the document sets. */
import { type Reason, type Refusal, isRefusal } from './family.ts';

export type Answer<P> = { readonly sizes: P; readonly because: Readonly<Record<keyof P & string, Reason>> } | Refusal<P>;
/**
 * What `ask` says of the sizes set; where it refuses, with a cure that was put to it again: the one it named itself, else one setting
 * given back to the proposal, else all of them. A meeting that takes no such joint at all is refused without a cure.
 */
export function withNearest<P extends object>(set: Partial<P>, ask: (set: Partial<P>) => Answer<P>): Answer<P> {
  const first = ask(set);
  if (!isRefusal<P>(first)) return first;
  const { nearest, ...bare } = first;
  const works = (fix: Partial<P>): boolean => !isRefusal(ask({ ...set, ...fix }));
  if (nearest && works(nearest)) return first;
  const free = ask({});
  if (isRefusal<P>(free)) return bare;
  const keys = (Object.keys(set) as (keyof P)[]).filter((k) => set[k] !== undefined && set[k] !== free.sizes[k]);
  const back = (some: readonly (keyof P)[]): Partial<P> => Object.fromEntries(some.map((k) => [k, free.sizes[k]])) as Partial<P>;
  const one = keys.map((k) => back([k])).find(works);
  const fix = one ?? back(keys);
  return works(fix) ? { ...bare, nearest: fix } : bare;
}
