/** What breaks on the way: the graphics context lost, the worker hung or gone. Nothing of the maker's is lost by it. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { appTests, documentNow, drawing, eventually, openStarter, opened, settled, verdict } from '../support/app.ts';
import { difference, statistics } from '../support/picture.ts';

const { inApp } = appTests();

const undo = (page: Page): ReturnType<Page['locator']> => page.getByRole('button', { name: 'Undo' });
async function give(page: Page, text: string): Promise<void> {
  await page.locator('#size').fill(text);
  await page.locator('#size').press('Enter');
  await settled(page);
}
/** Takes the graphics context away; `loseContext.back()` gives it back. */
const lose = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const gl = document.querySelector<HTMLCanvasElement>('.sheet > canvas')?.getContext('webgl2');
    const lever = gl?.getExtension('WEBGL_lose_context');
    if (!lever) throw new Error('this browser cannot lose a context');
    Object.assign(window, { lever });
    lever.loseContext();
  });
const giveBack = (page: Page): Promise<void> =>
  page.evaluate(() => (window as unknown as { lever: WEBGL_lose_context }).lever.restoreContext());
/** The newest: one that closed itself may still be listed before it. */
const pieceWorker = (page: Page): ReturnType<Page['workers']>[number] => {
  const found = page.workers().findLast((w) => w.url().includes('piece.worker'));
  if (!found) throw new Error('there is no worker for the piece');
  return found;
};
/** Makes the worker run in circles: it never answers again. */
const hang = (page: Page): void =>
  void pieceWorker(page)
    .evaluate(() => {
      for (;;);
    })
    .catch(() => undefined);

test(
  'a lost graphics context comes back with the same picture; the document and what can be undone are untouched',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    await give(page, '700');
    const [before, picture] = [await documentNow(page), await drawing(page)];
    await lose(page);
    const told = page.locator('.drawing-stopped');
    await told.waitFor();
    expect(await told.innerText()).toContain('The drawing stopped. Your piece is safe and kept on this machine.');
    expect(await documentNow(page)).toEqual(before);
    await giveBack(page);
    await told.waitFor({ state: 'detached' });
    await eventually(async () => difference(await drawing(page), picture)).toBeLessThan(0.0005);
    // A second time, an edit on the way, and drawn again by hand.
    await lose(page);
    await told.waitFor();
    await undo(page).click();
    await settled(page);
    await page.getByRole('button', { name: 'Draw again' }).click();
    await told.waitFor({ state: 'detached' });
    await eventually(async () => statistics(await drawing(page)).inked).toBeGreaterThan(0.04);
    expect(await page.locator('.bar .title').innerText()).toContain('640 × 190 × 720 mm');
    await page.getByRole('button', { name: 'Redo' }).click();
    await settled(page);
    expect(await documentNow(page)).toEqual(before);
    await eventually(async () => difference(await drawing(page), picture)).toBeLessThan(0.0005);
  }),
);
test(
  'a worker that hangs is replaced: the last change is set aside and may be tried again, nothing is lost',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const first = await documentNow(page);
    await give(page, '700');
    const second = await documentNow(page);
    hang(page);
    const band = page.getByRole('alert');
    await band.waitFor();
    expect(await band.innerText()).toMatch(/took the tool too long and was set aside/);
    await opened(page);
    expect(await documentNow(page)).toEqual(first);
    await eventually(() => page.locator('.bar .title').innerText()).toContain('640 × 190 × 720 mm');
    await page.getByRole('button', { name: 'Try it again' }).click();
    await opened(page);
    expect(await documentNow(page)).toEqual(second);
    expect(await verdict(page)).toBe('It goes together.');
    await undo(page).click();
    await settled(page);
    expect(await documentNow(page)).toEqual(first);
    expect(statistics(await drawing(page)).inked).toBeGreaterThan(0.04);
  }),
);
test(
  'a worker that keeps failing on the same piece is given up with a word; the piece stays and can be drawn again',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const before = await documentNow(page);
    // The first is gone: it closed itself. The one after it never hears anything, so it never answers either.
    await page.evaluate(() => {
      // oxlint-disable-next-line typescript/unbound-method -- put back as it was
      const hears = Worker.prototype.postMessage;
      Worker.prototype.postMessage = () => undefined;
      Object.assign(window, { heal: () => (Worker.prototype.postMessage = hears) });
    });
    await pieceWorker(page).evaluate(() => self.close());
    await eventually(() => verdict(page)).toBe('The tool stopped. Your piece is safe.');
    expect(await page.locator('.verdict').innerText()).toContain('It is safe and kept on this machine.');
    expect(await documentNow(page)).toEqual(before);
    await page.evaluate(() => (window as unknown as { heal: () => void }).heal());
    await page.locator('.verdict').getByRole('button', { name: 'Draw again' }).click();
    await opened(page);
    await eventually(() => verdict(page)).toBe('It goes together.');
    expect(await documentNow(page)).toEqual(before);
    expect(statistics(await drawing(page)).inked).toBeGreaterThan(0.04);
  }),
);
