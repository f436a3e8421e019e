import { expect, test } from 'vitest';
import { planOrder } from '../../src/assembly/order.ts';
import { slatted, tower } from './large.ts';

test('two hundred slats go in as one step', () => {
  const { parts, links } = slatted(200);
  const order = planOrder(parts, links)!;
  expect(order.possible).toBe(true);
  expect(order.steps).toHaveLength(4);
});
test('two hundred parts in groups: each group for itself, then the groups', () => {
  const { parts, links } = tower(17);
  const order = planOrder(parts, links)!;
  expect(parts.length).toBe(200);
  expect(order.possible).toBe(true);
  expect(order.stages.filter((s) => s.name.startsWith('level')).length).toBe(17);
});
test('the same two hundred parts without groups', () => {
  const { parts, links } = tower(17);
  expect(
    planOrder(
      parts.map((p) => ({ ...p, group: null })),
      links,
    )!.possible,
  ).toBe(true);
});
test('stop ends the work wherever it is asked', () => {
  const { parts, links } = tower(3);
  let asked = 0;
  planOrder(parts, links, { stop: () => (asked++, false) });
  expect(asked).toBeGreaterThan(5);
  for (const after of [0, 1, 2, asked - 1]) {
    let n = 0;
    expect(planOrder(parts, links, { stop: () => n++ >= after })).toBeNull();
  }
});
test('less effort is still an order', () => {
  const { parts, links } = tower(2);
  const order = planOrder(parts, links, { effort: 0 })!;
  expect(order.possible).toBe(true);
});
