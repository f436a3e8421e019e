/** Opening and keeping: starters, files good and bad, what is saved, what is still there after a reload; and what all of it asks for. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { plainName } from '../../src/exports/names.ts';
import {
  appTests,
  documentNow,
  drawing,
  eventually,
  fixture,
  giveFile,
  openPiece,
  openStarter,
  opened,
  saved,
  starter,
  verdict,
} from '../support/app.ts';
import { statistics } from '../support/picture.ts';

const { browser, inApp } = appTests();
let folder = '';
beforeAll(() => void (folder = mkdtempSync(join(tmpdir(), 'opening-'))));
afterAll(() => rmSync(folder, { recursive: true }));

type Entry = { readonly file: string; readonly title: string };
const { starters } = JSON.parse(readFileSync(new URL('../../public/starters/index.json', import.meta.url), 'utf8')) as {
  starters: readonly Entry[];
};

test(
  'the first page offers every starter',
  inApp(async ({ page }) => {
    const offered = page.getByRole('region', { name: 'Starters' }).getByRole('button');
    await eventually(() => offered.locator('b').allInnerTexts()).toEqual(starters.map((s) => s.title));
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe('What will you build?');
  }),
);
test.each(starters)('$title opens with its verdict and is drawn', async ({ file, title }) =>
  inApp(async ({ page }) => {
    await openStarter(page, title);
    expect(await verdict(page)).toMatch(file === 'spoiled-desk.json' ? /^It does not go together yet\.$/ : /^It goes together(\.|, with )/);
    expect(await page.title()).toBe(`${title} · Dryfit`);
    const parts = Object.keys((JSON.parse(starter(file.replace('.json', ''))) as { parts: object }).parts).length;
    const tried = Number(/(\d+) parts and \d+ joints tried/.exec(await page.locator('.verdict').innerText())?.[1]);
    expect(tried).toBeGreaterThanOrEqual(parts);
    const seen = statistics(await drawing(page));
    expect(seen.colours).toBeGreaterThan(300);
    expect(seen.inked).toBeGreaterThan(0.04);
  })(),
);
test(
  'a file is opened, saved, and opened again: the same document',
  inApp(async ({ page }) => {
    const text = fixture('hearth-stool');
    await openPiece(page, text);
    const first = await saved(page, () => page.getByRole('button', { name: 'Save a file' }).click());
    expect(first.name).toBe('hearth-stool.dryfit.json');
    expect(JSON.parse(first.text)).toEqual(JSON.parse(text));
    await eventually(() => page.locator('.bar .kept').innerText()).toBe('saved as hearth-stool.dryfit.json');
    await openStarter(page, 'Wall shelf');
    await openPiece(page, first.text, first.name);
    const again = await saved(page, () => page.keyboard.press('Control+s'));
    expect(again).toEqual(first);
  }),
);
async function dropFile(page: Page, name: string, content: string): Promise<void> {
  const dataTransfer = await page.evaluateHandle(
    ([n, text]) => {
      const carried = new DataTransfer();
      carried.items.add(new File([text], n, { type: 'application/json' }));
      return carried;
    },
    [name, content] as const,
  );
  await page.locator('.app').dispatchEvent('drop', { dataTransfer });
}
test(
  'a file dropped on the page is opened',
  inApp(async ({ page }) => {
    await dropFile(page, 'dropped.json', starter('wall-shelf'));
    await opened(page);
    expect(await page.locator('.bar .title b').innerText()).toBe('Wall shelf');
  }),
);
test(
  'a changed piece is still there after a reload, and on the first page',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    await page.locator('#size').fill('655');
    await page.keyboard.press('Enter');
    await opened(page);
    const before = await documentNow(page);
    expect((before as { sizes: { wide: string } }).sizes.wide).toMatch(/^655\b/);
    await page.reload();
    await opened(page);
    expect(await documentNow(page)).toEqual(before);
    expect(await page.locator('.bar .title').innerText()).toContain('655 ×');
    await page.locator('.bar .mark').click();
    const kept = page.getByRole('region', { name: 'Kept on this machine' });
    expect(await kept.getByRole('button', { name: 'Wall shelf' }).innerText()).toContain('goes together');
  }),
);
test(
  'the page for a client and the cut list are saved as files, and the page opens from disk',
  inApp(async ({ page }) => {
    await openStarter(page, 'Wall shelf');
    const html = await saved(page, () => page.getByRole('button', { name: 'For the client' }).click());
    expect(html.name).toBe('wall-shelf.html');
    expect(html.text).toMatch(/^<!doctype html>/i);
    const file = join(folder, html.name);
    writeFileSync(file, html.text);
    const client = await browser().newPage();
    await client.goto(pathToFileURL(file).href);
    expect(await client.getByRole('heading', { level: 1 }).innerText()).toBe('Wall shelf');
    await client.close();
    await page.keyboard.press('2');
    const csv = await saved(page, () => page.getByRole('button', { name: 'save the cut list' }).click());
    expect(csv.name).toBe('wall-shelf-cut-list.csv');
    expect(csv.text).toContain('walnut');
  }),
);

describe('what cannot be used is told by its name, with the cure, and the piece stays', () => {
  const shelf = starter('wall-shelf');
  const changed = (change: (doc: { [key: string]: never } & Record<string, Record<string, Record<string, unknown>>>) => void): string => {
    const doc = JSON.parse(shelf) as never;
    change(doc);
    return JSON.stringify(doc);
  };
  const rows = (count: number): unknown => ({
    wood: 'oak',
    grain: 'x',
    loose: true,
    left: '0',
    width: '10',
    front: '0',
    depth: '10',
    bottom: '0',
    height: '10',
    copies: [{ row: 'x', count, step: '20' }],
  });
  const bad: readonly (readonly [string, string | Buffer, readonly RegExp[]])[] = [
    ['broken.json', '{ "dryfit": 1, "title": ', [/cannot be read as JSON/]],
    ['empty.json', '', [/cannot be read as JSON/]],
    ['photo.json', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 255, 254]), [/cannot be read as JSON/]],
    ['list.json', '[1, 2, 3]', [/cannot be used; your piece stays as it was/]],
    ['other.json', '{ "hello": "world" }', [/"dryfit": 1/]],
    ['deep.json', `{ "dryfit": 1, "a": ${'['.repeat(100_000)}${']'.repeat(100_000)} }`, [/nested more than 24 deep/]],
    ['key.json', changed((d) => (d['parts']!['side']!['woood'] = 'ash' as never)), [/parts\/side/, /woood/, /wood\b/]],
    ['proto.json', shelf.replace('"sizes": {', '"sizes": { "__proto__": "1",'), [/__proto__/]],
    ['negative.json', changed((d) => (d['sizes']!['thick'] = '-22' as never)), [/side|thick/, /-22|negative|above 0|below/]],
    ['nothing.json', changed((d) => (d['sizes']!['thick'] = '0' as never)), [/side|thick/]],
    ['text.json', changed((d) => (d['sizes']!['thick'] = 'NaN' as never)), [/thick/, /NaN/]],
    [
      'name.json',
      changed((d) => (d['parts']!['shelf']!['left'] = 'sid:left.right' as never)),
      [/sid\b/, /perhaps|did you mean|nearest|side/i],
    ],
    ['circle.json', fixture('circle'), [/circle/, /c\.right/]],
    ['wood.json', changed((d) => (d['parts']!['side']!['grain'] = 'w' as never)), [/parts\/side/, /grain/]],
    ['crowd.json', changed((d) => Object.assign(d['parts']!, { many: rows(5000), more: rows(5000) })), [/5000/, /copies/]],
  ];
  const shown = async (page: Page): Promise<string> => {
    const alert = page.getByRole('alert');
    await alert.waitFor();
    return (await alert.innerText()).replaceAll('\n', ' ');
  };
  const dismiss = async (page: Page): Promise<void> => {
    await page.getByRole('button', { name: 'Understood' }).click();
    await page.getByRole('alert').waitFor({ state: 'detached' });
  };

  test(
    'over a piece',
    inApp(async ({ page }) => {
      await openPiece(page, shelf, 'shelf.json');
      const before = await documentNow(page);
      for (const [name, content, words] of bad) {
        await giveFile(page, name, content);
        const said = await shown(page);
        expect.soft(said, name).toContain(`“${name}”`);
        for (const w of words) expect.soft(said, name).toMatch(w);
        expect.soft(said, name).not.toMatch(/\bat \w+ \(|undefined|\[object/);
        await dismiss(page);
        // The first page was shown to choose the file; the piece is one press away.
        expect(await page.getByRole('button', { name: 'Back to Wall shelf' }).isVisible(), name).toBe(true);
      }
      await page.getByRole('button', { name: 'Back to Wall shelf' }).click();
      await opened(page);
      expect(await documentNow(page)).toEqual(before);
      await dropFile(page, 'dropped.json', '{ "dryfit": 2 }');
      expect(await shown(page)).toMatch(/“dropped.json”/);
      await dismiss(page);
      expect(await documentNow(page)).toEqual(before);
      expect(await verdict(page)).toBe('It goes together.');
    }),
  );
  test(
    'over nothing, and a file of 50 MB is not even read',
    inApp(async ({ page }) => {
      await giveFile(page, 'broken.json', '{');
      expect(await shown(page)).toMatch(/“broken.json”.*JSON/);
      await dismiss(page);
      const huge = join(folder, 'huge.json');
      writeFileSync(huge, Buffer.alloc(50 * 1024 * 1024, 32));
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: 'Open a file' }).click();
      await (await chooser).setFiles(huge);
      expect(await shown(page)).toMatch(/“huge.json” holds 52 MB; a piece is at most 4 MB of text. It was not read\./);
      await dismiss(page);
      await openStarter(page, 'Wall shelf');
      expect(await verdict(page)).toBe('It goes together.');
    }),
  );
});

test(
  'names out of a hostile document are shown as they are written and none of them runs',
  inApp(async ({ page }) => {
    await openPiece(page, fixture('hostile-names'));
    const doc = JSON.parse(fixture('hostile-names')) as { title: string; parts: Record<string, { name: string }> };
    // Shown whole, or with what cannot be shown left out; never as markup.
    const title = await page.locator('.bar .title b').textContent();
    expect([doc.title, plainName(doc.title)].map((t) => t.replaceAll(/\s|\p{C}|\uFFFD/gu, ''))).toContain(
      (title ?? '').replaceAll(/\s|\p{C}|\uFFFD/gu, ''),
    );
    const foreign = page.locator(
      'img, iframe, object, embed, base, meta[http-equiv=refresh], [onclick], [onerror], [onload], a[href^="javascript"]',
    );
    for (const key of ['1', '2', '3']) {
      await page.keyboard.press(key);
      await page.locator(`.bench.page-${['', 'boards', 'list', 'order'][Number(key)]}`).waitFor();
      await opened(page);
      expect(await foreign.count()).toBe(0);
      expect(await page.locator('script:not([src])').count()).toBe(0);
      if (key === '2') {
        await eventually(() => page.locator('.bench tbody th').count()).toBe(3);
        const names = await page.locator('.bench tbody th').allTextContents();
        expect(names.some((n) => n.includes('<b>post</b>'))).toBe(true);
        expect(names.some((n) => n.includes('<!--<script>'))).toBe(true);
        await page.locator('.bench tbody button').first().click();
        await page.locator('section.part').waitFor();
        await page.keyboard.press('Escape');
      }
    }
    expect(await page.title()).toContain('Dryfit');
    expect(await page.title()).not.toContain('gone');
    const out = await saved(page, () => page.getByRole('button', { name: 'Save a file' }).click());
    expect(JSON.parse(out.text)).toEqual(doc);
    expect(out.name).toMatch(/^[\p{L}\p{N}-]+\.dryfit\.json$/u);
    await page.locator('.bar .mark').click();
    await page.getByRole('region', { name: 'Kept on this machine' }).getByRole('button').first().waitFor();
    expect(await foreign.count()).toBe(0);
  }),
);
