/** Places for the lettered balloons of a piece drawn apart: in two columns beside it, leaders straight and without crossings. */

/** `ends`: two points of the part, px; the leader goes to the one nearer to its balloon. */
export type Anchor = {
  readonly letter: string;
  readonly words: string;
  readonly path: string;
  readonly x: number;
  readonly y: number;
  readonly ends?: readonly (readonly [number, number])[];
};
export type Balloon = Anchor & { readonly bx: number; readonly by: number; readonly side: 'left' | 'right' };
type Room = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };

/** Least distance of two balloons in a column, px. */
const APART = 38;

/** As many as fit; those of the widest spread first are kept when there are too many. */
export function placeBalloons(anchors: readonly Anchor[], room: Room): Balloon[] {
  const most = Math.max(0, Math.floor((room.bottom - room.top) / APART) + 1);
  const middle = (room.left + room.right) / 2;
  const sorted = [...anchors].sort((a, b) => a.x - b.x).slice(0, 2 * most);
  const half = Math.min(most, Math.max(sorted.length - most, sorted.filter((a) => a.x < middle).length));
  return [...column(sorted.slice(0, half), 'left', room), ...column(sorted.slice(half), 'right', room)];
}
function column(anchors: readonly Anchor[], side: Balloon['side'], room: Room): Balloon[] {
  const bx = side === 'left' ? room.left : room.right;
  const near = (a: Anchor): Anchor => {
    const [p, ...more] = a.ends ?? [];
    const best = p ? more.reduce((m, q) => ((side === 'left' ? q[0] < m[0] : q[0] > m[0]) ? q : m), p) : null;
    return best ? { ...a, x: best[0], y: best[1] } : a;
  };
  const inOrder = anchors.map(near).sort((a, b) => a.y - b.y);
  const ys = spread(
    inOrder.map((a) => a.y),
    room.top,
    room.bottom,
  );
  const out = inOrder.map((a, i): Balloon => ({ ...a, bx, by: ys[i] ?? a.y, side }));
  // Two leaders that cross change places: the sum of their lengths falls, so this comes to an end.
  for (let again = true, rounds = 0; again && rounds < 60; rounds++) {
    again = false;
    for (let i = 0; i < out.length; i++)
      for (let j = i + 1; j < out.length; j++) {
        const [a, b] = [out[i], out[j]];
        if (!a || !b || !crossing(a, b)) continue;
        out[i] = { ...a, by: b.by };
        out[j] = { ...b, by: a.by };
        again = true;
      }
  }
  return out;
}
/** Heights as near as may be to the wanted ones, at least APART from each other, within the room. */
function spread(wanted: readonly number[], top: number, bottom: number): number[] {
  const n = wanted.length;
  const gap = Math.min(APART, n > 1 ? (bottom - top) / (n - 1) : APART);
  const ys = wanted.map((y) => Math.min(bottom, Math.max(top, y)));
  for (let i = 1; i < n; i++) ys[i] = Math.max(ys[i] ?? 0, (ys[i - 1] ?? 0) + gap);
  for (let i = n - 1; i >= 0; i--) ys[i] = Math.min(ys[i] ?? 0, i === n - 1 ? bottom : (ys[i + 1] ?? 0) - gap);
  return ys;
}
export function crossing(a: Balloon, b: Balloon): boolean {
  const side = (px: number, py: number, qx: number, qy: number, rx: number, ry: number): number =>
    (qx - px) * (ry - py) - (qy - py) * (rx - px);
  const d1 = side(a.x, a.y, a.bx, a.by, b.x, b.y);
  const d2 = side(a.x, a.y, a.bx, a.by, b.bx, b.by);
  const d3 = side(b.x, b.y, b.bx, b.by, a.x, a.y);
  const d4 = side(b.x, b.y, b.bx, b.by, a.bx, a.by);
  return d1 * d2 < 0 && d3 * d4 < 0;
}
