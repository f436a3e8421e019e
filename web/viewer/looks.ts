/** How each part looks by the way the piece is looked at: wood or drawing, line weights, in front or not. */
import { type Colour, lightness } from '../../src/wood/shade.ts';
import { toneOf } from './species.ts';
import { FILL, FRONT_FILL, FRONT_LINE, LINE, type Thing } from './parts.ts';
import { setNumbers, setUniform } from './uniforms.ts';

export type Looks = {
  /** Parts that keep their wood; null: all do. */
  readonly wood: ReadonlySet<string> | null;
  /** Parts drawn in front of all others. */
  readonly front: ReadonlySet<string>;
  /** Parts with a heavier outline. */
  readonly heavy: ReadonlySet<string>;
  /** Parts that are shown at all; null: all. */
  readonly only: ReadonlySet<string> | null;
};
export type Theme = { readonly sheet: Colour; readonly ink: Colour; readonly well: Colour; readonly dark: boolean };

/** Warm black on wood, in both themes. */
const ON_WOOD: Colour = [0.11, 0.07, 0.045];
const CHALK: Colour = [0.97, 0.98, 0.98];

export function applyLooks(things: Iterable<Thing>, looks: Looks, theme: Theme): void {
  for (const t of things) {
    const path = t.part.path;
    const wood = looks.wood === null || looks.wood.has(path);
    const heavy = looks.heavy.has(path);
    t.fill.visible = t.line.visible = looks.only === null || looks.only.has(path);
    t.fill.layers.set(FILL);
    t.line.layers.set(LINE);
    if (looks.front.has(path)) {
      t.fill.layers.enable(FRONT_FILL);
      t.line.layers.enable(FRONT_LINE);
    }
    setUniform(t.fill.material, 'uWood', wood ? 1 : 0);
    setUniform(t.fill.material, 'uHeat', heavy && wood ? 1 : 0);
    // A dark wood on a dark sheet gets its outline in chalk.
    const chalk = theme.dark && wood && lightness(toneOf(t.part.wood).mean) < 0.55;
    setNumbers(t.line.material, 'uInk', chalk ? CHALK : wood ? ON_WOOD : theme.ink);
    setUniform(t.line.material, 'uHeavy', heavy ? 2.5 : wood ? 1.15 : 1);
    setUniform(t.line.material, 'uHeavyAlpha', heavy ? 1 : chalk ? 0.45 : wood ? 0.8 : 0.55);
    setUniform(t.line.material, 'uFineAlpha', chalk ? 0.28 : wood ? 0.5 : 0.3);
    t.line.renderOrder = heavy ? 7 : wood ? 6 : 5;
  }
}
