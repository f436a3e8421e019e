/** Every joint that the shop knows, all at once: for the command line and for tests. The app loads what a piece has (`loaders.ts`). */
import type { Family } from './family.ts';
import { familyLoaders } from './loaders.ts';

export const families: Readonly<Record<string, Family>> = Object.fromEntries(
  await Promise.all(Object.entries(familyLoaders).map(async ([id, load]) => [id, await load()] as const)),
);
