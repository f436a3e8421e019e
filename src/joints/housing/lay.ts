/** Where a housing lies, in the meeting frame: read by make, contacts, rules and bench alike. */
import type { Meeting, MeetSide } from '../meeting.ts';
import { isSquare, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Housing } from './params.ts';

export type Span = readonly [number, number];
/** The ground both boards share before anything is cut. */
export type Ground = {
  readonly enter: MeetSide;
  readonly into: MeetSide;
  readonly x: Span;
  readonly y: Span;
  readonly thick: number;
  readonly gap: number;
};
export function ground(m: Meeting): Ground | null {
  const enter = sideIn(m, 'enter');
  const into = sideIn(m, 'into');
  const x = sharedSpan(enter.box, into.box, 'x');
  const y = sharedSpan(enter.box, into.box, 'y');
  const fits = isSquare(m) && x[1] - x[0] > 1e-6 && y[1] - y[0] > 1e-6;
  return fits ? { enter, into, x, y, thick: into.box.max[2] - into.box.min[2], gap: m.gap } : null;
}
/** How far the housing stops short at the low and at the high end of y; null when the word names no edge of the shelf's end. */
export function stops(g: Ground, sizes: Pick<Housing, 'stopped' | 'stop'>): Span | null {
  if (sizes.stopped === 'none') return [0, 0];
  if (sizes.stopped === 'both') return [sizes.stop, sizes.stop];
  const sign = signAlong(g.enter, sizes.stopped, 'y');
  return sign === null ? null : sign > 0 ? [0, sizes.stop] : [sizes.stop, 0];
}
/** The part of the shelf's thickness that goes in; null when `shoulders` names no face of the shelf beside its end. */
export function tongueAcross(g: Ground, s: Pick<Housing, 'shoulders' | 'tongue'>): Span | null {
  if (s.shoulders === 'none') return g.x;
  const mid = (g.x[0] + g.x[1]) / 2;
  if (s.shoulders === 'both') return [mid - s.tongue / 2, mid + s.tongue / 2];
  const sign = signAlong(g.enter, s.shoulders, 'x');
  return sign === null ? null : sign > 0 ? [g.x[0], g.x[0] + s.tongue] : [g.x[1] - s.tongue, g.x[1]];
}
/** What goes in across the thickness, the housing's run along y, and whether it comes out of the side at each end. */
export type Run = { readonly x: Span; readonly span: Span; readonly cut: Span; readonly open: readonly [boolean, boolean] };
export function run(g: Ground, sizes: Housing): Run {
  const cut = stops(g, sizes);
  const x = tongueAcross(g, sizes);
  if (!cut || !x) throw new Error(`a housing has no stop at "${sizes.stopped}" and shoulder at "${sizes.shoulders}" of ${g.enter.path}`);
  const span: Span = [g.y[0] + cut[0], g.y[1] - cut[1]];
  const { min, max } = g.into.box;
  return { x, span, cut, open: [span[0] <= min[1] + 1e-6, span[1] >= max[1] - 1e-6] };
}
