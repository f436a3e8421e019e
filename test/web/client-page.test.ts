/** The client's page in a browser, opened from disk: it draws, turns and comes apart, speaks to nobody, and runs nothing but itself. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openStore } from '../../src/build/store.ts';
import { plainName } from '../../src/exports/names.ts';
import { clientPageOf } from '../../src/piece/files.ts';
import { orderOf } from '../../src/piece/order.ts';
import { loadKernel } from '../../src/solids/kernel.ts';
import { openBrowser } from '../support/browser.ts';
import { builtOf, documentOf, fixtureText, starterText } from '../support/piece.ts';

const viewer = readFileSync(new URL('../../dist/client.js', import.meta.url), 'utf8');
let browser: Browser;
/** Where pictures are taken apart. */
let reader: Page;
let folder = '';
const written = new Map<string, string>();
beforeAll(async () => {
  await loadKernel();
  folder = mkdtempSync(join(tmpdir(), 'page-'));
  browser = await openBrowser();
  reader = await browser.newPage();
});
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true });
});

/** The address of the page of a piece, written once. */
function pageOf(text: string): string {
  const known = written.get(text);
  if (known !== undefined) return known;
  const doc = documentOf(text);
  const store = openStore();
  try {
    const built = builtOf(doc);
    const file = join(folder, `page${written.size}.html`);
    writeFileSync(file, clientPageOf(doc, built, store, orderOf(built, store), viewer));
    const url = pathToFileURL(file).href;
    written.set(text, url);
    return url;
  } finally {
    store.close();
  }
}
type Open = { readonly page: Page; readonly asked: string[]; readonly said: string[] };
/** Opens an address in a context of its own and notes every request, message, dialog and error. */
async function open(url: string, size: { width: number; height: number }, hasTouch = false): Promise<Open> {
  const page = await (await browser.newContext({ viewport: size, hasTouch })).newPage();
  const asked: string[] = [];
  const said: string[] = [];
  page.on('request', (r) => asked.push(r.url()));
  page.on('console', (m) => said.push(`${m.type()}: ${m.text()}`));
  page.on('pageerror', (e) => said.push(e.message));
  page.on('dialog', (d) => {
    said.push(`dialog: ${d.message()}`);
    void d.dismiss();
  });
  await page.goto(url);
  await settled(page);
  return { page, asked, said };
}
/** Two frames: one may have been asked for by the last act, one is drawn. */
const settled = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));
type Look = { readonly colours: number; readonly inked: number; readonly picture: string };
/** What is to be seen on the canvas: how many colours, and which share of it is not the sheet. */
async function look(page: Page): Promise<Look> {
  await settled(page);
  const picture = (await page.locator('canvas').screenshot()).toString('base64');
  const seen = await reader.evaluate(async (png) => {
    const bitmap = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    const paper = canvas.getContext('2d');
    paper?.drawImage(bitmap, 0, 0);
    const data = new Uint32Array(paper?.getImageData(0, 0, bitmap.width, bitmap.height).data.buffer ?? new ArrayBuffer(0));
    const times = new Map<number, number>();
    for (const c of data) times.set(c, (times.get(c) ?? 0) + 1);
    return { colours: times.size, inked: 1 - Math.max(...times.values()) / data.length };
  }, picture);
  return { ...seen, picture };
}
async function drag(page: Page, dx: number, dy: number): Promise<void> {
  const box = await page.locator('canvas').boundingBox();
  if (!box) throw new Error('there is no canvas');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2);
  await page.mouse.move(x + dx, y + dy);
  await page.mouse.up();
}
const SIZES = [
  { width: 390, height: 844 },
  { width: 820, height: 1180 },
  { width: 1440, height: 900 },
];

