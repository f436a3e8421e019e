import type { Vec3 } from '../../geom/vec3.ts';
import { faceToward, flatAt, flatContact } from '../blocks.ts';
import type { Contact } from '../family.ts';
import { roundSide } from '../features.ts';
import { type Ground, boltYs, headWide, middleOf, seatZ, stubThick, stubs, tipIn } from './lay.ts';
import type { BedBolt } from './params.ts';

/** The shoulder drawn up, the stubs' cheeks, and for each bolt its head, its thread and the face on which its nut bears. */
export function contacts(g: Ground, s: BedBolt, sign: 1 | -1): Contact[] {
  return [
    shoulder(g),
    ...stubs(g, s).flatMap((y, n) => cheeks(g, s, y, n)),
    ...boltYs(g, s).flatMap((y, n) => [head(g, s, y, n), thread(g, s, y, n), bearing(g, s, y, n, sign)]),
  ];
}
const shoulder = (g: Ground): Contact =>
  flatContact({
    name: 'shoulder of the rail',
    a: { role: 'rail', feature: 'stock', face: g.rail.end },
    b: { role: 'post', feature: 'stock', face: g.post.end },
    on: flatAt('z+', 0, g.x, g.y),
    apart: g.gap,
    fit: 'slip',
    hold: 'pinned',
    glue: 'end',
  });
const cheeks = (g: Ground, s: BedBolt, y: readonly [number, number], n: number): Contact[] =>
  ([-1, 1] as const).map((way) => {
    const dir: Vec3 = [way, 0, 0];
    return flatContact({
      name: `stub tenon ${n + 1}, cheek ${faceToward(g.rail, dir)}`,
      a: { role: 'rail', feature: `stub tenon ${n + 1}`, face: `cheek ${faceToward(g.rail, dir)}` },
      b: { role: 'post', feature: `mortise ${n + 1}`, face: `cheek ${faceToward(g.post, dir)}` },
      on: flatAt(way > 0 ? 'x+' : 'x-', middleOf(g.x) + (way * stubThick(g)) / 2, y, [0, s.stub]),
      fit: 'slip',
      hold: 'dry',
      glue: 'long',
    });
  });
function head(g: Ground, s: BedBolt, y: number, n: number): Contact {
  const mid = middleOf(g.x);
  const far = headWide(s.diameter) / 2;
  // A piece of the ring under the head, beside the hole.
  const on = flatAt('z-', seatZ(g, s), [mid + s.hole / 2, mid + far * 0.95], [y - s.diameter / 4, y + s.diameter / 4]);
  return flatContact({
    name: `head of bolt ${n + 1}`,
    a: { role: 'extra', index: n, feature: 'turning', face: 'under the head' },
    b:
      s.sink > 0
        ? { role: 'post', feature: `counterbore ${n + 1}`, face: 'floor' }
        : { role: 'post', feature: 'stock', face: faceToward(g.post, [0, 0, 1]) },
    on,
    fit: 'slip',
    hold: 'pinned',
    glue: 'never',
  });
}
function thread(g: Ground, s: BedBolt, y: number, n: number): Contact {
  const at: Vec3 = [middleOf(g.x), y, -Math.min(s.back, tipIn(g, s))];
  const r = s.diameter / 2;
  const long = s.nut === 'square' ? s.nut_long : s.nut_size;
  return {
    name: `bolt ${n + 1} in its nut`,
    between: [
      roundSide('extra', 'turning', 'shank', at, [0, 0, -1], r, long, n),
      roundSide('extra', 'thread', 'thread', at, [0, 0, -1], r, long, s.count + n),
    ],
    fit: 'slip',
    meant: 0,
    hold: 'pinned',
    glue: 'never',
  };
}
function bearing(g: Ground, s: BedBolt, y: number, n: number, sign: 1 | -1): Contact {
  const mid = middleOf(g.x);
  if (s.nut === 'barrel') {
    const at: Vec3 = [mid + (sign * s.nut_long) / 2, y, -s.back];
    const along: Vec3 = [-sign, 0, 0];
    return {
      name: `nut ${n + 1} in the rail`,
      between: [
        roundSide('extra', 'turning', 'round', at, along, s.nut_size / 2, s.nut_long, s.count + n),
        roundSide('rail', `nut hole ${n + 1}`, 'wall', at, along, s.nut_size / 2, s.nut_long),
      ],
      fit: 'slip',
      meant: 0,
      hold: 'pinned',
      glue: 'never',
    };
  }
  const half = s.nut_size / 2;
  return flatContact({
    name: `nut ${n + 1} in the rail`,
    // Its own z runs the way of the bolt, so what bears is its low end.
    a: { role: 'extra', index: s.count + n, feature: 'stock', face: 'bottom' },
    b: { role: 'rail', feature: `nut mortise ${n + 1}`, face: 'bearing' },
    on: flatAt('z+', -s.back + s.nut_long / 2, [mid + s.hole / 2, mid + half], [y - half, y + half]),
    fit: 'slip',
    hold: 'pinned',
    glue: 'never',
  });
}
