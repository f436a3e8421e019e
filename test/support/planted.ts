/** The linters of `npm run check`, run on the project or on a small tree with planted faults. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectRoot = fileURLToPath(new URL('../..', import.meta.url));

type Edge = { readonly module: string; readonly resolved: string };
type Cruise = {
  readonly modules: readonly { readonly source: string; readonly dependencies: readonly Edge[] }[];
  readonly summary: {
    readonly violations: readonly { readonly from: string; readonly to: string; readonly rule: { readonly name: string } }[];
  };
};

/** Runs a script of node_modules and hands back what it printed, whatever it exits with. */
const tool = (script: string, args: readonly string[], cwd: string): string => {
  const done = spawnSync(process.execPath, [join(projectRoot, 'node_modules', script), ...args], {
    cwd,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  if (done.error) throw done.error;
  return done.stdout + done.stderr;
};

export const cruise = (root: string, folders: readonly string[]): Cruise =>
  JSON.parse(
    tool('dependency-cruiser/bin/dependency-cruise.mjs', ['--config', '.dependency-cruiser.mjs', '-T', 'json', ...folders], root),
  ) as Cruise;

export const lint = (root: string): string => tool('oxlint/bin/oxlint', ['-f', 'unix'], root);

/** Type-checks the project at a path under the root, as `tsc -p` does. */
export const typeCheck = (root: string, project: string): string => tool('typescript/bin/tsc', ['-p', project], root);

/** A temporary tree with our settings and the given files; `use` may run the linters on it, then it is removed. */
export const withPlanted = <T>(files: Readonly<Record<string, string>>, use: (root: string) => T): T => {
  const root = mkdtempSync(join(tmpdir(), 'planted-'));
  try {
    const settings = ['.dependency-cruiser.mjs', '.oxlintrc.json', '.ci/lint-rules.mjs', 'package.json', 'tsconfig.json'];
    for (const name of [...settings, 'src/tsconfig.json', 'src/cli/tsconfig.json']) cpSync(join(projectRoot, name), join(root, name));
    symlinkSync(join(projectRoot, 'node_modules'), join(root, 'node_modules'), 'junction');
    for (const [name, text] of Object.entries(files)) {
      mkdirSync(dirname(join(root, name)), { recursive: true });
      writeFileSync(join(root, name), text);
    }
    return use(root);
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
};
