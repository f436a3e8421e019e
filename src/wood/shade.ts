/** Lighter and darker: colours moved along the lightness that the eye sees, OKLab (B. Ottosson's published matrices, from memory). */

/** sRGB 0…1. */
export type Colour = readonly [number, number, number];

export const hexColour = (text: string): Colour =>
  [1, 3, 5].map((i) => Number.parseInt(text.slice(i, i + 2), 16) / 255) as unknown as Colour;
export const mixed = (a: Colour, b: Colour, t: number): Colour => [
  a[0] + (b[0] - a[0]) * t,
  a[1] + (b[1] - a[1]) * t,
  a[2] + (b[2] - a[2]) * t,
];
/** sRGB 0…1 to linear light (IEC 61966-2-1). */
export const toLinear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
/** OKLab lightness, 0…1. */
export function lightness([r, g, b]: Colour): number {
  const [x, y, z] = [toLinear(r), toLinear(g), toLinear(b)];
  const l = Math.cbrt(0.4122214708 * x + 0.5363325363 * y + 0.0514459929 * z);
  const m = Math.cbrt(0.2119034982 * x + 0.6806995451 * y + 0.1073969566 * z);
  const s = Math.cbrt(0.0883024619 * x + 0.2817188376 * y + 0.6299787005 * z);
  return 0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s;
}
/** The colour with its lightness changed by about `by`, hue and strength kept. */
export function shaded(c: Colour, by: number): Colour {
  const l = Math.max(0.05, lightness(c));
  const k = ((l + by) / l) ** 1.25;
  return [Math.min(1, c[0] * k), Math.min(1, c[1] * k), Math.min(1, c[2] * k)];
}
