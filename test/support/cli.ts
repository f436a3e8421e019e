/** The command line as a person runs it, in a folder of its own. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const program = fileURLToPath(new URL('../../.ci/dryfit.mjs', import.meta.url));
export const fixturePath = (name: string): string => fileURLToPath(new URL(`../fixtures/${name}.json`, import.meta.url));
export const starterPath = (name: string): string => fileURLToPath(new URL(`../../public/starters/${name}.json`, import.meta.url));

export function dryfit(
  cwd: string,
  ...args: readonly string[]
): { readonly code: number | null; readonly out: string; readonly err: string } {
  const ran = spawnSync(process.execPath, [program, ...args], { cwd, encoding: 'utf8', maxBuffer: 1 << 26 });
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
}
