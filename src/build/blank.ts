/** The blank of a part: the box round its stock and all that its joints add, from the record alone. */
import { type Box, boxAround, unionBox } from '../geom/box.ts';
import { outDir, outPoint } from '../geom/frame.ts';
import { loopPoints } from '../geom/loop.ts';
import type { Vec3 } from '../geom/vec3.ts';
import type { Feature, PartRecord } from '../model/record.ts';

/** Box in the record frame that holds stock and adds, mm. Shapes and removes take away, so they do not count. */
export function blankBox(record: PartRecord): Box {
  return record.features.filter((f) => f.op === 'add').reduce((b, f) => unionBox(b, featureBox(f) ?? b), record.stock);
}
/** The box round a feature's own solid, in the record frame; null for a half space. */
function featureBox(f: Feature): Box | null {
  const s = f.solid;
  if (s.kind === 'half') return null;
  if (s.kind === 'prism') {
    const ring = (loops: typeof s.profile, z: number): Vec3[] =>
      loops.flatMap((l) => loopPoints(l, 64).points.map((p): Vec3 => outPoint(f.at, [p[0], p[1], z])));
    return boxAround([...ring(s.profile, s.from), ...ring(s.profileTo ?? s.profile, s.to)]);
  }
  // A turned solid: each circle of its profile, as the box round a disc square to the frame's z.
  const axis = outDir(f.at, [0, 0, 1]);
  const points = loopPoints(s.profile, 64).points.flatMap(([r, z]): Vec3[] => {
    const c = outPoint(f.at, [0, 0, z]);
    const reach = [0, 1, 2].map((i) => r * Math.sqrt(Math.max(0, 1 - (axis[i] ?? 0) ** 2)));
    return [
      [c[0] - (reach[0] ?? 0), c[1] - (reach[1] ?? 0), c[2] - (reach[2] ?? 0)],
      [c[0] + (reach[0] ?? 0), c[1] + (reach[1] ?? 0), c[2] + (reach[2] ?? 0)],
    ];
  });
  return boxAround(points);
}
