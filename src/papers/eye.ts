/** Where a piece is looked at from so that its joints show: one of a few fixed places, the usual one unless another shows clearly more. */
import type { DrawnPiece } from './record.ts';
import { type Eye, type Scene, cornersOf, sceneOf } from './space.ts';
import { blockersOf, isHidden, samplesOf } from './visible.ts';

const DEG = Math.PI / 180;
const ROUND = [30, -30, 150, -150];
const UP = 25;
/** From behind, and from under it, only where this many times more of what is cut comes to sight. */
const SIDE = 1.08;
const BEHIND = 1.2;
const UNDER = 1.35;

/** From the right front and above, or whence most of the cut faces are seen. */
export function eyeFor(piece: DrawnPiece): Eye {
  const eyes = [UP, -UP].flatMap((up) => ROUND.map((round): Eye => ({ round: round * DEG, up: up * DEG })));
  const usual = eyes[0] as Eye;
  let best = usual;
  let most = cutSeen(sceneOf(piece, usual));
  for (const eye of eyes.slice(1)) {
    const seen = cutSeen(sceneOf(piece, eye)) / (eye.up < 0 ? UNDER : Math.abs(eye.round) > Math.PI / 2 ? BEHIND : SIDE);
    if (seen > most) [best, most] = [eye, seen];
  }
  return best;
}
/**
 * How much of what joints and shapes have made is seen: the area on the paper, part by part, and its roots added, so that a mortise
 * and its tenon both at a glance are worth more than the tenon from all sides.
 */
function cutSeen(s: Scene): number {
  const blockers = blockersOf(s);
  const seen = new Map<number, number>();
  for (const t of s.front) {
    const part = s.piece.parts[t.part];
    if (!part || part.kind === 'hardware' || (s.piece.meshes.get(part.key)?.faces[t.face] ?? 'stock').startsWith('stock')) continue;
    const at = cornersOf(s, t);
    const [p, q, r] = at;
    const area = ((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])) / 2;
    const places = samplesOf(at, 3);
    const share = places.filter((v) => !isHidden(v, blockers)).length / places.length;
    seen.set(t.part, (seen.get(t.part) ?? 0) + area * share);
  }
  return [...seen.values()].reduce((sum, area) => sum + Math.sqrt(area), 0);
}
