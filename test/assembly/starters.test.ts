import { readdirSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { planOrder } from '../../src/assembly/order.ts';
import { openStore } from '../../src/build/store.ts';
import { asPlaced } from '../../src/fits/check.ts';
import { boxesNear } from '../../src/geom/box.ts';
import { moved } from '../../src/geom/frame.ts';
import { planLinks, planParts } from '../../src/piece/plan.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { builtOf, documentOf, fixtureText, starterText } from '../support/piece.ts';
import { offsetAt } from './replay.ts';

beforeAll(() => loadKernel());
const starters = readdirSync(new URL('../../public/starters', import.meta.url))
  .map((f) => f.replace(/\.json$/, ''))
  // The list of starters lies beside them; the spoiled one is not meant to go together.
  .filter((f) => !f.startsWith('spoiled') && 'dryfit' in (JSON.parse(starterText(f)) as object));

describe.each([
  ...starters.map((f) => [f, starterText] as const),
  ...['window-table', 'hearth-stool'].map((f) => [f, fixtureText] as const),
])('%s', (name, text) => {
  test('goes together, and the kernel finds no wood shared on the way that is not shared at home', () => {
    const { drawn } = builtOf(documentOf(text(name)));
    const store = openStore();
    const parts = planParts(drawn, store);
    const order = planOrder(parts, planLinks(drawn))!;
    const byPath = new Map(parts.map((p) => [p.path, p]));
    expect(order.possible, order.why).toBe(true);
    // Whatever a joint holds together is drawn apart.
    for (const l of planLinks(drawn))
      for (const [k, p] of l.parts.entries())
        for (const q of l.parts.slice(0, k)) {
          const [a, b] = [byPath.get(p), byPath.get(q)];
          if (a && b && [a, b].every((x) => x.kind === 'wood') && boxesNear(a.box, b.box, 0.01))
            expect(offsetAt(order, p, 0), `${p} and ${q}`).not.toEqual(offsetAt(order, q, 0));
        }
    const all = [...drawn.parts.values(), ...drawn.extras.values()].map((p) => ({ path: p.path, placed: asPlaced(p) }));
    const bite = (i: number, j: number, s: number): number => {
      const at = (k: number): (typeof all)[number]['placed'] => ({
        ...all[k]!.placed,
        frame: moved(all[k]!.placed.frame, offsetAt(order, all[k]!.path, s)),
      });
      return store.bite(at(i), at(j))?.volume ?? 0;
    };
    for (let i = 0; i < all.length; i++)
      for (let j = 0; j < i; j++) {
        const home = bite(i, j, order.steps.length);
        // A drawbored peg bites as drawn; while it leaves it bites no more than that.
        for (let s = 0; s < order.steps.length; s += 0.5)
          expect(bite(i, j, s), `${all[i]!.path} and ${all[j]!.path} at ${s}`).toBeLessThan(home * 1.05 + 1);
      }
    store.close();
  });
});
