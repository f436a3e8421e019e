/** The built app in a page of its own: opened, listened to, driven as a maker would. */
import { readFileSync } from 'node:fs';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { openBrowser } from './browser.ts';
import { type Picture, readPng } from './picture.ts';
import { serveApp } from './serve.ts';

/** Software drawing on two busy cores: states are waited for generously and polled. */
const PATIENCE = 60_000;

export type App = {
  readonly page: Page;
  /** Address of every request of the page and its workers. */
  readonly asked: string[];
  /** Messages of warnings and errors, uncaught errors, dialogs, breaches of the content policy. */
  readonly said: string[];
  readonly close: () => Promise<void>;
};
type Options = Pick<BrowserContextOptions, 'viewport' | 'hasTouch' | 'colorScheme' | 'deviceScaleFactor'>;

/**
 * For the whole file one browser and one server. `inApp` opens the app, acts, and demands that meanwhile nothing was asked of
 * another host and nothing was complained of, but for what `but` allows.
 */
export function appTests(): {
  readonly browser: () => Browser;
  readonly inApp: (act: (app: App) => Promise<void>, options?: Options, but?: RegExp) => () => Promise<void>;
} {
  let browser: Browser;
  let served: { url: string; close: () => Promise<void> };
  beforeAll(async () => {
    served = await serveApp();
    browser = await openBrowser();
  });
  afterAll(async () => {
    await browser?.close();
    await served?.close();
  });
  return {
    browser: () => browser,
    inApp: (act, options, but) => async () => {
      const app = await openApp(browser, served.url, options);
      try {
        await act(app);
        expect(app.said.filter((s) => !but?.test(s))).toEqual([]);
        expect(app.asked.filter((a) => !a.startsWith(served.url) && !/^(data|blob):/.test(a))).toEqual([]);
      } finally {
        await app.close();
      }
    },
  };
}
/** A fresh context: nothing is kept on this machine yet. */
async function openApp(browser: Browser, url: string, options: Options = {}): Promise<App> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    reducedMotion: 'reduce',
    locale: 'en-GB',
    timezoneId: 'UTC',
    ...options,
  });
  context.setDefaultTimeout(PATIENCE);
  const page = await context.newPage();
  const asked: string[] = [];
  const said: string[] = [];
  context.on('request', (r) => asked.push(r.url()));
  page.on('console', (m) => m.type() !== 'log' && m.type() !== 'info' && m.type() !== 'debug' && said.push(`${m.type()}: ${m.text()}`));
  page.on('pageerror', (e) => said.push(`uncaught: ${e.message}`));
  page.on('crash', () => said.push('the page crashed'));
  page.on('dialog', (d) => {
    said.push(`dialog: ${d.message()}`);
    void d.dismiss();
  });
  await page.addInitScript(watchPage);
  await page.goto(url);
  return { page, asked, said, close: () => context.close() };
}

/** Runs in the page before its own scripts: tells breaches of the policy, saves by download, counts what lives on the graphics card. */
function watchPage(): void {
  addEventListener('securitypolicyviolation', (e) => console.error(`policy: ${e.violatedDirective} ${e.blockedURI}`));
  // The system's own dialog cannot be driven; without it the app saves by download.
  Reflect.deleteProperty(window, 'showSaveFilePicker');
  // Of the newest context: what an older one made went with it.
  const live = { buffers: new Set<unknown>(), textures: new Set<unknown>(), programs: new Set<unknown>() };
  let newest: RenderingContext | null = null;
  Object.assign(window, { liveGraphics: live });
  const gl = WebGL2RenderingContext.prototype;
  const count = (
    made: 'createBuffer' | 'createTexture' | 'createProgram',
    gone: 'deleteBuffer' | 'deleteTexture' | 'deleteProgram',
    set: Set<unknown>,
  ): void => {
    const [make, drop] = [gl[made], gl[gone] as (thing: unknown) => void];
    gl[made] = function (this: WebGL2RenderingContext) {
      const thing = make.call(this);
      if (this === newest) set.add(thing);
      return thing;
    } as never;
    gl[gone] = function (this: WebGL2RenderingContext, thing: unknown) {
      set.delete(thing);
      drop.call(this, thing);
    } as never;
  };
  count('createBuffer', 'deleteBuffer', live.buffers);
  count('createTexture', 'deleteTexture', live.textures);
  count('createProgram', 'deleteProgram', live.programs);
  // oxlint-disable-next-line typescript/unbound-method -- called on each canvas below
  const getContext = HTMLCanvasElement.prototype.getContext as (
    this: HTMLCanvasElement,
    kind: string,
    ...more: unknown[]
  ) => RenderingContext | null;
  HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, kind: string, ...more: unknown[]) {
    const context = getContext.call(this, kind, ...more);
    if (context instanceof WebGL2RenderingContext && context !== newest) {
      newest = context;
      for (const set of Object.values(live)) set.clear();
    }
    return context;
  } as never;
}
export type LiveGraphics = { buffers: number; textures: number; programs: number };
/** What the page holds on the graphics card now. */
export const liveGraphics = (page: Page): Promise<LiveGraphics> =>
  page.evaluate(() => {
    const live = (window as unknown as { liveGraphics: Record<keyof LiveGraphics, Set<unknown>> }).liveGraphics;
    return { buffers: live.buffers.size, textures: live.textures.size, programs: live.programs.size };
  });

