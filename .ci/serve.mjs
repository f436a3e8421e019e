/** A small static server for the built app, on this machine only unless asked otherwise. */
import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, resolve, sep } from 'node:path';

/** @type {Record<string, string>} */
const types = {
  '.css': 'text/css; charset=utf-8',
  '.glb': 'model/gltf-binary',
  '.html': 'text/html; charset=utf-8',
  '.ico': 'image/x-icon',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.map': 'application/json; charset=utf-8',
  '.mjs': 'text/javascript; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.ttf': 'font/ttf',
  '.txt': 'text/plain; charset=utf-8',
  '.wasm': 'application/wasm',
  '.webmanifest': 'application/manifest+json',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/**
 * The file meant by an address, or null: outside the folder, not there, or not a file.
 * @param {string} folder
 * @param {string} url
 */
const fileAt = (folder, url) => {
  try {
    const path = decodeURIComponent(new URL(url, 'http://localhost').pathname);
    const file = resolve(join(folder, path.endsWith('/') ? `${path}index.html` : path));
    if (path.includes('\0') || !file.startsWith(folder + sep)) return null;
    const stat = statSync(file);
    return stat.isFile() ? { file, size: stat.size } : null;
  } catch {
    return null;
  }
};

/**
 * @param {string} folder
 * @returns {import('node:http').RequestListener}
 */
const answer = (folder) => (request, response) => {
  const reading = request.method === 'GET' || request.method === 'HEAD';
  const found = reading ? fileAt(folder, request.url ?? '/') : null;
  if (!found) {
    response.writeHead(reading ? 404 : 405, { 'Content-Type': 'text/plain; charset=utf-8' }).end(reading ? 'Not found\n' : 'Only GET\n');
    return;
  }
  // Names under assets/ carry a hash of what is in them; everything else is asked for anew.
  const kept = found.file.startsWith(join(folder, 'assets') + sep);
  response.writeHead(200, {
    'Content-Type': types[extname(found.file).toLowerCase()] ?? 'application/octet-stream',
    'Content-Length': found.size,
    'Cache-Control': kept ? 'public, max-age=31536000, immutable' : 'no-cache',
    'X-Content-Type-Options': 'nosniff',
    'X-Frame-Options': 'DENY',
    'Referrer-Policy': 'no-referrer',
  });
  if (request.method === 'HEAD') response.end();
  else
    createReadStream(found.file)
      .on('error', () => response.destroy())
      .pipe(response);
};

/**
 * Serves a folder; the port is the first free one from `port` up to `last` (0: any free one).
 * @param {string} folder
 * @param {{ host?: string, port?: number, last?: number }} where
 * @returns {Promise<{ url: string, close: () => Promise<void> }>}
 */
export const serve = (folder, { host = '127.0.0.1', port = 0, last = port } = {}) =>
  new Promise((done, fail) => {
    const server = createServer(answer(resolve(folder)));
    server.once('error', (/** @type {NodeJS.ErrnoException} */ error) => {
      if (error.code !== 'EADDRINUSE') return fail(error);
      if (port >= last) return fail(new Error(`Port ${port} on ${host} is taken.`));
      return done(serve(folder, { host, port: port + 1, last }));
    });
    server.listen(port, host, () => {
      const address = server.address();
      const at = typeof address === 'object' && address ? address.port : port;
      const close = () =>
        new Promise((/** @type {(value: void) => void} */ closed) => {
          server.close(() => closed());
          server.closeAllConnections();
        });
      done({ url: `http://${host.includes(':') ? `[${host}]` : host}:${at}/`, close });
    });
  });
