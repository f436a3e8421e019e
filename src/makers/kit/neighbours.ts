/** Parts that stand round a space, found by where they are or checked when they are named. */
import type { Box } from '../../geom/box.ts';
import { type Face, faceSide } from '../../model/ids.ts';
import { nearestOf } from '../../units/words.ts';
import type { Opening, Trouble } from './maker.ts';

const NEAR = 0.01;
/** The space itself, its low corner at the origin. */
const own = (space: Opening): Box => ({ min: [0, 0, 0], max: [space.width, space.depth, space.height] });
/** The part of a face of the space that a box covers, mm². */
function covers(space: Opening, box: Box, face: Face): number {
  const { axis } = faceSide(face);
  const s = own(space);
  const [a, b] = ([0, 1, 2] as const)
    .filter((i) => i !== axis)
    .map((i) => Math.max(0, Math.min(box.max[i], s.max[i]) - Math.max(box.min[i], s.min[i])));
  return (a ?? 0) * (b ?? 0);
}
/** How far a box stands off a face of the space, outward, mm; null when it is not on that side. */
function offFace(space: Opening, box: Box, face: Face): number | null {
  const { axis, high } = faceSide(face);
  const off = high ? box.min[axis] - own(space).max[axis] : -box.max[axis];
  return off > -NEAR && covers(space, box, face) > 1 ? off : null;
}
/** The part that stands nearest before a face of the space, of equals the one that covers most of it. */
function standsAt(space: Opening, face: Face): string | null {
  const found = Object.entries(space.parts).flatMap(([path, box]) => {
    const off = offFace(space, box, face);
    return off === null ? [] : [{ path, off, cover: covers(space, box, face) }];
  });
  found.sort((x, y) => (Math.abs(x.off - y.off) > NEAR ? x.off - y.off : y.cover - x.cover || (x.path < y.path ? -1 : 1)));
  return found[0]?.path ?? null;
}
export type Neighbour = { readonly path: string; readonly off: number; readonly box: Box };
/** The part that a setting names, or the one that is found there; it must stand before that face of the space. */
export function neighbourAt(space: Opening, setting: string, named: string, face: Face, what: string): Neighbour | Trouble {
  const found = standsAt(space, face);
  const path = named === '' ? found : named;
  const trouble = (cannot: string): Trouble => ({
    setting,
    cannot,
    limit: 0,
    asked: 0,
    ...(found && found !== path ? { nearest: found } : {}),
  });
  if (path === null) return trouble(`no ${what} stands there`);
  const box = Object.hasOwn(space.parts, path) ? space.parts[path] : undefined;
  if (!box) {
    const near = nearestOf(path, Object.keys(space.parts));
    return { ...trouble(`no part "${path.slice(0, 60)}" stands square to the space`), ...(near && !found ? { nearest: near } : {}) };
  }
  const off = offFace(space, box, face);
  return off === null ? trouble(`"${path}" does not stand before the ${face} of the space`) : { path, off, box };
}
export const isTrouble = (x: Neighbour | Trouble): x is Trouble => 'cannot' in x;
