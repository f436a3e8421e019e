import type { Vec2, Vec3 } from '../../geom/vec3.ts';
import { slot as slotLoop, circle } from '../../geom/loop.ts';
import type { Feature } from '../../model/record.ts';
import { faceToward } from '../blocks.ts';
import type { Made, Place } from '../family.ts';
import { CLEAR, beyond, cylinder, frameAlong, swept } from '../features.ts';
import { contacts } from './contacts.ts';
import { keysOf, screwsOf } from './extras.ts';
import { EASY, type Laid, bite, ground, halfKey, layOut, middleX, spots, spanY, yAt } from './lay.ts';
import type { Moulding } from './params.ts';

export function make(p: Place<Moulding>, s: Moulding): Made {
  const g = ground(p.meeting);
  if (!g) throw new Error('a moulding lies square on the side: propose refuses the others');
  const l = layOut(g, s);
  const at = s.hold === 'glued' ? [] : spots(l);
  const extras = s.hold === 'keys' ? [...keysOf(l, at), ...screwsOf(l, at)] : screwsOf(l, at);
  return {
    features: {
      moulding: [...l.mitres.map((sign) => mitre(l, sign)), ...(s.hold === 'keys' ? [groove(l)] : at.map((a, i) => pilot(l, a, i)))],
      side: at.map((a, i) => (s.hold === 'keys' ? pilot(l, a, i) : slot(l, a, i))),
    },
    extras,
    contacts: contacts(l, at),
    frees: frees(
      l,
      extras.map((e) => e.name),
    ),
    holds: 'glue',
  };
}
/** On keys it comes off forward; else straight off, the screws first. */
function frees(l: Laid, extras: readonly string[]): Made['frees'] {
  if (l.s.hold === 'keys')
    return [{ moves: ['moulding'], along: [0, l.ahead, 0] }, ...extras.map((name) => ({ moves: [name], along: [0, 0, -1] as Vec3 }))];
  return [...extras.map((name) => ({ moves: [name], along: [0, 0, 1] as Vec3 })), { moves: ['moulding'], along: [0, 0, -1] }];
}
/** At 45 degrees, long at the outer face. */
function mitre(l: Laid, sign: 1 | -1): Feature {
  const end = sign > 0 ? l.g.moulding.box.max[1] : l.g.moulding.box.min[1];
  const normal: Vec3 = [0, sign * Math.SQRT1_2, Math.SQRT1_2];
  const name = `mitre ${faceToward(l.g.moulding, [0, sign, 0])}`;
  return beyond(name, 'remove', { normal, off: Math.SQRT1_2 * (sign * end - l.g.deep) }, 'mitre');
}
/** The screw's hole: in the moulding, or with keys in the side. */
function pilot(l: Laid, a: number, i: number): Feature {
  const keys = l.s.hold === 'keys';
  const at = frameAlong([middleX(l.g), yAt(l, a), keys ? l.g.gap : 0], [0, 0, keys ? 1 : -1]);
  return cylinder(`screw hole ${i + 1}`, 'remove', at, l.s.screw, -CLEAR, bite(l.g, l.s), { round: 'hole', to: 'end' });
}
/** Through the side, long where the side moves. */
function slot(l: Laid, a: number, i: number): Feature {
  const r = (l.s.screw + EASY) / 2;
  const [x, y] = [middleX(l.g), yAt(l, a)];
  const room = l.s.room;
  return {
    name: `slot ${i + 1}`,
    op: 'remove',
    at: { o: [0, 0, 0], x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] },
    why: 'joint',
    solid: {
      kind: 'prism',
      profile: [room > 0 ? slotLoop([x, y - l.ahead * room], [x, y + l.ahead * room], r) : circle(x, y, r)],
      from: l.g.gap - CLEAR,
      to: l.g.gap + l.g.thick + CLEAR,
    },
    faces: { hole: { of: 'side', corner: room > 0 ? 1 : 0 } },
  };
}
/** From the back end of the moulding up to the glued length; a little deeper than the keys. */
function groove(l: Laid): Feature {
  const deep = l.s.key_deep + EASY;
  const mid = middleX(l.g);
  const w = (depth: number): number => halfKey(l.s, depth);
  const outline: Vec2[] = [
    [mid - w(-CLEAR), CLEAR],
    [mid - w(deep), -deep],
    [mid + w(deep), -deep],
    [mid + w(-CLEAR), CLEAR],
  ];
  const back = l.ahead > 0 ? l.g.moulding.box.min[1] - CLEAR : l.g.moulding.box.max[1] + CLEAR;
  const [low, high] = spanY(l, l.s.glued, (l.from - back) * l.ahead);
  const flank = (sign: 1 | -1): string => `flank ${faceToward(l.g.moulding, [sign, 0, 0])}`;
  return swept('key groove', 'remove', 'xz', outline, low, high, [flank(-1), 'bottom', flank(1), null]);
}
