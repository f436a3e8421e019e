/** The gallery as a maker meets it: every page is listed and drawn, one is found, turned, drawn apart and taken; the own piece is safe. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Listed } from '../../src/papers/page.ts';
import { galleryEntries } from '../../src/piece/gallery.ts';
import { type App, appTests, documentNow, drawing, eventually, opened, openPiece, settled, starter, toStart } from '../support/app.ts';
import { difference, statistics } from '../support/picture.ts';

const { inApp } = appTests();
const built = (name: string): string => readFileSync(new URL(`../../dist/app/gallery/${name}`, import.meta.url), 'utf8');
const entries = galleryEntries();

/** A page's example is on the sheet and its order is known: it stands drawn apart. */
async function shown({ page }: App, title: string): Promise<void> {
  await page.getByRole('heading', { level: 1, name: title, exact: true }).waitFor();
  await eventually(() => page.getByRole('slider', { name: 'Apart and together' }).getAttribute('aria-valuetext')).toMatch(/^all apart/);
}

test('every joint, shape and maker has its files, and what they say is listed', () => {
  const { pages } = JSON.parse(built('index.json')) as { pages: Listed[] };
  expect(pages.map((p) => p.id)).toEqual(entries.map((e) => e.id));
  const list = built('index.html');
  for (const e of entries) {
    expect(list, e.id).toContain(`href="${e.id}.html"`);
    expect(built(`${e.id}.html`), e.id).not.toMatch(/<script|https?:\/\/|\{mm:|undefined/);
    for (const name of [`${e.id}.svg`, `${e.id}-1.svg`, `${e.id}-1-apart.svg`])
      expect(built(name), name).toMatch(/^<svg [^]*<path [^]*<\/svg>\n$/);
  }
});
test(
  'a joint is found, turned, drawn together, and taken as a piece of its own',
  inApp(async (app) => {
    const { page, asked } = app;
    await openPiece(page, starter('wall-shelf'), 'shelf.json');
    const own = await documentNow(page);
    expect(asked.filter((a) => /gallery/i.test(a))).toEqual([]);
    await toStart(page);
    await page.getByRole('link', { name: /^Joints, shapes and makers/ }).click();
    const cards = page.locator('.cards a');
    await eventually(() => cards.count()).toBe(entries.length);
    await page.getByRole('searchbox', { name: 'Look for' }).fill('housing shelf');
    await eventually(() => page.getByRole('status').innerText()).toMatch(new RegExp(`^[1-9]\\d? of ${entries.length}$`));
    await page.getByRole('searchbox', { name: 'Look for' }).fill('no such words');
    await eventually(() => cards.count()).toBe(0);
    await page.getByRole('searchbox', { name: 'Look for' }).fill('end of a shelf');
    await page.getByRole('link', { name: /^Housing/ }).click();
    await shown(app, 'Housing');

    const apart = await drawing(page);
    expect(statistics(apart).inked).toBeGreaterThan(0.03);
    await page.locator('.sheet > canvas').press('ArrowRight');
    const turned = await drawing(page);
    expect(difference(turned, apart)).toBeGreaterThan(0.01);
    await page.getByRole('slider', { name: 'Apart and together' }).press('End');
    await eventually(async () => difference(await drawing(page), turned)).toBeGreaterThan(0.01);
    await page.getByRole('button', { name: /^Stopped housing/ }).click();
    await shown(app, 'Housing');
    const bench = page.getByRole('region', { name: 'At the bench' });
    expect(await bench.innerText()).toMatch(/Chop the stopped end first/);
    await bench.getByRole('button', { name: 'by machine' }).click();
    expect(await bench.innerText()).toMatch(/Unplug it to change the bit/);

    // Nothing of the example was kept, and the own piece comes back as it was.
    await page.getByRole('button', { name: 'Back to Wall shelf' }).click();
    await opened(page);
    expect(await documentNow(page)).toEqual(own);
    expect(new URL(page.url()).hash).toBe('');
    await page.goBack();
    await shown(app, 'Housing');
    await page.getByRole('button', { name: 'Take it as a new piece' }).click();
    await opened(page);
    expect(await documentNow(page)).toMatchObject({ title: 'Shelf in a side', joints: { shelf_end: { as: 'housing@1' } } });
    await page.reload();
    await opened(page);
    expect(await documentNow(page)).toMatchObject({ title: 'Shelf in a side' });
    await toStart(page);
    const kept = page.getByRole('region', { name: 'Kept on this machine' });
    await eventually(() => kept.locator('b').allInnerTexts()).toEqual(['Shelf in a side', 'Wall shelf']);
  }),
);
test(
  'an address leads to a page, back leads out of it, and a part of a piece leads to its joint',
  inApp(
    async (app) => {
      const { page } = app;
      const home = page.url();
      await page.goto(`${home}#joints/dovetail`);
      await shown(app, 'Dovetail');
      await page.getByRole('link', { name: 'All joints, shapes and makers' }).click();
      await page.locator('.cards a').first().waitFor();
      await page.goBack();
      await shown(app, 'Dovetail');
      await page.goto(`${home}#joints/no-such-joint`);
      await page.getByRole('heading', { name: 'There is no such page.' }).waitFor();
      await page.locator('.bar .mark').click();
      await openPiece(page, starter('wall-shelf'), 'shelf.json');
      await page.keyboard.press('2');
      await page.locator('.bench tbody button').filter({ hasText: /shelf/ }).first().click();
      await page.locator('section.part').getByRole('link', { name: 'Housing' }).first().click();
      await shown(app, 'Housing');
      await page.getByRole('button', { name: 'Back to Wall shelf' }).click();
      await settled(page);
      expect(await page.locator('section.part').isVisible()).toBe(true);
    },
    undefined,
    /404/,
  ),
);
