/** The small server behind `npm start`: right types, nothing from outside its folder, no port taken twice. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { serve } from '../.ci/serve.mjs';

const top = mkdtempSync(join(tmpdir(), 'served-'));
const folder = join(top, 'app');
mkdirSync(join(folder, 'assets'), { recursive: true });
writeFileSync(join(top, 'secret.txt'), 'secret');
writeFileSync(join(folder, 'index.html'), '<!doctype html><title>here</title>');
writeFileSync(join(folder, 'assets/kernel.wasm'), 'wasm');
writeFileSync(join(folder, 'a b ⅝.json'), '{}');
const { url, close } = await serve(folder);
afterAll(async () => {
  await close();
  rmSync(top, { recursive: true });
});

/** As written: fetch would tidy the dots away before they are sent. */
const raw = (path: string, method = 'GET'): Promise<{ status: number; type: string; body: string }> =>
  new Promise((done, fail) => {
    const { hostname, port } = new URL(url);
    const asked = request({ hostname, port, path, method }, (answer) => {
      let body = '';
      answer.on('data', (part: Buffer) => (body += part.toString()));
      answer.on('end', () => done({ status: answer.statusCode ?? 0, type: answer.headers['content-type'] ?? '', body }));
    });
    asked.on('error', fail).end();
  });

test('pages, wasm and names with spaces come with their types', async () => {
  expect(await raw('/')).toEqual({ status: 200, type: 'text/html; charset=utf-8', body: '<!doctype html><title>here</title>' });
  expect(await raw('/assets/kernel.wasm?v=1')).toEqual({ status: 200, type: 'application/wasm', body: 'wasm' });
  expect((await raw(`/${encodeURIComponent('a b ⅝.json')}`)).body).toBe('{}');
  expect(await raw('/', 'HEAD')).toEqual({ status: 200, type: 'text/html; charset=utf-8', body: '' });
});

test.each([
  '/../secret.txt',
  '/..%2fsecret.txt',
  '/%2e%2e/secret.txt',
  '/assets/..%2f..%2fsecret.txt',
  '/assets',
  '/%00',
  '/%',
  '//',
  '/nope',
])('%s is not found', async (path) => {
  const { status, body } = await raw(path);
  expect(status).toBe(404);
  expect(body).not.toContain('secret');
});

test('it only reads', async () => {
  expect((await raw('/', 'POST')).status).toBe(405);
});

test('a taken port is said, or passed over where others are allowed', async () => {
  const port = Number(new URL(url).port);
  await expect(serve(folder, { port })).rejects.toThrow(`Port ${port} on 127.0.0.1 is taken.`);
  const next = await serve(folder, { port, last: port + 50 });
  expect(Number(new URL(next.url).port)).toBeGreaterThan(port);
  await next.close();
});
