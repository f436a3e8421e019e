/** Which sizes stand on a face of the stick, and in which lane. Positions are shares 0…1 of the lath. */
import type { Axis } from '../../src/geom/vec3.ts';
import { axisIndex } from '../../src/geom/vec3.ts';
import type { PieceView, SizeView } from '../../src/piece/view.ts';

export type Slot = { readonly size: SizeView; readonly lane: 'upper' | 'lower'; readonly from: number; readonly to: number };
export type Lath = { readonly slots: readonly Slot[]; readonly min: number; readonly max: number };

const overlaps = (a: readonly [number, number], b: readonly [number, number]): boolean => a[0] < b[1] - 1e-6 && b[0] < a[1] - 1e-6;

/** Sizes whose span can be shown along `axis`. */
const spansAlong = (piece: PieceView, axis: Axis): SizeView[] =>
  piece.sizes.filter((s) => s.kind === 'length' && s.axis === axis && s.span !== null && s.span[1] - s.span[0] > 1e-6);

/**
 * Upper lane: neighbouring spans in order, the chain that covers most of the lath. Lower lane: those that cross them, longest
 * first. A span over the whole lath lies beneath the others of the lower lane; its label stands before the first of them. What
 * finds no place stands under 'others'.
 */
export function lathOf(piece: PieceView, axis: Axis, chosen: string | null): Lath {
  const i = axisIndex(axis);
  const spans = spansAlong(piece, axis);
  const min = Math.min(piece.box?.min[i] ?? 0, ...spans.map((s) => s.span?.[0] ?? 0));
  const max = Math.max(piece.box?.max[i] ?? 1, ...spans.map((s) => s.span?.[1] ?? 1));
  const share = (n: number): number => (n - min) / Math.max(1e-6, max - min);
  const slotOf = (size: SizeView, lane: Slot['lane']): Slot => ({
    size,
    lane,
    from: share(size.span?.[0] ?? 0),
    to: share(size.span?.[1] ?? 0),
  });
  const whole = spans.filter((s) => lengthOf(s) > 0.97 * (max - min));
  const own = spans.find((s) => s.id === chosen);
  const upper = bestChain(spans.filter((s) => s !== own && !whole.includes(s)));
  const lower: SizeView[] = own ? [own] : [];
  const rest = spans.filter((s) => s !== own && !whole.includes(s) && !upper.includes(s)).sort((a, b) => lengthOf(b) - lengthOf(a));
  for (const s of rest) if (lower.every((o) => !overlaps(o.span ?? [0, 0], s.span ?? [0, 0]))) lower.push(s);
  const lead = whole.find((s) => s !== own);
  const slots = [
    ...upper.map((s) => slotOf(s, 'upper')),
    ...(lead ? [slotOf(lead, 'lower')] : []),
    ...lower.map((s) => slotOf(s, 'lower')),
  ];
  return { slots, min, max };
}
const lengthOf = (s: SizeView): number => (s.span ? s.span[1] - s.span[0] : 0);
/** Of all sets of spans that do not cross, the one that covers most; of equals the one with more spans. */
function bestChain(spans: readonly SizeView[]): SizeView[] {
  const sorted = [...spans].sort((a, b) => (a.span?.[1] ?? 0) - (b.span?.[1] ?? 0));
  const best: { readonly worth: number; readonly chain: readonly SizeView[] }[] = [{ worth: 0, chain: [] }];
  sorted.forEach((s, k) => {
    const before = sorted.findLastIndex((o, j) => j < k && (o.span?.[1] ?? 0) <= (s.span?.[0] ?? 0) + 1e-6) + 1;
    const taken = { worth: (best[before]?.worth ?? 0) + lengthOf(s) + 0.01, chain: [...(best[before]?.chain ?? []), s] };
    const left = best[k] ?? taken;
    best.push(taken.worth > left.worth ? taken : left);
  });
  return [...(best.at(-1)?.chain ?? [])];
}
/** Lengths, angles and numbers that no face of the stick has room for. */
export function othersOf(piece: PieceView, chosen: string | null): SizeView[] {
  const placed = new Set((['x', 'y', 'z'] as const).flatMap((a) => lathOf(piece, a, chosen).slots.map((s) => s.size.id)));
  return piece.sizes.filter((s) => !placed.has(s.id) || (s.id === chosen && s.axis === null));
}
