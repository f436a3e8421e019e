/** `npm run -s dryfit -- VERB FILE`: the command line, rebuilt when stale, with paths read from where the caller stands. */
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ready, root, run } from './ready.mjs';

await run(async () => {
  await ready({ cli: true });
  const cli = join(root, 'dist/cli.mjs');
  // npm runs scripts from the project's top folder and keeps the caller's in INIT_CWD.
  if (process.env.INIT_CWD && process.cwd() === root) process.chdir(process.env.INIT_CWD);
  process.argv[1] = cli;
  await import(pathToFileURL(cli).href);
});
