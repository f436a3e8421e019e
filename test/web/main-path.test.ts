/** The way that a maker goes, in one sitting: a file opened, a size changed and taken back, drawn apart, cured, saved, left and found again. */
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import {
  appTests,
  documentNow,
  drawing,
  eventually,
  opened,
  openPiece,
  openStarter,
  saved,
  settled,
  sickShelf,
  toStart,
  verdict,
} from '../support/app.ts';
import { difference, statistics } from '../support/picture.ts';

const { inApp } = appTests();
const built = new URL('../../dist/app/', import.meta.url);

test(
  'a piece is opened, edited, drawn apart, put right, saved and still there after a reload',
  inApp(async ({ page }) => {
    await openPiece(page, sickShelf(), 'shelf.json');
    expect(await verdict(page)).toBe('It does not go together yet.');
    const sick = await documentNow(page);
    const together = await drawing(page);
    expect(statistics(together).inked).toBeGreaterThan(0.04);

    const title = page.locator('.bar .title');
    await page.locator('#size').fill('65 cm');
    await page.locator('#size').press('Enter');
    await eventually(() => title.innerText()).toContain('650 × 190 × 720 mm');
    await page.getByRole('button', { name: 'Undo' }).click();
    await eventually(() => title.innerText()).toContain('640 × 190 × 720 mm');
    await settled(page);
    expect(await documentNow(page)).toEqual(sick);

    const apart = page.getByRole('slider', { name: 'Apart and together' });
    await apart.press('Home');
    expect(await apart.getAttribute('aria-valuetext')).toMatch(/^all apart/);
    await eventually(async () => difference(await drawing(page), together)).toBeGreaterThan(0.003);
    await apart.press('End');

    await page.getByRole('button', { name: /^Put right: Make the tenon 16 mm long/ }).click();
    await eventually(() => verdict(page)).toBe('It goes together, with one thing to watch.');
    await settled(page);
    expect(await page.locator('.cured s').innerText()).toBe('The blind mortise comes out at the back');
    const well = await documentNow(page);
    expect(well).not.toEqual(sick);

    const file = await saved(page, () => page.getByRole('button', { name: 'Save a file' }).click());
    expect(JSON.parse(file.text)).toEqual(well);
    await eventually(() => page.locator('.bar .kept').innerText()).toContain('saved as wall-shelf.dryfit.json');
    await page.reload();
    await opened(page);
    expect(await documentNow(page)).toEqual(well);
    await toStart(page);
    await openPiece(page, file.text, file.name);
    expect(await documentNow(page)).toEqual(well);
    expect(await verdict(page)).toBe('It goes together, with one thing to watch.');
  }),
);
test(
  'a piece is whole with 450 kB of JavaScript, packed, workers included; what is not needed for it comes later',
  inApp(async ({ page, asked }) => {
    await openStarter(page, 'Wall shelf');
    await page.locator('.strip').first().waitFor();
    const scripts = [...new Set(asked.map((a) => new URL(a).pathname).filter((p) => p.endsWith('.js')))];
    expect(scripts.some((s) => s.includes('piece.worker')) && scripts.some((s) => s.includes('boards.worker'))).toBe(true);
    const packed = scripts.map((s) => [s, gzipSync(readFileSync(new URL(`.${s}`, built))).length] as const);
    expect(
      packed.reduce((sum, [, n]) => sum + n, 0),
      JSON.stringify(packed),
    ).toBeLessThanOrEqual(450_000);
    expect(scripts.filter((s) => /CutList|Order-|files-|client-/.test(s))).toEqual([]);
    await page.keyboard.press('2');
    await page.locator('.bench table').waitFor();
    expect(asked.some((a) => a.includes('CutList'))).toBe(true);
  }),
);
