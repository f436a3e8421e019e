import react from '@vitejs/plugin-react';
import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';
import { defineConfig } from 'vitest/config';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/**
 * What the built app may load: its own files, and pictures and documents that it makes itself; nothing from another host.
 * 'wasm-unsafe-eval' lets the geometry kernel compile; it does not allow eval.
 */
const policy = {
  'default-src': "'none'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self'",
  'img-src': "'self' data: blob:",
  'font-src': "'self'",
  'connect-src': "'self' data: blob:",
  'worker-src': "'self' blob:",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
};

/** Writes the policy into the page, ahead of every script; in development the dev server's own inline code must still run. */
const contentPolicy: Plugin = {
  name: 'content-policy',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: () => {
      const content = Object.entries(policy).map(([what, from]) => `${what} ${from}`);
      return [{ tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: content.join('; ') }, injectTo: 'head-prepend' }];
    },
  },
};

/** The geometry kernel asks for this module on Node only; elsewhere an empty one stands in, in the page and in its workers. */
const withoutNode: Plugin = {
  name: 'without-node',
  enforce: 'pre',
  apply: 'build',
  resolveId: (id) => (id === 'node:module' ? '\0without-node' : undefined),
  load: (id) => (id === '\0without-node' ? 'export const createRequire = undefined;' : undefined),
};

const app = defineConfig({
  root: here('web'),
  publicDir: here('public'),
  // Relative addresses: the built folder may stand anywhere on a host.
  base: './',
  cacheDir: here('.cache/vite'),
  plugins: [react(), contentPolicy, withoutNode],
  worker: { format: 'es', plugins: () => [withoutNode] },
  build: {
    target: 'es2022',
    outDir: here('dist/app'),
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    reportCompressedSize: false,
    chunkSizeWarningLimit: 1000,
    rolldownOptions: {
      output: {
        // Libraries apart from our own code, so that a new version of the app leaves them in the browser's cache.
        codeSplitting: {
          groups: [
            { name: 'three', test: /node_modules[\\/](three|@react-three)[\\/]/ },
            { name: 'react', test: /node_modules[\\/](react|react-dom|scheduler)[\\/]/ },
          ],
        },
      },
    },
  },
  server: { host: '127.0.0.1' },
});

const testing = defineConfig({
  root: here('.'),
  cacheDir: here('.cache/vitest'),
  test: {
    maxWorkers: 2,
    projects: [
      {
        test: {
          name: 'node',
          include: ['test/**/*.test.ts'],
          exclude: ['test/web/**'],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          sequence: { groupOrder: 0 },
        },
      },
      {
        // Browser-driven tests of the built app: one after the other, since one software-drawn page takes both cores.
        test: {
          name: 'web',
          include: ['test/web/**/*.test.ts'],
          fileParallelism: false,
          maxWorkers: 1,
          testTimeout: 300_000,
          hookTimeout: 120_000,
          sequence: { groupOrder: 1 },
        },
      },
      {
        // Longer drives of the built app; `npm run drive` only.
        test: {
          name: 'drive',
          include: process.argv.includes('drive') ? ['test/web/**/*.drive.ts'] : [],
          fileParallelism: false,
          maxWorkers: 1,
          testTimeout: 300_000,
          hookTimeout: 120_000,
          sequence: { groupOrder: 2 },
        },
      },
      {
        // Pictures of every screen, and what they must not show; `npm run shots` only.
        test: {
          name: 'shots',
          include: process.argv.includes('shots') ? ['test/shots/**/*.shots.ts'] : [],
          fileParallelism: false,
          maxWorkers: 1,
          testTimeout: 300_000,
          hookTimeout: 120_000,
          sequence: { groupOrder: 3 },
        },
      },
    ],
  },
});

export default process.env['VITEST'] ? testing : app;
