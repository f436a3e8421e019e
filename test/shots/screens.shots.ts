/** A picture of every screen at three sizes into .cache/shots/, each looked over for what must not be seen. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import {
  type App,
  appTests,
  drawing,
  eventually,
  fixture,
  framed,
  giveFile,
  openPiece,
  openStarter,
  settled,
  toStart,
  sickShelf,
  verdict,
} from '../support/app.ts';
import { deckOf } from '../support/huge.ts';
import { pageFaults, pageFaultsAsk } from '../support/page-faults.ts';
import { statistics } from '../support/picture.ts';

const out = fileURLToPath(new URL('../../.cache/shots', import.meta.url));
mkdirSync(out, { recursive: true });
const { inApp } = appTests();

type Size = { readonly name: string; readonly width: number; readonly height: number; readonly touch: boolean };
const SIZES: readonly Size[] = [
  { name: '1440x900', width: 1440, height: 900, touch: false },
  { name: '820x1180', width: 820, height: 1180, touch: true },
  { name: '390x844', width: 390, height: 844, touch: true },
];
/** At least this share of the sheet is piece, not paper. */
const INKED = 0.012;

/** Takes the picture and looks the page over; the faults are gathered, so that one run tells all. */
async function shoot(page: Page, size: Size, screen: string): Promise<void> {
  await framed(page);
  const canvas = page.locator('.sheet > canvas');
  if ((await canvas.count()) && (await canvas.isVisible())) {
    const { inked, colours } = statistics(await drawing(page));
    expect
      .soft(inked > INKED && colours > 60, `${size.name} ${screen}: ${(100 * inked).toFixed(1)} % of the canvas in ${colours} colours`)
      .toBe(true);
  }
  await page.screenshot({ path: join(out, `${size.name}-${screen}.png`), fullPage: size.touch });
  const faults = await page.evaluate(pageFaults, pageFaultsAsk(size.touch));
  expect.soft(faults, `${size.name} ${screen}`).toEqual([]);
}
const narrow = (size: Size): boolean => size.width < 600;
/** On a phone a page of the dock, elsewhere a page of the bench. */
async function turnTo(page: Page, size: Size, dock: string, words: string | null): Promise<void> {
  if (narrow(size)) await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: dock }).click();
  if (words !== null) {
    const word = page.getByRole('group', { name: 'Page of the bench' }).getByRole('button', { name: words });
    if (await word.isVisible()) await word.click();
  }
  await framed(page);
}
const apart = (page: Page, key: string): Promise<void> => page.getByRole('slider', { name: 'Apart and together' }).press(key);

/** The list, what a search leaves of it, a joint, and a maker whose piece has many parts. */
async function gallery(page: Page, size: Size, mood: string): Promise<void> {
  const home = page.url();
  await page.goto(`${home}#joints`);
  await page.locator('.cards a').first().waitFor();
  await eventually(() =>
    page
      .locator('.cards img')
      .first()
      .evaluate((i: HTMLImageElement) => i.naturalWidth),
  ).toBeGreaterThan(0);
  await shoot(page, size, `${mood}gallery`);
  await page.getByRole('searchbox', { name: 'Look for' }).fill('tenon');
  await shoot(page, size, `${mood}gallery-search`);
  for (const id of ['dovetail', 'shape-taper', 'maker-drawer']) {
    await page.goto(`${home}#joints/${id}`);
    await page.locator('.entry-told').waitFor();
    if (id !== 'shape-taper')
      await eventually(() => page.getByRole('slider', { name: 'Apart and together' }).getAttribute('aria-valuetext')).toMatch(/^all apart/);
    await eventually(async () => statistics(await drawing(page)).inked).toBeGreaterThan(INKED);
    await shoot(page, size, `${mood}gallery-${id}`);
  }
}

