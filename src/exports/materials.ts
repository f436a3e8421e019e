/** Surfaces of woods and other stuff for exchange files, from the tones that the view draws with. */
import { hexColour, mixed, toLinear } from '../wood/shade.ts';
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
  const [r, g, b] = mixed(hexColour(tone.light), hexColour(tone.dark), LATE);
  return [toLinear(r), toLinear(g), toLinear(b)];
}
