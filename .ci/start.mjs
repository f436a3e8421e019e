/** `npm start`: sets up, builds the app when it is stale, serves it until Ctrl-C. HOST and PORT say where. */
import { join } from 'node:path';
import { ready, root, run } from './ready.mjs';
import { serve } from './serve.mjs';

await run(async () => {
  await ready({ app: true });
  const asked = process.env.PORT;
  const port = asked ? Number(asked) : 4173;
  if (!Number.isInteger(port) || port < 0 || port > 65535) throw new Error(`PORT is '${asked}'; it should be a whole number up to 65535.`);
  const { url, close } = await serve(join(root, 'dist/app'), {
    host: process.env.HOST || '127.0.0.1',
    port,
    last: asked ? port : port + 100,
  });
  process.stdout.write(`Dryfit is at ${url}\nwith a starter piece: ${url}#writing-desk\nCtrl-C stops it.\n`);
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => void close().then(() => process.exit(0)));
});
