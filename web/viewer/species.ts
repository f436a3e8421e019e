/** The tones of a wood as the screen needs them: linear colours for the shader, CSS colours for drawings. */
import { type Colour, hexColour, lightness, mixed, shaded } from '../../src/wood/shade.ts';
import { type Tone as WoodTone, toneOf as woodTone } from '../../src/wood/tones.ts';

/** sRGB 0…1. */
export type Tone = {
  readonly early: Colour;
  readonly late: Colour;
  readonly mean: Colour;
  readonly grain: WoodTone['grain'];
  readonly pale: boolean;
};

const known = new Map<string, Tone>();
export function toneOf(wood: string): Tone {
  const had = known.get(wood);
  if (had) return had;
  const t = woodTone(wood);
  const [early, late] = [hexColour(t.light), hexColour(t.dark)];
  const mean = mixed(early, late, 0.32);
  const tone: Tone = { early, late, mean, grain: t.grain, pale: lightness(mean) > 0.68 };
  known.set(wood, tone);
  return tone;
}
/** A CSS colour, its lightness changed by about `by`. */
export const cssColour = (c: Colour, by = 0): string =>
  `rgb(${shaded(c, by)
    .map((v) => Math.round(255 * v))
    .join(' ')})`;
