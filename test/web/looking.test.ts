/** Looking at the piece: turned, apart, alone, cut open; parts chosen on the sheet, on the boards and in the lists; every key. */
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { appTests, documentNow, drawing, eventually, openPiece, openStarter, settled, sickShelf } from '../support/app.ts';
import { type Picture, difference, statistics } from '../support/picture.ts';

const { inApp } = appTests();

const apart = (page: Page): Locator => page.getByRole('slider', { name: 'Apart and together' });
const words = async (slider: Locator): Promise<string> => (await slider.getAttribute('aria-valuetext')) ?? '';
const canvas = (page: Page): Locator => page.locator('.sheet > canvas');
const named = (page: Page): Promise<string[]> => page.locator('.marks .name .words').allTextContents();
/** The drawing comes to be as it was, but for what rounding does to single pixels. */
const sameAs = async (page: Page, picture: Picture): Promise<void> => {
  await eventually(async () => difference(await drawing(page), picture)).toBeLessThan(0.0005);
};
const otherThan = async (page: Page, picture: Picture): Promise<Picture> => {
  await eventually(async () => difference(await drawing(page), picture)).toBeGreaterThan(0.003);
  return drawing(page);
};
/** Where on the sheet the mouse points at each part, found by going over the sheet row by row. */
async function partsOnSheet(page: Page): Promise<Map<string, { x: number; y: number }>> {
  const box = await canvas(page).boundingBox();
  if (!box) throw new Error('there is no sheet');
  const found = new Map<string, { x: number; y: number }>();
  for (let y = 0.16; y < 0.8; y += 0.025)
    for (const x of [0.37, 0.41, 0.46, 0.5, 0.54, 0.58, 0.62]) {
      const at = { x: box.x + x * box.width, y: box.y + y * box.height };
      await page.mouse.move(at.x, at.y);
      for (const name of await named(page)) if (!found.has(name)) found.set(name, at);
    }
  return found;
}

