/** The looker-over of pages finds each kind of fault that is planted, and nothing on a page without one. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openBrowser } from '../support/browser.ts';
import { pageFaults, pageFaultsAsk } from '../support/page-faults.ts';
import { readPng, statistics } from '../support/picture.ts';

let browser: Browser;
let page: Page;
beforeAll(async () => {
  browser = await openBrowser();
  page = await browser.newPage({ viewport: { width: 400, height: 600 } });
});
afterAll(() => browser?.close());
const faultsOf = async (html: string): Promise<string[]> => {
  await page.setContent(`<body style="margin: 20px; font: 16px/24px sans-serif">${html}`);
  return page.evaluate(pageFaults, pageFaultsAsk(true));
};
const big = 'min-width: 44px; min-height: 44px';

test.each([
  ['clipped', '<div style="width: 60px; overflow: hidden; white-space: nowrap">a long line of words</div>'],
  ['cut away', '<div style="height: 10px; overflow: hidden"><p style="margin: 30px 0 0">below the edge</p></div>'],
  ['outside the page', '<p style="position: absolute; left: -30px; top: 0">half of it is gone</p>'],
  ['text on text', '<p>one line</p><p style="margin-top: -36px">and another</p>'],
  ['the page is', '<p style="width: 600px; white-space: nowrap">wide</p>'],
  ['runs out sideways', '<div style="width: 200px; overflow: auto"><p style="width: 300px">moved sideways</p></div>'],
  ['controls on each other', `<button style="${big}">one</button><button style="${big}; margin-left: -20px">two</button>`],
  ['covered', `<button style="${big}">under</button><div style="position: fixed; inset: 0; background: #fff"></div>`],
  ['too small for a finger', '<button style="width: 30px; height: 30px; padding: 0">go</button>'],
])('%s', async (kind, html) => {
  // What covers must itself be no part of what stays when the page is scrolled.
  const faults = await faultsOf(html.replace('position: fixed', 'position: absolute'));
  expect(
    faults.some((f) => f.startsWith(kind)),
    faults.join('\n'),
  ).toBe(true);
});
test('a sound page has none, words meant to be shortened and words for screen readers included', async () => {
  const sound = `
    <h1>All is well</h1>
    <p style="width: 80px; overflow: hidden; text-overflow: ellipsis; white-space: nowrap">shortened with three dots</p>
    <p class="hidden" style="position: absolute; width: 1px; height: 1px; overflow: hidden">only heard</p>
    <button style="${big}">one</button> <button style="${big}">two</button>`;
  expect(await faultsOf(sound)).toEqual([]);
});
test('a blank picture is told from one with something on it', async () => {
  await page.setContent(
    '<body style="margin: 0; background: #fff"><div style="width: 200px; height: 150px; background: linear-gradient(90deg, #a00, #00a)"></div>',
  );
  const half = statistics(readPng(await page.screenshot({ clip: { x: 0, y: 0, width: 400, height: 150 } })));
  expect(half.inked).toBeCloseTo(0.5, 2);
  expect(half.colours).toBeGreaterThan(50);
  expect(statistics(readPng(await page.screenshot({ clip: { x: 0, y: 200, width: 400, height: 150 } })))).toEqual({ colours: 1, inked: 0 });
});
