/** Where each part stands between all apart and together. */
import { type Vec3, add, scale } from '../../src/geom/vec3.ts';
import type { OrderView } from '../../src/piece/view.ts';

/** Offsets by path; `together` 0 all apart … 1 together. A part is on its way while the slider passes its step. */
export function poseAt(order: OrderView | null, together: number): ReadonlyMap<string, Vec3> {
  const out = new Map<string, Vec3>();
  if (!order || together >= 1) return out;
  const s = together * order.steps.length;
  for (const [path, moves] of Object.entries(order.apart)) {
    let by: Vec3 = [0, 0, 0];
    for (const m of moves) by = add(by, scale(m.offset, Math.min(1, Math.max(0, m.step + 1 - s))));
    if (by[0] || by[1] || by[2]) out.set(path, by);
  }
  return out;
}
