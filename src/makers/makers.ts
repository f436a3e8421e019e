/** The makers that the shop knows. A new one is a file beside this and a line here. */
import { maker as caseMaker } from './case.ts';
import { maker as door } from './door.ts';
import { maker as drawer } from './drawer.ts';
import { maker as framePanel } from './frame-panel.ts';
import { maker as graduated } from './graduated.ts';
import type { Maker } from './kit/maker.ts';
import { maker as tray } from './tray.ts';

const list: readonly Maker[] = [caseMaker, framePanel, drawer, graduated, door, tray];
export const makers: Readonly<Record<string, Maker>> = Object.fromEntries(list.map((m) => [m.id, m]));
