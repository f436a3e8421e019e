/** The tones of a wood as the screen needs them: linear colours for the shader, CSS colours for drawings. */
import { type Tone as WoodTone, toneOf as woodTone } from '../../src/wood/tones.ts';

export type Colour = readonly [number, number, number];
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
  const [early, late] = [hex(t.light), hex(t.dark)];
  const mean = mix(early, late, 0.32);
  const tone: Tone = { early, late, mean, grain: t.grain, pale: lightness(mean) > 0.68 };
  known.set(wood, tone);
  return tone;
}
const hex = (text: string): Colour => [1, 3, 5].map((i) => Number.parseInt(text.slice(i, i + 2), 16) / 255) as unknown as Colour;
const mix = (a: Colour, b: Colour, t: number): Colour => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
export const toLinear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
/** OKLab lightness, 0…1 (B. Ottosson's published matrices, from memory). */
export function lightness([r, g, b]: Colour): number {
  const [x, y, z] = [toLinear(r), toLinear(g), toLinear(b)];
  const l = Math.cbrt(0.4122214708 * x + 0.5363325363 * y + 0.0514459929 * z);
  const m = Math.cbrt(0.2119034982 * x + 0.6806995451 * y + 0.1073969566 * z);
  const s = Math.cbrt(0.0883024619 * x + 0.2817188376 * y + 0.6299787005 * z);
  return 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s;
}
/** A CSS colour, its lightness changed by about `by`. */
export function cssColour(c: Colour, by = 0): string {
  const l = Math.max(0.05, lightness(c));
  const k = ((l + by) / l) ** 1.25;
  return `rgb(${c.map((v) => Math.round(255 * Math.min(1, v * k))).join(' ')})`;
}
