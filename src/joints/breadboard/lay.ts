/** Where tongue, tenons, pegs and their slots lie, in the meeting frame: x through the thickness, y across the top's width. */
import { isFace } from '../../model/ids.ts';
import { isSquare, ownSense, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { Breadboard } from './params.ts';

export type Span = readonly [number, number];
export type Ground = {
  readonly top: MeetSide;
  readonly end: MeetSide;
  /** The top's thickness where the end covers it, and the width that both share. */
  readonly x: Span;
  readonly y: Span;
  /** The width of the end board, along the top's grain. */
  readonly deep: number;
  readonly gap: number;
};
export function ground(m: Meeting): Ground | null {
  const top = sideIn(m, 'top');
  const end = sideIn(m, 'end');
  const [x, y] = [sharedSpan(top.box, end.box, 'x'), sharedSpan(top.box, end.box, 'y')];
  if (!isSquare(m) || x[1] - x[0] < 1e-6 || y[1] - y[0] < 1e-6) return null;
  return { top, end, x, y, deep: end.box.max[2] - end.box.min[2], gap: m.gap };
}
/** Which tenon is fast, counted along y; null when `fixed` names no edge of the top, or the middle of an even number. */
export function fastTenon(g: Ground, s: Pick<Breadboard, 'fixed' | 'tenons'>): number | null {
  if (s.fixed === 'middle') return s.tenons % 2 === 1 ? (s.tenons - 1) / 2 : null;
  const sign = isFace(s.fixed) ? signAlong(g.top, s.fixed, 'y') : null;
  return sign === null ? null : sign > 0 ? s.tenons - 1 : 0;
}
export type Tenon = {
  /** Its number, from 1 along the top's own axis. */
  readonly n: number;
  readonly y: number;
  readonly fast: boolean;
  /** Movement each way, mm. */
  readonly allow: number;
};
export type Lay = {
  readonly x: Span;
  readonly tenons: readonly Tenon[];
  readonly peg: { readonly start: number; readonly sign: 1 | -1; readonly length: number };
};
export const pitchOf = (g: Ground, n: number): number => (g.y[1] - g.y[0]) / n;
export function lay(g: Ground, s: Breadboard): Lay {
  const fast = fastTenon(g, s);
  if (fast === null) throw new Error(`no tenon can be fast at "${s.fixed}" among ${s.tenons}`);
  const pitch = pitchOf(g, s.tenons);
  const most = Math.max(fast, s.tenons - 1 - fast);
  const up = ownSense(g.top, 'y') > 0;
  const tenons = Array.from({ length: s.tenons }, (_, i): Tenon => {
    const off = Math.abs(i - fast);
    return { n: up ? i + 1 : s.tenons - i, y: g.y[0] + pitch * (i + 0.5), fast: i === fast, allow: most > 0 ? (s.allow * off) / most : 0 };
  });
  const mid = (g.x[0] + g.x[1]) / 2;
  const sign = ownSense(g.end, 'x');
  const { min, max } = g.end.box;
  return {
    x: [mid - s.thickness / 2, mid + s.thickness / 2],
    tenons,
    peg: { start: sign > 0 ? min[0] : max[0], sign, length: max[0] - min[0] },
  };
}
