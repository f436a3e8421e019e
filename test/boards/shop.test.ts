import { expect, test } from 'vitest';
import { SHOP_BASIS, defaultShop, mmOf, ticksDown, ticksUp } from '../../src/boards/shop.ts';

/** Every figure of the shop by its place: 'over.length'. */
function figures(value: object, where = ''): string[] {
  return Object.entries(value).flatMap(([k, v]) => {
    const here = where === '' ? k : `${where}.${k}`;
    return typeof v === 'number' ? [here] : typeof v === 'object' && v !== null ? figures(v as object, here) : [];
  });
}
test('every default has a source, or says that it is common practice', () => {
  for (const system of ['mm', 'in'] as const)
    for (const f of figures(defaultShop(system)))
      expect(
        SHOP_BASIS.some((b) => f === b.what || f.startsWith(`${b.what}.`)),
        f,
      ).toBe(true);
  const all = figures(defaultShop('mm'));
  for (const b of SHOP_BASIS)
    expect(
      all.some((f) => f === b.what || f.startsWith(`${b.what}.`)),
      b.what,
    ).toBe(true);
});

test('ticks: what a board has is rounded down, what a part needs up, and a whole number of ticks stays itself', () => {
  for (const system of ['mm', 'in'] as const) {
    const shop = defaultShop(system);
    for (let n = 1; n < 6000; n += 7) {
      expect(ticksUp(shop, mmOf(shop, n))).toBe(n);
      expect(ticksDown(shop, mmOf(shop, n))).toBe(n);
      expect(ticksUp(shop, mmOf(shop, n) + shop.tick / 3)).toBe(n + 1);
      expect(ticksDown(shop, mmOf(shop, n) + shop.tick / 3)).toBe(n);
    }
  }
});
