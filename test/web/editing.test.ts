/** Sizes typed, stepped and dragged; undo and redo; units; findings, their lens and their cures. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { appTests, documentNow, drawing, eventually, openPiece, openStarter, saved, settled, sickShelf, verdict } from '../support/app.ts';
import { difference, readPng, statistics } from '../support/picture.ts';

const { inApp } = appTests();

const field = (page: Page): ReturnType<Page['locator']> => page.locator('#size');
const readAs = async (page: Page): Promise<string> =>
  (await page.locator('#read-as').innerText()).replaceAll(/\s+/g, ' ').replaceAll('⁄', '/');
const sizesNow = async (page: Page): Promise<Record<string, string>> =>
  ((await documentNow(page)) as { sizes: Record<string, string> }).sizes;
const undoLeft = (page: Page): Promise<boolean> => page.getByRole('button', { name: 'Undo' }).isEnabled();
async function give(page: Page, text: string): Promise<void> {
  await field(page).fill(text);
  await field(page).press('Enter');
  await settled(page);
}

test(
  'a typed size is read as it is typed, applied by Enter, and restored by Esc',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    expect(await page.locator('.field label').innerText()).toMatch(/^wide$/i);
    await field(page).fill('25 1/2 in');
    await eventually(() => readAs(page)).toBe('read as 647.7 mm (25 1/2 in)');
    await field(page).press('Escape');
    expect(await field(page).inputValue()).toMatch(/^640/);
    expect(await undoLeft(page)).toBe(false);
    await field(page).fill('65 cm');
    await eventually(() => readAs(page)).toMatch(/^read as 650 mm /);
    await field(page).press('Enter');
    await eventually(() => page.locator('.bar .title').innerText()).toContain('650 × 190 × 720 mm');
    expect((await sizesNow(page))['wide']).toMatch(/^650(\.0)?( mm)?$/);
    // The shelves follow: 650 less two sides of 22, and 6 into each housing.
    await page.getByRole('button', { name: 'Cut list' }).click();
    const shelf = page.locator('.bench tbody tr').filter({ hasText: 'shelf' });
    await eventually(() => shelf.locator('.size').first().innerText()).toMatch(/^618/);
  }),
);
test(
  'what can be read in two ways is asked about, and nothing is applied until one is chosen',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const before = await documentNow(page);
    await page.getByRole('button', { name: 'inches' }).click();
    await field(page).fill('1.1/2');
    const readings = page.locator('#read-as').getByRole('button');
    await eventually(() => readings.count()).toBe(2);
    await field(page).press('Enter');
    await field(page).press('Tab');
    await settled(page);
    expect(await documentNow(page)).toEqual(before);
    expect(await field(page).inputValue()).toBe('1.1/2');
    expect(await readings.count()).toBe(2);
    await field(page).fill('25.1/2');
    const wanted = readings.filter({ hasText: /25.1[/⁄]2/ });
    await wanted.first().click();
    await settled(page);
    expect(await readings.count()).toBe(0);
    expect((await sizesNow(page))['wide']).toMatch(/^25[- ]1\/2( in)?$/);
  }),
);
const WRONG: readonly (readonly [string, RegExp])[] = [
  ['twelve', /twelve/],
  ['6 4 0 x', /cannot be read|no unit/],
  ['-20', /above 0/],
  ['0', /above 0/],
  ['NaN', /nan/i],
  ['Infinity', /infinity/i],
  ['1e999', /./],
  ['wide + 1', /circle/],
  ['high.nothing + 3', /high/],
  ['high - 2000', /hang_rail|wide/],
  ['99999999', /100 m|large|long|most/],
];
test(
  'what is no size stays in the field, one line says why, and the last good size holds',
  inApp(async ({ page }) => {
    await openPiece(page, sickShelf());
    const before = await documentNow(page);
    for (const [text, why] of WRONG) {
      await give(page, text);
      await eventually(() => field(page).getAttribute('aria-invalid')).toBe('true');
      expect.soft(await field(page).inputValue()).toBe(text);
      expect.soft(await readAs(page), text).toMatch(/; still 640 mm$/);
      expect.soft((await readAs(page)).replace(/; still.*/, ''), text).toMatch(why);
      expect.soft(await undoLeft(page), text).toBe(false);
      expect.soft(await page.getByRole('alert').count(), text).toBe(0);
      expect.soft(await verdict(page), text).toBe('It does not go together yet.');
    }
    expect(await documentNow(page)).toEqual(before);
    await field(page).press('Escape');
    expect(await field(page).inputValue()).toMatch(/^640/);
    expect(await field(page).getAttribute('aria-invalid')).toBe('false');
  }),
);
test(
  'a size may be made of others, follows them, and is fixed again where it stands',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    await field(page).fill('high - 100');
    await eventually(() => readAs(page)).toBe('made of other sizes');
    await give(page, 'high - 100');
    await eventually(() => page.locator('.bar .title').innerText()).toContain('620 × 190 × 720 mm');
    expect((await sizesNow(page))['wide']).toBe('high - 100');
    expect(await field(page).inputValue()).toBe('high - 100');
    await page.getByRole('button', { name: 'fix it there' }).click();
    await settled(page);
    expect((await sizesNow(page))['wide']).toMatch(/^620( mm)?$/);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect((await sizesNow(page))['wide']).toBe('high - 100');
  }),
);
test(
  'arrow keys step the size, and undo and redo restore each state to the letter',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const text = (): Promise<string> => saved(page, () => page.keyboard.press('Control+s')).then((f) => f.text);
    const states = [await text()];
    const first = await drawing(page);
    for (const key of ['ArrowUp', 'Shift+ArrowUp', 'ArrowDown']) {
      await field(page).press(key);
      await settled(page);
      states.push(await text());
    }
    expect(states.map((s) => parseInt((JSON.parse(s) as { sizes: { wide: string } }).sizes.wide, 10))).toEqual([640, 641, 649, 648]);
    expect(difference(await drawing(page), first)).toBeGreaterThan(0.0005);
    for (const state of states.slice(0, -1).reverse()) {
      await page.getByRole('button', { name: 'Undo' }).click();
      await settled(page);
      expect(await text()).toBe(state);
    }
    expect(await undoLeft(page)).toBe(false);
    await eventually(async () => difference(await drawing(page), first)).toBeLessThan(0.0005);
    await page.locator('.verdict h1').click();
    for (const state of states.slice(1)) {
      await page.keyboard.press('Control+Shift+z');
      await settled(page);
      expect(await text()).toBe(state);
    }
    expect(await page.getByRole('button', { name: 'Redo' }).isEnabled()).toBe(false);
    // A new change after an undo ends what could be done again.
    await page.keyboard.press('Control+z');
    await settled(page);
    await give(page, '700');
    expect(await page.getByRole('button', { name: 'Redo' }).isEnabled()).toBe(false);
  }),
);
test(
  'a pointer of the stick changes its size while it is dragged, and one undo takes all of it back',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const before = await documentNow(page);
    const pin = page.getByRole('slider', { name: 'wide, far end' });
    const box = await pin.boundingBox();
    if (!box) throw new Error('the pointer is not on the page');
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (const by of [-20, -45, -80]) {
      await page.mouse.move(x + by, y);
      await settled(page);
    }
    await page.mouse.up();
    await settled(page);
    const wide = parseInt((await sizesNow(page))['wide'] ?? '', 10);
    expect(wide).toBeLessThan(630);
    expect(wide).toBeGreaterThan(300);
    await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await documentNow(page)).toEqual(before);
    expect(await undoLeft(page)).toBe(false);
    await pin.focus();
    await page.keyboard.press('ArrowRight');
    await settled(page);
    expect((await sizesNow(page))['wide']).toMatch(/^641/);
  }),
);
test(
  'the stick turns to depths and heights, and a size is chosen on it',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    await page.getByRole('button', { name: 'Heights' }).click();
    await page
      .locator('.lath')
      .getByRole('button', { name: /^high, 720 mm/ })
      .click();
    await give(page, '800');
    await eventually(() => page.locator('.bar .title').innerText()).toContain('640 × 190 × 800 mm');
  }),
);
test(
  'every figure follows the choice of inches or millimetres, and the choice outlives a reload; the document does not change',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const before = await documentNow(page);
    expect(await page.locator('.bar .title').innerText()).toContain('640 × 190 × 720 mm');
    await page.getByRole('button', { name: 'inches' }).click();
    // 640 / 25.4 = 25.197: 25 3/16 in at thirty-seconds.
    await eventually(() => page.locator('.bar .title').innerText()).toMatch(/25\s?3⁄16 × 7\s?15⁄32 × 28\s?11⁄32 in/);
    expect(await documentNow(page)).toEqual(before);
    await page.getByRole('button', { name: 'Cut list' }).click();
    await page.locator('.bench thead').waitFor();
    expect(await page.locator('.bench thead').innerText()).toContain('length, in');
    await page.reload();
    await settled(page);
    await page.locator('.strip').first().waitFor();
    expect(await page.getByRole('button', { name: 'inches' }).getAttribute('aria-pressed')).toBe('true');
    await page.getByRole('button', { name: 'mm', exact: true }).click();
    await eventually(() => page.locator('.bar .title').innerText()).toContain('640 × 190 × 720 mm');
  }),
);
test(
  'a finding is opened, its lens shows the place, it is put right, struck through and brought back',
  inApp(async ({ page }) => {
    await openPiece(page, sickShelf());
    const sick = await documentNow(page);
    expect(await verdict(page)).toBe('It does not go together yet.');
    const titles = page.locator('.finding > button .title');
    expect(await titles.allInnerTexts()).toEqual([
      'The blind mortise comes out at the back',
      expect.stringMatching(/^The housing is deep for the side/),
    ]);
    // What stops the piece is open from the start.
    expect(await page.locator('.finding.open .title').innerText()).toBe('The blind mortise comes out at the back');
    const lens = page.locator('.lens-place .glass canvas');
    await lens.waitFor();
    const first = readPng(await lens.screenshot());
    expect(statistics(first).colours).toBeGreaterThan(50);
    await page.keyboard.press(']');
    expect(await page.locator('.finding.open .title').innerText()).toMatch(/^The housing is deep/);
    await eventually(async () => difference(readPng(await lens.screenshot()), first)).toBeGreaterThan(0.1);
    await page.keyboard.press('[');
    await page.getByRole('button', { name: /^Put right: Make the tenon 16 mm long/ }).click();
    await settled(page);
    await eventually(() => verdict(page)).toBe('It goes together, with one thing to watch.');
    expect(await titles.allInnerTexts()).toEqual([expect.stringMatching(/^The housing is deep/)]);
    expect(await page.locator('.cured s').allInnerTexts()).toEqual(['The blind mortise comes out at the back']);
    expect(await page.locator('.findings [role=status]').textContent()).toBe(
      'Put right: The blind mortise comes out at the back. One finding left.',
    );
    expect(await page.evaluate(() => document.activeElement?.closest('.finding') !== null)).toBe(true);
    expect(await page.locator('.lens-place').count()).toBe(0);
    await page.getByRole('button', { name: 'bring back' }).click();
    await settled(page);
    await eventually(() => verdict(page)).toBe('It does not go together yet.');
    expect(await page.locator('.cured').count()).toBe(0);
    expect(await documentNow(page)).toEqual(sick);
  }),
);
test(
  'every cure that the spoiled desk is offered first takes its finding away',
  inApp(async ({ page }) => {
    await openStarter(page, 'Spoiled desk');
    const stops = page.locator('.finding.stops');
    const before = await stops.count();
    expect(before).toBeGreaterThanOrEqual(6);
    let [cured, gone] = [0, 0];
    for (;;) {
      // The first finding that has a cure; opening each shows whether it has one.
      const titles = await stops.locator('> button .title').allInnerTexts();
      let found: string | null = null;
      for (const [i, title] of titles.entries()) {
        if (!(await stops.nth(i).evaluate((e) => e.classList.contains('open')))) await stops.nth(i).locator('> button').click();
        if (await stops.nth(i).locator('.remedies button').count()) {
          found = title;
          await stops.nth(i).locator('.remedies button').first().click();
          break;
        }
      }
      if (found === null || cured > 8) break;
      await settled(page);
      cured++;
      expect(await page.locator('.cured s').allInnerTexts()).toContain(found);
      // A cure may take a second fault away with the first.
      const left = await stops.count();
      expect(left).toBeLessThan(titles.length);
      gone += titles.length - left;
    }
    expect(cured).toBeGreaterThanOrEqual(4);
    expect(await stops.count()).toBe(before - gone);
    for (let i = 0; i < cured; i++) await page.getByRole('button', { name: 'Undo' }).click();
    await settled(page);
    expect(await undoLeft(page)).toBe(false);
    await eventually(() => stops.count()).toBe(before);
  }),
);
