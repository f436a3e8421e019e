import type { Box } from '../../geom/box.ts';
import { HOME, type Frame } from '../../geom/frame.ts';
import { type Vec3, unit } from '../../geom/vec3.ts';
import { partRecord } from '../../model/part-record.ts';
import type { Feature } from '../../model/record.ts';
import { ownSense } from '../blocks.ts';
import type { ExtraPart } from '../family.ts';
import { CLEAR, cylinder, frameAlong, pinRecord } from '../features.ts';
import { EASY, type Laid, halfKey, middleX, yAt } from './lay.ts';

/** A key's x runs with the moulding's own axis, so that handed copies have equal keys. */
export const keySense = (l: Laid): 1 | -1 => ownSense(l.g.moulding, 'x');
/** Keys lie on the side, narrow there: x across the moulding, y towards its front end, z off the side. */
export function keysOf(l: Laid, at: readonly number[]): ExtraPart[] {
  const { key_wide, key_long, key_deep, screw, slope } = l.s;
  const stock: Box = { min: [0, 0, 0], max: [key_wide, key_long, key_deep] };
  const flank = (sign: 1 | -1): Feature => {
    const normal = unit([sign, 0, -slope]);
    const foot = key_wide / 2 + sign * halfKey(l.s, 0);
    return {
      name: sign > 0 ? 'flank high' : 'flank low',
      op: 'shape',
      at: HOME,
      why: 'shape',
      solid: { kind: 'half', normal, off: normal[0] * foot },
      faces: { flank: { of: 'plane' } },
    };
  };
  const axis = frameAlong([key_wide / 2, key_long / 2, 0], [0, 0, 1]);
  const hole = cylinder('screw hole', 'remove', axis, screw + EASY, -CLEAR, key_deep + CLEAR, { round: 'hole' });
  const record = partRecord(stock, 'y', l.g.moulding.wood, [flank(1), flank(-1), hole]);
  return at.map((a, i) => ({
    name: `key${i + 1}`,
    words: 'dovetail key',
    record,
    at: {
      o: [middleX(l.g) - (keySense(l) * key_wide) / 2, yAt(l, a + key_long / 2), l.g.gap],
      x: [keySense(l), 0, 0],
      y: [0, l.ahead, 0],
      z: [0, 0, -1],
    },
    enters: [0, 0, 1],
  }));
}
/** From inside the case into the moulding; or through a key into the side. */
export function screwsOf(l: Laid, at: readonly number[]): ExtraPart[] {
  const keys = l.s.hold === 'keys';
  const along: Vec3 = [0, 0, keys ? 1 : -1];
  return at.map((a, i) => {
    const axis = frameAlong([middleX(l.g), yAt(l, a), keys ? l.g.gap - l.s.key_deep : l.g.gap + l.g.thick], along);
    const o = [0, 1, 2].map((k) => (axis.o[k] ?? 0) - ((axis.x[k] ?? 0) + (axis.y[k] ?? 0)) * (l.s.screw / 2)) as unknown as Frame['o'];
    return {
      name: `screw${i + 1}`,
      words: 'screw',
      record: pinRecord('steel', l.s.screw, l.s.screw_length),
      at: { ...axis, o },
      hardware: true,
      enters: along,
    };
  });
}
