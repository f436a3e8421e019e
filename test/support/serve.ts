/** The built app on a free port of this machine, through the same server as `npm start`. */
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { serve } from '../../.ci/serve.mjs';

const app = fileURLToPath(new URL('../../dist/app', import.meta.url));

/** Serves dist/app; `url` ends in a slash. Throws where the app is not built. */
export const serveApp = async (): Promise<{ url: string; close: () => Promise<void> }> => {
  if (!existsSync(app)) throw new Error('dist/app is not there: run node .ci/ready.mjs --app first (npm test does).');
  return serve(app);
};
