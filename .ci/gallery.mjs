/** Writes the gallery (dist/gallery): every joint, shape and maker as a page of its own, from the core that is being built. */
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';

/** What the pages need beside them, by where it comes from. */
export const besides = /** @type {const} */ ({
  'web/gallery/pages.css': 'gallery.css',
  'web/look/tokens.css': 'tokens.css',
  'node_modules/@fontsource-variable/vollkorn/files/vollkorn-latin-wght-normal.woff2': 'said.woff2',
  'node_modules/@fontsource-variable/ibm-plex-sans/files/ibm-plex-sans-latin-wght-normal.woff2': 'measured.woff2',
});

/**
 * @param {string} root
 * @param {string} out
 */
export const makeGallery = async (root, out) => {
  const { build } = await import('vite');
  const tool = join(out, 'tool');
  await build({
    configFile: false,
    root,
    logLevel: 'warn',
    publicDir: false,
    ssr: { noExternal: true, target: 'node' },
    build: {
      ssr: join(root, 'src/piece/gallery-files.ts'),
      target: 'node20',
      outDir: tool,
      minify: false,
      rolldownOptions: { output: { entryFileNames: 'gallery.mjs', codeSplitting: false } },
    },
  });
  /** @type {{ galleryFiles: (wasm: Uint8Array) => AsyncGenerator<{ name: string, text: string }> }} */
  const { galleryFiles } = await import(pathToFileURL(join(tool, 'gallery.mjs')).href);
  const to = join(out, 'gallery');
  mkdirSync(to, { recursive: true });
  const wasm = new Uint8Array(readFileSync(join(root, 'node_modules/manifold-3d/manifold.wasm')));
  for await (const { name, text } of galleryFiles(wasm)) writeFileSync(join(to, name), text);
  for (const [from, name] of Object.entries(besides)) copyFileSync(join(root, from), join(to, name));
  rmSync(tool, { recursive: true });
};
