/** Surfaces of woods and other stuff for exchange files, from the tones that the view draws with. */
import { type Tone, toneOf } from '../wood/tones.ts';
import { woodOf } from '../wood/woods.ts';

/** Linear colour 0…1, how rough and how metallic it is, 0…1. */
export type Material = { readonly colour: readonly [number, number, number]; readonly rough: number; readonly metal: number };

/** How much of a face is late wood, by eye; the view mixes its plain colours the same way. */
const LATE = 0.32;

export function materialOf(wood: string): Material {
  const w = woodOf(wood);
  const of = w.kind === 'other' ? w.of : 'wood';
  const rough = { wood: 0.62, sheet: 0.6, glass: 0.08, stone: 0.5, metal: 0.35, upholstery: 0.85 }[of];
  return { colour: meanLinear(toneOf(wood)), rough, metal: of === 'metal' ? 1 : 0 };
}
function meanLinear(tone: Tone): [number, number, number] {
  const [early, late] = [hex(tone.light), hex(tone.dark)];
  const mean = (i: 0 | 1 | 2): number => toLinear(early[i] + (late[i] - early[i]) * LATE);
  return [mean(0), mean(1), mean(2)];
}
const hex = (text: string): [number, number, number] => [part(text, 1), part(text, 3), part(text, 5)];
const part = (text: string, at: number): number => Number.parseInt(text.slice(at, at + 2), 16) / 255;
/** sRGB 0…1 to linear light (IEC 61966-2-1). */
export const toLinear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
