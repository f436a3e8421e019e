/** The order of putting the piece together, as drawn, from the planner. */
import { planOrder } from '../assembly/order.ts';
import type { Built } from '../build/build.ts';
import type { Store } from '../build/store.ts';
import { planLinks, planParts } from './plan.ts';
import type { OrderView } from './view.ts';

export type OrderRun = { readonly effort?: number; readonly stop?: () => boolean };
/** No order, nothing apart: what is shown while none is known. */
const NO_ORDER: OrderView = { possible: false, steps: [], stages: [], apart: {} };

/** Planning takes the square of the parts in time: beyond this it would be minutes. */
const MOST_PARTS = 1200;

/** Plans on drawn solids: measured ones float or bind where the plan must not. */
export function orderOf(built: Built, store: Store, run: OrderRun = {}): OrderView {
  const b = built.drawn;
  const size = b.parts.size + b.extras.size;
  if (size === 0) return { ...NO_ORDER, possible: true };
  if (size > MOST_PARTS)
    return {
      ...NO_ORDER,
      why: `An order is not looked for in a piece of ${size} parts, counting what its joints bring along; at most ${MOST_PARTS}. Split the piece.`,
    };
  const order = planOrder(planParts(b, store), planLinks(b), run);
  return order ?? NO_ORDER;
}
