/** The joints that the shop knows: one folder each, nothing registered anywhere else. */
import type { Family } from './family.ts';
import { mortiseTenon } from './mortise-tenon/mortise-tenon.ts';
import { housing } from './housing/housing.ts';
import { dovetail } from './dovetail/dovetail.ts';
import { grooveTongue } from './groove-tongue/groove-tongue.ts';

const list = [mortiseTenon, housing, dovetail, grooveTongue] as unknown as readonly Family[];
export const families: Readonly<Record<string, Family>> = Object.fromEntries(list.map((f) => [f.id, f]));
