/** Which sizes stand on a face of the stick, and in which lane. Positions are shares 0…1 of the lath. */
import type { Axis } from '../../src/geom/vec3.ts';
import { axisIndex } from '../../src/geom/vec3.ts';
import type { PieceView, SizeView } from '../../src/piece/view.ts';

export type Slot = { readonly size: SizeView; readonly lane: 'upper' | 'lower'; readonly from: number; readonly to: number };
export type Lath = { readonly slots: readonly Slot[]; readonly min: number; readonly max: number };

const overlaps = (a: readonly [number, number], b: readonly [number, number]): boolean => a[0] < b[1] - 1e-6 && b[0] < a[1] - 1e-6;

/** Sizes whose span can be shown along `axis`. */
export const spansAlong = (piece: PieceView, axis: Axis): SizeView[] =>
  piece.sizes.filter((s) => s.kind === 'length' && s.axis === axis && s.span !== null && s.span[1] - s.span[0] > 1e-6);

/**
 * Upper lane: as many neighbouring spans as fit, shortest first. Lower lane: those that cross them, longest first; a span may
 * lie within a longer one there (its label stands where the longer one's does not). The rest stands under 'others'.
 */
export function lathOf(piece: PieceView, axis: Axis, chosen: string | null): Lath {
  const i = axisIndex(axis);
  const spans = spansAlong(piece, axis);
  const min = Math.min(piece.box?.min[i] ?? 0, ...spans.map((s) => s.span?.[0] ?? 0));
  const max = Math.max(piece.box?.max[i] ?? 1, ...spans.map((s) => s.span?.[1] ?? 1));
  const share = (n: number): number => (n - min) / Math.max(1e-6, max - min);
  const slots: Slot[] = [];
  const add = (size: SizeView, lane: Slot['lane']): void => void slots.push({ size, lane, from: share(size.span?.[0] ?? 0), to: share(size.span?.[1] ?? 0) });
  const free = (s: SizeView, lane: Slot['lane']): boolean => slots.every((o) => o.lane !== lane || !overlaps(o.size.span ?? [0, 0], s.span ?? [0, 0]));
  const length = (s: SizeView): number => (s.span ? s.span[1] - s.span[0] : 0);
  const byLength = [...spans].sort((a, b) => length(a) - length(b) || (a.span?.[0] ?? 0) - (b.span?.[0] ?? 0));
  const whole = byLength.filter((s) => length(s) > 0.97 * (max - min));
  const lead = whole[0];
  const own = byLength.find((s) => s.id === chosen);
  if (own) add(own, 'lower');
  for (const s of byLength) if (s !== own && !whole.includes(s) && free(s, 'upper')) add(s, 'upper');
  for (const s of byLength.toReversed()) if (s !== own && s !== lead && !slots.some((o) => o.size === s) && free(s, 'lower')) add(s, 'lower');
  if (lead && lead !== own && slots.every((o) => o.lane !== 'lower' || o.from > 0.14)) add(lead, 'lower');
  else if (lead && lead !== own && free(lead, 'upper')) add(lead, 'upper');
  return { slots, min, max };
}
/** Lengths, angles and numbers that no face of the stick has room for. */
export function othersOf(piece: PieceView, chosen: string | null): SizeView[] {
  const placed = new Set((['x', 'y', 'z'] as const).flatMap((a) => lathOf(piece, a, chosen).slots.map((s) => s.size.id)));
  return piece.sizes.filter((s) => !placed.has(s.id) || (s.id === chosen && s.axis === null));
}
