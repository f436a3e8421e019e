import { test } from 'vitest';
import * as P from '/work/main/test/assembly/pieces.ts';
import { planOrder } from '/work/main/src/assembly/order.ts';
test('x', () => {
  for (const [n, f] of Object.entries(P)) {
    const p = f();
    const t = performance.now();
    const o = planOrder(p.parts, p.links, { gap: 30 })!;
    console.log(n, (performance.now() - t).toFixed(1), o.possible, o.stuck ?? '', o.why ?? '', '\n' + o.steps.map((s) => `  ${s.words} | ${s.move} ${s.along} T=${s.distance}`).join('\n'), '\n', JSON.stringify(o.stages));
  }
});