export const verdict = (page: Page): Promise<string> => page.locator('.verdict h1').innerText();
/** All answers about the newest change are there. */
export async function settled(page: Page): Promise<void> {
  await page.locator('.verdict:not(.waiting)').waitFor();
  await framed(page);
}
/** Two frames: one may have been asked for by the last act, one is drawn. */
export const framed = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))));

/** To the first page; on a phone the way there stands under More. */
export async function toStart(page: Page): Promise<void> {
  if (await page.locator('.app.start').isVisible()) return;
  const mark = page.locator('.bar .mark');
  if (await mark.isVisible()) return mark.click();
  await page.getByRole('navigation', { name: 'Pages' }).getByRole('button', { name: 'More' }).click();
  await page.getByRole('button', { name: 'Open', exact: true }).click();
}
export async function openStarter(page: Page, title: string): Promise<void> {
  await toStart(page);
  await page
    .getByRole('region', { name: 'Starters' })
    .getByRole('button', { name: new RegExp(`^${title}`) })
    .click();
  await opened(page);
}
/** A piece is on the sheet and all is said about it. */
export async function opened(page: Page): Promise<void> {
  await page.locator('.app.piece').waitFor();
  await settled(page);
}
/** Hands a file to the app as from the system's own dialog. Does not wait for what comes of it. */
export async function giveFile(page: Page, name: string, content: string | Buffer): Promise<void> {
  await toStart(page);
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a file' }).click();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content) });
}
export async function openPiece(page: Page, json: unknown, name = 'piece.json'): Promise<void> {
  await giveFile(page, name, typeof json === 'string' ? json : JSON.stringify(json));
  await opened(page);
}
export const fixture = (name: string): string => readFileSync(new URL(`../fixtures/${name}.json`, import.meta.url), 'utf8');
export const starter = (name: string): string => readFileSync(new URL(`../../public/starters/${name}.json`, import.meta.url), 'utf8');

/** The drawing without the words and marks that lie over it, at rest. */
export async function drawing(page: Page): Promise<Picture> {
  // A slow machine draws half as fine while something moves: the fine picture is waited for.
  await framed(page);
  await page.waitForFunction(() => {
    const c = document.querySelector<HTMLCanvasElement>('.sheet > canvas');
    return c && Math.abs(c.width - c.clientWidth * Math.min(2, devicePixelRatio)) < 2;
  });
  await framed(page);
  const over = (value: string): Promise<void> =>
    page.evaluate((v) => document.querySelectorAll<HTMLElement>('.sheet > :not(canvas)').forEach((e) => (e.style.visibility = v)), value);
  await over('hidden');
  const png = await page.locator('.sheet > canvas').screenshot();
  await over('');
  return readPng(png);
}
/** What a download holds. */
export async function saved(page: Page, act: () => Promise<void>): Promise<{ name: string; text: string }> {
  const download = page.waitForEvent('download');
  await act();
  const file = await download;
  const chunks: Buffer[] = [];
  for await (const chunk of await file.createReadStream()) chunks.push(chunk as Buffer);
  return { name: file.suggestedFilename(), text: Buffer.concat(chunks).toString('utf8') };
}
/** The document as the app would save it. */
export async function documentNow(page: Page): Promise<unknown> {
  const { text } = await saved(page, () => page.keyboard.press('Control+s'));
  return JSON.parse(text);
}
/** The wall shelf with two faults: its rail's tenons come out at the back, and its housings are deep for the sides. */
export function sickShelf(): string {
  const doc = JSON.parse(starter('wall-shelf')) as { joints: Record<string, { set: Record<string, string> }> };
  Object.assign(doc.joints['rail_ends']?.set ?? {}, { length: '22' });
  Object.assign(doc.joints['housings']?.set ?? {}, { depth: '14' });
  return JSON.stringify(doc);
}
/** Polls until `read` gives what is wanted; the last value is in the failure's message. */
export const eventually = <T>(read: () => Promise<T>): ReturnType<typeof expect.poll<T>> =>
  expect.poll(read, { timeout: PATIENCE, interval: 200 });
