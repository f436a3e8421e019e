/** The order of putting the piece together, as drawn, from the planner. */
import { planOrder } from '../assembly/order.ts';
import type { Built } from '../build/build.ts';
import type { Store } from '../build/store.ts';
import { planLinks, planParts } from './plan.ts';
import type { OrderView } from './view.ts';

export type OrderRun = { readonly effort?: number; readonly stop?: () => boolean };
/** No order, nothing apart: what is shown while none is known. */
export const NO_ORDER: OrderView = { possible: false, steps: [], stages: [], apart: {} };

/** Plans on drawn solids: measured ones float or bind where the plan must not. */
export function orderOf(built: Built, store: Store, run: OrderRun = {}): OrderView {
  const b = built.drawn;
  if (b.parts.size === 0) return { ...NO_ORDER, possible: true };
  const order = planOrder(planParts(b, store), planLinks(b), run);
  return order ?? NO_ORDER;
}
