/** The joints that the shop knows: one folder each, nothing registered anywhere else. */
import type { Family } from './family.ts';
import { mortiseTenon } from './mortise-tenon/mortise-tenon.ts';

const list = [mortiseTenon] as unknown as readonly Family[];
export const families: Readonly<Record<string, Family>> = Object.fromEntries(list.map((f) => [f.id, f]));
