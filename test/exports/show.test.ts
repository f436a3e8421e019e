/** `show` on the command line: what it writes, what it refuses, and what hostile names do to what it prints. */
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { dryfit, fixturePath, starterPath } from '../support/cli.ts';
import { readGlb } from '../support/glb.ts';

let top = '';
let here = '';
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'show-'));
  here = join(top, 'here');
  mkdirSync(here);
});
afterEach(() => rmSync(top, { recursive: true }));
const SHELF = starterPath('wall-shelf');
const files = (): string[] => readdirSync(top, { recursive: true }).map(String).sort();

test('writes a page and an exchange file, says how long they are, and leaves nothing else behind', () => {
  const page = dryfit(here, 'show', SHELF, '--out', 'shelf.html', '--json');
  expect(page.code, page.err).toBe(0);
  const size = statSync(join(here, 'shelf.html')).size;
  expect(JSON.parse(page.out)).toEqual({ dryfit: 1, title: 'Wall shelf', out: 'shelf.html', bytes: size });
  expect(readFileSync(join(here, 'shelf.html'), 'utf8')).toContain('Wall shelf');
  mkdirSync(join(here, 'sub'));
  const glb = dryfit(here, 'show', SHELF, '--out', 'sub/SHELF.GLB');
  expect(glb.code).toBe(0);
  expect(readGlb(readFileSync(join(here, 'sub/SHELF.GLB'))).solids.length).toBeGreaterThan(2);
  expect(files()).toEqual(['here', 'here/shelf.html', 'here/sub', 'here/sub/SHELF.GLB']);
});
test('a whole path is meant as it is written', () => {
  expect(dryfit(here, 'show', SHELF, '--out', join(top, 'whole.glb')).code).toBe(0);
  expect(files()).toEqual(['here', 'whole.glb']);
});
test('refuses a relative place outside, however it is written, and writes nothing there', () => {
  writeFileSync(join(top, 'kept.html'), 'kept');
  mkdirSync(join(top, 'beyond'));
  symlinkSync(join(top, 'beyond'), join(here, 'link'));
  for (const out of ['../x.html', '../kept.html', 'link/x.html', 'sub/../../x.html', '../here/../x.glb']) {
    const ran = dryfit(here, 'show', SHELF, '--out', out);
    expect(ran.code, out).toBe(2);
    expect(ran.out).toBe('');
    expect(ran.err, out).toMatch(/--out .*(outside|no such folder).*nothing was written/);
  }
  expect(readFileSync(join(top, 'kept.html'), 'utf8')).toBe('kept');
  expect(files()).toEqual(['beyond', 'here', 'here/link', 'kept.html']);
});
test.each([
  [['--out', 'x.pdf'], '.html or .glb'],
  [['--out', 'x'], '.html or .glb'],
  [['--out', '../'], 'outside'],
  [['--out', 'nowhere/x.html'], 'no such folder'],
  [['--out', 'folder.html'], 'a folder'],
  [[], '.html or .glb'],
  [['--out'], 'a value must follow'],
])('%j is told what is wrong with it', (options, words) => {
  mkdirSync(join(here, 'folder.html'));
  const ran = dryfit(here, 'show', SHELF, ...options);
  expect(ran.code).toBe(2);
  expect(ran.err).toContain('--out');
  expect(ran.err).toContain(words);
  expect(ran.err).not.toMatch(/\bat .*\.mjs:\d/);
  expect(files()).toEqual(['here', 'here/folder.html']);
});
test('does not lose the piece to its own picture, nor a file that a link points to', () => {
  writeFileSync(join(here, 'piece.html'), readFileSync(SHELF));
  expect(dryfit(here, 'show', 'piece.html', '--out', './piece.html').code).toBe(2);
  expect(readFileSync(join(here, 'piece.html'), 'utf8')).toBe(readFileSync(SHELF, 'utf8'));
  writeFileSync(join(top, 'other'), 'kept');
  symlinkSync(join(top, 'other'), join(here, 'x.glb'));
  expect(dryfit(here, 'show', SHELF, '--out', 'x.glb').code).toBe(0);
  expect(readFileSync(join(top, 'other'), 'utf8')).toBe('kept');
});
test('hostile names steer neither the terminal nor the answer', () => {
  const piece = fixturePath('hostile-names');
  // eslint-disable-next-line no-control-regex
  const steering = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/;
  for (const args of [['check'], ['list'], ['order'], ['show', '--out', 'x.html'], ['show', '--out', 'x.glb']]) {
    const [verb = '', ...rest] = args;
    for (const json of [[], ['--json']]) {
      const ran = dryfit(here, verb, piece, ...rest, ...json);
      expect(ran.code, `${verb}: ${ran.err}`).toBe(0);
      expect(ran.out).not.toMatch(steering);
      expect(ran.err).not.toMatch(steering);
      if (json.length) expect((JSON.parse(ran.out) as { title: string }).title).toContain('\u001b[31m');
    }
  }
  expect(existsSync(join(here, 'x.html'))).toBe(true);
});