test.each(SIZES)('at $width by $height it draws the piece, turns by hand and keys, and asks nobody for anything', async (size) => {
  const url = pageOf(starterText('hall-bench'));
  const { page, asked, said } = await open(url, size);
  const first = await look(page);
  expect(first.colours).toBeGreaterThan(200);
  expect(first.inked).toBeGreaterThan(0.05);
  const seen = new Set([first.picture]);
  const turns = [() => drag(page, 120, 30)];
  const more: readonly (() => Promise<unknown>)[] = [
    () => page.locator('canvas').press('ArrowLeft'),
    () => page.locator('canvas').press('+'),
    () => page.mouse.wheel(0, 200),
    () => page.getByRole('button', { name: 'front' }).click(),
    () => page.getByRole('button', { name: 'above' }).click(),
  ];
  // Drawing in software is slow: all the ways of handling it are tried on the smallest sheet only.
  for (const [i, act] of [...turns, ...(size.width === 390 ? more : [])].entries()) {
    await act();
    seen.add((await look(page)).picture);
    expect(seen.size, `act ${i}`).toBe(i + 2);
  }
  if (size.width === 390) expect(await page.getByRole('button', { name: 'above' }).getAttribute('aria-pressed')).toBe('true');
  expect(asked.filter((a) => a !== url && !a.startsWith('data:'))).toEqual([]);
  expect(said).toEqual([]);
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  expect(wide).toBeLessThanOrEqual(0);
  await page.context().close();
});
test('two fingers bring it nearer and one of them may be lost on the way', async () => {
  const { page, said } = await open(pageOf(starterText('hall-bench')), { width: 390, height: 844 }, true);
  const before = await look(page);
  await page.locator('canvas').evaluate((canvas) => {
    const at = (type: string, pointerId: number, clientX: number): void =>
      void canvas.dispatchEvent(
        new PointerEvent(type, { pointerId, clientX, clientY: 300, pointerType: 'touch', isPrimary: pointerId === 1, bubbles: true }),
      );
    at('pointerdown', 1, 180);
    at('pointerdown', 2, 210);
    at('pointermove', 2, 300);
    at('pointercancel', 2, 300);
    at('pointermove', 1, 185);
    at('pointerup', 1, 185);
  });
  expect((await look(page)).picture).not.toBe(before.picture);
  expect(said).toEqual([]);
  expect(await page.locator('canvas').evaluate((c) => getComputedStyle(c).touchAction)).toBe('none');
  expect(await page.evaluate(() => getComputedStyle(document.body).touchAction)).toBe('auto');
  await page.context().close();
});
test('it comes apart and together again by the rule, and says the step', async () => {
  const { page } = await open(pageOf(starterText('hall-bench')), { width: 390, height: 844 });
  const together = await look(page);
  const rule = page.getByRole('slider', { name: 'Apart and together' });
  expect(await rule.getAttribute('aria-valuetext')).toBe('together');
  await rule.press('ArrowLeft');
  expect(await rule.getAttribute('aria-valuetext')).toMatch(/^step \d+ of \d+: .+/);
  await rule.press('Home');
  expect(await rule.getAttribute('aria-valuetext')).toBe('all apart');
  expect((await look(page)).picture).not.toBe(together.picture);
  await rule.press('End');
  expect(await rule.getAttribute('aria-valuetext')).toBe('together');
  await page.context().close();
});
test('the same in words: title, overall size, wood and parts, for who does not see the drawing', async () => {
  const { page } = await open(pageOf(starterText('hall-bench')), { width: 820, height: 1180 });
  expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('Hall bench');
  expect(await page.locator('header').innerText()).toMatch(/1200 mm wide, 340 mm deep, 450 mm high\s+in ash/);
  const parts = await page.getByRole('listitem').allInnerTexts();
  expect(parts).toContain('4 × leg');
  expect(await page.getByRole('application').getAttribute('aria-label')).toContain('Hall bench, ash');
  // No finding, no letter, no size of a part.
  expect(await page.locator('body').innerText()).not.toMatch(/finding|go together|\bA\b/);
  await page.context().close();
});
test('the words stand where nothing can be drawn', async () => {
  const context = await browser.newContext({ javaScriptEnabled: false });
  const page = await context.newPage();
  await page.goto(pageOf(starterText('hall-bench')));
  expect(await page.locator('body').innerText()).toMatch(/Hall bench[^]*in ash[^]*needs JavaScript[^]*4 × leg/);
  await context.close();
});
test('names from a hostile document are shown as they are written, and none of them runs', async () => {
  const text = fixtureText('hostile-names');
  const url = pageOf(text);
  const { page, asked, said } = await open(url, { width: 820, height: 1180 });
  const title = plainName(documentOf(text).title);
  expect(await page.locator('h1').textContent()).toBe(title);
  expect(await page.evaluate(() => document.title.replaceAll(/\s+/g, ' '))).toBe(title.replaceAll(/\s+/g, ' '));
  expect(await page.locator('script').count()).toBe(2);
  expect(await page.locator('img, iframe, b b, i i, [onclick], [onerror]').count()).toBe(0);
  const parts = await page.getByRole('listitem').allTextContents();
  expect(parts).toHaveLength(3);
  expect(parts.some((p) => p.includes('<b>post</b>'))).toBe(true);
  expect(parts.some((p) => p.includes('<!--<script>'))).toBe(true);
  expect((await look(page)).colours).toBeGreaterThan(100);
  expect(asked.filter((a) => a !== url && !a.startsWith('data:'))).toEqual([]);
  expect(said).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
  await page.context().close();
});
test('a script that is not the viewer is not run, whatever gets into the page', async () => {
  const file = join(folder, 'meddled.html');
  const sound = readFileSync(new URL(pageOf(starterText('wall-shelf'))), 'utf8');
  writeFileSync(
    file,
    sound.replace('</body>', `<script>document.title = 'run'</script><img src="x:" onerror="document.title = 'run'"></body>`),
  );
  const { page } = await open(pathToFileURL(file).href, { width: 390, height: 844 });
  expect(await page.title()).toBe('Wall shelf');
  await page.context().close();
});
test('the viewer is one script without React, small enough to send', () => {
  expect(viewer).not.toMatch(/react/i);
  expect(gzipSync(viewer).length).toBeLessThan(250 * 1024);
});
