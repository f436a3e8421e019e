/** Builds what is stale: the client's viewer (dist/client.js), the command line (dist/cli.mjs), the gallery (dist/gallery) and the app (dist/app). Needs node_modules; imported after they are there. */
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';

/**
 * Every file at or under the given places, in a fixed order.
 * @param {string} at
 * @returns {string[]}
 */
const filesUnder = (at) => {
  if (!existsSync(at)) return [];
  if (!statSync(at).isDirectory()) return [at];
  return readdirSync(at)
    .toSorted()
    .flatMap((name) => filesUnder(join(at, name)));
};

/**
 * One hash of all that a product is made from; contents, not times, so that a fresh checkout and a copy agree.
 * @param {string} root
 * @param {string[]} places
 */
const hashOf = (root, places) => {
  const hash = createHash('sha256');
  for (const place of [...places, 'package-lock.json', '.ci/bundle.mjs']) {
    for (const file of filesUnder(join(root, place)))
      hash.update(file.slice(root.length)).update('\0').update(readFileSync(file)).update('\0');
  }
  return hash.digest('hex');
};

/**
 * `make` fills the folder `out`; what it puts there is then moved into dist/, where `to` names the thing that must stand.
 * @typedef {{ name: string, entry: string, from: string[], to: string, make: (root: string, out: string) => Promise<void> }} Product
 */
export const products = /** @satisfies {Record<string, Product>} */ ({
  cli: {
    name: 'the command line',
    entry: 'src/cli/main.ts',
    from: ['src'],
    to: 'cli.mjs',
    make: async (root, out) => {
      const { build } = await import('vite');
      await build({
        configFile: false,
        root,
        logLevel: 'warn',
        publicDir: false,
        ssr: { noExternal: true, target: 'node' },
        build: {
          ssr: join(root, 'src/cli/main.ts'),
          target: 'node20',
          outDir: out,
          minify: false,
          rolldownOptions: { output: { entryFileNames: 'cli.mjs', codeSplitting: false } },
        },
      });
      // The kernel looks for its wasm beside the script that it was bundled into.
      copyFileSync(join(root, 'node_modules/manifold-3d/manifold.wasm'), join(out, 'manifold.wasm'));
    },
  },
  // Goes into every page for a client: one script, its style and fonts inside. The other two hold or read it, so it comes first.
  client: {
    name: 'the viewer for clients',
    entry: 'web/client/main.ts',
    from: ['src/exports', 'src/geom', 'src/wood', 'web/client', 'web/look', 'web/viewer'],
    to: 'client.js',
    make: async (root, out) => {
      const { build } = await import('vite');
      await build({
        configFile: false,
        root,
        logLevel: 'warn',
        publicDir: false,
        build: {
          target: 'es2022',
          outDir: out,
          lib: { entry: join(root, 'web/client/main.ts'), formats: ['iife'], name: 'dryfit', fileName: () => 'client.js' },
        },
      });
    },
  },
  // Pages of joints, shapes and makers, made by the core itself; they can be read without the app, which carries them along.
  gallery: {
    name: 'the gallery',
    entry: 'src/piece/gallery-files.ts',
    from: ['src', 'web/gallery/pages.css', 'web/look/tokens.css', '.ci/gallery.mjs'],
    to: 'gallery',
    make: async (root, out) => (await import('./gallery.mjs')).makeGallery(root, out),
  },
  app: {
    name: 'the app',
    entry: 'web/index.html',
    from: ['src', 'web', 'public', 'vite.config.ts', 'tsconfig.json', '.ci/gallery.mjs'],
    to: 'app',
    make: async (root, out) => {
      const { build } = await import('vite');
      await build({ configFile: join(root, 'vite.config.ts'), logLevel: 'warn', build: { outDir: join(out, 'app') } });
      cpSync(join(root, 'dist/gallery'), join(out, 'app/gallery'), { recursive: true });
    },
  },
});

/**
 * Moves what was built to where it is used, each thing whole.
 * @param {string} from
 * @param {string} to
 */
const swapIn = (from, to) => {
  mkdirSync(to, { recursive: true });
  for (const name of readdirSync(from)) {
    if (statSync(join(from, name)).isDirectory()) rmSync(join(to, name), { recursive: true, force: true });
    renameSync(join(from, name), join(to, name));
  }
  rmSync(from, { recursive: true });
};

/**
 * Builds a product when it is stale, in a folder of its own first, so that nobody ever runs half of one.
 * @param {string} root
 * @param {Product} product
 * @param {(words: string) => void} say
 */
export const bundle = async (root, product, say) => {
  const stamp = join(root, '.cache', `${product.to}.hash`);
  const hash = hashOf(root, product.from);
  if (existsSync(join(root, 'dist', product.to)) && existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  if (!existsSync(join(root, product.entry))) throw new Error(`${product.entry} is not there, so ${product.name} cannot be built.`);
  say(`building ${product.name}`);
  const fresh = join(root, '.cache', `building-${product.to}-${process.pid}`);
  try {
    await product.make(root, fresh);
    swapIn(fresh, join(root, 'dist'));
  } finally {
    rmSync(fresh, { recursive: true, force: true });
  }
  writeFileSync(stamp, hash);
};
