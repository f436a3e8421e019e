/**
 * All set-up, with Node's own modules only: the version of Node, the dependencies, a browser for tests, what is to be built.
 * Run as `node .ci/ready.mjs [--app] [--cli] [--client] [--browser]`; each step does nothing when nothing is stale. Words go to stderr, so
 * that what a command prints stays its own.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url)).replace(/[\\/]$/, '');

/** @param {string} words */
const say = (words) => void process.stderr.write(`${words}\n`);

/** An error that is told by its words alone. */
class Unready extends Error {}

const checkNode = () => {
  const needed = /** @type {string} */ (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).engines.node).replace(/^\D+/, '');
  const [major = 0, minor = 0] = needed.split('.').map(Number);
  const [ours = 0, oursMinor = 0] = process.versions.node.split('.').map(Number);
  if (ours > major || (ours === major && oursMinor >= minor)) return;
  throw new Unready(`Node ${process.versions.node} is too old: ${needed} or newer is needed.`);
};

/** Installs when node_modules is missing or older than the lock file. */
const install = () => {
  const lock = join(root, 'package-lock.json');
  const installed = join(root, 'node_modules/.package-lock.json');
  const stamp = join(root, 'node_modules/.ready');
  const hash = createHash('sha256').update(readFileSync(lock)).digest('hex');
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  // An install by hand writes the lock file and its own copy within a moment of each other.
  const byHand = existsSync(installed) && statSync(installed).mtimeMs + 5000 >= statSync(lock).mtimeMs;
  if (!byHand) {
    say('installing the dependencies (npm ci)');
    // No dependency needs a script of its own at installation, so none is run.
    const args = ['ci', '--include=dev', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
    const npm = process.env.npm_execpath;
    const done = npm?.endsWith('.js')
      ? spawnSync(process.execPath, [npm, ...args], { cwd: root, stdio: ['ignore', 2, 2] })
      : spawnSync('npm', args, { cwd: root, stdio: ['ignore', 2, 2], shell: process.platform === 'win32' });
    if (done.status !== 0) throw new Unready('npm ci did not succeed; its words are above.');
  }
  writeFileSync(stamp, hash);
};

/**
 * @param {{ app?: boolean, cli?: boolean, client?: boolean, browser?: boolean }} wanted
 */
export const ready = async ({ app = false, cli = false, client = false, browser = false } = {}) => {
  checkNode();
  install();
  if (browser) await (await import('./browser.mjs')).findBrowser(join(root, '.cache/browser.json'), say);
  if (!cli && !app && !client) return;
  const { bundle, products } = await import('./bundle.mjs');
  // The command line reads the client's viewer and the app carries it along.
  await bundle(root, products.client, say);
  if (cli) await bundle(root, products.cli, say);
  if (app) {
    await bundle(root, products.gallery, say);
    await bundle(root, products.app, say);
  }
};

/**
 * Runs a command of this folder; what goes wrong is told in a sentence.
 * @param {() => Promise<void>} command
 */
export const run = async (command) => {
  try {
    await command();
  } catch (error) {
    say(error instanceof Error ? error.message : String(error));
    process.exitCode = 2;
  }
};

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const has = (/** @type {string} */ flag) => process.argv.includes(flag);
  await run(() => ready({ app: has('--app'), cli: has('--cli'), client: has('--client'), browser: has('--browser') }));
}
