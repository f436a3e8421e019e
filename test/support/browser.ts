/** The browser that set-up found, driven without any download. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium } from 'playwright-core';

const file = fileURLToPath(new URL('../../.cache/browser.json', import.meta.url));

/** Root in a container needs --no-sandbox; the rest keeps the browser from speaking to anyone, and draws WebGL in software. */
const args = [
  '--no-sandbox',
  '--disable-quic',
  '--disable-background-networking',
  '--no-first-run',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
];

/** A headless browser; whoever opens it closes it. Throws where set-up has not found one. */
export const openBrowser = async (): Promise<Browser> => {
  if (!existsSync(file)) throw new Error('.cache/browser.json is not there: run node .ci/ready.mjs --browser first (npm test does).');
  const { path, env } = JSON.parse(readFileSync(file, 'utf8')) as { path: string; env: Record<string, string> };
  return chromium.launch({ executablePath: path, headless: true, args, env: { ...process.env, ...env } as Record<string, string> });
};