type Tour = { readonly name: string; readonly dark?: true; readonly go: (app: App, size: Size) => Promise<void> };
const TOURS: readonly Tour[] = [
  {
    name: 'clean',
    go: async ({ page }, size) => {
      await page.getByRole('region', { name: 'Starters' }).getByRole('button').first().waitFor();
      await shoot(page, size, 'start');
      await openStarter(page, 'Writing desk');
      await page.locator('.strip').first().waitFor({ state: 'attached' });
      await shoot(page, size, 'piece-clean');
      for (const [dock, words, screen] of [
        ['Boards', 'Boards', 'boards'],
        ['Boards', 'Cut list', 'cut-list'],
        ['Order', 'Order of work', 'order'],
      ] as const) {
        await turnTo(page, size, dock, words);
        await page.locator({ boards: '.strip', 'cut-list': '.bench table', order: '.order li' }[screen]).first().waitFor();
        if (screen !== 'boards' || narrow(size)) await shoot(page, size, screen);
      }
      if (narrow(size)) {
        await turnTo(page, size, 'Sizes', null);
        await shoot(page, size, 'sizes');
        await turnTo(page, size, 'More', null);
        await shoot(page, size, 'more');
        await turnTo(page, size, 'Verdict', null);
      } else {
        await turnTo(page, size, 'Boards', 'Boards');
        await page.getByRole('button', { name: /^Pull the stick up/ }).click();
        await shoot(page, size, 'boards-up');
        await page.getByRole('button', { name: /^Pull the stick down/ }).click();
      }
      await apart(page, 'Home');
      await shoot(page, size, 'apart');
      await apart(page, 'ArrowRight');
      await shoot(page, size, 'apart-step');
      await apart(page, 'End');
      await turnTo(page, size, 'More', null);
      await page.getByRole('button', { name: 'Cut open' }).click();
      await shoot(page, size, 'cut-open');
      await page.getByRole('button', { name: 'Whole again' }).click();
    },
  },
  {
    name: 'findings',
    go: async ({ page }, size) => {
      await openStarter(page, 'Spoiled desk');
      await page
        .locator(narrow(size) ? '.lens.paragraph' : '.lens-place .glass')
        .first()
        .waitFor();
      await shoot(page, size, 'findings');
      await page.locator('.finding.stops > button').nth(3).click();
      await settled(page);
      await eventually(() =>
        page
          .locator('.finding.open .glass')
          .count()
          .then((n) => n + Number(!narrow(size))),
      ).toBeGreaterThan(0);
      await shoot(page, size, 'finding-opened');
      await page.locator('.finding.open').getByRole('button', { name: 'Why' }).click();
      await shoot(page, size, 'finding-why');
      const cure = page.locator('.finding.open .remedies button').first();
      if (await cure.count()) {
        await cure.click();
        await settled(page);
        await page.locator('.cured').first().scrollIntoViewIfNeeded();
        await shoot(page, size, 'cured');
      }
    },
  },
  {
    name: 'part',
    go: async ({ page }, size) => {
      await openStarter(page, 'Writing desk');
      await turnTo(page, size, 'Boards', 'Cut list');
      await page.locator('.bench tbody button').filter({ hasText: /apron/ }).first().click();
      await turnTo(page, size, 'Verdict', null);
      await page.locator('section.part').waitFor();
      await shoot(page, size, 'part');
      await turnTo(page, size, 'More', null);
      await page.getByRole('button', { name: 'Look alone' }).click();
      await framed(page);
      await shoot(page, size, 'alone');
    },
  },
  {
    name: 'troubles',
    go: async ({ page }, size) => {
      await giveFile(page, 'broken.json', '{ "dryfit": 1,');
      await page.getByRole('alert').waitFor();
      await shoot(page, size, 'start-refused');
      await page.getByRole('button', { name: 'Understood' }).click();
      await openPiece(page, sickShelf());
      await shoot(page, size, 'piece-small');
      await page.keyboard.press('?');
      await page.getByRole('region', { name: 'Keys' }).waitFor();
      await shoot(page, size, 'keys');
      await page.keyboard.press('Escape');
      await turnTo(page, size, 'Sizes', null);
      await page.locator('#size').fill('1.1/2');
      await shoot(page, size, 'size-two-readings');
      await page.locator('#size').fill('twelve');
      await page.locator('#size').press('Enter');
      await eventually(() => page.locator('#size').getAttribute('aria-invalid')).toBe('true');
      await shoot(page, size, 'size-wrong');
      await page.locator('#size').press('Escape');
      await turnTo(page, size, 'Verdict', null);
      await toStart(page);
      await page.getByRole('region', { name: 'Kept on this machine' }).getByRole('button').first().waitFor();
      await shoot(page, size, 'start-kept');
      await page.getByRole('button', { name: /^Back to/ }).click();
      await page.locator('.sheet > canvas').waitFor();
      await page.evaluate(() =>
        document
          .querySelector<HTMLCanvasElement>('.sheet > canvas')
          ?.getContext('webgl2')
          ?.getExtension('WEBGL_lose_context')
          ?.loseContext(),
      );
      await page.locator('.drawing-stopped').waitFor();
      await framed(page);
      await page.screenshot({ path: join(out, `${size.name}-drawing-stopped.png`) });
      expect.soft(await page.evaluate(pageFaults, pageFaultsAsk(size.touch)), `${size.name} drawing-stopped`).toEqual([]);
      await openPiece(page, fixture('hostile-names'));
      await shoot(page, size, 'hostile-names');
      await openPiece(page, { dryfit: 1, title: 'Nothing yet', units: 'mm', parts: {} });
      await page.screenshot({ path: join(out, `${size.name}-empty.png`) });
      expect.soft(await page.evaluate(pageFaults, pageFaultsAsk(size.touch)), `${size.name} empty`).toEqual([]);
    },
  },
  {
    name: 'huge',
    go: async ({ page }, size) => {
      await giveFile(page, 'deck.json', deckOf(146));
      await page.locator('.app.piece').waitFor();
      await page.locator('.marks').waitFor({ timeout: 200_000 });
      await page.screenshot({ path: join(out, `${size.name}-huge-busy.png`) });
      await page.locator('.verdict:not(.waiting)').waitFor({ timeout: 240_000 });
      expect(await verdict(page)).toMatch(/^It goes together, with one thing to watch/);
      await page.locator('.strip').first().waitFor({ state: 'attached', timeout: 200_000 });
      await shoot(page, size, 'huge');
      await apart(page, 'Home');
      await shoot(page, size, 'huge-apart');
      await apart(page, 'End');
      await page.locator('.finding > button').first().click();
      await shoot(page, size, 'huge-finding');
    },
  },
  {
    name: 'gallery',
    go: async ({ page }, size) => gallery(page, size, ''),
  },
  {
    name: 'gallery dark',
    go: async ({ page }, size) => gallery(page, size, 'dark-'),
    dark: true,
  },
  {
    name: 'dark',
    go: async ({ page }, size) => {
      await shoot(page, size, 'dark-start');
      await openPiece(page, sickShelf());
      await page
        .locator(narrow(size) ? '.lens.paragraph' : '.lens-place .glass')
        .first()
        .waitFor();
      await shoot(page, size, 'dark-findings');
      await apart(page, 'Home');
      await shoot(page, size, 'dark-apart');
      await apart(page, 'End');
      await openStarter(page, 'Hall bench');
      await page.locator('.strip').first().waitFor({ state: 'attached' });
      await shoot(page, size, 'dark-clean');
    },
    dark: true,
  },
];

describe.each(SIZES)('$name', (size) => {
  test.each(TOURS)('$name', { timeout: 600_000 }, ({ go, dark }) =>
    inApp((app) => go(app, size), {
      viewport: { width: size.width, height: size.height },
      hasTouch: size.touch,
      deviceScaleFactor: size.touch ? 2 : 1,
      colorScheme: dark ? 'dark' : 'light',
    })(),
  );
});
