/** The makers that the shop knows. A new one is a file beside this and a line here. */
import type { Maker } from './kit/maker.ts';

const list: readonly Maker[] = [];
export const makers: Readonly<Record<string, Maker>> = Object.fromEntries(list.map((m) => [m.id, m]));
