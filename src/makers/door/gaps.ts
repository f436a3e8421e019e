/** Gaps of a door: what it grows by, and what its far corner needs to swing past. */
import { seasonShare } from '../../wood/season.ts';
import { shareText } from '../kit/text.ts';
import type { DoorSettings } from './settings.ts';

/** How far the pin line stands in front of the face: half of the knuckle that the hinges propose, mm. */
const proudFor = (gap: number): number => Math.max(5, 2 * 1.8 + gap) / 2;
/**
 * The gap that a square closing edge needs: the far corner turns about the pin line, `proud` in front of the face, in a circle whose radius is
 * greater than the door is wide.
 */
export const swingGap = (width: number, thick: number, proud: number): number => Math.hypot(width, thick + proud) - width;

export const upright = (s: DoorSettings): boolean => s.hung === 'left' || s.hung === 'right';
const share = (s: DoorSettings): number => Math.max(0, seasonShare(s.wood, s.now, s.wettest));
/** What grows across the door: all of it, or the two members of its frame that lie along the hinges. */
export function growth(s: DoorSettings, size: number): number {
  if (s.build === 'solid') return share(s) * size;
  return share(s) * (upright(s) ? 2 * s.stile.mm : s.rail.mm + s.low_rail.mm);
}
export function growthText(s: DoorSettings, size: string): string {
  if (s.build === 'solid') return `${size} * ${shareText(share(s))}`;
  return upright(s) ? `2*(${s.stile.text}) * ${shareText(share(s))}` : `((${s.rail.text}) + (${s.low_rail.text})) * ${shareText(share(s))}`;
}
/** Left over at the closing edge even in the wettest season, mm. */
export const freeAt = (s: DoorSettings, size: number): number =>
  Math.max(s.gap.mm, swingGap(size - 2 * s.gap.mm, s.thick.mm, proudFor(s.gap.mm)));
