/** Texts that are kept beside the tests: compared to the letter, renewed on demand, and none kept without its owner. */
import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const folder = fileURLToPath(new URL('../golden/', import.meta.url));
/** RENEW=1 writes what is made now in place of what is kept. Look at it before it is committed. */
const RENEW = process.env['RENEW'] === '1';
const HOW = 'If it is as it should be, RENEW=1 npx vitest run test/papers writes it anew.';

/** Why this text is not the kept one, and what to do; null when it is. */
export function goldenFault(name: string, kept: string | null, text: string): string | null {
  if (kept === text) return null;
  return kept === null
    ? `test/golden/${name} is not there. ${HOW}`
    : `test/golden/${name} is drawn otherwise now; what is drawn stands beside it as *-changed. ${HOW}`;
}
/** The kept text and this one are the same; what differs is put beside it as *-changed, for the eye. */
export function expectGolden(name: string, text: string): void {
  const at = `${folder}${name}`;
  const beside = at.replace(/(\.\w+)$/, '-changed$1');
  rmSync(beside, { force: true });
  if (RENEW) {
    mkdirSync(dirname(at), { recursive: true });
    writeFileSync(at, text);
    return;
  }
  const kept = existsSync(at) ? readFileSync(at, 'utf8') : null;
  const fault = goldenFault(name, kept, text);
  if (fault === null) return;
  if (kept !== null) writeFileSync(beside, text);
  expect.fail(fault);
}
/** Kept files that nobody owns any more. */
export function orphans(owned: readonly string[], kept: readonly string[] = readdirSync(folder)): string[] {
  const all = new Set(owned);
  return kept.filter((name) => name.endsWith('.svg') && !name.endsWith('-changed.svg') && !all.has(name)).sort();
}