test(
  'drawn apart step by step and together again, by the slider and by , and .',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const together = await drawing(page);
    expect(await words(apart(page))).toMatch(/^together, \d+ steps/);
    await apart(page).press('Home');
    expect(await words(apart(page))).toMatch(/^all apart, \d+ steps to go$/);
    const spread = await otherThan(page, together);
    expect(statistics(spread).inked).toBeGreaterThan(0.02);
    // Each kind of part has its letter beside it: rail, shelf, and the two sides, which are mirror images.
    await eventually(() => page.locator('.balloon').count()).toBe(4);
    await apart(page).press('ArrowRight');
    expect(await words(apart(page))).toMatch(/^step 1: .+/);
    await otherThan(page, spread);
    await apart(page).press('End');
    expect(await words(apart(page))).toMatch(/^together/);
    await sameAs(page, together);
    await canvas(page).focus();
    await page.keyboard.press(',');
    expect(await words(apart(page))).toMatch(/^step \d+: .+/);
    await page.keyboard.press('.');
    expect(await words(apart(page))).toMatch(/^together/);
    const box = await page.locator('.rule .track').boundingBox();
    if (!box) throw new Error('there is no rule');
    await page.mouse.click(box.x + box.width * 0.4, box.y + box.height / 2);
    expect(await words(apart(page))).toMatch(/^step \d+: .+/);
    await page.keyboard.press('Escape');
    await sameAs(page, together);
  }),
);
test(
  'a part is pointed at, chosen, looked at alone and let go on the sheet itself',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const whole = await drawing(page);
    const parts = await partsOnSheet(page);
    expect([...parts.keys()]).toEqual(expect.arrayContaining(['left side', 'low shelf', 'middle shelf', 'high shelf', 'hanging rail']));
    const shelf = parts.get('middle shelf') ?? { x: 0, y: 0 };
    await page.mouse.click(shelf.x, shelf.y);
    const panel = page.locator('section.part');
    expect(await panel.getAttribute('aria-label')).toBe('middle shelf');
    // 640 less two sides of 22, and 6 into the housing at either end; 190 less 18; 18.
    const said = (await panel.innerText()).replaceAll(/\s+/g, ' ');
    expect(said).toMatch(/length 608 mm width 172 mm thickness 18 mm wood walnut like it 3 in all/);
    expect(said).toContain('left side');
    await otherThan(page, whole);
    const boxes = page.locator('.placement.on');
    await eventually(() => boxes.count()).toBe(1);
    const alone = page.getByRole('button', { name: 'Look alone' });
    await alone.click();
    const single = await otherThan(page, whole);
    expect(statistics(single).inked).toBeGreaterThan(0.01);
    // Nothing else can be met while it is alone.
    expect([...(await partsOnSheet(page)).keys()]).toEqual(['middle shelf']);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
    expect(await panel.count()).toBe(0);
    expect(await alone.isDisabled()).toBe(true);
    await page.mouse.move(5, 5);
    await sameAs(page, whole);
    await page.mouse.click(shelf.x, shelf.y);
    await panel.waitFor();
    const box = await canvas(page).boundingBox();
    await page.mouse.click((box?.x ?? 0) + 12, (box?.y ?? 0) + 0.5 * (box?.height ?? 0));
    expect(await panel.count()).toBe(0);
  }),
);
test(
  'cut open along each axis and whole again',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const whole = await drawing(page);
    await page.getByRole('button', { name: 'Cut open' }).click();
    let last = await otherThan(page, whole);
    for (const way of ['front–back', 'bottom–top']) {
      await page.getByRole('button', { name: way }).click();
      last = await otherThan(page, last);
    }
    const rule = page.getByRole('slider', { name: 'Cut' });
    await rule.press('ArrowLeft');
    await otherThan(page, last);
    await page.getByRole('button', { name: 'Whole again' }).click();
    expect(await rule.count()).toBe(0);
    await sameAs(page, whole);
  }),
);
test(
  'seen from the front, the side, above and freely; turned, moved and brought nearer by hand and by keys',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const first = await drawing(page);
    const box = await canvas(page).boundingBox();
    const [x, y] = [(box?.x ?? 0) + (box?.width ?? 0) / 2, (box?.y ?? 0) + (box?.height ?? 0) / 2];
    const drag = async (dx: number, dy: number): Promise<void> => {
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + dx / 2, y + dy / 2);
      await page.mouse.move(x + dx, y + dy);
      await page.mouse.up();
    };
    const see = (name: string) => (): Promise<void> => page.getByRole('group', { name: 'Seen' }).getByRole('button', { name }).click();
    let last = first;
    for (const act of [
      see('front'),
      see('side'),
      see('above'),
      see('freely'),
      () => drag(140, 20),
      () => page.mouse.wheel(0, -300),
      () => canvas(page).press('ArrowLeft'),
      () => canvas(page).press('Shift+ArrowRight'),
      () => canvas(page).press('+'),
    ])
      await act().then(async () => (last = await otherThan(page, last)));
    await page.getByRole('button', { name: 'As at first' }).click();
    await page.mouse.move(5, 5);
    await sameAs(page, first);
    // Choosing is not turning: the drags above have chosen nothing.
    expect(await page.locator('section.part').count()).toBe(0);
  }),
);
test(
  'two fingers bring it nearer, one of them may be lost on the way, and only the sheet keeps the page from scrolling',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const before = await drawing(page);
    await canvas(page).evaluate((c) => {
      const at = (type: string, pointerId: number, clientX: number): void =>
        void c.dispatchEvent(
          new PointerEvent(type, { pointerId, clientX, clientY: 300, pointerType: 'touch', isPrimary: pointerId === 1, bubbles: true }),
        );
      at('pointerdown', 1, 700);
      at('pointerdown', 2, 760);
      at('pointermove', 2, 860);
      at('pointercancel', 2, 860);
      at('pointermove', 1, 705);
      at('pointerup', 1, 705);
    });
    await otherThan(page, before);
    expect(await page.locator('section.part').count()).toBe(0);
    expect(await canvas(page).evaluate((c) => getComputedStyle(c).touchAction)).toBe('none');
    expect(await page.evaluate(() => getComputedStyle(document.body).touchAction)).toBe('auto');
  }),
);
test(
  'board, sheet and list mark the same part, by mouse and by keyboard',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const whole = await drawing(page);
    const placements = page.locator('.boards .placement');
    await placements.first().waitFor();
    const labels = await placements.evaluateAll((all) => all.map((p) => p.getAttribute('aria-label') ?? ''));
    // Three shelves, two sides and the rail: each lies on a board once.
    expect(labels.map((l) => l.replace(/^[A-Z]+, /, '')).sort()).toEqual(
      ['hanging rail', 'shelf', 'shelf', 'shelf', 'side', 'side'].sort(),
    );
    const rail = page.getByRole('button', { name: /, hanging rail$/ });
    await rail.hover();
    await eventually(() => named(page)).toEqual(['hanging rail']);
    await eventually(() => page.locator('.placement.on').count()).toBe(1);
    await page.mouse.move(5, 5);
    await eventually(() => named(page)).toEqual([]);
    await rail.focus();
    await eventually(() => named(page)).toEqual(['hanging rail']);
    await page.keyboard.press('Enter');
    expect(await page.locator('section.part').getAttribute('aria-label')).toBe('hanging rail');
    await otherThan(page, whole);
    await page.getByRole('button', { name: 'whole piece' }).click();
    await rail.click();
    expect(await page.locator('section.part').getAttribute('aria-label')).toBe('hanging rail');
    expect(await page.locator('section.part').innerText()).toMatch(/number \d/);
    const sum = await page.locator('.bench .sum').innerText();
    expect(sum).toMatch(/\d boards?, \d+ % becomes parts · (fewer is impossible, proved|at most \d+ boards? could be saved)/);
    await page.getByRole('button', { name: 'Cut list' }).click();
    const row = page.locator('.bench tbody tr').filter({ hasText: 'hanging rail' });
    expect(await row.getAttribute('class')).toBe('on');
    // 640 less two sides of 22, and a tenon of 15 at either end.
    const cells = (await row.locator('td').allInnerTexts()).map((c) => c.replaceAll(/\s+/g, ''));
    expect(cells.slice(1, 6)).toEqual(['1', 'walnut', '626', '60', '18']);
    await page.locator('.bench tbody button').filter({ hasText: 'side' }).first().click();
    expect(await page.locator('section.part').getAttribute('aria-label')).toMatch(/side$/);
    expect(await page.locator('.bench tbody tr').count()).toBe(4);
  }),
);
test(
  'the order of work is a list of steps; a step is shown on the sheet',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const together = await drawing(page);
    await page.getByRole('button', { name: 'Order of work' }).click();
    const steps = page.locator('.order li button');
    await steps.first().waitFor();
    const n = await steps.count();
    expect(n).toBeGreaterThanOrEqual(2);
    expect(await words(apart(page))).toContain(`${n} steps`);
    await steps.first().click();
    expect(await words(apart(page))).toMatch(/^step 1: /);
    expect(await steps.first().getAttribute('aria-current')).toBe('step');
    const said = (await words(apart(page))).replace(/^step 1: /, '').toLowerCase();
    expect((await steps.first().innerText()).toLowerCase()).toContain(said);
    await otherThan(page, together);
  }),
);
test(
  'the stick is pulled up for more boards and down for more piece',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const height = async (selector: string): Promise<number> => (await page.locator(selector).boundingBox())?.height ?? 0;
    const [sheet, bench] = [await height('.sheet'), await height('.bench')];
    await page.getByRole('button', { name: /^Pull the stick up/ }).click();
    await eventually(() => height('.bench')).toBeGreaterThan(bench + 100);
    await settled(page);
    expect(statistics(await drawing(page)).inked).toBeGreaterThan(0.02);
    await page.getByRole('button', { name: /^Pull the stick down/ }).click();
    await eventually(() => height('.sheet')).toBe(sheet);
  }),
);
test(
  'every key of the list that ? shows does what it says',
  inApp(async ({ page }) => {
    await openPiece(page, sickShelf());
    const before = await documentNow(page);
    const active = (selector: string): Promise<boolean> => page.evaluate((s) => document.activeElement?.matches(s) ?? false, selector);
    const press = (key: string): Promise<void> => page.keyboard.press(key);
    await press('?');
    const list = page.getByRole('region', { name: 'Keys' });
    expect(await list.locator('dt').allInnerTexts()).toEqual(
      expect.arrayContaining(['?', '1', '2', '3', 'V', 'S', 'B', 'P', '[', ']', ',', '.', 'C', 'L', 'F', 'R', 'D', 'A', 'Esc']),
    );
    await press('Escape');
    expect(await list.count()).toBe(0);
    for (const [key, page_] of [
      ['2', 'list'],
      ['3', 'order'],
      ['1', 'boards'],
    ] as const) {
      await press(key);
      await page.locator(`.bench.page-${page_}`).waitFor();
    }
    await press('v');
    expect(await active('.finding > button')).toBe(true);
    await press('b');
    expect(await active('.bench button')).toBe(true);
    await press('p');
    expect(await active('.sheet canvas')).toBe(true);
    await press('s');
    expect(await active('#size')).toBe(true);
    // In the field, letters are text.
    await press('Control+a');
    await page.keyboard.type('c');
    expect(await page.locator('#size').inputValue()).toBe('c');
    await press('Escape');
    expect(await active('#size')).toBe(false);
    const open = page.locator('.finding.open .title');
    const first = await open.innerText();
    await press(']');
    expect(await open.innerText()).not.toBe(first);
    await press('[');
    expect(await open.innerText()).toBe(first);
    for (const [key, word] of [
      ['r', 'front'],
      ['d', 'side'],
      ['a', 'above'],
      ['f', 'freely'],
    ] as const) {
      await press(key);
      expect(await page.getByRole('group', { name: 'Seen' }).locator('[aria-pressed=true]').innerText()).toBe(word);
    }
    await press('c');
    expect(await page.getByRole('button', { name: 'Whole again' }).isVisible()).toBe(true);
    await press('c');
    expect(await page.getByRole('button', { name: 'Cut open' }).isVisible()).toBe(true);
    await page.locator('.bench .placement').first().focus();
    await press('Enter');
    await press('l');
    expect(await page.getByRole('button', { name: 'Show the rest' }).first().isVisible()).toBe(true);
    await press('Escape');
    await press('Escape');
    expect(await page.locator('section.part').count()).toBe(0);
    expect(await documentNow(page)).toEqual(before);
  }),
);
