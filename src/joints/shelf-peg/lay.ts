/** Where pegs and rows of holes lie. The meeting's x runs through the shelf's thickness, y across its width, z into the side. */
import { alongGrain, isSquare, ownSense, sharedSpan, sideIn, signAlong } from '../blocks.ts';
import type { Meeting, MeetSide } from '../meeting.ts';
import type { ShelfPeg } from './params.ts';

export type Span = readonly [number, number];
export type Ground = {
  readonly shelf: MeetSide;
  readonly side: MeetSide;
  /** Which way along x is up, and where the shelf's underside lies. */
  readonly up: 1 | -1;
  readonly under: number;
  /** The width that shelf and side share. */
  readonly y: Span;
  readonly thick: number;
  /** Air between the end of the shelf and the side, mm. */
  readonly gap: number;
};
export function ground(m: Meeting): Ground | null {
  const [shelf, side] = [sideIn(m, 'shelf'), sideIn(m, 'side')];
  const down = signAlong(shelf, 'bottom', 'x');
  const y = sharedSpan(shelf.box, side.box, 'y');
  if (!isSquare(m) || down === null || y[1] - y[0] < 20 || m.gap < -1e-6) return null;
  return {
    shelf,
    side,
    up: down > 0 ? -1 : 1,
    under: down > 0 ? shelf.box.max[0] : shelf.box.min[0],
    y,
    thick: side.box.max[2] - side.box.min[2],
    gap: m.gap,
  };
}
/** The x of a peg's middle: its flat lies on the underside of the shelf. */
export const pegX = (g: Ground, s: Pick<ShelfPeg, 'diameter' | 'flat'>): number => g.under - g.up * (s.diameter / 2 - s.flat);
/** The two pegs, numbered along the shelf's own axis. */
export function pegYs(g: Ground, s: Pick<ShelfPeg, 'inset'>): readonly [number, number] {
  const both = [g.y[0] + s.inset, g.y[1] - s.inset] as const;
  return ownSense(g.shelf, 'y') > 0 ? both : [both[1], both[0]];
}
/** Wood of the side above and below the pegs, mm. */
export function roomOf(g: Ground, x: number): { readonly above: number; readonly below: number } {
  const [low, high] = [x - g.side.box.min[0], g.side.box.max[0] - x];
  return g.up > 0 ? { above: high, below: low } : { above: low, below: high };
}
export type Hole = { readonly name: string; readonly x: number; readonly y: number };
/** All holes of both rows, each row from the lowest upward. */
export function holes(g: Ground, s: ShelfPeg): Hole[] {
  const x = pegX(g, s);
  const per = s.below + 1 + s.above;
  return pegYs(g, s).flatMap((y, row) =>
    Array.from({ length: per }, (_, i): Hole => ({ name: `hole ${row * per + i + 1}`, x: x + g.up * (i - s.below) * s.step, y })),
  );
}
/** The hole in which peg n (from 0) stands. */
export const holeOfPeg = (s: ShelfPeg, n: number): string => `hole ${n * (s.below + 1 + s.above) + s.below + 1}`;
/** Does a shelf of these two stand end on to the side? */
export const endsOn = (g: Ground): boolean => alongGrain(g.shelf, [0, 0, 1]);
