/** The theme's colours as numbers, read from the page so that there is one list of them. */
import type { Colour } from '../../src/wood/shade.ts';

let probe: CanvasRenderingContext2D | null = null;
/** sRGB 0…1 of a custom property such as '--sheet'. */
export function themeColour(name: string): Colour {
  const canvas = probe?.canvas ?? document.createElement('canvas');
  canvas.width = canvas.height = 1;
  probe ??= canvas.getContext('2d', { willReadFrequently: true });
  if (!probe) return [0.96, 0.97, 0.97];
  probe.fillStyle = getComputedStyle(document.documentElement).getPropertyValue(name).trim();
  probe.fillRect(0, 0, 1, 1);
  const [r = 0, g = 0, b = 0] = probe.getImageData(0, 0, 1, 1).data;
  return [r / 255, g / 255, b / 255];
}
export const isDark = (): boolean => getComputedStyle(document.documentElement).colorScheme.includes('dark');
