/** What goes on for long: many edits, many openings, a tablet turned again and again. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { appTests, drawing, eventually, framed, liveGraphics, openStarter, settled } from '../support/app.ts';
import { difference } from '../support/picture.ts';

const { inApp } = appTests();

async function give(page: Page, text: string): Promise<void> {
  await page.locator('#size').fill(text);
  await page.locator('#size').press('Enter');
  await settled(page);
}
test(
  'forty edits leave as much on the graphics card as four do',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const edit = async (from: number, to: number): Promise<void> => {
      for (let i = from; i < to; i++) await give(page, String(600 + 5 * i));
    };
    await edit(0, 4);
    const few = await liveGraphics(page);
    expect(few.buffers).toBeGreaterThan(10);
    await edit(4, 44);
    await framed(page);
    expect(await liveGraphics(page)).toEqual(few);
    expect(await page.locator('.bar .title').innerText()).toContain('815 × 190 × 720 mm');
  }),
);
test(
  'the piece is left and come back to more often than a browser has contexts, and is still drawn',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const picture = await drawing(page);
    for (let i = 0; i < 18; i++) {
      await page.locator('.bar .mark').click();
      await page.getByRole('button', { name: 'Back to Wall shelf' }).click();
      await page.locator('.sheet > canvas').waitFor();
      await framed(page);
    }
    await eventually(async () => difference(await drawing(page), picture)).toBeLessThan(0.0005);
  }),
);
test(
  'a tablet is turned twenty times and the drawing is as before',
  inApp(
    async ({ page }) => {
      await openStarter(page, 'Wall shelf');
      const picture = await drawing(page);
      for (let i = 0; i < 20; i++) {
        await page.setViewportSize(i % 2 ? { width: 820, height: 1180 } : { width: 1180, height: 820 });
        await framed(page);
      }
      await eventually(async () => difference(await drawing(page), picture)).toBeLessThan(0.0005);
      expect(await page.locator('.drawing-stopped').count()).toBe(0);
    },
    { viewport: { width: 820, height: 1180 }, hasTouch: true },
  ),
);
