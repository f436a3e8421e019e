/** Finds a browser for the tests: $BROWSER_PATH, an installed Chromium, Chrome or Edge, else the one that comes as a package. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const programs = process.env.PROGRAMFILES ?? 'C:\\Program Files';
const programs86 = process.env['PROGRAMFILES(X86)'] ?? 'C:\\Program Files (x86)';

/** @type {Record<string, string[]>} */
const installed = {
  linux: [
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/snap/bin/chromium',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/opt/google/chrome/chrome',
    '/usr/bin/microsoft-edge',
    '/opt/microsoft/msedge/msedge',
  ],
  darwin: [
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  ],
  win32: [programs, programs86].flatMap((base) => [
    join(base, 'Google', 'Chrome', 'Application', 'chrome.exe'),
    join(base, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
  ]),
};

/**
 * Whether the program starts at all (a snap stub or a missing library says no). On Windows the question would open a window.
 * @param {string} path
 * @param {Record<string, string>} env
 */
const starts = (path, env) => {
  if (!existsSync(path)) return false;
  if (process.platform === 'win32') return true;
  const answer = spawnSync(path, ['--version'], { env: { ...process.env, ...env }, encoding: 'utf8', timeout: 30_000 });
  return answer.status === 0 && /\d+\.\d+/.test(answer.stdout);
};

/**
 * Unpacks the browser that comes as a package (Linux on x64) into our own cache, with the libraries that a bare machine lacks.
 * @param {string} cache
 */
const unpacked = async (cache) => {
  if (process.platform !== 'linux' || process.arch !== 'x64') return null;
  const home = join(cache, 'chromium');
  mkdirSync(home, { recursive: true });
  const touched = ['TMPDIR', 'AWS_EXECUTION_ENV', 'LD_LIBRARY_PATH', 'FONTCONFIG_PATH', 'HOME'];
  const before = touched.map((name) => /** @type {const} */ ([name, process.env[name]]));
  // The package unpacks its libraries only where this variable speaks of the machine that it was made for.
  Object.assign(process.env, { TMPDIR: home, AWS_EXECUTION_ENV: 'AWS_Lambda_nodejs22.x' });
  try {
    const { default: chromium } = await import('@sparticuz/chromium');
    const path = await chromium.executablePath();
    const env = { LD_LIBRARY_PATH: process.env.LD_LIBRARY_PATH ?? '', FONTCONFIG_PATH: process.env.FONTCONFIG_PATH ?? '' };
    return starts(path, env) ? { path, env } : null;
  } finally {
    for (const [name, value] of before) {
      if (value === undefined) delete process.env[name];
      else process.env[name] = value;
    }
  }
};

/** @param {string} cache */
const search = async (cache) => {
  const asked = process.env.BROWSER_PATH;
  if (asked) {
    if (starts(asked, {})) return { path: asked, env: {} };
    throw new Error(`BROWSER_PATH is ${asked}, and no browser starts there.`);
  }
  const path = (installed[process.platform] ?? []).find((candidate) => starts(candidate, {}));
  if (path) return { path, env: {} };
  const own = await unpacked(cache);
  if (own) return own;
  throw new Error('No browser for the tests: install Chromium, Chrome or Edge, or set BROWSER_PATH to one.');
};

/**
 * Writes { path, env } of a browser that starts to the file, unless the one named there is still good.
 * @param {string} file
 * @param {(words: string) => void} say
 */
export const findBrowser = async (file, say) => {
  if (existsSync(file) && !process.env.BROWSER_PATH) {
    const known = JSON.parse(readFileSync(file, 'utf8'));
    if (starts(known.path, known.env)) return;
  }
  const browser = await search(dirname(file));
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, JSON.stringify(browser, null, 2) + '\n');
  say(`browser for tests: ${browser.path}`);
};
