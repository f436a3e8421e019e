/**
 * Who deletes what. Solids lie in the kernel's memory, which nobody sweeps: each body made on this floor belongs to the
 * innermost scope and goes with it, unless it was kept, and then whoever kept it drops it.
 */
import type { Body } from './kernel.ts';
import type { Solid } from './solid.ts';

export type Scope = {
  /** The solid outlives the scope, until `dropSolid`. */
  readonly keep: (solid: Solid) => Solid;
  /** The scope deletes this body at its end: for the files of this floor only. */
  readonly own: (body: Body) => Body;
};
type Open = { readonly bodies: Set<Body> };

const open: Open[] = [];
const kept = new Set<Body>();
let live = 0;

/** How many bodies lie in the kernel's memory now, kept ones included. */
export const liveSolids = (): number => live;

/**
 * Runs `work` and deletes every body made in it, whether it returns or throws, but those kept. Scopes nest. `work` must be
 * done when it returns: a scope never waits.
 */
export function withSolids<T>(work: (scope: Scope) => T): T {
  const mine: Open = { bodies: new Set() };
  open.push(mine);
  try {
    const result = work({ keep: (solid) => keep(solid), own });
    if (result instanceof Promise) throw new Error('the work of a scope of solids must not be asynchronous');
    return result;
  } finally {
    open.pop();
    for (const body of mine.bodies) remove(body);
  }
}
/** Gives a new body to the innermost scope. */
export function own(body: Body): Body {
  const mine = open.at(-1);
  if (!mine) {
    body.delete();
    throw new Error('a solid was made outside withSolids()');
  }
  mine.bodies.add(body);
  live++;
  return body;
}
/** Deletes a kept solid; throws on one that is not kept (any more). */
export function dropSolid(solid: Solid): void {
  if (!kept.delete(solid.body)) throw new Error(`the solid of '${solid.who}' is not kept, or was dropped already`);
  remove(solid.body);
}
function keep(solid: Solid): Solid {
  const holder = open.findLast((o) => o.bodies.has(solid.body));
  if (!holder) throw new Error(`the solid of '${solid.who}' belongs to no open scope`);
  holder.bodies.delete(solid.body);
  kept.add(solid.body);
  return solid;
}
function remove(body: Body): void {
  body.delete();
  live--;
}
